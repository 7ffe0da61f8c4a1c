/** What a day is asked, checked and completed. */
import type { CellCooling } from '../battery/advance.js'
import { type Cell, requireCell } from '../battery/cell.js'
import { knownState } from '../battery/pack-state.js'
import { requireCount, requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { requireList } from '../shapes.js'
import type { Charging } from './charge.js'
import type { DayOptions } from './day.js'

export const knownDay: ReadonlySet<string> = new Set([
  ...knownState.filter((key) => key !== 'stateOfCharge'),
  'sector',
  'sectors',
  'turnaround',
  'chargePower',
  'chargeRate',
  'chargeTo',
  'floor',
  'ambient',
  'conductance',
  'groundConductance',
  'motorThermalTime',
  'chargeBelow',
  'cyclesToEndOfLife',
])

/** Longest step on the ground [s]. */
const groundStep = 10
const longestTurnaround = 172_800

export interface DaySetting {
  readonly options: DayOptions
  readonly cell: Cell
  readonly count: number
  readonly charging: Charging | undefined
  readonly chargeTo: number
  readonly chargeBelow: number
  readonly ground: CellCooling
  readonly step: number
  readonly motorThermalTime: number
  readonly temperature: number
}

export function readDay(method: string, options: DayOptions): DaySetting {
  const cell = requireCell(method, options.cell)
  const { series, parallel, ambient, conductance, groundConductance = conductance, chargePower } = options
  const { chargeRate = 1 / 3600, chargeTo = 1, motorThermalTime = 120, chargeBelow = 318.15 } = options
  requirePositive(method, 'series', series, '1')
  requirePositive(method, 'parallel', parallel, '1')
  requireList(method, 'sector', options.sector, '{ name, power, duration }')
  requireCount(method, 'sectors', options.sectors)
  requireWithin(method, 'sectors', options.sectors, '1', 1, 50)
  requireWithin(method, 'turnaround', options.turnaround, 's', 0, longestTurnaround)
  requireNonNegative(method, 'conductance', conductance, 'W/K')
  requireNonNegative(method, 'chargePower', chargePower, 'W')
  requirePositive(method, 'chargeRate', chargeRate, '1/s')
  requireWithin(method, 'chargeTo', chargeTo, '1', 0, 1)
  requirePositive(method, 'motorThermalTime', motorThermalTime, 's')
  requireWithin(method, 'ambient', ambient, 'K', 200, 400)
  const { temperature = ambient } = options
  requireWithin(method, 'temperature', temperature, 'K', 200, 500)
  requireWithin(method, 'chargeBelow', chargeBelow, 'K', 200, 500)
  if (options.cyclesToEndOfLife !== undefined)
    requirePositive(method, 'cyclesToEndOfLife', options.cyclesToEndOfLife, '1')
  const count = series * parallel
  const heatCapacity = cell.mass * cell.specificHeat
  // Cells that follow the air within a step of the ground have no temperature of their own.
  requireWithin(method, 'groundConductance', groundConductance, 'W/K', 0, (heatCapacity * count) / 2)
  const ground = { conductance: groundConductance / count, ambient, heatCapacity }
  const step = Math.min(groundStep, groundConductance === 0 ? groundStep : (0.5 * heatCapacity) / ground.conductance)
  const charging =
    chargePower > 0 ? { power: chargePower / count, current: chargeRate * cell.capacity, to: chargeTo } : undefined
  return { options, cell, count, charging, chargeTo, chargeBelow, ground, step, motorThermalTime, temperature }
}
