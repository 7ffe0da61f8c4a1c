import type { Figure, Ink } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { buildAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'
import { requireInk } from './ink.js'

export interface BarsOptions {
  readonly caption: string
  readonly description?: string
  /** One per bar, from top to bottom. */
  readonly names: readonly string[]
  /** One per bar [SI]. */
  readonly values: ArrayLike<number>
  /** Unit text of display: `"kg"`. A pure number when left out. */
  readonly unit?: string
  /** What the values are; the caption when left out. */
  readonly label?: string
  /** Where each bar begins [SI]; 0 when left out. */
  readonly start?: ArrayLike<number>
  readonly ink?: Ink
}

const method = 'figure.bars'
const known = new Set(['caption', 'description', 'names', 'values', 'unit', 'label', 'start', 'ink'])

/**
 * Horizontal bars with their names up the side, as data.
 *
 * @equation value shown = value in SI / factor of the unit
 * @param options - `caption`, `names` (list of text), `values` (list [SI]), `unit` (text), `label` of the axis, `start` (list [SI]), `ink`,
 * `description`
 * @returns a figure
 * @throws InvalidInput for unit text that cannot be read, values that are not finite, lists of unequal length, and an unknown option
 * @method Values stay in SI; the renderer divides by the unit's factor.
 * @validity Up to 500 bars.
 * @source House convention, no publication.
 * @example
 * const powers = figure.bars({ caption: 'Power', names: ['hover', 'cruise'], values: [316000, 80000], unit: 'kW' })
 */
export function bars(options: BarsOptions): Figure {
  checkOptions(method, options, known)
  const { caption, description, unit, label = options.caption, ink = 'ink' } = options
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const value = requireSeries(method, 'values', options.values)
  const start = options.start === undefined ? undefined : requireSeries(method, 'start', options.start)
  const names = requireNames(options.names, value.length)
  if (start !== undefined && start.length !== value.length)
    throw new InvalidInput({
      method,
      argument: 'start',
      value: `a list of ${start.length}`,
      accepted: `a list of ${value.length}, one per bar`,
    })
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', { label, ...(unit === undefined ? {} : { unit }) }),
    y: { label: '', dimension: '1' },
    marks: [
      {
        mark: 'bar',
        names,
        value,
        ink: requireInk(method, 'ink', ink),
        ...(start === undefined ? {} : { start }),
      },
    ],
  })
}

function requireNames(names: readonly string[], length: number): string[] {
  if (!Array.isArray(names) || names.length !== length || length > 500)
    throw new InvalidInput({
      method,
      argument: 'names',
      value: describeValue(names),
      accepted: `a list of ${length} texts, one per bar (500 at most)`,
    })
  names.forEach((name, index) => {
    requireCaption(method, `names[${index}]`, name)
  })
  return [...names]
}
