import { requireFinite, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Density, DynamicViscosity, Force, Power, Ratio, Speed, Torque } from '../quantity.js'
import { isListening } from '../recorder.js'
import type { LinearSectionOptions } from '../section/linear.js'
import type { Polar } from '../section/polar.js'
import { preparePolar, type Section } from '../section/prepare-polar.js'
import { inducedVelocity as induced } from './axial-inflow.js'
import { type Blade, type BladeOptions, knownBlade, readBlade } from './blade.js'
import { adviseBladeElement } from './blade-advisories.js'
import { type BladeConditions, type BladeLoads, bladeLoads } from './blade-loads.js'

export interface BladeFlowOptions extends BladeOptions {
  /** Of the blades by rotation [m/s]. */
  readonly tipSpeed: Speed
  /** [kg/m^3] */
  readonly density: Density
  /** [Pa s] */
  readonly dynamicViscosity: DynamicViscosity
  /** [m/s] */
  readonly speedOfSound: Speed
  /** From `section.linear` or `section.table`. */
  readonly section: Section | LinearSectionOptions
  /** Loss at tip and root: `'prandtl'` (when left out) or `'none'`. */
  readonly losses?: 'prandtl' | 'none'
  /** Whether the wake's rotation is counted; true when left out. */
  readonly swirl?: boolean
}

export interface BladeElementOptions extends BladeFlowOptions {
  /** Pitch added to the twist [rad]; without a twist table it is the pitch at 75 % radius. */
  readonly collective: Angle
  /** Climb along the axis [m/s], negative in a descent; 0 when left out. */
  readonly axialSpeed?: Speed
}

export interface BladeElement {
  /** [N] */
  readonly thrust: Force
  /** At the shaft [N m]. */
  readonly torque: Torque
  /** At the shaft [W]. */
  readonly power: Power
  /** Of section drag [W]. */
  readonly profilePower: Power
  /** C_T = T/(rho A V_tip^2). */
  readonly thrustCoefficient: Ratio
  /** C_Q = Q/(rho A V_tip^2 R), the same number as C_P. */
  readonly torqueCoefficient: Ratio
  /** Ideal power T (V + v) over shaft power; 0 in a descent, or where there is no thrust or no power to speak of. */
  readonly figureOfMerit: Ratio
  /** C_T/sigma. */
  readonly bladeLoading: Ratio
  /** N c/(pi R) with the mean chord. */
  readonly solidity: Ratio
  /** Of the tip's path. */
  readonly tipMach: Ratio
  /** At 75 % radius. */
  readonly reynolds: Ratio
  /** Stalled part of the span. */
  readonly stalledShare: Ratio
}

const method = 'rotor.bladeElement'
export const knownFlow: readonly string[] = [
  ...knownBlade,
  'tipSpeed',
  'density',
  'dynamicViscosity',
  'speedOfSound',
  'section',
  'losses',
  'swirl',
  // Not used: the whole record of air.standard may be spread into the options.
  'temperature',
  'pressure',
]
const known = new Set([...knownFlow, 'collective', 'axialSpeed'])

/**
 * A rotor by blade elements in annuli of an actuator disk: hover and flight along the axis.
 *
 * @equation dT = (rho/2) W^2 N c (c_l cos phi - c_d sin phi) dr = 4 pi r rho F v_h^2 dr; v/v_h as `rotor.axial` at V/v_h (in climb v (V +
 * v) = v_h^2); tan phi = (V + v)/(Omega r - u), u (Omega r - u) = v (V + v); alpha = theta - phi; dQ = (rho/2) W^2 N c (c_l sin phi + c_d
 * cos phi) r dr; F = (2/pi) acos(e^-f) at the tip, f = (N/2) (R - r)/(r |sin phi|), times the same at the root, f = (N/2) (r - r_0)/(r_0
 * |sin phi|)
 * @param options - `radius` R [m], `rootCutout` r_0 [m] (0), `chord` c (number [m], table of [r/R, m] or function), `blades` N,
 * `collective` [rad] at 75 % radius, `twist` (0; number [rad]: linear from axis to tip, nothing at 75 % radius; table of [r/R, rad] or
 * function: added to the collective as it is), `tipSpeed` Omega R [m/s], `axialSpeed` V [m/s] (0, negative in a descent), `density` rho
 * [kg/m^3], `dynamicViscosity` [Pa s], `speedOfSound` [m/s], `section`; optional `losses` ('prandtl' or 'none'), `swirl` (true), `elements`
 * (24)
 * @returns `thrust` [N], `torque` [N m], `power` [W], `profilePower` [W], `thrustCoefficient`, `torqueCoefficient`, `figureOfMerit`,
 * `bladeLoading`, `solidity`, `tipMach`, `reynolds` at 75 % radius, `stalledShare`
 * @throws InvalidInput for a value that is not positive, a root cut-out beyond 0.9 of the radius, a chord outside 0.0001 to 1 of the radius or
 * a twist beyond what a blade can have (naming the place), a collective beyond a right angle, what is not a section, and an unknown option
 * @method Each annulus by itself, solved for its axial induced velocity by a bracketed root, which exists at any pitch and either sign of
 * thrust; in a deeply stalled annulus, where there can be more than one, the least induced velocity. Swirl from lift only. Stations close
 * together at root and tip; 24 elements give thrust and torque to 1e-3. The wake's contraction, the delay of stall near the hub and the
 * bodies near the rotor are left out.
 * @validity Hover and climb. Descents within the vortex ring carry an advisory, as do tip Mach above 0.7, Reynolds numbers outside the
 * section's and more than a tenth of the span stalled. Hover thrust of two lightly twisted blades of small aspect ratio comes out 25 to 42
 * % high (Caradonna and Tung's rotor, NASA TM-81232, 1981).
 * @source Glauert, H., Airplane Propellers, in Durand, Aerodynamic Theory IV, 1935; Leishman, J. G., Principles of Helicopter Aerodynamics,
 * 2nd edition, 2006, chapter 3. Root loss: Moriarty and Hansen, NREL/TP-500-36881, 2005 (all from memory).
 * @example
 * const ground = air.standard(0)
 * const lifted = rotor.bladeElement({
 *   ...ground, radius: 1.3 * u.m, rootCutout: 0.2 * u.m, chord: 0.14 * u.m, blades: 4, collective: 12 * u.deg,
 *   twist: -10 * u.deg, tipSpeed: 165 * u.mps, axialSpeed: 0,
 *   section: section.linear({ liftSlope: 5.9, minimumDrag: 0.0095, dragRise: 0.01, maximumLift: 1.3, thickness: 0.12 }),
 * })
 * lifted.figureOfMerit // 0.74907
 */
export function bladeElement(options: BladeElementOptions): BladeElement {
  checkOptions(method, options, known)
  const { collective, axialSpeed = 0 } = options
  const flow = readBladeFlow(method, options)
  requireWithin(method, 'collective', collective, 'rad', -Math.PI / 2, Math.PI / 2)
  requireFinite(method, 'axialSpeed', axialSpeed, 'm/s')
  const conditions = { ...flow, pitch: collective, axialSpeed }
  const answer = describeRotor(method, conditions, bladeLoads(conditions))
  if (isListening()) adviseBladeElement(method, answer, conditions)
  return answer
}

export interface BladeFlow extends Omit<BladeConditions, 'pitch' | 'axialSpeed'> {
  readonly blade: Blade
  readonly polar: Polar
}

/** Checks what rotor and propeller share and makes blade and polar ready. */
export function readBladeFlow(caller: string, options: BladeFlowOptions): BladeFlow {
  const { tipSpeed, density, dynamicViscosity, speedOfSound, losses = 'prandtl', swirl = true } = options
  requirePositive(caller, 'tipSpeed', tipSpeed, 'm/s')
  requirePositive(caller, 'density', density, 'kg/m^3')
  requirePositive(caller, 'dynamicViscosity', dynamicViscosity, 'Pa s')
  requirePositive(caller, 'speedOfSound', speedOfSound, 'm/s')
  if (losses !== 'prandtl' && losses !== 'none')
    throw new InvalidInput({
      method: caller,
      argument: 'losses',
      value: describeValue(losses),
      accepted: "'prandtl' or 'none'",
    })
  if (typeof swirl !== 'boolean')
    throw new InvalidInput({
      method: caller,
      argument: 'swirl',
      value: describeValue(swirl),
      accepted: 'true or false',
    })
  return {
    blade: readBlade(caller, options),
    polar: preparePolar(caller, options.section),
    tipSpeed,
    density,
    dynamicViscosity,
    speedOfSound,
    losses: losses === 'prandtl',
    swirl,
  }
}

/** Loads in a rotor's coefficients. */
export function describeRotor(caller: string, conditions: BladeConditions, loads: BladeLoads): BladeElement {
  const { blade, density, tipSpeed, axialSpeed } = conditions
  const { thrust, torque, power, profilePower, tipMach, reynolds, stalledShare } = loads
  const diskArea = Math.PI * blade.radius * blade.radius
  const force = density * diskArea * tipSpeed * tipSpeed
  const thrustCoefficient = thrust / force
  const torqueCoefficient = torque / (force * blade.radius)
  const bladeLoading = thrustCoefficient / blade.solidity
  const useful = axialSpeed >= 0 && thrust > 0 && power > 0
  const through = useful ? axialSpeed + induced(axialSpeed, thrust / (2 * density * diskArea)) : 0
  const figureOfMerit = useful ? (thrust * through) / power : 0
  requireRepresentable(
    caller,
    thrust + torque + power + profilePower + bladeLoading + torqueCoefficient + figureOfMerit + tipMach + reynolds,
  )
  return {
    thrust,
    torque,
    power,
    profilePower,
    thrustCoefficient,
    torqueCoefficient,
    figureOfMerit,
    bladeLoading,
    solidity: blade.solidity,
    tipMach,
    reynolds,
    stalledShare,
  }
}
