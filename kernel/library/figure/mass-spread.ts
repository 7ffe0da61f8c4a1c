import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Spread } from '../mass/index.js'
import { bars } from './bars.js'

export interface MassSpreadOptions {
  /** What `mass.spread` gave, by the name of the item. */
  readonly spreads: Readonly<Record<string, Spread>>
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.massSpread'
const known = new Set(['spreads', 'caption', 'description'])

/**
 * How far the published equations for an item lie apart: a bar per method.
 *
 * @equation as `mass.spread`
 * @param options - `spreads`: record of what `mass.spread` gave, by item; optional `caption`, `description`
 * @returns a figure of horizontal bars in kilograms; the names carry item and method
 * @throws InvalidInput for no spreads, something that is none, and an unknown option
 * @method Draws what it is given.
 * @validity As the spreads'.
 * @source House convention, no publication.
 * @example
 * const drawn = figure.massSpread({ spreads: { gear: mass.spread('gear', { grossMass: 2000 * u.kg }) } })
 */
export function massSpread(options: MassSpreadOptions): Figure {
  checkOptions(method, options, known)
  const { spreads, caption = 'Masses by method', description } = options
  const entries =
    typeof spreads === 'object' && spreads !== null && !Array.isArray(spreads) ? Object.entries(spreads) : []
  if (entries.length === 0 || !entries.every(([, spread]) => Array.isArray(spread?.methods)))
    throw new InvalidInput({
      method,
      argument: 'spreads',
      value: entries.length === 0 ? describeValue(spreads) : 'a record of something else',
      accepted: 'a record of what mass.spread gave, by item',
    })
  const rows = entries.flatMap(([item, spread]) => spread.methods.map((one) => ({ ...one, item })))
  return bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: rows.map((row) => `${row.item}, ${row.method}`),
    values: rows.map((row) => row.mass),
    unit: 'kg',
    label: 'mass',
    ink: 'accent',
  })
}
