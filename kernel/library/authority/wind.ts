/** Moments of a steady wind on the hovering aircraft, direction by direction: what the rotors have to balance. */
import { requireFinite, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Length, Ratio, Speed } from '../quantity.js'
import { u } from '../units.js'
import type { Disturbance } from './trim.js'

export interface WindMomentsOptions {
  /** [m/s]; 17 kt when left out. */
  readonly speed?: Speed
  /** [kg/m^3] */
  readonly density: Density
  /** Drag area from the front [m^2]. */
  readonly frontDragArea: Area
  /** Drag area from the side [m^2]. */
  readonly sideDragArea: Area
  /** Where the side force acts, from the centre of gravity: forward (behind it below 0) and down [m]; 0 when left out. */
  readonly sideCentre?: { readonly x?: Length; readonly z?: Length }
  /** Where the force from the front acts: down from the centre of gravity [m]; 0 when left out. */
  readonly frontCentre?: { readonly z?: Length }
  /** Directions, evenly round the aircraft; 8 when left out. */
  readonly directions?: Ratio
}

const method = 'authority.windMoments'
const known = new Set(['speed', 'density', 'frontDragArea', 'sideDragArea', 'sideCentre', 'frontCentre', 'directions'])
const knownSide = new Set(['x', 'z'])
const knownFront = new Set(['z'])

/**
 * Forces and moments of a wind from every side on a hovering aircraft, as `authority.margin` and `authority.trim` take them.
 *
 * @equation F_x = -q f_front cos b |cos b|, F_y = -q f_side sin b |sin b|, q = rho V^2/2; M = r x F
 * @param options - `density` [kg/m^3], `frontDragArea` and `sideDragArea` [m^2], `speed` [m/s] (17 kt), `sideCentre` `{ x, z }` and `frontCentre`
 * `{ z }` [m] from the centre of gravity (forward, down), `directions` (8)
 * @returns one record per direction from which the wind blows, beginning ahead and going to the right: `forward`, `side` [N], `roll`, `pitch`, `yaw` [N m]
 * @throws InvalidInput for a density that is not positive, a negative area or speed, fewer than 4 or more than 100 directions, and an unknown option
 * @method Independent components of the wind on two areas. Rotors in the wind add moments of their own (edgewise flow), which are left out.
 * @validity Bluff aircraft in hover; a small moment is not a safe one where the centres are uncertain by as much as their arms.
 * @source Drag area times dynamic pressure: textbook. 17 kt from any side: EASA CS 27.143 (c) (number from memory).
 * @example
 * const winds = authority.windMoments({ density: 1.2, frontDragArea: 1.5, sideDragArea: 8, sideCentre: { x: -1 } })
 * winds[2].yaw // 367.1
 */
export function windMoments(options: WindMomentsOptions): Required<Disturbance>[] {
  checkOptions(method, options, known)
  const {
    speed = 17 * u.kt,
    density,
    frontDragArea,
    sideDragArea,
    sideCentre = {},
    frontCentre = {},
    directions = 8,
  } = options
  requireNonNegative(method, 'speed', speed, 'm/s')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireNonNegative(method, 'frontDragArea', frontDragArea, 'm^2')
  requireNonNegative(method, 'sideDragArea', sideDragArea, 'm^2')
  checkOptions(`${method} sideCentre`, sideCentre, knownSide)
  checkOptions(`${method} frontCentre`, frontCentre, knownFront)
  const [x, z, frontZ] = [sideCentre.x ?? 0, sideCentre.z ?? 0, frontCentre.z ?? 0]
  requireFinite(method, 'sideCentre.x', x, 'm')
  requireFinite(method, 'sideCentre.z', z, 'm')
  requireFinite(method, 'frontCentre.z', frontZ, 'm')
  requireWithin(method, 'directions', directions, '1', 4, 100)
  const pressure = 0.5 * density * speed * speed
  const count = Math.round(directions)
  const winds = Array.from({ length: count }, (_, at) => {
    // Components below rounding are none: the wind from ahead has no side.
    const part = (value: number) => (Math.abs(value) < 1e-12 ? 0 : value * Math.abs(value))
    const ahead = part(Math.cos((2 * Math.PI * at) / count))
    const right = part(Math.sin((2 * Math.PI * at) / count))
    const forward = 0 - pressure * frontDragArea * ahead
    const side = 0 - pressure * sideDragArea * right
    // Added to zero, so that no wind has no sign.
    return { forward, side, roll: 0 - z * side, pitch: 0 + frontZ * forward, yaw: 0 + x * side }
  })
  requireRepresentable(
    method,
    winds.reduce((sum, one) => sum + one.roll + one.pitch + one.yaw, 0),
  )
  return winds
}
