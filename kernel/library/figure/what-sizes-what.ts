import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions } from '../errors.js'
import type { SizingRow } from '../limits/index.js'
import { bars } from './bars.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface WhatSizesWhatFigureOptions {
  /** What `limits.whatSizesWhat` returns. */
  readonly rows: readonly SizingRow[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.whatSizesWhat'
const known = new Set(['rows', 'caption', 'description'])

/**
 * What sizes what: a bar per component for the gap between the limit that sizes it and the one behind.
 *
 * @equation as `limits.whatSizesWhat`
 * @param options - `rows` of `limits.whatSizesWhat`; optional `caption` ("What sizes what"), `description`
 * @returns a figure of horizontal bars in per cent; each name carries the component and the limit that sizes it
 * @throws InvalidInput for an empty list, what is no row, and an unknown option
 * @method In the order of the rows.
 * @validity A long bar can be shortened by meeting one limit otherwise; a short one cannot.
 * @source House convention, no publication.
 * @example
 * const drawn = figure.whatSizesWhat({ rows: limits.whatSizesWhat({ limits: [
 *   { component: 'battery', limit: 'mission energy', size: 390 * u.kg, unit: 'kg' }, { component: 'battery', limit: 'landing power', size: 412 * u.kg, unit: 'kg' },
 * ] }) })
 */
export function whatSizesWhat(options: WhatSizesWhatFigureOptions): Figure {
  checkOptions(method, options, known)
  const { rows, caption = 'What sizes what', description } = options
  const fits = Array.isArray(rows) && rows.length > 0 && rows.every((row) => typeof memberOf(row, 'gap') === 'number')
  requireMadeBy(method, 'rows', rows, 'limits.whatSizesWhat', fits)
  return bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: rows.map((row) => `${row.component}: ${row.sizedBy}`),
    values: rows.map((row) => row.gap),
    unit: '%',
    label: 'gap to the limit behind',
    ink: 'accent',
  })
}
