import { requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Ratio, Speed } from '../quantity.js'

export interface StallSpeedOptions {
  /** Weight carried by the wing [N]: mass times `u.g0`, times the load factor in a turn. */
  readonly weight: Force
  /** [kg/m^3] */
  readonly density: Density
  /** Reference area [m^2]. */
  readonly wingArea: Area
  /** Largest lift coefficient of the whole wing. */
  readonly maximumLift: Ratio
}

const known = new Set(['weight', 'density', 'wingArea', 'maximumLift'])

/**
 * Slowest speed at which the wing alone carries the weight.
 *
 * @equation V_s = sqrt(2 W / (rho S C_L,max))
 * @param options - `weight` W [N], `density` rho [kg/m^3], `wingArea` S [m^2], `maximumLift` C_L,max
 * @returns true airspeed [m/s]
 * @throws InvalidInput for a value that is not positive and finite, and for an unknown option
 * @method Closed form, steady level flight, no lift from rotors.
 * @validity As good as `maximumLift`, which depends on Reynolds number, booms and stopped rotors.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on constraint analysis (from memory); textbook identity.
 * @example
 * wing.stallSpeed({ weight: 2000 * u.kg * u.g0, density: 1.225, wingArea: 14 * u.m2, maximumLift: 1.6 }) // 37.809
 */
export function stallSpeed(options: StallSpeedOptions): Speed {
  const method = 'wing.stallSpeed'
  checkOptions(method, options, known)
  const { weight, density, wingArea, maximumLift } = options
  requirePositive(method, 'weight', weight, 'N')
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'maximumLift', maximumLift, '1')
  const speed = Math.sqrt((2 * weight) / (density * wingArea * maximumLift))
  requireRepresentable(method, speed)
  return speed
}
