import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { Power, Speed } from '../quantity.js'
import { inducedVelocity as induced } from './axial-inflow.js'
import {
  knownVertical,
  readVerticalFlight,
  type VerticalFlight,
  type VerticalFlightOptions,
} from './vertical-flight.js'

export interface ClimbOptions extends VerticalFlightOptions {
  /** Vertical [m/s]; either this or `power`. */
  readonly climbSpeed?: Speed
  /** At the shafts of all rotors [W]; either this or `climbSpeed`. */
  readonly power?: Power
}

export interface Climb {
  /** [m/s] */
  readonly climbSpeed: Speed
  /** At the shafts of all rotors [W]. */
  readonly power: Power
  /** In the plane of the disk [m/s]. */
  readonly inducedVelocity: Speed
  /** At the shafts, to hover with the same thrust [W]. */
  readonly hoverPower: Power
}

const method = 'rotor.climb'
const known = new Set([...knownVertical, 'climbSpeed', 'power'])

/**
 * Vertical climb: the power that a climb speed takes, or the climb speed that a power gives.
 *
 * @equation P = T (V + kappa v) + P_0, v (V + v) = T/(2 rho A)
 * @param options - `climbSpeed` V [m/s] or `power` P [W]; `thrust` T [N], `diskArea` A [m^2] and `profilePower` P_0 [W] (0) of all rotors
 * together, `density` rho [kg/m^3], `inducedFactor` kappa (1)
 * @returns `climbSpeed` [m/s], `power` [W], `inducedVelocity` v [m/s], `hoverPower` [W]
 * @throws InvalidInput for neither or both of climb speed and power, a power below that of hovering, a value that is not positive, and an
 * unknown option
 * @method Momentum theory; both ways in closed form. The induced factor and the profile power are those of hover.
 * @validity Steady climb along the axis; thrust is the weight plus the drag of the body and the download, which the caller adds.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2 (from memory).
 * @example
 * const rise = rotor.climb({ power: 50 * u.kW, thrust: 4 * u.kN, diskArea: 20 * u.m2, density: 1.225 })
 * rise.climbSpeed // 5.969
 */
export function climb(options: ClimbOptions): Climb {
  checkOptions(method, options, known)
  const flight = readVerticalFlight(method, options)
  const { thrust, inducedFactor, profilePower, loading } = flight
  const hoverPower = thrust * inducedFactor * Math.sqrt(loading) + profilePower
  const climbSpeed = readClimbSpeed(options, flight, hoverPower)
  const inducedVelocity = induced(climbSpeed, loading)
  const power = options.power ?? thrust * (climbSpeed + inducedFactor * inducedVelocity) + profilePower
  requireRepresentable(method, climbSpeed + power + inducedVelocity + hoverPower)
  return { climbSpeed, power, inducedVelocity, hoverPower }
}

function readClimbSpeed(options: ClimbOptions, flight: VerticalFlight, hoverPower: number): number {
  const { climbSpeed, power } = options
  if ((climbSpeed === undefined) === (power === undefined))
    throw new InvalidInput({
      method,
      argument: 'climbSpeed or power',
      value: climbSpeed === undefined ? 'missing' : 'given together with the other',
      accepted: 'one of the two',
    })
  if (climbSpeed !== undefined) {
    requireNonNegative(method, 'climbSpeed', climbSpeed, 'm/s')
    return climbSpeed
  }
  requirePositive(method, 'power', power as number, 'W')
  // A power that was computed as that of hover may differ from this one in its last digit.
  if ((power as number) < hoverPower * (1 - 1e-12))
    throw new InvalidInput({
      method,
      argument: 'power',
      value: power as number,
      unit: 'W',
      accepted: `at least ${writeNumber(hoverPower)} W, which hovering takes`,
      remedy: 'With less power it sinks: see rotor.descent.',
    })
  return speedFromPower(power as number, flight)
}

/** (kappa - 1) v^2 - s v + v_h^2 = 0 with s = (P - P_0)/T, then V = s - kappa v. */
function speedFromPower(power: number, flight: VerticalFlight): number {
  const { thrust, inducedFactor, profilePower, loading } = flight
  const perThrust = (power - profilePower) / thrust
  const root = Math.sqrt(Math.max(perThrust * perThrust - 4 * (inducedFactor - 1) * loading, 0))
  const speed = perThrust - (inducedFactor * 2 * loading) / (perThrust + root)
  return Math.max(speed, 0)
}
