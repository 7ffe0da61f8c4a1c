/** The battery of an aircraft: a pack of cells, perhaps aged, with the limits that hold in flight. */
import { aged } from '../battery/aged.js'
import { type Cell, type CellOptions, requireCell } from '../battery/cell.js'
import type { CurrentRating } from '../battery/circuit.js'
import { requireRating } from '../battery/pack-state.js'
import { requirePositive, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Ratio, ThermalConductance } from '../quantity.js'

export interface EnergyStoreOptions {
  readonly cell: Cell | CellOptions
  readonly series: Ratio
  /** A fraction is taken while a pack is being sized. */
  readonly parallel: Ratio
  /** At the end of its life: what `battery.aged` takes. */
  readonly aged?: { readonly capacityLeft: Ratio; readonly resistanceGrowth: Ratio }
  /** Which rated current binds: `'continuous'` (when left out) or `'peak'`. */
  readonly rating?: CurrentRating
  /** State of charge that must be left after landing; 0.1 when left out. */
  readonly floor?: Ratio
  /** From the cells of the whole pack to the ambient [W/K]; 0 (adiabatic) when left out. */
  readonly conductance?: ThermalConductance
}

export interface EnergyStore {
  /** As old as it is flown. */
  readonly cell: Cell
  readonly series: Ratio
  readonly parallel: Ratio
  readonly rating: CurrentRating
  readonly floor: Ratio
  readonly conductance: ThermalConductance
}

const known = new Set(['cell', 'series', 'parallel', 'aged', 'rating', 'floor', 'conductance'])

export function readEnergyStore(method: string, options: EnergyStoreOptions | EnergyStore): EnergyStore {
  checkOptions(`${method} battery`, options, known)
  const { series, parallel, floor = 0.1, conductance = 0 } = options
  const cell = requireCell(method, options.cell)
  requirePositive(method, 'battery.series', series, '1')
  requirePositive(method, 'battery.parallel', parallel, '1')
  requireWithin(method, 'battery.floor', floor, '1', 0, 0.99)
  // A pack that would cool within a second is no pack, and no step in time could follow it.
  const heatCapacity = cell.mass * cell.specificHeat * series * parallel
  requireWithin(method, 'battery.conductance', conductance, 'W/K', 0, heatCapacity)
  const life = 'aged' in options ? options.aged : undefined
  return {
    cell: life === undefined ? cell : aged({ cell, ...life }),
    series,
    parallel,
    rating: requireRating(method, options.rating),
    floor,
    conductance,
  }
}
