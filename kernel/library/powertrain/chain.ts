/** From the rotor's shaft back to the battery's terminals, loss by loss. */
import { requireCount, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeQuantity } from '../number-text.js'
import type { AngularSpeed, Current, Power, Ratio, Resistance, Torque, Voltage } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type Controller, lossOf, requireController } from './controller.js'
import { type Motor, pointOf, requireMotor } from './motor.js'

export interface ChainOptions {
  /** Of one rotor or propeller [W]. */
  readonly shaftPower: Power
  /** [rad/s] */
  readonly shaftSpeed: AngularSpeed
  readonly motor: Motor
  readonly controller: Controller
  /** Motor over shaft speed; 1 (direct drive) when left out. */
  readonly gearRatio?: Ratio
  /** 0.985 with a gear and 1 without, when left out. */
  readonly gearEfficiency?: Ratio
  /** Of the cable from the battery, there and back [ohm]; 0 when left out. */
  readonly cableResistance?: Resistance
  /** At the battery's end of the cable [V]; needed with a cable. */
  readonly voltage?: Voltage
  /** Equal chains; 1 when left out. */
  readonly count?: Ratio
}

export interface ChainLosses {
  readonly gear: Power
  readonly copper: Power
  readonly iron: Power
  readonly windage: Power
  readonly constant: Power
  readonly controller: Power
  readonly cable: Power
}

export interface Chain {
  readonly ok: boolean
  readonly status: 'ok' | 'torque' | 'speed' | 'voltage'
  /** Why not, as a sentence; empty when it can. */
  readonly message: string
  /** Power asked for less the power that the limit nearest allows, one chain [W]: negative is what is left. */
  readonly deficit: Power
  /** Of all chains, at the battery's terminals [W]. */
  readonly batteryPower: Power
  /** Shaft over battery power. */
  readonly efficiency: Ratio
  /** Of all chains [W]. */
  readonly losses: ChainLosses
  /** Sum of the losses of all chains [W]. */
  readonly loss: Power
  /** Of one motor [N m]. */
  readonly motorTorque: Torque
  /** [rad/s] */
  readonly motorSpeed: AngularSpeed
  /** Motor loss over the loss that may last. */
  readonly heatShare: Ratio
  /** Of one cable [A]; absent without a voltage. */
  readonly current?: Current
}

const method = 'powertrain.chain'
const known = new Set([
  'shaftPower',
  'shaftSpeed',
  'motor',
  'controller',
  'gearRatio',
  'gearEfficiency',
  'cableResistance',
  'voltage',
  'count',
])

/**
 * Battery power for a power at the shaft, through gear, motor, controller and cable, with every loss.
 *
 * @equation P_motor = P/eta_gear; P_electric = P_motor + C_0 + C_1 w + C_2 w^3 + C_3 Q^2; P_controller = P_electric + loss; cable: P_battery = P_controller + I^2 R, I = (V - sqrt(V^2 - 4 R
 * P_controller))/(2 R)
 * @param options - `shaftPower` P [W] and `shaftSpeed` [rad/s] of one rotor, `motor`, `controller`; optional `gearRatio` (1), `gearEfficiency` (0.985 with a gear), `cableResistance` R [ohm] with
 * `voltage` V [V], `count` of equal chains (1)
 * @returns `batteryPower`, `loss` [W] and `losses` (`gear`, `copper`, `iron`, `windage`, `constant`, `controller`, `cable`) of all chains, `efficiency`, `ok`, `status`, `message`, `deficit` [W] (signed, one
 * chain), `motorTorque` [N m], `motorSpeed` [rad/s], `heatShare`, `current` of one cable [A]
 * @throws InvalidInput for a negative power, a speed that is not positive, a cable without a voltage, a motor or controller that is none, and an unknown option
 * @method The records of `powertrain.motor` and `powertrain.controller`, one behind the other. Beyond a limit the losses are still those of the model, with an advisory: solvers see a smooth answer and
 * a signed deficit.
 * @validity As the records'. Gear efficiency 0.98 to 0.99 per stage (from memory).
 * @source Textbook identities; records as their own sources say.
 * @example
 * const drive = powertrain.chain({
 *   shaftPower: 25 * u.kW, shaftSpeed: 1200 * u.rpm, count: 8,
 *   motor: powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 }),
 *   controller: powertrain.controller({ ratedPower: 40 * u.kW, efficiency: 0.97 }),
 * })
 * drive.efficiency // 0.91265
 */
export function chain(options: ChainOptions): Chain {
  const o = readChain(options)
  const motorSpeed = o.shaftSpeed * o.gearRatio
  const motorPower = o.shaftPower / o.gearEfficiency
  const motorTorque = motorPower / motorSpeed
  const point = pointOf(o.motor, motorTorque, motorSpeed)
  const controllerLoss = lossOf(o.controller, point.electricalPower)
  const load = point.electricalPower + controllerLoss
  const cable = cableAt(load, o.cableResistance, o.voltage)
  const one = load + cable.loss
  const status = point.ok ? (cable.deficit > 0 ? 'voltage' : 'ok') : point.status
  const torqueDeficit = o.shaftPower - o.motor.peakTorque * motorSpeed * o.gearEfficiency
  const { count } = o
  const answer: Chain = {
    ok: status === 'ok',
    status,
    message: status === 'ok' ? '' : status === 'voltage' ? explainCable(o, load) : point.message,
    deficit: Math.max(torqueDeficit, cable.deficit),
    batteryPower: one * count,
    efficiency: one > 0 ? o.shaftPower / one : 0,
    losses: {
      gear: (motorPower - o.shaftPower) * count,
      copper: point.copperLoss * count,
      iron: point.ironLoss * count,
      windage: point.windageLoss * count,
      constant: point.constantLoss * count,
      controller: controllerLoss * count,
      cable: cable.loss * count,
    },
    loss: (one - o.shaftPower) * count,
    motorTorque,
    motorSpeed,
    heatShare: point.heatShare,
    ...(o.voltage === undefined ? {} : { current: cable.current }),
  }
  requireRepresentable(method, answer.batteryPower + answer.deficit + motorTorque + answer.heatShare + cable.current)
  if (isListening()) adviseChain(o, answer)
  return answer
}

function readChain(options: ChainOptions) {
  checkOptions(method, options, known)
  const { shaftPower, shaftSpeed, gearRatio = 1, cableResistance = 0, voltage, count = 1 } = options
  const { gearEfficiency = gearRatio === 1 ? 1 : 0.985 } = options
  requireNonNegative(method, 'shaftPower', shaftPower, 'W')
  requirePositive(method, 'shaftSpeed', shaftSpeed, 'rad/s')
  requireWithin(method, 'gearRatio', gearRatio, '1', 0.01, 100)
  requireWithin(method, 'gearEfficiency', gearEfficiency, '1', 0.5, 1)
  requireNonNegative(method, 'cableResistance', cableResistance, 'ohm')
  requireCount(method, 'count', count)
  if (voltage !== undefined) requirePositive(method, 'voltage', voltage, 'V')
  if (cableResistance > 0 && voltage === undefined)
    throw new InvalidInput({
      method,
      argument: 'voltage',
      value: describeValue(voltage),
      unit: 'V',
      accepted: 'given where there is a cable, for its current',
    })
  const motor = requireMotor(method, options.motor)
  const controller = requireController(method, options.controller)
  return { shaftPower, shaftSpeed, gearRatio, gearEfficiency, cableResistance, voltage, count, motor, controller }
}

type FilledChain = ReturnType<typeof readChain>

/** Current and loss of a cable that feeds a load from a fixed voltage; beyond its greatest load V^2/4R, at that load's current. */
function cableAt(load: number, resistance: number, voltage: number | undefined) {
  if (voltage === undefined) return { current: 0, loss: 0, deficit: Number.NEGATIVE_INFINITY }
  if (resistance === 0) return { current: load / voltage, loss: 0, deficit: Number.NEGATIVE_INFINITY }
  const square = voltage * voltage
  const discriminant = square - 4 * resistance * load
  const current = (2 * load) / (voltage + Math.sqrt(Math.max(discriminant, 0)))
  return { current, loss: current * current * resistance, deficit: load - square / (4 * resistance) }
}

function explainCable(o: FilledChain, load: number): string {
  const most = (o.voltage ?? 0) ** 2 / (4 * o.cableResistance)
  return `The cable cannot feed ${writeQuantity(load, 'kW')}: at ${writeQuantity(o.voltage ?? 0, 'V')} its resistance lets ${writeQuantity(most, 'kW')} through at most.`
}

function adviseChain(o: FilledChain, answer: Chain): void {
  if (!answer.ok)
    advise({
      code: 'POWERTRAIN_LIMIT',
      method,
      quantity: answer.status,
      value: answer.deficit,
      range: [null, 0],
      message: answer.message,
    })
  if (answer.heatShare > 1)
    advise({
      code: 'MOTOR_OVERLOAD',
      method,
      quantity: 'heatShare',
      value: answer.heatShare,
      range: [0, 1],
      message: `The motor loses ${answer.heatShare.toPrecision(3)} times what it can lose for ever: powertrain.overload says for how long (time constant ${writeQuantity(o.motor.thermalTime, 's')}).`,
    })
}
