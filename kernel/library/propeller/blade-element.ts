import { requireNonNegative, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Angle, Force, Power, Ratio, Speed, Torque } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBladeElement } from '../rotor/blade-advisories.js'
import { type BladeFlow, type BladeFlowOptions, knownFlow, readBladeFlow } from '../rotor/blade-element.js'
import { type BladeConditions, type BladeLoads, bladeLoads } from '../rotor/blade-loads.js'

export interface PropellerOptions extends BladeFlowOptions {
  /** Pitch at 75 % radius [rad]; may be left out where `twist` is a table of the blade's own angles. */
  readonly bladeAngle?: Angle
  /** Of flight [m/s]; either this or `advanceRatio`. */
  readonly speed?: Speed
  /** J = V/(n D); either this or `speed`. */
  readonly advanceRatio?: Ratio
}

export interface PropellerLoads {
  /** [N] */
  readonly thrust: Force
  /** At the shaft [N m]. */
  readonly torque: Torque
  /** At the shaft [W]. */
  readonly power: Power
  /** Of section drag [W]. */
  readonly profilePower: Power
  /** Thrust power over shaft power; 0 where there is no thrust or no power to speak of. */
  readonly efficiency: Ratio
  /** J = V/(n D). */
  readonly advanceRatio: Ratio
  /** C_T = T/(rho n^2 D^4). */
  readonly thrustCoefficient: Ratio
  /** C_P = P/(rho n^3 D^5). */
  readonly powerCoefficient: Ratio
  /** At 75 % radius [rad]. */
  readonly bladeAngle: Angle
  /** [m/s] */
  readonly speed: Speed
  /** Of the tip's path. */
  readonly tipMach: Ratio
  /** At 75 % radius. */
  readonly reynolds: Ratio
  /** Stalled part of the span. */
  readonly stalledShare: Ratio
}

const method = 'propeller.bladeElement'
const known = new Set([...knownFlow, 'bladeAngle', 'speed', 'advanceRatio'])

/**
 * A propeller by blade elements, at a speed or an advance ratio.
 *
 * @equation as `rotor.bladeElement`; n = V_tip/(pi D), J = V/(n D) = pi V/V_tip, C_T = T/(rho n^2 D^4), C_P = P/(rho n^3 D^5), eta = T V/P
 * @param options - as `rotor.bladeElement` without `collective` and `axialSpeed`; `speed` V [m/s] or `advanceRatio` J; `bladeAngle` at 75 %
 * radius [rad], to which a `twist` table of [r/R, rad] is shifted (without it the table's own angles stand)
 * @returns `thrust` [N], `torque` [N m], `power` [W], `profilePower` [W], `efficiency`, `advanceRatio`, `thrustCoefficient`,
 * `powerCoefficient`, `bladeAngle` [rad], `speed` [m/s], `tipMach`, `reynolds` at 75 % radius, `stalledShare`
 * @throws InvalidInput for neither or both of speed and advance ratio, no blade angle without a twist table, a blade angle beyond a right
 * angle, and as `rotor.bladeElement`
 * @method As `rotor.bladeElement`. Above the advance ratio of no thrust the propeller brakes or windmills, and thrust and power come out
 * negative.
 * @validity As `rotor.bladeElement`.
 * @source As `rotor.bladeElement`.
 * @example
 * const pusher = propeller.bladeElement({
 *   ...air.standard(0), radius: 0.9 * u.m, rootCutout: 0.15 * u.m, chord: 0.12 * u.m, blades: 3, tipSpeed: 190 * u.mps,
 *   speed: 58 * u.mps, bladeAngle: 28 * u.deg,
 *   twist: [[0.2, 62 * u.deg], [0.5, 36 * u.deg], [0.75, 27 * u.deg], [1, 21 * u.deg]],
 *   section: { liftSlope: 5.9, minimumDrag: 0.009, zeroLiftAngle: -3 * u.deg, dragRise: 0.01 },
 * })
 * pusher.efficiency // 0.82213
 */
export function bladeElement(options: PropellerOptions): PropellerLoads {
  checkOptions(method, options, known)
  const flow = readBladeFlow(method, options)
  const speed = readSpeed(method, options)
  const { twist, bladeAngle } = options
  const conditions = { ...flow, pitch: pitchOf(method, flow, twist, bladeAngle), axialSpeed: speed }
  const answer = describePropeller(method, conditions, bladeLoads(conditions))
  if (isListening()) adviseBladeElement(method, answer, conditions)
  return answer
}

/** Flight speed from either way of saying it [m/s]. */
export function readSpeed(
  caller: string,
  options: Pick<PropellerOptions, 'speed' | 'advanceRatio' | 'tipSpeed'>,
): number {
  const { speed, advanceRatio, tipSpeed } = options
  if ((speed === undefined) === (advanceRatio === undefined))
    throw new InvalidInput({
      method: caller,
      argument: 'speed or advanceRatio',
      value: speed === undefined ? 'missing' : 'given together with the other',
      accepted: 'one of the two',
    })
  if (speed !== undefined) {
    requireNonNegative(caller, 'speed', speed, 'm/s')
    return speed
  }
  requireNonNegative(caller, 'advanceRatio', advanceRatio as number, '1')
  return ((advanceRatio as number) * tipSpeed) / Math.PI
}

/** What is added to the twist so that the blade has its angle at 75 % radius. */
export function pitchOf(
  caller: string,
  flow: BladeFlow,
  twist: BladeFlowOptions['twist'],
  bladeAngle: number | undefined,
): number {
  if (bladeAngle !== undefined) {
    requireWithin(caller, 'bladeAngle', bladeAngle, 'rad', -Math.PI / 2, Math.PI / 2)
    return bladeAngle - flow.blade.twistAtThreeQuarters
  }
  if (twist !== undefined && typeof twist !== 'number') return 0
  throw new InvalidInput({
    method: caller,
    argument: 'bladeAngle',
    value: 'missing',
    unit: 'rad',
    accepted: 'the pitch at 75 % radius, or twist as a table of the blade’s own angles',
  })
}

/** Loads in a propeller's coefficients. */
export function describePropeller(caller: string, conditions: BladeConditions, loads: BladeLoads): PropellerLoads {
  const { blade, density, tipSpeed, axialSpeed: speed, pitch } = conditions
  const { thrust, torque, power, profilePower, tipMach, reynolds, stalledShare } = loads
  const diameter = 2 * blade.radius
  const perRevolution = tipSpeed / Math.PI
  // rho n^2 D^4 with n D = V_tip/pi.
  const force = density * perRevolution * perRevolution * diameter * diameter
  const answer = {
    thrust,
    torque,
    power,
    profilePower,
    efficiency: thrust > 0 && power > 0 ? (thrust * speed) / power : 0,
    advanceRatio: speed / perRevolution,
    thrustCoefficient: thrust / force,
    powerCoefficient: power / (force * perRevolution),
    bladeAngle: pitch + blade.twistAtThreeQuarters,
    speed,
    tipMach,
    reynolds,
    stalledShare,
  }
  const { efficiency, advanceRatio, thrustCoefficient, powerCoefficient } = answer
  requireRepresentable(
    caller,
    thrust + torque + power + profilePower + efficiency + advanceRatio + thrustCoefficient + powerCoefficient + tipMach,
  )
  return answer
}
