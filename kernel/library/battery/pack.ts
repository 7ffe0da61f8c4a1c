import { requirePositive, requireRepresentable, requireShare } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Charge, Energy, HeatCapacity, Mass, Ratio, Resistance, SpecificEnergy, Voltage } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type Cell, type CellOptions, requireCell } from './cell.js'
import { resistanceAt } from './circuit.js'

export interface PackByCountOptions {
  readonly cell: Cell | CellOptions
  readonly series: Ratio
  readonly parallel: Ratio
  /** Mass of the cells over mass of the pack; 0.7 when left out. */
  readonly cellShare?: Ratio
}

export interface PackByEnergyOptions {
  readonly cell: Cell | CellOptions
  /** Nominal voltage wanted [V]. */
  readonly voltage: Voltage
  /** Nameplate energy wanted, from full to empty at no current [J]. */
  readonly energy: Energy
  /** Mass of the cells over mass of the pack; 0.7 when left out. */
  readonly cellShare?: Ratio
  /** Whole strings (true, when left out), or fractions while sizing. */
  readonly whole?: boolean
}

export interface Pack {
  readonly cell: Cell
  readonly series: Ratio
  readonly parallel: Ratio
  /** Number of cells. */
  readonly count: Ratio
  /** Cells and all that holds, cools and joins them [kg]. */
  readonly mass: Mass
  /** [kg] */
  readonly cellMass: Mass
  /** [C] */
  readonly capacity: Charge
  /** Nameplate [J]. */
  readonly energy: Energy
  /** [J/kg] */
  readonly specificEnergy: SpecificEnergy
  /** [V] */
  readonly nominalVoltage: Voltage
  /** Open circuit, full [V]. */
  readonly fullVoltage: Voltage
  /** At the floor [V]. */
  readonly minimumVoltage: Voltage
  /** At half charge and 298.15 K [ohm]. */
  readonly resistance: Resistance
  /** Of the cells [J/K]. */
  readonly heatCapacity: HeatCapacity
}

const method = 'battery.pack'
const knownByCount = new Set(['cell', 'series', 'parallel', 'cellShare'])
const knownByEnergy = new Set(['cell', 'voltage', 'energy', 'cellShare', 'whole'])

/**
 * A pack from the numbers of cells in series and in parallel.
 *
 * @equation n = N_s N_p; mass = n m_cell/share; Q = N_p Q_cell; R = R_cell N_s/N_p; energy = n E_cell
 * @param options - `cell`, `series`, `parallel`, `cellShare` (0.7 when left out)
 * @returns `series`, `parallel`, `cell` (as `battery.discharge` wants them), `count`, `mass` [kg], `cellMass` [kg], `capacity` [C], `energy` [J], `specificEnergy` [J/kg], `nominalVoltage`,
 * `fullVoltage`, `minimumVoltage` [V], `resistance` [ohm], `heatCapacity` [J/K]
 * @throws InvalidInput for counts that are not positive, a share outside 0 to 1, and an unknown option
 * @method Equal cells, equal strings.
 * @validity Cell share 0.60 to 0.80 in packs built (from memory); outside an advisory.
 * @source Textbook identities; cell share from memory.
 * @example
 * const small = battery.pack({ cell: battery.cells.power18650, series: 14, parallel: 4 })
 * small.mass // 3.84
 */
export function pack(options: PackByCountOptions): Pack
/**
 * A pack from the voltage and energy wanted.
 *
 * @equation N_s = round(voltage/V_nominal); N_p = ceil(energy/(N_s E_cell))
 * @param options - `cell`, nominal `voltage` [V], nameplate `energy` [J], `cellShare` (0.7 when left out), `whole` strings (true; false gives fractions, for use inside a closure)
 * @returns as the form with counts
 * @throws InvalidInput for a voltage or energy that is not positive, a share outside 0 to 1, and an unknown option
 * @method Series to the nearest whole cell, at least one; parallel up to the next whole string.
 * @validity As the form with counts.
 * @source Textbook identities.
 * @example
 * const big = battery.pack({ cell: battery.cells.energy21700, voltage: 750 * u.V, energy: 90 * u.kWh })
 * big.parallel // 24
 */
export function pack(options: PackByEnergyOptions): Pack
export function pack(options: PackByCountOptions | PackByEnergyOptions): Pack {
  if (typeof options === 'object' && options !== null && 'voltage' in options) return byEnergy(options)
  checkOptions(method, options, knownByCount)
  const cell = requireCell(method, options.cell)
  requirePositive(method, 'series', options.series, '1')
  requirePositive(method, 'parallel', options.parallel, '1')
  return build(cell, options.series, options.parallel, options.cellShare)
}

function byEnergy(options: PackByEnergyOptions): Pack {
  checkOptions(method, options, knownByEnergy)
  const cell = requireCell(method, options.cell)
  const { voltage, energy, whole = true } = options
  requirePositive(method, 'voltage', voltage, 'V')
  requirePositive(method, 'energy', energy, 'J')
  if (typeof whole !== 'boolean')
    throw new InvalidInput({ method, argument: 'whole', value: describeValue(whole), accepted: 'true or false' })
  const series = Math.max(1, Math.round(voltage / cell.nominalVoltage))
  const strings = energy / (series * cell.energy)
  return build(cell, series, whole ? Math.ceil(strings - 1e-9) : strings, options.cellShare)
}

function build(cell: Cell, series: number, parallel: number, cellShare = 0.7): Pack {
  requireShare(method, 'cellShare', cellShare)
  if ((cellShare < 0.6 || cellShare > 0.8) && isListening())
    advise({
      code: 'CELL_SHARE',
      method,
      quantity: 'cellShare',
      value: cellShare,
      range: [0.6, 0.8],
      message: `Cells at ${(100 * cellShare).toFixed(0)} % of the pack's mass are outside what packs reach (60 to 80 %).`,
    })
  const count = series * parallel
  const cellMass = count * cell.mass
  const mass = cellMass / cellShare
  const energy = count * cell.energy
  const answer: Pack = {
    cell,
    series,
    parallel,
    count,
    mass,
    cellMass,
    capacity: parallel * cell.capacity,
    energy,
    specificEnergy: energy / mass,
    nominalVoltage: series * cell.nominalVoltage,
    fullVoltage: series * (cell.openCircuitVoltage[cell.openCircuitVoltage.length - 1] as number),
    minimumVoltage: series * cell.minimumVoltage,
    resistance: (resistanceAt(cell, 0.5, 298.15) * series) / parallel,
    heatCapacity: cellMass * cell.specificHeat,
  }
  requireRepresentable(
    method,
    answer.mass +
      answer.energy +
      answer.specificEnergy +
      answer.resistance +
      answer.heatCapacity +
      answer.fullVoltage +
      answer.capacity,
  )
  return answer
}
