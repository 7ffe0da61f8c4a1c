import { requireNonNegative, requireRepresentable } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { AngularSpeed, Ratio, Torque } from '../quantity.js'
import { type Motor, pointOf, requireMotor } from './motor.js'

export interface EfficiencyMapOptions {
  readonly motor: Motor
  /** Rising [N m]. */
  readonly torque: readonly Torque[]
  /** Rising [rad/s]. */
  readonly speed: readonly AngularSpeed[]
}

export interface EfficiencyMap {
  /** [N m] */
  readonly torque: readonly Torque[]
  /** [rad/s] */
  readonly speed: readonly AngularSpeed[]
  /** One row per torque, each with one value per speed. */
  readonly efficiency: readonly (readonly Ratio[])[]
  readonly best: { readonly torque: Torque; readonly speed: AngularSpeed; readonly efficiency: Ratio }
}

const method = 'powertrain.efficiencyMap'
const known = new Set(['motor', 'torque', 'speed'])

/**
 * Efficiency of a motor over torque and speed.
 *
 * @equation efficiency = Q w/(Q w + loss), as in `powertrain.motorAt`
 * @param options - `motor`, `torque`: list [N m], `speed`: list [rad/s], up to 200 each
 * @returns `torque`, `speed`, `efficiency` (a row per torque), `best` point of the grid
 * @throws InvalidInput for lists that are empty or too long, negative values, a motor that is none, and an unknown option
 * @method As `powertrain.motorAt`, point by point; limits are not cut out.
 * @validity As `powertrain.motor`.
 * @source As `powertrain.motor`.
 * @example
 * const lift = powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 })
 * powertrain.efficiencyMap({ motor: lift, torque: [100, 250, 400], speed: [60, 1200 * u.rpm] }).best.efficiency // 0.94
 */
export function efficiencyMap(options: EfficiencyMapOptions): EfficiencyMap {
  checkOptions(method, options, known)
  const motor = requireMotor(method, options.motor)
  const torque = readAxis('torque', options.torque, 'N m')
  const speed = readAxis('speed', options.speed, 'rad/s')
  let best = { torque: torque[0] as number, speed: speed[0] as number, efficiency: -1 }
  const efficiency = torque.map((q) =>
    speed.map((w) => {
      const value = pointOf(motor, q, w).efficiency
      requireRepresentable(method, value)
      if (value > best.efficiency) best = { torque: q, speed: w, efficiency: value }
      return value
    }),
  )
  return { torque, speed, efficiency, best }
}

function readAxis(argument: string, values: readonly number[], unit: string): readonly number[] {
  if (!Array.isArray(values) || values.length === 0 || values.length > 200)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(values),
      accepted: 'a list of 1 to 200 numbers',
    })
  values.forEach((value, index) => {
    requireNonNegative(method, `${argument}[${index}]`, value, unit)
  })
  return [...values]
}
