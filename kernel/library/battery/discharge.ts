/** One instant of a pack under power, and the most that it can give at that instant. */
import { requireNonNegative, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { writeNumber, writeQuantity } from '../number-text.js'
import type { Current, Power, Ratio, Resistance, SpecificPower, Voltage } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import type { Cell } from './cell.js'
import {
  boundAt,
  type CellBound,
  currentFor,
  greatestCurrent,
  ratedCurrent,
  resistanceAt,
  voltageAt,
} from './circuit.js'
import { adviseTemperature, knownState, type PackState, readState } from './pack-state.js'

export interface DischargeOptions extends PackState {
  /** At the terminals of the pack [W]. */
  readonly power: Power
}

export interface Discharge {
  /** False when the pack cannot give the power; the electrical values are then those of its limit. */
  readonly ok: boolean
  /** `'ok'`, or the bound that was hit. */
  readonly status: 'ok' | CellBound
  /** Why not, as a sentence; empty when it can. */
  readonly message: string
  /** Power asked for less the power limit [W]: negative is what is left, positive what is lacking. */
  readonly deficit: Power
  /** Greatest power at this state [W]. */
  readonly powerLimit: Power
  /** Power given [W]. */
  readonly power: Power
  /** Of the pack [A]. */
  readonly current: Current
  /** At the terminals of the pack [V]. */
  readonly voltage: Voltage
  /** Of the pack [V]. */
  readonly openCircuitVoltage: Voltage
  /** Of the pack [ohm]. */
  readonly resistance: Resistance
  /** I^2 R in all cells [W]. */
  readonly heat: Power
  /** Terminal over open-circuit voltage: the share that arrives. */
  readonly efficiency: Ratio
  /** Of one cell [A]. */
  readonly cellCurrent: Current
  /** Of one cell [V]. */
  readonly cellVoltage: Voltage
}

export interface PowerLimit {
  /** Of the pack [W]. */
  readonly power: Power
  /** [A] */
  readonly current: Current
  /** [V] */
  readonly voltage: Voltage
  /** What ends it. */
  readonly binds: CellBound
  /** Per mass of cells [W/kg]. */
  readonly specificPower: SpecificPower
}

const known = new Set([...knownState, 'power'])
const knownLimit = new Set(knownState)
const messages: Readonly<Record<CellBound, (cell: Cell) => string>> = {
  'voltage floor': (cell) => `the voltage floor of ${cell.minimumVoltage} V per cell`,
  'half voltage': () => 'the greatest power of the circuit, at half of the open-circuit voltage,',
  current: () => 'the rated current of the cells',
  empty: (cell) => `an open-circuit voltage at or below the floor of ${cell.minimumVoltage} V per cell`,
}

/**
 * Current, voltage and heat of a pack that gives a power at one instant; or why it cannot, with the deficit in watts.
 *
 * @equation I = (V_oc - sqrt(V_oc^2 - 4 R P))/(2 R); V = V_oc - I R; heat = I^2 R; pack: V_oc N_s, R N_s/N_p; P_limit = V_min (V_oc - V_min)/R, or V_oc^2/(4 R) where
 * V_min < V_oc/2, or at the rated current
 * @param options - `cell`, `series` N_s, `parallel` N_p (fractions are taken while sizing), `power` P at the terminals [W] (0 or more), `stateOfCharge` (0 to 1), `temperature` of
 * the cells [K]; optional `rating` of the current that binds, `'continuous'` (when left out) or `'peak'`
 * @returns `ok`, `status`, `message`, `deficit` [W] (signed: positive is lacking), `powerLimit` [W], `power` given [W], `current` [A], `voltage` [V], `openCircuitVoltage` [V], `resistance`
 * [ohm], `heat` [W], `efficiency`, `cellCurrent` [A], `cellVoltage` [V]. Where `ok` is false these are the values at the limit
 * @throws InvalidInput for a power below 0, a state of charge outside 0 to 1, a temperature outside 200 to 500 K, counts that are not positive, and an unknown option
 * @method Exact algebra of the series-resistance circuit; equal cells, equal strings. A power out of reach is an answer, with an advisory, and not an error: a sizing must see by how much.
 * @validity As the cell's. Outside the cell's temperatures an advisory.
 * @source Series-resistance equivalent circuit: textbook (from memory).
 * @example
 * const landing = battery.discharge({
 *   cell: battery.cells.power18650, series: 200, parallel: 40, power: 300 * u.kW, stateOfCharge: 0.3, temperature: 298.15 * u.K,
 * })
 * landing.cellVoltage // 3.2861
 */
export function discharge(options: DischargeOptions): Discharge {
  const method = 'battery.discharge'
  checkOptions(method, options, known)
  const { cell, rating } = readState(method, options)
  requireNonNegative(method, 'power', options.power, 'W')
  const { series, parallel, stateOfCharge, temperature } = options
  const voltage = voltageAt(cell, stateOfCharge)
  const resistance = resistanceAt(cell, stateOfCharge, temperature)
  const rated = ratedCurrent(cell, rating)
  const greatest = greatestCurrent(voltage, resistance, cell.minimumVoltage, rated)
  const count = series * parallel
  const powerLimit = count * greatest * (voltage - greatest * resistance)
  const ok = options.power <= powerLimit
  const cellCurrent = ok ? currentFor(voltage, resistance, options.power / count) : greatest
  const cellVoltage = voltage - cellCurrent * resistance
  const status: Discharge['status'] = ok ? 'ok' : boundAt(voltage, resistance, cell.minimumVoltage, rated)
  const answer: Discharge = {
    ok,
    status,
    message: status === 'ok' ? '' : explain(cell, status, options, powerLimit),
    deficit: options.power - powerLimit,
    powerLimit,
    power: ok ? options.power : powerLimit,
    current: cellCurrent * parallel,
    voltage: cellVoltage * series,
    openCircuitVoltage: voltage * series,
    resistance: (resistance * series) / parallel,
    heat: count * cellCurrent * cellCurrent * resistance,
    efficiency: cellVoltage / voltage,
    cellCurrent,
    cellVoltage,
  }
  requireRepresentable(method, answer.deficit + answer.current + answer.voltage + answer.resistance + answer.heat)
  if (isListening()) adviseDischarge(method, cell, options, answer)
  return answer
}

/**
 * The most that a pack can give at a state of charge and temperature.
 *
 * @equation P_limit = V_min (V_oc - V_min)/R, or V_oc^2/(4 R) where V_min < V_oc/2, or I_rated (V_oc - I_rated R): the least of the three, times N_s N_p
 * @param options - as `battery.discharge`, without `power`
 * @returns `power` [W], `current` [A], `voltage` [V], `binds` (`'voltage floor'`, `'half voltage'`, `'current'` or `'empty'`), `specificPower` per mass of cells [W/kg]
 * @throws InvalidInput as `battery.discharge`
 * @method As `battery.discharge`.
 * @validity As `battery.discharge`.
 * @source As `battery.discharge`.
 * @example
 * const limit = battery.powerLimit({
 *   cell: battery.cells.energy21700, series: 1, parallel: 1, stateOfCharge: 0.2, temperature: 278.15 * u.K,
 * })
 * limit.specificPower // 331.98
 */
export function powerLimit(options: PackState): PowerLimit {
  const method = 'battery.powerLimit'
  checkOptions(method, options, knownLimit)
  const { cell, rating } = readState(method, options)
  const { series, parallel, stateOfCharge, temperature } = options
  const voltage = voltageAt(cell, stateOfCharge)
  const resistance = resistanceAt(cell, stateOfCharge, temperature)
  const rated = ratedCurrent(cell, rating)
  const current = greatestCurrent(voltage, resistance, cell.minimumVoltage, rated)
  const terminal = voltage - current * resistance
  const answer = {
    // In the order of `discharge`, so that the limit itself can be asked for.
    power: series * parallel * current * terminal,
    current: current * parallel,
    voltage: terminal * series,
    binds: boundAt(voltage, resistance, cell.minimumVoltage, rated),
    specificPower: (current * terminal) / cell.mass,
  }
  requireRepresentable(method, answer.power + answer.current + answer.voltage + answer.specificPower)
  adviseTemperature(method, cell, temperature)
  return answer
}

function explain(cell: Cell, status: CellBound, options: DischargeOptions, limit: number): string {
  const { power, stateOfCharge, temperature } = options
  return `The pack cannot give ${writeQuantity(power, 'kW')} at a charge of ${writeNumber(stateOfCharge)} and ${writeQuantity(temperature, 'K')}: ${messages[status](cell)} allows ${writeQuantity(limit, 'kW')}.`
}

function adviseDischarge(method: string, cell: Cell, options: DischargeOptions, answer: Discharge): void {
  adviseTemperature(method, cell, options.temperature)
  if (!answer.ok)
    advise({
      code: 'PACK_POWER',
      method,
      quantity: 'power',
      value: options.power,
      range: [0, answer.powerLimit],
      message: answer.message,
    })
  else if (cell.continuousCurrent !== undefined && answer.cellCurrent > cell.continuousCurrent)
    advise({
      code: 'CONTINUOUS_CURRENT',
      method,
      quantity: 'cellCurrent',
      value: answer.cellCurrent,
      range: [0, cell.continuousCurrent],
      message: `${writeQuantity(answer.cellCurrent, 'A')} per cell is above the continuous current: allowed as a pulse of seconds.`,
    })
}
