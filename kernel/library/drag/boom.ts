import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Area, Density, DynamicViscosity, Length, Ratio, Speed } from '../quantity.js'
import { bodyFactor } from './body-form-factor.js'
import { skinFriction } from './skin-friction.js'

export interface BoomOptions {
  /** [m] */
  readonly length: Length
  /** Of the round, or of the circle of the same frontal area [m]. */
  readonly diameter: Length
  /** [m/s] */
  readonly speed: Speed
  /** [kg/m^3] */
  readonly density: Density
  /** [Pa s] */
  readonly dynamicViscosity: DynamicViscosity
  /** `'faired'` when left out; a blunt end adds base drag. */
  readonly end?: 'faired' | 'blunt'
  /** 1.2 when left out: a boom under a wing. */
  readonly interference?: Ratio
}

export interface Boom {
  /** D/q of one boom [m^2]. */
  readonly dragArea: Area
  readonly skinFriction: Ratio
  readonly formFactor: Ratio
  /** Part of the drag area that the blunt end makes [m^2]. */
  readonly baseArea: Area
}

const method = 'drag.boom'
const known = new Set(['length', 'diameter', 'speed', 'density', 'dynamicViscosity', 'end', 'interference'])

/**
 * Drag of a boom along the stream.
 *
 * @equation D/q = Q C_f F pi d l + C_base pi d^2/4; C_base = 0.029/sqrt(C_f pi d l/(pi d^2/4)) for a blunt end
 * @param options - `length` l, `diameter` d [m], `speed` [m/s], `density` [kg/m^3], `dynamicViscosity` [Pa s]; optional `end`
 * ('faired'), `interference` Q (1.2)
 * @returns `dragArea`, `baseArea` [m^2], `skinFriction`, `formFactor`
 * @throws InvalidInput for values that are not positive, a boom stouter than its length or longer than 1000 diameters, an interference outside 0.5 to 5, an unknown
 * end, and an unknown option
 * @method Turbulent skin friction from the front (Prandtl-Schlichting), Raymer's body factor, base pressure by Hoerner. The interference
 * is a house value between "beyond one diameter" (1.0) and "within" (1.3): a boom meets the wing over a short part of its length.
 * @validity Along the stream, fineness from 3; below an advisory. Motor pods and rotors on it are not included: `drag.stoppedRotor`.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, section 12.5; Hoerner, S. F., Fluid-Dynamic Drag, 1965, base drag (from
 * memory).
 * @example
 * const one = drag.boom({ length: 4 * u.m, diameter: 0.16 * u.m, speed: 58, density: 1.1, dynamicViscosity: 1.79e-5 })
 * one.dragArea // 0.00687
 */
export function boom(options: BoomOptions): Boom {
  checkOptions(method, options, known)
  const { length, diameter, speed, density, dynamicViscosity, end = 'faired', interference = 1.2 } = options
  requirePositive(method, 'length', length, 'm')
  requirePositive(method, 'diameter', diameter, 'm')
  requirePositive(method, 'speed', speed, 'm/s')
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'dynamicViscosity', dynamicViscosity, 'Pa s')
  requireChoice(method, 'end', end, ['faired', 'blunt'])
  requireWithin(method, 'interference', interference, '1', 0.5, 5)
  const fineness = length / diameter
  requireWithin(method, 'length over diameter', fineness, '1', 1, 1000)
  adviseOutside(fineness, {
    code: 'BOOM_FINENESS',
    method,
    quantity: 'length over diameter',
    low: 3,
    because: 'below 3 it is a pod whose flow separates',
  })
  const friction = skinFriction({ reynolds: (density * speed * length) / dynamicViscosity })
  const formFactor = bodyFactor(Math.min(fineness, 100), 'Raymer')
  const wetted = Math.PI * diameter * length
  const base = 0.25 * Math.PI * diameter * diameter
  const baseArea = end === 'blunt' ? (0.029 / Math.sqrt((friction * wetted) / base)) * base : 0
  const dragArea = interference * friction * formFactor * wetted + baseArea
  requireRepresentable(method, dragArea)
  return { dragArea, skinFriction: friction, formFactor, baseArea }
}
