import { requireNonNegative, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { AngularSpeed, Ratio, Time, Torque } from '../quantity.js'
import { type Motor, pointOf, requireMotor } from './motor.js'

export interface OverloadOptions {
  readonly motor: Motor
  /** [N m] */
  readonly torque: Torque
  /** [rad/s] */
  readonly speed: AngularSpeed
  /** Temperature rise at the start over the greatest allowed: 0 cold (when left out) to 1. */
  readonly startShare?: Ratio
  /** After which `endShare` is given [s]; the thermal time when left out. */
  readonly duration?: Time
}

export interface Overload {
  /** True when the motor bears it for ever. */
  readonly lasting: boolean
  /** Until the windings reach their limit [s]; absent when it lasts. */
  readonly time?: Time
  /** Loss over the loss that may last. */
  readonly heatShare: Ratio
  /** Temperature rise after `duration` over the greatest allowed. */
  readonly endShare: Ratio
}

const method = 'powertrain.overload'
const known = new Set(['motor', 'torque', 'speed', 'startShare', 'duration'])

/**
 * How long a motor bears a torque before its windings are too hot.
 *
 * @equation d theta/dt = (x - theta)/tau, x = loss/continuous loss; theta(t) = x + (theta_0 - x) exp(-t/tau); time to 1 = tau ln((x - theta_0)/(x - 1))
 * @param options - `motor`, `torque` [N m], `speed` [rad/s]; optional `startShare` theta_0 (0 cold to 1), `duration` t for `endShare` (the thermal time constant) [s]
 * @returns `lasting`, `time` [s] (absent when it lasts), `heatShare` x, `endShare` theta(t)
 * @throws InvalidInput for a negative torque, speed or duration, a start outside 0 to 1, a motor that is none, and an unknown option
 * @method One lump per motor, its temperature rise in proportion to its loss.
 * @validity Seconds to some minutes; a body behind the windings has a second, longer time constant. Cooling by the rotor's own wash fails on an aborted start. In thin or hot air: the motor of `powertrain.motorInAir`.
 * @source Lumped heat balance: textbook (from memory).
 * @example
 * const lift = powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 })
 * powertrain.overload({ motor: lift, torque: 450 * u.N * u.m, speed: 1200 * u.rpm }).time // 76.9
 */
export function overload(options: OverloadOptions): Overload {
  checkOptions(method, options, known)
  const motor = requireMotor(method, options.motor)
  const { torque, speed, startShare = 0, duration = motor.thermalTime } = options
  requireNonNegative(method, 'torque', torque, 'N m')
  requireNonNegative(method, 'speed', speed, 'rad/s')
  requireWithin(method, 'startShare', startShare, '1', 0, 1)
  requireNonNegative(method, 'duration', duration, 's')
  const { heatShare } = pointOf(motor, torque, speed)
  const endShare = heatShare + (startShare - heatShare) * Math.exp(-duration / motor.thermalTime)
  requireRepresentable(method, heatShare + endShare)
  if (heatShare <= 1) return { lasting: true, heatShare, endShare }
  // The same as the logarithm of the quotient, without losing digits when the overload is slight or the start hot.
  const time = motor.thermalTime * Math.log1p((1 - startShare) / (heatShare - 1))
  requireRepresentable(method, time)
  return { lasting: false, time, heatShare, endShare }
}
