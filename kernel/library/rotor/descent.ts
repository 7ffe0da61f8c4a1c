import { requireNonNegative, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Power, Speed } from '../quantity.js'
import { isListening } from '../recorder.js'
import { type AxialState, adviseVortexRing } from './axial.js'
import { inducedVelocity as induced } from './axial-inflow.js'
import { knownVertical, readVerticalFlight, type VerticalFlightOptions } from './vertical-flight.js'

export interface DescentOptions extends VerticalFlightOptions {
  /** Downward, as a positive number [m/s]. */
  readonly descentSpeed: Speed
}

export interface Descent {
  /** At the shafts of all rotors [W]; negative where the air drives them. */
  readonly power: Power
  /** In the plane of the disk [m/s]. */
  readonly inducedVelocity: Speed
  readonly state: AxialState
  /** Descent speed at which an ideal rotor would need no power [m/s]. */
  readonly autorotationSpeed: Speed
}

const method = 'rotor.descent'
const known = new Set([...knownVertical, 'descentSpeed'])
/** Where V + v = 0 on the fit. */
const autorotationRatio = 1.776_592

/**
 * Power to descend vertically at a speed.
 *
 * @equation P = T (kappa v - V) + P_0, v as `rotor.axial` at a climb speed of -V
 * @param options - `descentSpeed` V [m/s] downward, positive; `thrust` T [N], `diskArea` A [m^2] and `profilePower` P_0 [W] (0) of all
 * rotors together, `density` rho [kg/m^3], `inducedFactor` kappa (1)
 * @returns `power` [W], `inducedVelocity` v [m/s], `state`, `autorotationSpeed` [m/s] (ideal)
 * @throws InvalidInput for a value that is not positive, a descent speed below 0, and an unknown option
 * @method As `rotor.axial`: a fit through measured rotors down to twice the hover induced velocity, momentum theory beyond.
 * @validity As `rotor.axial`; between 0 and 2 v_h an advisory.
 * @source As `rotor.axial`.
 * @example
 * const sinking = rotor.descent({ descentSpeed: 3, thrust: 4 * u.kN, diskArea: 20 * u.m2, density: 1.225 })
 * sinking.state // vortex ring
 */
export function descent(options: DescentOptions): Descent {
  checkOptions(method, options, known)
  const { descentSpeed } = options
  requireNonNegative(method, 'descentSpeed', descentSpeed, 'm/s')
  const { thrust, inducedFactor, profilePower, loading } = readVerticalFlight(method, options)
  const inducedVelocity = induced(-descentSpeed, loading)
  const power = thrust * (inducedFactor * inducedVelocity - descentSpeed) + profilePower
  const autorotationSpeed = autorotationRatio * Math.sqrt(loading)
  const ratio = -descentSpeed / Math.sqrt(loading)
  requireRepresentable(method, inducedVelocity + power + autorotationSpeed + ratio)
  if (isListening()) adviseVortexRing(method, ratio)
  return { power, inducedVelocity, state: stateAt(ratio), autorotationSpeed }
}

function stateAt(ratio: number): AxialState {
  if (ratio >= 0) return 'climb'
  if (ratio <= -2) return 'windmill'
  return ratio >= -autorotationRatio ? 'vortex ring' : 'turbulent wake'
}
