/** Losses and limits of a motor from what a data page states. */
import { requireFinite, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber, writeQuantity } from '../number-text.js'
import type { AngularSpeed, Power, Quantity, Ratio, Time, Torque } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface MotorOptions {
  /** That it holds for ever at the rated speed [N m]. */
  readonly continuousTorque: Torque
  /** [rad/s] */
  readonly ratedSpeed: AngularSpeed
  /** Greatest efficiency of the motor. */
  readonly efficiency: Ratio
  /** Torque at greatest efficiency [N m]; the continuous one when left out. */
  readonly bestTorque?: Torque
  /** Speed at greatest efficiency [rad/s]; the rated one when left out. */
  readonly bestSpeed?: AngularSpeed
  /** Share of the loss there that does not depend on torque or speed, 0 to 1/6; 0 when left out. */
  readonly constantShare?: Ratio
  /** For a short time [N m]; twice the continuous one when left out. */
  readonly peakTorque?: Torque
  /** [rad/s]; 1.2 times the rated one when left out. */
  readonly maximumSpeed?: AngularSpeed
  /** Thermal time constant of the windings [s]; 120 when left out (house value). */
  readonly thermalTime?: Time
}

export interface Motor {
  readonly motor: 'losses'
  /** C_0 [W] */
  readonly constant: Power
  /** C_1: loss per speed [W s]. */
  readonly iron: Torque
  /** C_2: loss per speed cubed [W s^3]. */
  readonly windage: Quantity<'kg m^2'>
  /** C_3: loss per torque squared [W/(N m)^2]. */
  readonly copper: Quantity<'kg^-1 m^-2 s'>
  readonly continuousTorque: Torque
  readonly peakTorque: Torque
  readonly ratedSpeed: AngularSpeed
  readonly maximumSpeed: AngularSpeed
  readonly thermalTime: Time
  /** Loss that may last: at continuous torque and rated speed [W]. */
  readonly continuousLoss: Power
  /** At the rated speed [W]. */
  readonly continuousPower: Power
  /** At the rated speed [W]. */
  readonly peakPower: Power
}

export interface MotorAtOptions {
  readonly motor: Motor
  /** [N m] */
  readonly torque: Torque
  /** [rad/s] */
  readonly speed: AngularSpeed
}

export interface MotorPoint {
  readonly ok: boolean
  readonly status: 'ok' | 'torque' | 'speed'
  /** Why not, as a sentence; empty when it can. */
  readonly message: string
  /** Torque asked for less the peak torque [N m]: negative is what is left. */
  readonly torqueDeficit: Torque
  /** [W] */
  readonly shaftPower: Power
  /** [W] */
  readonly electricalPower: Power
  readonly efficiency: Ratio
  /** [W] */
  readonly loss: Power
  readonly copperLoss: Power
  readonly ironLoss: Power
  readonly windageLoss: Power
  readonly constantLoss: Power
  /** Loss over the loss that may last: up to 1 for ever, above it for a time. */
  readonly heatShare: Ratio
}

const known = new Set([
  'continuousTorque',
  'ratedSpeed',
  'efficiency',
  'bestTorque',
  'bestSpeed',
  'constantShare',
  'peakTorque',
  'maximumSpeed',
  'thermalTime',
])
const knownAt = new Set(['motor', 'torque', 'speed'])

/**
 * A motor as its losses, from its point of greatest efficiency, with its limits of torque, speed and heat.
 *
 * @equation loss = C_0 + C_1 w + C_2 w^3 + C_3 Q^2 with greatest efficiency at (Q_b, w_b): L = (1/eta - 1) Q_b w_b; C_3 Q_b^2 = L/2; C_0 = k L; C_1 w_b = L (1/4 - 3 k/2); C_2 w_b^3 = L (1/4 + k/2)
 * @param options - `continuousTorque` [N m], `ratedSpeed` [rad/s], `efficiency` eta at the best point; optional `bestTorque` Q_b (continuous), `bestSpeed` w_b (rated), `constantShare` k (0; at most 1/6),
 * `peakTorque` (twice continuous), `maximumSpeed` (1.2 rated), `thermalTime` (120 s)
 * @returns a frozen record for `powertrain.motorAt` and `powertrain.chain`, with `continuousLoss`, `continuousPower`, `peakPower` [W]
 * @throws InvalidInput for a value that is not positive, an efficiency outside 0.3 to 0.999, a peak torque below the continuous one, and an unknown option
 * @method The two conditions of a greatest efficiency (over torque and over speed) and its value leave one share free. Copper, iron (hysteresis), windage, and a constant.
 * @validity Permanent-magnet motors below field weakening: no loss grows with torque and speed together. Efficiency above 0.97 carries an advisory (from memory: 0.92 to 0.96 usual).
 * @source Form: McDonald, R. A., Electric Motor Modeling for Conceptual Aircraft Design, AIAA 2013-0941 (from memory). Shares: house derivation.
 * @example
 * const lift = powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 })
 * lift.continuousLoss // 2005
 */
export function motor(options: MotorOptions): Motor {
  const method = 'powertrain.motor'
  checkOptions(method, options, known)
  const { continuousTorque, ratedSpeed, efficiency, constantShare = 0, thermalTime = 120 } = options
  requirePositive(method, 'continuousTorque', continuousTorque, 'N m')
  requirePositive(method, 'ratedSpeed', ratedSpeed, 'rad/s')
  requireWithin(method, 'efficiency', efficiency, '1', 0.3, 0.999)
  requireWithin(method, 'constantShare', constantShare, '1', 0, 1 / 6)
  requirePositive(method, 'thermalTime', thermalTime, 's')
  const { bestTorque = continuousTorque, bestSpeed = ratedSpeed } = options
  const { peakTorque = 2 * continuousTorque, maximumSpeed = 1.2 * ratedSpeed } = options
  requirePositive(method, 'bestTorque', bestTorque, 'N m')
  requirePositive(method, 'bestSpeed', bestSpeed, 'rad/s')
  requireAtLeast('peakTorque', peakTorque, continuousTorque, 'N m')
  requireAtLeast('maximumSpeed', maximumSpeed, ratedSpeed, 'rad/s')
  const loss = (1 / efficiency - 1) * bestTorque * bestSpeed
  const constant = constantShare * loss
  const iron = (loss * (0.25 - 1.5 * constantShare)) / bestSpeed
  const windage = (loss * (0.25 + 0.5 * constantShare)) / bestSpeed ** 3
  const copper = (0.5 * loss) / (bestTorque * bestTorque)
  const continuousLoss = constant + ratedSpeed * (iron + windage * ratedSpeed ** 2) + copper * continuousTorque ** 2
  const continuousPower = continuousTorque * ratedSpeed
  const peakPower = peakTorque * ratedSpeed
  requireRepresentable(method, continuousLoss + peakPower + windage + copper + 1 / continuousLoss)
  if (efficiency > 0.97 && isListening())
    advise({
      code: 'MOTOR_EFFICIENCY',
      method,
      quantity: 'efficiency',
      value: efficiency,
      range: [0, 0.97],
      message: `A motor efficiency of ${efficiency} is above those of motors built (0.92 to 0.96 as a rule).`,
    })
  return Object.freeze({
    motor: 'losses',
    constant,
    iron,
    windage,
    copper,
    continuousTorque,
    peakTorque,
    ratedSpeed,
    maximumSpeed,
    thermalTime,
    continuousLoss,
    continuousPower,
    peakPower,
  })
}

function requireAtLeast(argument: string, value: number, least: number, unit: string): void {
  const method = 'powertrain.motor'
  requirePositive(method, argument, value, unit)
  if (value < least)
    throw new InvalidInput({ method, argument, value, unit, accepted: `at least ${writeNumber(least)} ${unit}` })
}

/** A motor made by `powertrain.motor`. */
export function requireMotor(method: string, given: Motor): Motor {
  const usable = typeof given === 'object' && given !== null && given.motor === 'losses'
  if (!usable)
    throw new InvalidInput({
      method,
      argument: 'motor',
      value: describeValue(given),
      accepted: 'a motor, as powertrain.motor gives it',
    })
  for (const key of ['constant', 'iron', 'windage', 'copper', 'continuousTorque'] as const)
    requireNonNegative(method, `motor.${key}`, given[key], 'SI')
  for (const key of ['peakTorque', 'ratedSpeed', 'maximumSpeed', 'thermalTime', 'continuousLoss'] as const)
    requirePositive(method, `motor.${key}`, given[key], 'SI')
  return given
}

/**
 * Losses and efficiency of a motor at a torque and speed, and whether it can hold them.
 *
 * @equation loss = C_0 + C_1 w + C_2 w^3 + C_3 Q^2; efficiency = Q w/(Q w + loss); heat share = loss/continuous loss
 * @param options - `motor`, `torque` Q [N m], `speed` w [rad/s] (both 0 or more)
 * @returns `ok`, `status` (`'ok'`, `'torque'`, `'speed'`), `message`, `torqueDeficit` [N m] (signed), `shaftPower`, `electricalPower` [W], `efficiency`, `loss`, `copperLoss`, `ironLoss`, `windageLoss`,
 * `constantLoss` [W], `heatShare`
 * @throws InvalidInput for a negative torque or speed, a motor that is none, and an unknown option
 * @method As `powertrain.motor`. Beyond a limit the losses are still those of the model, so that solvers see a smooth answer, and an advisory is given.
 * @validity As `powertrain.motor`. Copper at its mean temperature: hot windings lose some 10 to 20 % more. Heat as in the air of
 * the rating: `powertrain.motorInAir` for other air.
 * @source As `powertrain.motor`.
 * @example
 * const lift = powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 })
 * powertrain.motorAt({ motor: lift, torque: 250 * u.N * u.m, speed: 1200 * u.rpm }).efficiency // 0.94
 */
export function motorAt(options: MotorAtOptions): MotorPoint {
  const method = 'powertrain.motorAt'
  checkOptions(method, options, knownAt)
  const given = requireMotor(method, options.motor)
  requireNonNegative(method, 'torque', options.torque, 'N m')
  requireNonNegative(method, 'speed', options.speed, 'rad/s')
  const answer = pointOf(given, options.torque, options.speed)
  requireFinite(method, 'the loss', answer.loss + answer.electricalPower + answer.heatShare, 'W')
  if (!answer.ok && isListening())
    advise({
      code: 'MOTOR_LIMIT',
      method,
      quantity: answer.status,
      value: answer.status === 'speed' ? options.speed : options.torque,
      range: [0, answer.status === 'speed' ? given.maximumSpeed : given.peakTorque],
      message: answer.message,
    })
  return answer
}

/** The point without checks. */
export function pointOf(motor: Motor, torque: number, speed: number): MotorPoint {
  const copperLoss = motor.copper * torque * torque
  const ironLoss = motor.iron * speed
  const windageLoss = motor.windage * speed ** 3
  const loss = motor.constant + copperLoss + ironLoss + windageLoss
  const shaftPower = torque * speed
  const electricalPower = shaftPower + loss
  const status = torque > motor.peakTorque ? 'torque' : speed > motor.maximumSpeed ? 'speed' : 'ok'
  return {
    ok: status === 'ok',
    status,
    message: status === 'ok' ? '' : explain(motor, status, torque, speed),
    torqueDeficit: torque - motor.peakTorque,
    shaftPower,
    electricalPower,
    efficiency: electricalPower > 0 ? shaftPower / electricalPower : 0,
    loss,
    copperLoss,
    ironLoss,
    windageLoss,
    constantLoss: motor.constant,
    heatShare: loss / motor.continuousLoss,
  }
}

function explain(motor: Motor, status: 'torque' | 'speed', torque: number, speed: number): string {
  return status === 'torque'
    ? `The motor cannot hold ${writeNumber(torque)} N m: its peak torque is ${writeNumber(motor.peakTorque)} N m.`
    : `The motor cannot turn at ${writeQuantity(speed, 'rpm')}: its greatest speed is ${writeQuantity(motor.maximumSpeed, 'rpm')}.`
}
