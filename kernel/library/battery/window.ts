import { requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { AbsoluteTemperature, Charge, Energy, Ratio, Resistance, Voltage } from '../quantity.js'
import { type Cell, type CellOptions, requireCell } from './cell.js'
import { resistanceAt, voltageAt, voltageIntegral } from './circuit.js'
import { requireCellTemperature } from './pack-state.js'

export interface WindowOptions {
  readonly cell: Cell | CellOptions
  /** State of charge at the start of a flight; 1 when left out. */
  readonly from?: Ratio
  /** State of charge that must be left. */
  readonly to: Ratio
}

export interface Window {
  /** Share of the charge between the two. */
  readonly chargeShare: Ratio
  /** Share of the energy between the two. */
  readonly energyShare: Ratio
  /** Of one cell [C]. */
  readonly charge: Charge
  /** Of one cell, at no current [J]. */
  readonly energy: Energy
  /** Mean open-circuit voltage of one cell [V]. */
  readonly meanVoltage: Voltage
}

export interface CellAtOptions {
  readonly cell: Cell | CellOptions
  readonly stateOfCharge: Ratio
  /** [K]; 298.15 when left out. */
  readonly temperature?: AbsoluteTemperature
}

const knownWindow = new Set(['cell', 'from', 'to'])
const knownAt = new Set(['cell', 'stateOfCharge', 'temperature'])

/**
 * What lies between two states of charge: the usable window of a cell.
 *
 * @equation Q = (s_1 - s_2) Q_cell; E = Q_cell integral of V_oc ds from s_2 to s_1
 * @param options - `cell`, `from` s_1 (1 when left out), `to` s_2 (below `from`)
 * @returns `chargeShare`, `energyShare` (for `usableShare` of `battery.massForEnergy`), `charge` [C], `energy` [J] and `meanVoltage` [V] of one cell
 * @throws InvalidInput for states of charge outside 0 to 1 or in the wrong order, and an unknown option
 * @method Exact integral of the linear table.
 * @validity At no current: what arrives at the terminals is less by the heat of `battery.run`.
 * @source Textbook identity.
 * @example
 * battery.window({ cell: battery.cells.energy21700, to: 0.15 }).energyShare // 0.87286
 */
export function window(options: WindowOptions): Window {
  const method = 'battery.window'
  checkOptions(method, options, knownWindow)
  const cell = requireCell(method, options.cell)
  const { from = 1, to } = options
  requireWithin(method, 'from', from, '1', 0, 1)
  requireWithin(method, 'to', to, '1', 0, 1)
  if (!(to < from))
    throw new InvalidInput({ method, argument: 'to', value: to, accepted: `below from, which is ${from}` })
  const volts = voltageIntegral(cell, from) - voltageIntegral(cell, to)
  const answer = {
    chargeShare: from - to,
    energyShare: volts / voltageIntegral(cell, 1),
    charge: (from - to) * cell.capacity,
    energy: volts * cell.capacity,
    meanVoltage: volts / (from - to),
  }
  requireRepresentable(method, answer.energyShare + answer.charge + answer.energy + answer.meanVoltage)
  return answer
}

/**
 * Open-circuit voltage and resistance of a cell at a state.
 *
 * @equation V_oc(s); R(s, T) as in `battery.cell`
 * @param options - `cell`, `stateOfCharge` (0 to 1), `temperature` (298.15 K when left out)
 * @returns `openCircuitVoltage` [V], `resistance` [ohm]
 * @throws InvalidInput for a state of charge outside 0 to 1, a temperature outside 200 to 500 K, and an unknown option
 * @method Linear between knots.
 * @validity As the cell's.
 * @source The cell's own.
 * @example
 * battery.cellAt({ cell: battery.cells.energy21700, stateOfCharge: 0.5 }).openCircuitVoltage // 3.7509
 */
export function cellAt(options: CellAtOptions): { openCircuitVoltage: Voltage; resistance: Resistance } {
  const method = 'battery.cellAt'
  checkOptions(method, options, knownAt)
  const cell = requireCell(method, options.cell)
  const { stateOfCharge, temperature = 298.15 } = options
  requireWithin(method, 'stateOfCharge', stateOfCharge, '1', 0, 1)
  requireCellTemperature(method, 'temperature', temperature)
  const answer = {
    openCircuitVoltage: voltageAt(cell, stateOfCharge),
    resistance: resistanceAt(cell, stateOfCharge, temperature),
  }
  requireRepresentable(method, answer.openCircuitVoltage + answer.resistance)
  return answer
}
