/** The state of a pack that most methods of this folder are asked about, and its checks. */
import { requirePositive, requireWithin } from '../check.js'
import { describeValue, InvalidInput } from '../errors.js'
import type { AbsoluteTemperature, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type Cell, type CellOptions, requireCell } from './cell.js'
import type { CurrentRating } from './circuit.js'

export interface PackState {
  /** One of `battery.cells`, or from `battery.cell` or `battery.aged`. */
  readonly cell: Cell | CellOptions
  /** Cells in series. */
  readonly series: Ratio
  /** Strings in parallel; a fraction is taken while a pack is being sized. */
  readonly parallel: Ratio
  /** 0 to 1. */
  readonly stateOfCharge: Ratio
  /** Of the cells [K]. */
  readonly temperature: AbsoluteTemperature
  /** Which rated current binds: `'continuous'` (when left out) or `'peak'`. */
  readonly rating?: CurrentRating
}

export const knownState: readonly string[] = ['cell', 'series', 'parallel', 'stateOfCharge', 'temperature', 'rating']

/** Lowest and highest cell temperature that a circuit is asked about [K]: beyond, the cell is frozen or on fire. */
export const coldest = 200
export const hottest = 500

export function readState(method: string, options: PackState): { cell: Cell; rating: CurrentRating } {
  const cell = requireCell(method, options.cell)
  requirePositive(method, 'series', options.series, '1')
  requirePositive(method, 'parallel', options.parallel, '1')
  requireWithin(method, 'stateOfCharge', options.stateOfCharge, '1', 0, 1)
  requireCellTemperature(method, 'temperature', options.temperature)
  return { cell, rating: requireRating(method, options.rating) }
}

export function requireCellTemperature(method: string, argument: string, temperature: number): void {
  requireWithin(method, argument, temperature, 'K', coldest, hottest)
}

export function requireRating(method: string, rating: CurrentRating = 'continuous'): CurrentRating {
  if (rating === 'continuous' || rating === 'peak') return rating
  throw new InvalidInput({
    method,
    argument: 'rating',
    value: describeValue(rating),
    accepted: '"continuous" or "peak"',
  })
}

/** Says so where the cell is colder or hotter than its data allow. */
export function adviseTemperature(method: string, cell: Cell, temperature: number): void {
  if (!isListening()) return
  const { minimumTemperature: low, maximumTemperature: high, name } = cell
  if ((low === undefined || temperature >= low) && (high === undefined || temperature <= high)) return
  advise({
    code: 'CELL_TEMPERATURE',
    method,
    quantity: 'temperature',
    value: temperature,
    range: [low ?? null, high ?? null],
    message: `${temperature.toFixed(1)} K is outside the temperatures in which the cell "${name}" may be discharged.`,
  })
}
