/** What a cell is: open-circuit voltage and resistance over charge and temperature, with its limits, as plain data. */
import {
  requireCount,
  requireFinite,
  requireNonNegative,
  requirePositive,
  requireRepresentable,
  requireWithin,
} from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type {
  AbsoluteTemperature,
  Charge,
  Current,
  Energy,
  Frequency,
  Mass,
  Ratio,
  Resistance,
  SpecificEnergy,
  SpecificHeat,
  Temperature,
  Voltage,
} from '../quantity.js'

/** Resistances measured at several temperatures. */
export interface ResistanceTable {
  /** Rising [K]. */
  readonly temperature: ArrayLike<AbsoluteTemperature>
  /** One row per temperature, each with one value per state of charge [ohm]. */
  readonly resistance: ArrayLike<ArrayLike<Resistance>>
}

export interface CellOptions {
  /** What it is called in messages; "cell" when left out. */
  readonly name?: string
  /** Charge between full and empty when new [C]. */
  readonly capacity: Charge
  /** [kg] */
  readonly mass: Mass
  /** One value, or one per state of charge, never falling as charge rises [V]. */
  readonly openCircuitVoltage: Voltage | ArrayLike<Voltage>
  /** Direct-current resistance at the reference temperature: one value, or one per state of charge [ohm]. */
  readonly resistance?: Resistance | ArrayLike<Resistance>
  /** In place of `resistance`, where it was measured at several temperatures. */
  readonly resistanceTable?: ResistanceTable
  /** States of charge of the lists, rising from 0 to 1; evenly spaced when left out. */
  readonly stateOfCharge?: ArrayLike<Ratio>
  /** The least terminal voltage allowed [V]. */
  readonly minimumVoltage: Voltage
  /** Greatest current that may last [A]; no limit when left out. */
  readonly continuousCurrent?: Current
  /** Greatest current of a pulse [A]; no limit when left out. */
  readonly peakCurrent?: Current
  /** Temperature of `resistance` [K]; 298.15 K when left out. */
  readonly referenceTemperature?: AbsoluteTemperature
  /** E_a/R_gas of the resistance [K]; 2500 K when left out (house model), 0 for none. */
  readonly activationTemperature?: Temperature
  /** Range of discharge [K]. */
  readonly minimumTemperature?: AbsoluteTemperature
  readonly maximumTemperature?: AbsoluteTemperature
  /** [J/(kg K)]; 1000 when left out. */
  readonly specificHeat?: SpecificHeat
}

export interface Cell {
  readonly cell: 'circuit'
  readonly name: string
  /** [C] */
  readonly capacity: Charge
  /** [kg] */
  readonly mass: Mass
  /** Knots of the lists. */
  readonly stateOfCharge: readonly Ratio[]
  /** [V] */
  readonly openCircuitVoltage: readonly Voltage[]
  /** Temperatures of the rows of resistance [K]. */
  readonly temperature: readonly AbsoluteTemperature[]
  /** One row per temperature [ohm]. */
  readonly resistance: readonly (readonly Resistance[])[]
  /** [K] */
  readonly activationTemperature: Temperature
  /** [V] */
  readonly minimumVoltage: Voltage
  readonly continuousCurrent?: Current
  readonly peakCurrent?: Current
  readonly minimumTemperature?: AbsoluteTemperature
  readonly maximumTemperature?: AbsoluteTemperature
  /** [J/(kg K)] */
  readonly specificHeat: SpecificHeat
  /** Mean open-circuit voltage over charge [V]. */
  readonly nominalVoltage: Voltage
  /** At zero current, full to empty [J]. */
  readonly energy: Energy
  /** [J/kg] */
  readonly specificEnergy: SpecificEnergy
  /** Continuous current over capacity [1/s]; times 3600 s it is the C-rate. Absent without a limit. */
  readonly continuousRate?: Frequency
}

const method = 'battery.cell'
const known = new Set([
  'name',
  'capacity',
  'mass',
  'openCircuitVoltage',
  'resistance',
  'resistanceTable',
  'stateOfCharge',
  'minimumVoltage',
  'continuousCurrent',
  'peakCurrent',
  'referenceTemperature',
  'activationTemperature',
  'minimumTemperature',
  'maximumTemperature',
  'specificHeat',
])
const knownTable = new Set(['temperature', 'resistance'])
/** 0 to 1 in two knots: all that a single value needs. */
const ends: readonly number[] = Object.freeze([0, 1])

/**
 * A cell of one's own, from a data page or a test: open-circuit voltage behind a resistance.
 *
 * @equation V = V_oc(s) - I R(s, T); R(s, T) = R(s) exp(T_a (1/T - 1/T_ref)); energy = capacity x mean of V_oc over s
 * @param options - `capacity` [C], `mass` [kg], `openCircuitVoltage` [V] and `resistance` [ohm] as one value or as lists over `stateOfCharge` (0 to 1, rising; evenly
 * spaced when left out), `minimumVoltage` [V]; optional `resistanceTable` (`temperature` [K], rows of `resistance` [ohm]) in place of `resistance`,
 * `continuousCurrent` and `peakCurrent` [A], `referenceTemperature` (298.15 K), `activationTemperature` T_a (2500 K), `minimumTemperature` and
 * `maximumTemperature` [K], `specificHeat` (1000 J/(kg K)), `name`
 * @returns a frozen record for the other methods of `battery`, with `nominalVoltage` [V], `energy` [J], `specificEnergy` [J/kg] and, where there is a
 * continuous current, `continuousRate` [1/s]
 * @throws InvalidInput for lists of unequal length or out of order, an open-circuit voltage that falls with charge, a minimum voltage at or above it when full,
 * a value that is not positive, and an unknown option
 * @method Linear between knots. Between rows of a table ln R is linear in 1/T; beyond its first and last row the activation temperature carries on.
 * @validity Resistance stands for all polarisation after some ten seconds: pulses of under a second see less, and diffusion over minutes more. Open-circuit
 * voltage does not change with temperature here (some 0.1 mV/K in truth) and has no hysteresis. T_a = 2500 K is a house model (resistance about doubles from 25 to
 * 0 degrees Celsius), to be replaced by a table.
 * @source Series-resistance equivalent circuit: textbook (from memory). Specific heat 800 to 1100 J/(kg K): batterydesign.net, Specific Heat Capacity of Lithium Ion
 * Cells (read).
 * @example
 * const tested = battery.cell({
 *   capacity: 2.95 * u.Ah, mass: 48 * u.g, openCircuitVoltage: 3.7 * u.V, resistance: 27 * u.mohm, minimumVoltage: 2.5 * u.V,
 * })
 * tested.specificEnergy / (u.Wh / u.kg) // 227.396
 */
export function cell(options: CellOptions): Cell {
  checkOptions(method, options, known)
  const { name = 'cell', capacity, mass, minimumVoltage, specificHeat = 1000 } = options
  requirePositive(method, 'capacity', capacity, 'C')
  requirePositive(method, 'mass', mass, 'kg')
  requirePositive(method, 'specificHeat', specificHeat, 'J/(kg K)')
  const stateOfCharge = readCharges(options)
  const openCircuitVoltage = readVoltages(options.openCircuitVoltage, stateOfCharge.length)
  requireFloor(minimumVoltage, openCircuitVoltage[openCircuitVoltage.length - 1] as number)
  const { temperature, resistance } = readResistance(options, stateOfCharge.length)
  const { activationTemperature = 2500 } = options
  requireNonNegative(method, 'activationTemperature', activationTemperature, 'K')
  const nominalVoltage = meanOver(stateOfCharge, openCircuitVoltage)
  const energy = capacity * nominalVoltage
  requireRepresentable(method, energy + energy / mass + mass * specificHeat)
  return Object.freeze({
    cell: 'circuit',
    name: String(name),
    capacity,
    mass,
    stateOfCharge,
    openCircuitVoltage,
    temperature,
    resistance,
    activationTemperature,
    minimumVoltage,
    ...readLimits(options),
    specificHeat,
    nominalVoltage,
    energy,
    specificEnergy: energy / mass,
  })
}

function readLimits(options: CellOptions) {
  const { capacity, continuousCurrent, peakCurrent, minimumTemperature, maximumTemperature } = options
  if (continuousCurrent !== undefined) requirePositive(method, 'continuousCurrent', continuousCurrent, 'A')
  if (peakCurrent !== undefined) requirePositive(method, 'peakCurrent', peakCurrent, 'A')
  if (peakCurrent !== undefined && continuousCurrent !== undefined && peakCurrent < continuousCurrent)
    throw new InvalidInput({
      method,
      argument: 'peakCurrent',
      value: peakCurrent,
      unit: 'A',
      accepted: `at least the continuous current, ${continuousCurrent} A`,
    })
  if (minimumTemperature !== undefined) requirePositive(method, 'minimumTemperature', minimumTemperature, 'K')
  if (maximumTemperature !== undefined)
    requireWithin(method, 'maximumTemperature', maximumTemperature, 'K', minimumTemperature ?? 1, 2000)
  return {
    ...(continuousCurrent === undefined ? {} : { continuousCurrent, continuousRate: continuousCurrent / capacity }),
    ...(peakCurrent === undefined ? {} : { peakCurrent }),
    ...(minimumTemperature === undefined ? {} : { minimumTemperature }),
    ...(maximumTemperature === undefined ? {} : { maximumTemperature }),
  }
}

/** Knots: as given, or spaced evenly for the longest list there is. */
function readCharges(options: CellOptions): readonly number[] {
  const { stateOfCharge, openCircuitVoltage, resistance, resistanceTable } = options
  if (stateOfCharge === undefined) {
    const count = Math.max(
      lengthOf(openCircuitVoltage),
      lengthOf(resistance),
      lengthOf(resistanceTable?.resistance?.[0]),
    )
    if (count <= 2) return ends
    requireWithin(method, 'the number of states of charge', count, '1', 2, 2000)
    return Object.freeze(Array.from({ length: count }, (_, index) => index / (count - 1)))
  }
  const knots = readList(stateOfCharge, 'stateOfCharge', undefined)
  if (knots.length < 2 || knots[0] !== 0 || knots[knots.length - 1] !== 1 || !rises(knots, true))
    throw new InvalidInput({
      method,
      argument: 'stateOfCharge',
      value: `a list from ${knots[0]} to ${knots[knots.length - 1]}`,
      accepted: 'a list that rises from 0 to 1',
    })
  return knots
}

function readVoltages(voltage: CellOptions['openCircuitVoltage'], count: number): readonly number[] {
  const list = readPerCharge(voltage, 'openCircuitVoltage', count, 'V')
  if (rises(list, false)) return list
  throw new InvalidInput({
    method,
    argument: 'openCircuitVoltage',
    value: 'a list that falls somewhere',
    accepted: 'a list that never falls as charge rises',
  })
}

function requireFloor(minimumVoltage: number, full: number): void {
  requirePositive(method, 'minimumVoltage', minimumVoltage, 'V')
  if (minimumVoltage < full) return
  throw new InvalidInput({
    method,
    argument: 'minimumVoltage',
    value: minimumVoltage,
    unit: 'V',
    accepted: `below the open-circuit voltage of a full cell, ${full} V`,
  })
}

function readResistance(options: CellOptions, count: number) {
  const { resistance, resistanceTable: table, referenceTemperature = 298.15 } = options
  if (table === undefined) {
    requirePositive(method, 'referenceTemperature', referenceTemperature, 'K')
    const row = readPerCharge(resistance as number, 'resistance', count, 'ohm')
    return { temperature: Object.freeze([referenceTemperature]), resistance: Object.freeze([row]) }
  }
  checkOptions(`${method} resistanceTable`, table, knownTable)
  if (resistance !== undefined)
    throw new InvalidInput({
      method,
      argument: 'resistance',
      value: 'given beside resistanceTable',
      accepted: 'left out where there is a table',
    })
  const temperature = readList(table.temperature, 'resistanceTable.temperature', undefined)
  temperature.forEach((value, index) => {
    requirePositive(method, `resistanceTable.temperature[${index}]`, value, 'K')
  })
  requireCount(method, 'the number of temperatures', temperature.length)
  if (!rises(temperature, true) || table.resistance?.length !== temperature.length)
    throw new InvalidInput({
      method,
      argument: 'resistanceTable',
      value: `${temperature.length} temperatures and ${lengthOf(table.resistance)} rows`,
      accepted: 'temperatures that rise, with one row of resistances each',
    })
  const rows = Array.from(table.resistance, (row, index) =>
    readPerCharge(row, `resistanceTable.resistance[${index}]`, count, 'ohm'),
  )
  return { temperature, resistance: Object.freeze(rows) }
}

/** One value for all states of charge, or a list with one for each; all positive. */
function readPerCharge(values: number | ArrayLike<number>, argument: string, count: number, unit: string) {
  if (typeof values === 'number' || values === undefined) {
    requirePositive(method, argument, values, unit)
    return Object.freeze(Array.from({ length: count }, () => values))
  }
  const list = readList(values, argument, count)
  list.forEach((value, index) => {
    requirePositive(method, `${argument}[${index}]`, value, unit)
  })
  return list
}

function readList(values: ArrayLike<number>, argument: string, count: number | undefined): readonly number[] {
  const isList = Array.isArray(values) || ArrayBuffer.isView(values)
  const list = isList ? Array.from(values) : []
  if (list.length === 0 || list.length > 2000 || (count !== undefined && list.length !== count))
    throw new InvalidInput({
      method,
      argument,
      value: isList ? `a list of ${list.length}` : describeValue(values),
      accepted: count === undefined ? 'a list of 1 to 2000 numbers' : `one number, or a list of ${count}`,
    })
  list.forEach((value, index) => {
    requireFinite(method, `${argument}[${index}]`, value, '1')
  })
  return Object.freeze(list)
}

function rises(list: readonly number[], strictly: boolean): boolean {
  return list.every((value, index) => {
    const before = index === 0 ? Number.NEGATIVE_INFINITY : (list[index - 1] as number)
    return strictly ? value > before : value >= before
  })
}

function lengthOf(values: unknown): number {
  return typeof values === 'object' && values !== null && 'length' in values ? Number(values.length) : 0
}

function meanOver(x: readonly number[], y: readonly number[]): number {
  let sum = 0
  for (let i = 1; i < x.length; i += 1)
    sum += 0.5 * ((x[i] as number) - (x[i - 1] as number)) * ((y[i] as number) + (y[i - 1] as number))
  return sum
}

/** The cell of an argument: a record of `battery.cell` as it is, options by way of `battery.cell`. */
export function requireCell(caller: string, given: Cell | CellOptions): Cell {
  if (typeof given !== 'object' || given === null)
    throw new InvalidInput({
      method: caller,
      argument: 'cell',
      value: describeValue(given),
      accepted: 'a cell: one of battery.cells, or what battery.cell or battery.aged gives',
    })
  if (!('cell' in given)) return cell(given)
  if (
    Array.isArray(given.stateOfCharge) &&
    Array.isArray(given.openCircuitVoltage) &&
    Array.isArray(given.resistance?.[0])
  )
    return given
  throw new InvalidInput({
    method: caller,
    argument: 'cell',
    value: 'a record that lacks its lists',
    accepted: 'a cell: one of battery.cells, or what battery.cell or battery.aged gives',
  })
}
