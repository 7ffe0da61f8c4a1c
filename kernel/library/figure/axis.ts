/** Axes of figures: a label, a dimension and the unit text in which values are shown. */
import { formatDimension } from '../../../shared/contracts/dimension.js'
import type { Axis } from '../../../shared/contracts/figure.js'
import { requireFinite, requireUnit } from '../check.js'
import { describeValue, InvalidInput } from '../errors.js'

export interface AxisOptions {
  /** What the axis shows: `cruise speed`. */
  readonly label: string
  /** Unit text of display: `"m/s"`. A pure number when left out. */
  readonly unit?: string
  readonly scale?: 'linear' | 'logarithmic'
  /** Ends of the axis [SI]. */
  readonly from?: number
  readonly to?: number
}

export const knownAxis: readonly string[] = ['label', 'unit', 'scale', 'from', 'to']

/** Checks and completes an axis; `prefix` says where it stands in the caller's options. */
export function buildAxis(method: string, prefix: string, options: AxisOptions): Axis {
  const { label, unit, scale, from, to } = options
  requireCaption(method, `${prefix}.label`, label)
  const dimension = formatDimension(requireUnit(method, `${prefix}.unit`, unit ?? '1').dimension)
  if (from !== undefined) requireFinite(method, `${prefix}.from`, from, '1')
  if (to !== undefined) requireFinite(method, `${prefix}.to`, to, '1')
  if (scale !== undefined && scale !== 'linear' && scale !== 'logarithmic')
    throw new InvalidInput({
      method,
      argument: `${prefix}.scale`,
      value: describeValue(scale),
      accepted: '"linear" or "logarithmic"',
    })
  return {
    label,
    dimension,
    ...(unit === undefined ? {} : { unit }),
    ...(scale === undefined ? {} : { scale }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  }
}

/** A list of finite numbers as a plain array; names the first item that is not one. */
export function requireSeries(method: string, argument: string, values: ArrayLike<number>): number[] {
  if (!Array.isArray(values) && !ArrayBuffer.isView(values))
    throw new InvalidInput({ method, argument, value: describeValue(values), accepted: 'a list of numbers' })
  const series = Array.from(values)
  if (series.length === 0 || series.length > 20_000)
    throw new InvalidInput({
      method,
      argument,
      value: `a list of ${series.length}`,
      accepted: 'a list of 1 to 20000 numbers',
    })
  series.forEach((value, index) => {
    if (!Number.isFinite(value)) requireFinite(method, `${argument}[${index}]`, value, '1')
  })
  return series
}

/** Text for a reader, at most as long as a figure's contract takes. */
export function requireCaption(method: string, argument: string, text: string): void {
  if (typeof text !== 'string' || text.length > 400)
    throw new InvalidInput({
      method,
      argument,
      value: typeof text === 'string' ? `a text of ${text.length} characters` : describeValue(text),
      accepted: 'text of at most 400 characters',
    })
}
