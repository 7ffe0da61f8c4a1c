import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Power, Ratio, Speed } from '../quantity.js'

export interface CoaxialOptions {
  /** Of both rotors together [N]. */
  readonly thrust: Force
  /** Of one rotor, which is that of the pair seen from above [m^2]. */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** Thrust of the upper rotor over that of both, 0.5 when left out. */
  readonly upperShare?: Ratio
}

export interface Coaxial {
  /** Ideal induced power over that of the same two thrusts on rotors apart. */
  readonly interference: Ratio
  /** Of both rotors [W]. */
  readonly idealPower: Power
  /** At the upper disk [m/s]. */
  readonly upperInducedVelocity: Speed
  /** Mean flow through the lower disk, the upper wake included [m/s]. */
  readonly lowerInflow: Speed
  /** Both in one plane: an upper bound for the pair [W]. */
  readonly coplanarPower: Power
}

const method = 'rotor.coaxial'
const known = new Set(['thrust', 'diskArea', 'density', 'upperShare'])

/**
 * Ideal hover power of two rotors on one axis, the lower in the wake of the upper.
 *
 * @equation v_u = sqrt(T_u/(2 rho A)); T_l y^2 + T_u v_u y - T^2/(2 rho A) = 0 for the mean flow y through the lower disk; P = T_u v_u + T_l y
 * @param options - `thrust` T of both [N], `diskArea` A of one [m^2], `density` rho [kg/m^3]; optional `upperShare` T_u/T (0.5)
 * @returns `interference` (1.281 at equal thrust) for `rotor.hover` with the area of both disks, `idealPower` [W], `upperInducedVelocity`
 * [m/s], `lowerInflow` y [m/s], `coplanarPower` [W], the upper bound
 * @throws InvalidInput for a value that is not positive, a share outside 0.05 to 0.95, and an unknown option
 * @method Momentum and energy over both rotors with the mass flow rho A y of the lower; its air outside the upper wake comes from rest. The
 * upper rotor does not feel the lower, so rotors close together lie between this and one plane (interference sqrt(2)).
 * @validity Distance of the order of a radius. Measured pairs do better than theory: about 1.16 (Harrington, NACA TN-2318, 1951; figure
 * from memory).
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2, coaxial rotors (from memory; worked out
 * anew for unequal thrust).
 * @example
 * const pair = rotor.coaxial({ thrust: 4 * u.kN, diskArea: 5 * u.m2, density: 1.2 })
 * pair.interference // 1.2808
 */
export function coaxial(options: CoaxialOptions): Coaxial {
  checkOptions(method, options, known)
  const { thrust, diskArea, density, upperShare = 0.5 } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireWithin(method, 'upperShare', upperShare, '1', 0.05, 0.95)
  const lowerShare = 1 - upperShare
  // In units of the induced velocity that one disk with the thrust of both would have.
  const both = Math.sqrt(thrust / (2 * density * diskArea))
  const upper = Math.sqrt(upperShare)
  const towards = upperShare * upper
  const lower = (Math.sqrt(towards * towards + 4 * lowerShare) - towards) / (2 * lowerShare)
  const ideal = upperShare * upper + lowerShare * lower
  const answer = {
    interference: ideal / (upperShare * upper + lowerShare * Math.sqrt(lowerShare)),
    idealPower: thrust * both * ideal,
    upperInducedVelocity: both * upper,
    lowerInflow: both * lower,
    coplanarPower: thrust * both,
  }
  requireRepresentable(method, answer.idealPower + answer.lowerInflow + answer.coplanarPower)
  return answer
}
