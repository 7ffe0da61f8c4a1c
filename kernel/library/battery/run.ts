/** A pack flown through a profile of constant powers, integrated in time, with the segment and second of the first limit. */
import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type {
  AbsoluteTemperature,
  Current,
  Energy,
  Power,
  Ratio,
  ThermalConductance,
  Time,
  Voltage,
} from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import type { Cell, CellOptions } from './cell.js'
import { type CellBound, type CurrentRating, ratedCurrent } from './circuit.js'
import { Flight, type Setting } from './flight.js'
import { adviseTemperature, hottest, readState } from './pack-state.js'

export interface ProfileSegment {
  /** "segment 1" and so on when left out. */
  readonly name?: string
  /** At the terminals of the pack [W]. */
  readonly power: Power
  /** [s] */
  readonly duration: Time
}

export interface RunOptions {
  readonly cell: Cell | CellOptions
  readonly series: Ratio
  readonly parallel: Ratio
  readonly profile: readonly ProfileSegment[]
  /** At the start; 1 when left out. */
  readonly stateOfCharge?: Ratio
  /** Of the cells at the start [K]; 298.15 when left out. */
  readonly temperature?: AbsoluteTemperature
  /** State of charge at which the run ends; 0 when left out. */
  readonly floor?: Ratio
  readonly rating?: CurrentRating
  /** From the cells of the whole pack to the ambient [W/K]; 0 (adiabatic) when left out. */
  readonly conductance?: ThermalConductance
  /** [K]; the temperature at the start when left out. */
  readonly ambient?: AbsoluteTemperature
  /** Longest step in time [s]; 10 when left out. */
  readonly maxStep?: Time
}

export interface RunHistory {
  /** [s] */
  readonly time: readonly Time[]
  readonly stateOfCharge: readonly Ratio[]
  /** [K] */
  readonly temperature: readonly AbsoluteTemperature[]
  /** Of the pack [A]. */
  readonly current: readonly Current[]
  /** Of the pack [V]. */
  readonly voltage: readonly Voltage[]
  /** [W] */
  readonly power: readonly Power[]
}

export interface Run {
  /** True when the whole profile was flown. */
  readonly ok: boolean
  readonly status: 'ok' | CellBound | 'charge floor' | 'temperature'
  /** What ended it, with segment and second; empty when the whole profile was flown. */
  readonly message: string
  /** Name of the last segment flown. */
  readonly segment: string
  /** Into that segment [s]. */
  readonly second: Time
  /** From the start [s]. */
  readonly time: Time
  /** At the end. */
  readonly stateOfCharge: Ratio
  /** At the end [K]. */
  readonly temperature: AbsoluteTemperature
  /** At the terminals [J]. */
  readonly delivered: Energy
  /** I^2 R [J]. */
  readonly heat: Energy
  /** Drawn from the store, the integral of V_oc dQ [J]. */
  readonly stored: Energy
  /** (delivered + heat - stored)/stored: what the integration in time left open. */
  readonly openBalance: Ratio
  /** Least of power limit less power, over the run [W]; negative when a power could not be given. */
  readonly leastMargin: Power
  /** Of the pack [V]. */
  readonly leastVoltage: Voltage
  /** Of the pack [A]. */
  readonly greatestCurrent: Current
  /** [K] */
  readonly greatestTemperature: AbsoluteTemperature
  readonly history: RunHistory
}

const method = 'battery.run'
const known = new Set([
  'cell',
  'series',
  'parallel',
  'profile',
  'stateOfCharge',
  'temperature',
  'floor',
  'rating',
  'conductance',
  'ambient',
  'maxStep',
])
const knownSegment = new Set(['name', 'power', 'duration'])
const mostSteps = 100_000

/**
 * A pack through a profile of powers: charge, voltage, temperature and losses in time, and the segment and second at which a limit is met.
 *
 * @equation ds/dt = -I/Q; m c_p dT/dt = I^2 R - G (T - T_a); I from `battery.discharge`; integral of V_oc dQ = delivered + integral of I^2 R dt
 * @param options - `cell`, `series`, `parallel`, `profile`: list of `{ name, power [W], duration [s] }`; optional `stateOfCharge` (1), `temperature` (298.15 K), `floor` of
 * charge (0), `rating` (`'continuous'`), `conductance` G of the pack (0 W/K), `ambient` T_a (the temperature at the start), `maxStep` (10 s)
 * @returns `ok`, `status`, `message`, `segment`, `second` [s], `time` [s], `stateOfCharge`, `temperature` [K], `delivered`, `heat`, `stored` [J], `openBalance`, `leastMargin` [W], `leastVoltage`
 * [V], `greatestCurrent` [A], `greatestTemperature` [K], `history` with lists of `time`, `stateOfCharge`, `temperature`, `current`, `voltage`, `power`
 * @throws InvalidInput for an empty profile, a negative power, a duration that is not positive, a profile of more than 100 000 steps, a conductance that would cool the cells
 * within a second, and an unknown option
 * @method Classical Runge-Kutta with equal steps within a segment; the limit is found within its step by Brent's root. Fourth order where the cell's tables are smooth, second
 * across their knots. All cells alike and at one temperature.
 * @validity As the cell's. The book of energy closes to some 1e-5 with the usual steps and to 1e-6 with steps of 1 s (random runs, worst near empty). Reversible heat (I T dV_oc/dT) is neglected, some tenth of the heat at high power and more at low (from memory).
 * @source Series-resistance circuit and lumped heat balance: textbook (from memory). Numerics: Runge-Kutta, textbook; Brent, R. P., 1973 (from memory).
 * @example
 * const flown = battery.run({
 *   cell: battery.cells.power18650, series: 1, parallel: 1, rating: 'peak',
 *   profile: [{ power: 54 * u.W, duration: 75 * u.s }, { power: 16 * u.W, duration: 800 * u.s }, { power: 54 * u.W, duration: 105 * u.s }],
 * })
 * flown.delivered / u.Wh // 6.25556
 */
export function run(options: RunOptions): Run {
  const setting = readSetting(options)
  const flight = new Flight(setting)
  for (const [index, segment] of setting.profile.entries()) {
    flight.fly(segment, segment.name ?? `segment ${index + 1}`)
    if (flight.status !== 'ok') break
  }
  const answer = flight.report()
  const { delivered, heat, stored, openBalance, temperature, leastMargin, leastVoltage, greatestCurrent } = answer
  requireRepresentable(
    method,
    delivered + heat + stored + openBalance + temperature + leastMargin + leastVoltage + greatestCurrent,
  )
  if (isListening()) adviseRun(setting, answer)
  return answer
}

function readSetting(options: RunOptions): Setting {
  checkOptions(method, options, known)
  const { series, parallel, stateOfCharge = 1, temperature = 298.15, floor = 0, maxStep = 10 } = options
  const state = { cell: options.cell, series, parallel, stateOfCharge, temperature }
  const { cell, rating } = readState(
    method,
    options.rating === undefined ? state : { ...state, rating: options.rating },
  )
  requireWithin(method, 'floor', floor, '1', 0, 1)
  requirePositive(method, 'maxStep', maxStep, 's')
  const { conductance = 0, ambient = temperature } = options
  const heatCapacity = cell.mass * cell.specificHeat
  requireWithin(method, 'ambient', ambient, 'K', 150, hottest)
  requireWithin(method, 'conductance', conductance, 'W/K', 0, heatCapacity * series * parallel)
  const cooling = { conductance: conductance / (series * parallel), ambient, heatCapacity }
  const step = Math.min(maxStep, conductance === 0 ? maxStep : heatCapacity / cooling.conductance)
  const profile = readProfile(options.profile, step)
  const rated = ratedCurrent(cell, rating)
  return { cell, series, parallel, profile, stateOfCharge, temperature, floor, rated, cooling, maxStep: step }
}

function readProfile(profile: readonly ProfileSegment[], step: number): readonly ProfileSegment[] {
  if (!Array.isArray(profile) || profile.length === 0)
    throw new InvalidInput({
      method,
      argument: 'profile',
      value: describeValue(profile),
      accepted: 'a list of at least one { name, power, duration }',
    })
  let steps = 0
  for (const [index, segment] of profile.entries()) {
    const at = `profile[${index}]`
    checkOptions(`${method} ${at}`, segment, knownSegment)
    requireNonNegative(method, `${at}.power`, segment.power, 'W')
    requirePositive(method, `${at}.duration`, segment.duration, 's')
    steps += Math.ceil(segment.duration / step)
  }
  if (steps <= mostSteps) return profile
  throw new InvalidInput({
    method,
    argument: 'profile',
    value: `${writeNumber(steps)} steps of ${writeNumber(step)} s`,
    accepted: `at most ${mostSteps} steps`,
    remedy: 'A longer maxStep, a smaller conductance or a shorter profile will do.',
  })
}

function adviseRun(setting: Setting, answer: Run): void {
  adviseTemperature(method, setting.cell, answer.ok ? setting.temperature : answer.temperature)
  if (answer.ok) return
  advise({
    code: 'PACK_RUN_ENDS',
    method,
    quantity: 'time',
    value: answer.time,
    range: [null, null],
    message: answer.message,
  })
}
