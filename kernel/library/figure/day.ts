import type { Figure } from '../../../shared/contracts/figure.js'
import { requireFinite } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Day } from '../limits/index.js'
import { requireChoice } from '../outside.js'
import { line } from './line.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface DayFigureOptions {
  /** What `limits.day` returns. */
  readonly day: Day
  /** What is drawn over the day; the temperature of the cells when left out. */
  readonly quantity?: 'cell temperature' | 'state of charge' | 'motor heat'
  /** Marked as a level, in the unit of the quantity [SI]: the hottest allowed, the floor of charge. */
  readonly limit?: number
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.day'
const known = new Set(['day', 'quantity', 'limit', 'caption', 'description'])
const quantities = {
  'cell temperature': { key: 'temperature', axis: { label: 'cell temperature', unit: 'K' } },
  'state of charge': { key: 'stateOfCharge', axis: { label: 'state of charge' } },
  'motor heat': { key: 'motorHeat', axis: { label: 'temperature rise of the lift motors over the rise allowed' } },
} as const

/**
 * A day of sectors over its hours: temperature of the cells, state of charge, or temperature rise of the lift motors.
 *
 * @equation as `limits.day`
 * @param options - `day` of `limits.day`; optional `quantity` (`'cell temperature'`, `'state of charge'` or `'motor heat'`), `limit` [SI], `caption` ("A day of sectors"), `description`
 * @returns a figure of one line, with a rule at the limit
 * @throws InvalidInput for what is not a day, a quantity it does not know, and an unknown option
 * @method Draws the history.
 * @validity As the day's.
 * @source House convention, no publication.
 * @example
 * const flown = limits.day({
 *   cell: battery.cells.power18650, series: 200, parallel: 60, sectors: 2, turnaround: 15 * u.min, chargePower: 150 * u.kW, ambient: 303.15 * u.K, conductance: 400,
 *   rating: 'peak', sector: [{ name: 'hover', power: 320 * u.kW, duration: 45 }, { name: 'cruise', power: 90 * u.kW, duration: 700 }],
 * })
 * const drawn = figure.day({ day: flown, limit: 333.15 * u.K })
 */
export function day(options: DayFigureOptions): Figure {
  checkOptions(method, options, known)
  const { day: flown, quantity = 'cell temperature', limit, caption = 'A day of sectors', description } = options
  const fits = Array.isArray(memberOf(memberOf(flown, 'history'), 'motorHeat'))
  requireMadeBy(method, 'day', flown, 'limits.day', fits)
  requireChoice(method, 'quantity', quantity, ['cell temperature', 'state of charge', 'motor heat'])
  if (limit !== undefined) requireFinite(method, 'limit', limit, '1')
  const { key, axis } = quantities[quantity]
  return line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'time', unit: 'h', values: flown.history.time },
    y: { ...axis, values: flown.history[key] },
    ...(limit === undefined ? {} : { rules: [{ axis: 'y', at: limit, label: 'limit', ink: 'warning' }] }),
  })
}
