import { requireFinite, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Length, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface OverlapOptions {
  /** Of each rotor [m]. */
  readonly radius: Length
  /** Hub positions in plan [m, m], one per rotor. */
  readonly positions: readonly (readonly [Length, Length])[]
}

export interface Overlap {
  /** Overlapped area, pair by pair, over the disk area of all rotors; each pair counts its lens once. */
  readonly overlapShare: Ratio
  /** Induced power over that of the same rotors apart from each other. */
  readonly interference: Ratio
  /** Least distance between two hubs [m]; 0 for a single rotor. */
  readonly leastSpacing: Length
}

const method = 'rotor.overlap'
const known = new Set(['radius', 'positions'])

/**
 * Induced power of rotors whose disks overlap in plan, over that of the same rotors apart.
 *
 * @equation kappa = 1 + (sqrt(2) - 1) m, m = sum over pairs of 2 A_lens/(n A); A_lens/A = (2/pi) (acos s - s sqrt(1 - s^2)), s = spacing/(2 R)
 * @param options - `radius` R [m] of each, `positions`: list of `[x, y]` [m, m] in plan
 * @returns `overlapShare` (sum of A_lens over n A), `interference` kappa for `rotor.hover`, `leastSpacing` [m]
 * @throws InvalidInput for a radius that is not positive, positions that are not pairs of finite numbers, and an unknown option
 * @method Momentum theory: where two equal disks overlap the air takes the thrust of both, so its induced velocity is sqrt(2) of one's.
 * Disks in nearly one plane, equal thrust. The lens is exact.
 * @validity Two disks at a place; where three meet, or two share more than half of a disk, an advisory. Rotors that do not overlap do not
 * feel each other here.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2, tandem overlap (from memory).
 * @example
 * const pair = rotor.overlap({ radius: 1 * u.m, positions: [[0, 0], [1.5, 0]] })
 * pair.interference // 1.0598
 */
export function overlap(options: OverlapOptions): Overlap {
  checkOptions(method, options, known)
  const { radius, positions } = options
  requirePositive(method, 'radius', radius, 'm')
  requirePositions(positions)
  const count = positions.length
  let lenses = 0
  let leastSpacing = Number.POSITIVE_INFINITY
  for (let i = 0; i < count; i += 1)
    for (let j = i + 1; j < count; j += 1) {
      const [xi, yi] = positions[i] as readonly [number, number]
      const [xj, yj] = positions[j] as readonly [number, number]
      const spacing = Math.hypot(xi - xj, yi - yj)
      leastSpacing = Math.min(leastSpacing, spacing)
      lenses += lensShare(spacing / (2 * radius))
    }
  if (count === 1) leastSpacing = 0
  const overlapShare = lenses / count
  const interference = 1 + (Math.SQRT2 - 1) * 2 * overlapShare
  requireRepresentable(method, interference + leastSpacing)
  if (isListening() && (lensShare(leastSpacing / (2 * radius)) > 0.5 || overlapShare > 0.5) && count > 1)
    adviseOverlap(overlapShare)
  return { overlapShare, interference, leastSpacing }
}

/** Area common to two equal disks over that of one; `share` is their spacing over the diameter. */
function lensShare(share: number): number {
  if (share >= 1) return 0
  return (2 / Math.PI) * (Math.acos(share) - share * Math.sqrt(1 - share * share))
}

function requirePositions(positions: OverlapOptions['positions']): void {
  if (!Array.isArray(positions) || positions.length === 0 || positions.length > 200)
    throw new InvalidInput({
      method,
      argument: 'positions',
      value: describeValue(positions),
      accepted: 'a list of 1 to 200 pairs [x, y]',
    })
  positions.forEach((pair: unknown, index) => {
    if (!Array.isArray(pair) || pair.length !== 2)
      throw new InvalidInput({
        method,
        argument: `positions[${index}]`,
        value: describeValue(pair),
        accepted: 'a pair [x, y]',
      })
    requireFinite(method, `positions[${index}][0]`, pair[0], 'm')
    requireFinite(method, `positions[${index}][1]`, pair[1], 'm')
  })
}

function adviseOverlap(overlapShare: number): void {
  advise({
    code: 'DISK_OVERLAP',
    method,
    quantity: 'overlapShare',
    value: overlapShare,
    range: [0, 0.5],
    message:
      'Disks share more than half of their area, or three meet at a place: pairs alone no longer tell the induced power; see rotor.coaxial for a stacked pair.',
  })
}
