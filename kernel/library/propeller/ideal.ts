import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Power, Ratio, Speed } from '../quantity.js'
import { inducedVelocity as induced } from '../rotor/axial-inflow.js'

export interface IdealOptions {
  /** [N] */
  readonly thrust: Force
  /** Of flight [m/s]. */
  readonly speed: Speed
  /** [m^2] */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
}

export interface Ideal {
  /** Thrust power over power: the bound that no open propeller beats. */
  readonly efficiency: Ratio
  /** [W] */
  readonly power: Power
  /** In the plane of the disk [m/s]. */
  readonly inducedVelocity: Speed
}

const method = 'propeller.ideal'
const known = new Set(['thrust', 'speed', 'diskArea', 'density'])

/**
 * Ideal propeller: an actuator disk without swirl or drag.
 *
 * @equation eta = V/(V + v) = 2/(1 + sqrt(1 + 2 T/(rho A V^2))); P = T (V + v)
 * @param options - `thrust` T [N], `speed` V [m/s], `diskArea` A [m^2], `density` rho [kg/m^3]
 * @returns `efficiency` eta (0 at rest), `power` P [W], `inducedVelocity` v [m/s]
 * @throws InvalidInput for a value that is not positive, a speed below 0, and an unknown option
 * @method Momentum theory, incompressible.
 * @validity Open propellers; practical ones need some 15 % more power.
 * @source Froude's actuator disk; Houghton and Carpenter, Aerodynamics for Engineering Students, chapter on propellers (from memory).
 * @example
 * propeller.ideal({ thrust: 1.5 * u.kN, speed: 60 * u.mps, diskArea: 2.5447 * u.m2, density: 1.225 }).efficiency // 0.94084
 */
export function ideal(options: IdealOptions): Ideal {
  checkOptions(method, options, known)
  const { thrust, speed, diskArea, density } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requireNonNegative(method, 'speed', speed, 'm/s')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  const inducedVelocity = induced(speed, thrust / (2 * density * diskArea))
  const through = speed + inducedVelocity
  const answer = { efficiency: speed / through, power: thrust * through, inducedVelocity }
  requireRepresentable(method, answer.efficiency + answer.power + inducedVelocity)
  return answer
}
