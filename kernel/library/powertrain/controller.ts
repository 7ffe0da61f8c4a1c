import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Power, Quantity, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface ControllerOptions {
  /** To the motor, continuous [W]. */
  readonly ratedPower: Power
  /** At the rated power. */
  readonly efficiency: Ratio
  /** Share of the rated loss that is always there; 0.1 when left out. */
  readonly standbyShare?: Ratio
  /** Share of the rated loss that grows with the square of the power; 0.4 when left out. */
  readonly squareShare?: Ratio
}

export interface Controller {
  readonly controller: 'losses'
  readonly ratedPower: Power
  /** Always there [W]. */
  readonly standby: Power
  /** Of the power. */
  readonly linear: Ratio
  /** Of the square of the power [1/W]. */
  readonly square: Quantity<'kg^-1 m^-2 s^3'>
}

export interface ControllerPoint {
  /** From the battery's side [W]. */
  readonly inputPower: Power
  /** [W] */
  readonly loss: Power
  readonly efficiency: Ratio
  /** Output over rated power. */
  readonly loadShare: Ratio
}

const known = new Set(['ratedPower', 'efficiency', 'standbyShare', 'squareShare'])
const knownAt = new Set(['controller', 'power'])

/**
 * A motor controller as its losses.
 *
 * @equation loss = L_r (a_0 + a_1 x + a_2 x^2), L_r = (1/eta - 1) P_r, x = P/P_r, a_1 = 1 - a_0 - a_2
 * @param options - `ratedPower` P_r to the motor [W], `efficiency` eta there; optional `standbyShare` a_0 (0.1), `squareShare` a_2 (0.4)
 * @returns a frozen record for `powertrain.controllerAt` and `powertrain.chain`
 * @throws InvalidInput for a power that is not positive, an efficiency outside 0.3 to 0.999, shares that leave none for the part in proportion, and an unknown option
 * @method House model: gate drive and switching of the idle bridge, switching losses in proportion to the current, conduction with its square, at fixed voltage.
 * @validity Efficiency 0.95 to 0.985 at rated power (from memory); above 0.99 an advisory. Part load with chopped voltage costs more.
 * @source House model, no publication.
 * @example
 * const bridge = powertrain.controller({ ratedPower: 60 * u.kW, efficiency: 0.97 })
 * powertrain.controllerAt({ controller: bridge, power: 60 * u.kW }).efficiency // 0.97
 */
export function controller(options: ControllerOptions): Controller {
  const method = 'powertrain.controller'
  checkOptions(method, options, known)
  const { ratedPower, efficiency, standbyShare = 0.1, squareShare = 0.4 } = options
  requirePositive(method, 'ratedPower', ratedPower, 'W')
  requireWithin(method, 'efficiency', efficiency, '1', 0.3, 0.999)
  requireWithin(method, 'standbyShare', standbyShare, '1', 0, 1)
  requireWithin(method, 'squareShare', squareShare, '1', 0, 1 - standbyShare)
  const lossShare = 1 / efficiency - 1
  const square = (lossShare * squareShare) / ratedPower
  requireRepresentable(method, square + lossShare * ratedPower)
  if (efficiency > 0.99 && isListening())
    advise({
      code: 'CONTROLLER_EFFICIENCY',
      method,
      quantity: 'efficiency',
      value: efficiency,
      range: [0, 0.99],
      message: `A controller efficiency of ${efficiency} is above those of controllers built (0.95 to 0.985).`,
    })
  return Object.freeze({
    controller: 'losses',
    ratedPower,
    standby: lossShare * standbyShare * ratedPower,
    linear: lossShare * (1 - standbyShare - squareShare),
    square,
  })
}

/** A controller made by `powertrain.controller`. */
export function requireController(method: string, given: Controller): Controller {
  if (typeof given !== 'object' || given === null || given.controller !== 'losses')
    throw new InvalidInput({
      method,
      argument: 'controller',
      value: describeValue(given),
      accepted: 'a controller, as powertrain.controller gives it',
    })
  for (const key of ['standby', 'linear', 'square'] as const)
    requireNonNegative(method, `controller.${key}`, given[key], 'SI')
  requirePositive(method, 'controller.ratedPower', given.ratedPower, 'W')
  return given
}

/**
 * Loss of a controller at a power to its motor.
 *
 * @equation loss = L_r (a_0 + a_1 x + a_2 x^2); input = P + loss
 * @param options - `controller`, `power` P to the motor [W] (0 or more)
 * @returns `inputPower` [W], `loss` [W], `efficiency`, `loadShare` P/P_r
 * @throws InvalidInput for a negative power, a controller that is none, and an unknown option
 * @method As `powertrain.controller`.
 * @validity Up to the rated power; above it an advisory: a controller has no thermal mass to speak of.
 * @source As `powertrain.controller`.
 * @example
 * const bridge = powertrain.controller({ ratedPower: 60 * u.kW, efficiency: 0.97 })
 * powertrain.controllerAt({ controller: bridge, power: 6 * u.kW }).efficiency // 0.95454
 */
export function controllerAt(options: { readonly controller: Controller; readonly power: Power }): ControllerPoint {
  const method = 'powertrain.controllerAt'
  checkOptions(method, options, knownAt)
  const given = requireController(method, options.controller)
  const { power } = options
  requireNonNegative(method, 'power', power, 'W')
  const loss = lossOf(given, power)
  const inputPower = power + loss
  const loadShare = power / given.ratedPower
  requireRepresentable(method, inputPower + loadShare)
  if (loadShare > 1 && isListening())
    advise({
      code: 'CONTROLLER_OVERLOAD',
      method,
      quantity: 'power',
      value: power,
      range: [0, given.ratedPower],
      message: `The controller is asked for ${(100 * loadShare).toFixed(0)} % of its rated power; it has hardly any mass to take the heat.`,
    })
  return { inputPower, loss, efficiency: inputPower > 0 ? power / inputPower : 0, loadShare }
}

/** Loss [W] without checks. */
export function lossOf(controller: Controller, power: number): number {
  return controller.standby + power * (controller.linear + power * controller.square)
}
