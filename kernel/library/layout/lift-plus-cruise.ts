import type { Layout } from './parts.js'
import { placeWinged } from './winged.js'
import type { WingedOptions } from './winged-options.js'

/**
 * Lift plus cruise: rotors in rows and columns that lift and stand still in cruise, a wing, and propellers that push.
 *
 * @equation rows at x = x_LE + gap + R ahead and x_TE - gap - R behind, next ones 2 R + rotorGap farther; columns at y = boomOffset + k (2 R + rotorGap); left = image of right, turning the other way
 * @param options - `rotorRadius` R [m], `wing`: `{ area [m^2], aspectRatio, taper (0.6), sweep, dihedral [rad], thicknessRatio (0.16), above [m] }`, `body`: `{ length, width, height, noseAhead [m] }`; optional `rowsAhead` (2),
 * `rowsBehind` (2), `columns` of each side (1), `rotorGap` (0.1 R), `gapAhead`, `gapBehind` to the wing (0.15 R), `boomOffset`, `bodyGap` (0.2 R), `rotorHeight` above the booms (0.3 R), `boomDiameter` (0.12 R) [m], `spin`
 * ('alternating', 'ahead and behind', 'by side' or a list of the right side), `cant`: `{ lateral (outwards), longitudinal (forward) }` [rad], `tail`: `{ area [m^2], arm [m], on ('booms' or 'body'), aspectRatio, finArea }`,
 * `propellers`: list of `{ radius, x, y, z, spin }`, `groundClearance` (0.5 m)
 * @returns a layout; the origin is the quarter point of the wing's mean chord, on the body's middle line. Rotors are in rows from the front, in each row the left one of a pair before the right one
 * @throws InvalidInput for sizes below 0.0001 m (a tail's area: m^2) or that are not positive, no rows at all, a list of spins of another length, more than 64 rotors, and an unknown option
 * @method One column a side is twin booms with the rotors in line along the stream; several columns spread them across it. Rows are straight, so the column where the wing reaches farthest decides.
 * @validity Geometry; whether it fits is for `layout.checks` to say.
 * @source House convention, no publication.
 * @example
 * const skerryLink = layout.liftPlusCruise({
 *   rotorRadius: 1.3 * u.m, wing: { area: 15 * u.m2, aspectRatio: 11 }, body: { length: 6.6 * u.m, width: 1.5 * u.m, height: 1.5 * u.m },
 *   tail: { area: 3.2 * u.m2, arm: 6.4 * u.m }, propellers: [{ radius: 0.95 * u.m }],
 * })
 * skerryLink.rotors.length // 8
 */
export function liftPlusCruise(options: WingedOptions): Layout {
  return placeWinged(options, { method: 'layout.liftPlusCruise', kind: 'lift plus cruise', tilts: () => false })
}
