import type { Figure, Ink, Mark } from '../../../shared/contracts/figure.js'
import { requireFinite } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { type AxisOptions, buildAxis, knownAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'
import { requireInk } from './ink.js'

export interface LineSeries {
  /** What the line is called, written beside it. */
  readonly label?: string
  /** One value per point across [SI]. */
  readonly values: ArrayLike<number>
  /** Points across where they differ from `x.values` [SI]. */
  readonly x?: ArrayLike<number>
  readonly ink?: Ink
  readonly broken?: boolean
}

export interface LineRule {
  readonly axis: 'x' | 'y'
  /** [SI] */
  readonly at: number
  readonly label?: string
  readonly ink?: Ink
}

export interface LineOptions {
  readonly caption: string
  /** For a reader who cannot see the figure; the caption when left out. */
  readonly description?: string
  /** The axis across and the points on it [SI]. */
  readonly x: AxisOptions & { readonly values: ArrayLike<number> }
  /** The axis up; its `values` [SI] are the one line where there is no `series`. */
  readonly y: AxisOptions & { readonly values?: ArrayLike<number> }
  readonly series?: readonly LineSeries[]
  /** Straight lines that mark a value on an axis. */
  readonly rules?: readonly LineRule[]
}

const method = 'figure.line'
const known = new Set(['caption', 'description', 'x', 'y', 'series', 'rules'])
const knownOnAxis = new Set([...knownAxis, 'values'])
const knownOnSeries = new Set(['label', 'values', 'x', 'ink', 'broken'])
const knownOnRule = new Set(['axis', 'at', 'label', 'ink'])
/** In this order unless the author says otherwise; every second four are broken, so that eight lines stay apart. */
const inks: readonly Ink[] = ['ink', 'accent', 'second', 'third']

/**
 * Lines over an axis, as data.
 *
 * @equation value shown = value in SI / factor of the unit
 * @param options - `caption`, `x` (`label`, `values` [SI], `unit` text, `scale`, `from`, `to` [SI]), `y` (the same; `values` for a single
 * line), `series` (list of `label`, `values` [SI], `x` [SI], `ink`, `broken`), `rules` (list of `axis`, `at` [SI], `label`, `ink`), `description`
 * @returns a figure; the sheet draws it, the command and exports carry it
 * @throws InvalidInput for unit text that cannot be read, values that are not finite (with their place), lists of unequal length,
 * a figure without a line, and an unknown option
 * @method Values stay in SI; the renderer divides by the unit's factor.
 * @validity Up to 20000 points a line and 200 marks a figure.
 * @source House convention, no publication.
 * @example
 * const curve = figure.line({
 *   caption: 'Power to fly level',
 *   x: { label: 'speed', values: [40, 50, 60], unit: 'm/s' },
 *   y: { label: 'power', unit: 'kW' },
 *   series: [{ label: 'aerodynamic', values: [52000, 58000, 84000] }],
 *   rules: [{ axis: 'x', at: 47, label: '1.3 stall speed' }],
 * })
 */
export function line(options: LineOptions): Figure {
  checkOptions(method, options, known)
  const { caption, description, x, y, series = [], rules = [] } = options
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  checkOptions(`${method} x`, x, knownOnAxis)
  checkOptions(`${method} y`, y, knownOnAxis)
  const across = requireSeries(method, 'x.values', x.values)
  const lines: readonly LineSeries[] = y.values === undefined ? series : [{ values: y.values }, ...series]
  if (lines.length === 0)
    throw new InvalidInput({
      method,
      argument: 'series',
      value: 'missing',
      accepted: 'series, or y.values for one line',
    })
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', x),
    y: buildAxis(method, 'y', y),
    marks: [...lines.map((one, index) => buildLine(one, index, across)), ...rules.map(buildRule)],
  })
}

function buildLine(series: LineSeries, index: number, across: readonly number[]): Mark {
  const at = `series[${index}]`
  checkOptions(`${method} ${at}`, series, knownOnSeries)
  const x = series.x === undefined ? [...across] : requireSeries(method, `${at}.x`, series.x)
  const y = requireSeries(method, `${at}.values`, series.values)
  if (x.length !== y.length)
    throw new InvalidInput({
      method,
      argument: `${at}.values`,
      value: `a list of ${y.length}`,
      accepted: `a list of ${x.length}, one value per point across`,
    })
  if (series.label !== undefined) requireCaption(method, `${at}.label`, series.label)
  return {
    mark: 'line',
    x,
    y,
    ink: requireInk(method, `${at}.ink`, series.ink ?? inks[index % inks.length] ?? 'ink'),
    ...((series.broken ?? index % 8 >= 4) ? { broken: true } : {}),
    ...(series.label === undefined ? {} : { label: series.label }),
  }
}

function buildRule(rule: LineRule, index: number): Mark {
  const at = `rules[${index}]`
  checkOptions(`${method} ${at}`, rule, knownOnRule)
  if (rule.axis !== 'x' && rule.axis !== 'y')
    throw new InvalidInput({ method, argument: `${at}.axis`, value: describeValue(rule.axis), accepted: '"x" or "y"' })
  requireFinite(method, `${at}.at`, rule.at, '1')
  if (rule.label !== undefined) requireCaption(method, `${at}.label`, rule.label)
  return {
    mark: 'rule',
    axis: rule.axis,
    at: rule.at,
    ink: requireInk(method, `${at}.ink`, rule.ink ?? 'faint'),
    ...(rule.label === undefined ? {} : { label: rule.label }),
  }
}
