/** Hover by momentum theory, with losses as a figure of merit or built up from the blades. */
import { requireCount, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type {
  Area,
  Density,
  DiskLoading,
  Force,
  Length,
  Power,
  PowerLoading,
  Ratio,
  Speed,
  Torque,
} from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBlades, adviseFigureOfMerit } from './hover-advisories.js'

export interface HoverByMeritOptions {
  /** Thrust of all rotors together [N], download included. */
  readonly thrust: Force
  /** Disk area of all rotors together [m^2]. */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** Ideal over actual power, 0 to 1. */
  readonly figureOfMerit: Ratio
  /** Induced power over that of rotors apart from each other, 1 when left out; see `rotor.overlap` and `rotor.coaxial`. */
  readonly interference?: Ratio
}

export interface HoverByBladesOptions {
  /** Thrust of all rotors together [N], download included. */
  readonly thrust: Force
  /** Of one rotor [m]. */
  readonly radius: Length
  /** [kg/m^3] */
  readonly density: Density
  /** Blade tip speed [m/s]. */
  readonly tipSpeed: Speed
  /** Blade area over disk area. */
  readonly solidity: Ratio
  /** Induced power over its ideal: 1.1 to 1.2 as a rule. */
  readonly inducedFactor: Ratio
  /** Mean section drag coefficient: 0.008 to 0.012 as a rule. */
  readonly profileDrag: Ratio
  /** Number of equal rotors that share the thrust, 1 when left out. */
  readonly count?: Ratio
  /** Effective over geometric radius, 1 when left out. Leave it out where `inducedFactor` contains the tip loss. */
  readonly tipLoss?: Ratio
  /** [m/s]; with it the tip Mach number is returned and watched. */
  readonly speedOfSound?: Speed
  /** Induced power over that of rotors apart from each other, 1 when left out; see `rotor.overlap` and `rotor.coaxial`. */
  readonly interference?: Ratio
}

export interface Hover {
  /** Ideal induced velocity in the plane of the disk [m/s]; the far wake has twice that. */
  readonly inducedVelocity: Speed
  /** Thrust times induced velocity, all rotors [W]. */
  readonly idealPower: Power
  /** Shaft power of all rotors [W]. */
  readonly power: Power
  readonly figureOfMerit: Ratio
  /** [N/m^2] */
  readonly diskLoading: DiskLoading
  /** Thrust over shaft power [N/W]. */
  readonly powerLoading: PowerLoading
}

export interface HoverByBlades extends Hover {
  /** All rotors [W]. */
  readonly inducedPower: Power
  /** All rotors [W]. */
  readonly profilePower: Power
  /** Shaft torque of one rotor [N m]. */
  readonly torque: Torque
  /** C_T = T/(rho A V_tip^2). */
  readonly thrustCoefficient: Ratio
  /** C_P = P/(rho A V_tip^3). */
  readonly powerCoefficient: Ratio
  /** C_T/sigma. */
  readonly bladeLoading: Ratio
  /** Present where `speedOfSound` is given. */
  readonly tipMach?: Ratio
}

const method = 'rotor.hover'
const knownByMerit = new Set(['thrust', 'diskArea', 'density', 'figureOfMerit', 'interference'])
const knownByBlades = new Set([
  'thrust',
  'radius',
  'density',
  'tipSpeed',
  'solidity',
  'inducedFactor',
  'profileDrag',
  'count',
  'tipLoss',
  'speedOfSound',
  'interference',
])
const knownByEither = new Set([...knownByMerit, ...knownByBlades])

/**
 * Power to hover, with all losses in a figure of merit.
 *
 * @equation v_i = sqrt(T/(2 rho A)); P_ideal = T v_i; P = k P_ideal/FM
 * @param options - `thrust` T [N] and `diskArea` A [m^2] of all rotors together, `density` rho [kg/m^3], `figureOfMerit` FM (0 to 1);
 * optional `interference` k (1), from `rotor.overlap` or `rotor.coaxial`
 * @returns `inducedVelocity` [m/s], `idealPower` [W], `power` [W] at the shafts, `figureOfMerit` FM/k, `diskLoading`
 * [N/m^2], `powerLoading` [N/W]
 * @throws InvalidInput for a value that is not positive and finite, a figure of merit above 1, an interference outside 1 to 2, and an
 * unknown option
 * @method Momentum theory of an actuator disk: uniform inflow, no swirl, far from the ground, rotors apart from each other.
 * @validity A figure of merit above 0.85 carries an advisory: measured rotors stay below (0.70 to 0.80 at full scale, 0.5 to 0.65
 * for small ones; from memory).
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2 (from memory).
 * @example
 * const lift = rotor.hover({ thrust: 17 * u.kN, diskArea: 42.5 * u.m2, density: 1.098, figureOfMerit: 0.72 })
 * lift.diskLoading // 400
 */
export function hover(options: HoverByMeritOptions): Hover
/**
 * Power to hover, built up from induced and profile power.
 *
 * @equation P = k kappa T v_i/B + n rho A V_tip^3 sigma c_d/8; v_i = sqrt(T/(2 rho n A)); FM = T v_i/P; C_T = T/(n rho A V_tip^2)
 * @param options - `thrust` T of all rotors together [N], `radius` [m], `density` rho [kg/m^3], `tipSpeed` V_tip [m/s],
 * `solidity` sigma, `inducedFactor` kappa (at least 1), `profileDrag` c_d; optional `count` n (1), `tipLoss` B (1),
 * `speedOfSound` [m/s], `interference` k (1)
 * @returns what the form with a figure of merit returns, and `inducedPower` [W], `profilePower` [W], `torque` of one rotor [N m],
 * `thrustCoefficient`, `powerCoefficient`, `bladeLoading`, and `tipMach` where `speedOfSound` is given
 * @throws InvalidInput for a value that is not positive and finite, an induced factor outside 1 to 10, an interference outside
 * 1 to 2, a solidity outside 0.0001 to 1, a tip loss outside 0.5 to 1, a count that is not whole, and an unknown option
 * @method Modified momentum theory: mean drag coefficient along the blade, equal rotors apart from each other. A constant c_d knows
 * no stall and no compressibility.
 * @validity Blade loading C_T/sigma up to 0.12 (stall approaches; from memory), tip Mach up to 0.7 (drag rise; from memory). Outside
 * these an advisory.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2, modified momentum theory and tip loss
 * (from memory).
 * @example
 * const lift = rotor.hover({
 *   thrust: 17 * u.kN, count: 8, radius: 1.3 * u.m, density: 1.098, tipSpeed: 165 * u.mps, solidity: 0.14,
 *   inducedFactor: 1.15, profileDrag: 0.011, speedOfSound: 346 * u.mps,
 * })
 * lift.bladeLoading // 0.09564
 */
export function hover(options: HoverByBladesOptions): HoverByBlades
export function hover(options: HoverByMeritOptions | HoverByBladesOptions): Hover | HoverByBlades {
  if (typeof options === 'object' && options !== null) {
    if ('figureOfMerit' in options) return hoverByMerit(options)
    if ('tipSpeed' in options) return hoverByBlades(options)
    checkOptions(method, options, knownByEither)
  }
  throw new InvalidInput({
    method,
    argument: 'the argument',
    value: typeof options === 'object' && options !== null ? 'incomplete' : describeValue(options),
    accepted:
      '{ thrust, diskArea, density, figureOfMerit } or { thrust, radius, density, tipSpeed, solidity, inducedFactor, profileDrag }',
  })
}

function hoverByMerit(options: HoverByMeritOptions): Hover {
  checkOptions(method, options, knownByMerit)
  const { thrust, diskArea, density, figureOfMerit, interference = 1 } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  if (typeof figureOfMerit !== 'number' || !(figureOfMerit > 0 && figureOfMerit <= 1))
    throw new InvalidInput({
      method,
      argument: 'figureOfMerit',
      value: describeValue(figureOfMerit),
      accepted: 'greater than 0 and at most 1: no rotor beats the ideal one',
    })
  requireWithin(method, 'interference', interference, '1', 1, 2)
  const inducedVelocity = Math.sqrt(thrust / (2 * density * diskArea))
  const idealPower = thrust * inducedVelocity
  const power = (interference * idealPower) / figureOfMerit
  const diskLoading = thrust / diskArea
  const powerLoading = thrust / power
  requireRepresentable(method, power + inducedVelocity + diskLoading + powerLoading)
  if (isListening()) adviseFigureOfMerit(figureOfMerit)
  return {
    inducedVelocity,
    idealPower,
    power,
    figureOfMerit: figureOfMerit / interference,
    diskLoading,
    powerLoading,
  }
}

function hoverByBlades(options: HoverByBladesOptions): HoverByBlades {
  checkBladeOptions(options)
  const { thrust, radius, density, tipSpeed, solidity, inducedFactor, profileDrag } = options
  const { count = 1, tipLoss = 1, speedOfSound, interference = 1 } = options
  const diskArea = count * Math.PI * radius * radius
  const inducedVelocity = Math.sqrt(thrust / (2 * density * diskArea))
  const idealPower = thrust * inducedVelocity
  const inducedPower = (interference * inducedFactor * idealPower) / tipLoss
  const massFlow = density * diskArea * tipSpeed
  const profilePower = (massFlow * tipSpeed * tipSpeed * solidity * profileDrag) / 8
  const power = inducedPower + profilePower
  const thrustCoefficient = thrust / (massFlow * tipSpeed)
  const answer = {
    inducedVelocity,
    idealPower,
    power,
    figureOfMerit: idealPower / power,
    diskLoading: thrust / diskArea,
    powerLoading: thrust / power,
    inducedPower,
    profilePower,
    torque: (power * radius) / (tipSpeed * count),
    thrustCoefficient,
    powerCoefficient: power / (massFlow * tipSpeed * tipSpeed),
    bladeLoading: thrustCoefficient / solidity,
  }
  requireRepresentable(method, sumOf(answer) + tipSpeed / (speedOfSound ?? 1))
  const withMach: HoverByBlades = speedOfSound === undefined ? answer : { ...answer, tipMach: tipSpeed / speedOfSound }
  if (isListening()) adviseBlades(withMach)
  return withMach
}

function sumOf(hover: HoverByBlades): number {
  const { inducedVelocity, power, figureOfMerit, diskLoading, powerLoading, torque, powerCoefficient, bladeLoading } =
    hover
  return inducedVelocity + power + figureOfMerit + diskLoading + powerLoading + torque + powerCoefficient + bladeLoading
}

function checkBladeOptions(options: HoverByBladesOptions): void {
  checkOptions(method, options, knownByBlades)
  requirePositive(method, 'thrust', options.thrust, 'N')
  requirePositive(method, 'radius', options.radius, 'm')
  requirePositive(method, 'density', options.density, 'kg/m^3')
  requirePositive(method, 'tipSpeed', options.tipSpeed, 'm/s')
  requireWithin(method, 'solidity', options.solidity, '1', 1e-4, 1)
  requireWithin(method, 'inducedFactor', options.inducedFactor, '1', 1, 10)
  requirePositive(method, 'profileDrag', options.profileDrag, '1')
  if (options.count !== undefined) requireCount(method, 'count', options.count)
  if (options.tipLoss !== undefined) requireWithin(method, 'tipLoss', options.tipLoss, '1', 0.5, 1)
  if (options.speedOfSound !== undefined) requirePositive(method, 'speedOfSound', options.speedOfSound, 'm/s')
  if (options.interference !== undefined) requireWithin(method, 'interference', options.interference, '1', 1, 2)
}
