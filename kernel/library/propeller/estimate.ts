import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Density, Force, Length, Power, Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { inducedVelocity as induced } from '../rotor/axial-inflow.js'

export interface EstimateOptions {
  /** [N] */
  readonly thrust: Force
  /** Of flight [m/s]. */
  readonly speed: Speed
  /** [m] */
  readonly radius: Length
  /** [kg/m^3] */
  readonly density: Density
  /** Of the blades by rotation [m/s]. */
  readonly tipSpeed: Speed
  /** Blade area over disk area. */
  readonly solidity: Ratio
  /** Mean section drag coefficient. */
  readonly profileDrag: Ratio
  /** Induced power over its ideal, 1.1 when left out. */
  readonly inducedFactor?: Ratio
  /** [m/s]; with it the tip's Mach number is returned and watched. */
  readonly speedOfSound?: Speed
}

export interface Estimate {
  readonly efficiency: Ratio
  /** At the shaft [W]. */
  readonly power: Power
  /** Above thrust times speed, with the induced factor [W]. */
  readonly inducedPower: Power
  /** Of section drag [W]. */
  readonly profilePower: Power
  /** Of the wake's rotation [W]. */
  readonly swirlPower: Power
  readonly advanceRatio: Ratio
  /** Of the tip's path; present where `speedOfSound` is given. */
  readonly tipMach?: Ratio
}

const method = 'propeller.estimate'
const known = new Set([
  'thrust',
  'speed',
  'radius',
  'density',
  'tipSpeed',
  'solidity',
  'profileDrag',
  'inducedFactor',
  'speedOfSound',
])
/** Efficiency losses are negligible below it (NACA TR-302: 0.6 to 0.9 of the speed of sound). */
const greatestTipMach = 0.85

/**
 * Shaft power of a propeller before its blades are known: the ideal disk with induced, profile and swirl losses.
 *
 * @equation P = T (V + kappa v) + (sigma c_d/8) rho A V_t^3 f(V/V_t) + P^2/(pi rho (V + v) R^2 V_t^2); f(m) = sqrt(1 + m^2) (1 + 5/2 m^2) +
 * 3/2 m^4 ln((1 + sqrt(1 + m^2))/m)
 * @param options - `thrust` T [N], `speed` V [m/s], `radius` R [m], `density` rho [kg/m^3], `tipSpeed` V_t [m/s], `solidity` sigma,
 * `profileDrag` c_d; optional `inducedFactor` kappa (1.1), `speedOfSound` [m/s]
 * @returns `efficiency`, `power` [W] and its parts `inducedPower`, `profilePower`, `swirlPower` [W], `advanceRatio` J, and `tipMach` where
 * `speedOfSound` is given
 * @throws InvalidInput for a value that is not positive, an induced factor below 1, a tip speed too low to turn the torque into thrust, and
 * an unknown option
 * @method Profile power is the drag of constant chord and c_d along the helical path, in closed form. The wake turns as a solid body with
 * the shaft's torque (house model: an upper side for usual loadings); P is the smaller root of the quadratic.
 * @validity Tip Mach up to 0.85 (path of the tip), advance ratios up to 3; outside an advisory.
 * @source Momentum theory as `propeller.ideal`; profile factor: Stepniewski and Keys, NASA CR-3082, 1979 (closed form from memory,
 * confirmed by quadrature). Swirl: house model. Tip Mach: NACA TR-302, summary.
 * @example
 * const cruising = propeller.estimate({
 *   thrust: 1.2 * u.kN, speed: 58 * u.mps, radius: 0.9 * u.m, density: 1.1, tipSpeed: 190 * u.mps, solidity: 0.12, profileDrag: 0.01,
 * })
 * cruising.efficiency // 0.88113
 */
export function estimate(options: EstimateOptions): Estimate {
  checkEstimate(options)
  const { thrust, speed, radius, density, tipSpeed, solidity, profileDrag } = options
  const { inducedFactor = 1.1, speedOfSound } = options
  const diskArea = Math.PI * radius * radius
  const velocity = induced(speed, thrust / (2 * density * diskArea))
  const profilePower =
    ((density * diskArea * tipSpeed * tipSpeed * tipSpeed * solidity * profileDrag) / 8) * helical(speed / tipSpeed)
  const inducedPower = inducedFactor * thrust * velocity
  const withoutSwirl = thrust * speed + inducedPower + profilePower
  const swirlShare = (4 * withoutSwirl) / (diskArea * density * (speed + velocity) * tipSpeed * tipSpeed)
  if (swirlShare > 1)
    throw new InvalidInput({
      method,
      argument: 'tipSpeed',
      value: tipSpeed,
      unit: 'm/s',
      accepted: `at least about ${(tipSpeed * Math.sqrt(swirlShare)).toPrecision(3)} m/s: below, the wake turns faster than the torque can push it`,
    })
  const power = (2 * withoutSwirl) / (1 + Math.sqrt(1 - swirlShare))
  const answer = {
    efficiency: (thrust * speed) / power,
    power,
    inducedPower,
    profilePower,
    swirlPower: power - withoutSwirl,
    advanceRatio: (Math.PI * speed) / tipSpeed,
  }
  const tipMach = speedOfSound === undefined ? 0 : Math.hypot(tipSpeed, speed) / speedOfSound
  requireRepresentable(
    method,
    answer.efficiency + power + inducedPower + profilePower + answer.advanceRatio + swirlShare + tipMach,
  )
  if (isListening()) adviseEstimate(answer.advanceRatio, tipMach)
  return speedOfSound === undefined ? answer : { ...answer, tipMach }
}

/** Drag power along the helical path over that of rotation alone. */
function helical(m: number): number {
  const square = m * m
  const path = Math.sqrt(1 + square)
  return path * (1 + 2.5 * square) + (m > 0 ? 1.5 * square * square * Math.log((1 + path) / m) : 0)
}

function checkEstimate(options: EstimateOptions): void {
  checkOptions(method, options, known)
  requirePositive(method, 'thrust', options.thrust, 'N')
  requireNonNegative(method, 'speed', options.speed, 'm/s')
  requirePositive(method, 'radius', options.radius, 'm')
  requirePositive(method, 'density', options.density, 'kg/m^3')
  requirePositive(method, 'tipSpeed', options.tipSpeed, 'm/s')
  requireWithin(method, 'solidity', options.solidity, '1', 1e-4, 1)
  requirePositive(method, 'profileDrag', options.profileDrag, '1')
  if (options.inducedFactor !== undefined) requireWithin(method, 'inducedFactor', options.inducedFactor, '1', 1, 10)
  if (options.speedOfSound !== undefined) requirePositive(method, 'speedOfSound', options.speedOfSound, 'm/s')
}

function adviseEstimate(advanceRatio: number, tipMach: number): void {
  if (tipMach > greatestTipMach)
    advise({
      code: 'TIP_MACH',
      method,
      quantity: 'tipMach',
      value: tipMach,
      range: [0, greatestTipMach],
      message: `At a tip Mach number of ${tipMach.toPrecision(3)} shocks take power that is not counted (negligible to about 0.85).`,
    })
  if (advanceRatio > 3)
    advise({
      code: 'ADVANCE_RATIO',
      method,
      quantity: 'advanceRatio',
      value: advanceRatio,
      range: [0, 3],
      message: `An advance ratio of ${advanceRatio.toPrecision(3)} is beyond usual propellers (3): one mean drag coefficient no longer tells the blade's drag.`,
    })
}
