/** A figure's values as a table in display units: for readers who cannot see the drawing, and for CSV. */
import type { Figure, Mark } from '../../contracts/index.js'
import { displayUnit } from '../quantity/index.js'
import { axisTitle, axisUnit } from './axes.js'
import { barsOf, rowKeys } from './bar-rows.js'
import { type MarkOf, pointsOf } from './series.js'

export type TableCell = string | number | null

export interface FigureTable {
  readonly columns: readonly string[]
  readonly rows: readonly (readonly TableCell[])[]
}

/** Lines over the same x share rows; bars have a row per name; anything else is one row per point with its series. */
export function figureTable(figure: Figure): FigureTable {
  const bars = figure.marks.filter((mark): mark is MarkOf<'bar'> => mark.mark === 'bar')
  if (bars.length > 0) return barTable(figure, bars)
  const lines = figure.marks.filter((mark): mark is MarkOf<'line'> => mark.mark === 'line')
  const others = figure.marks.some((mark) => !['line', 'rule', 'text'].includes(mark.mark))
  const first = lines[0]
  if (first !== undefined && !others && lines.every((line) => sameValues(line.x, first.x)))
    return wideTable(figure, lines)
  return longTable(figure)
}

function barTable(figure: Figure, bars: readonly MarkOf<'bar'>[]): FigureTable {
  const { factor } = axisUnit(figure.x)
  const names = new Map<string, string>()
  for (const bar of bars)
    rowKeys(bar.names).forEach((key, index) => {
      names.set(key, bar.names[index] ?? '')
    })
  const values = bars.map((bar) => new Map(barsOf(bar).map(({ key, value, start }) => [key, (value - start) / factor])))
  return {
    columns: [
      figure.y.label || 'name',
      ...bars.map((bar) => seriesColumn(bar.label, axisTitle(figure.x), bars.length)),
    ],
    rows: [...names].map(([key, name]) => [name, ...values.map((column) => column.get(key) ?? null)]),
  }
}

function wideTable(figure: Figure, lines: readonly MarkOf<'line'>[]): FigureTable {
  const x = axisUnit(figure.x).factor
  const y = axisUnit(figure.y).factor
  return {
    columns: [axisTitle(figure.x), ...lines.map((line) => seriesColumn(line.label, axisTitle(figure.y), lines.length))],
    rows: (lines[0]?.x ?? []).map((value, row) => [
      value / x,
      ...lines.map((line) => (line.y[row] === undefined ? null : line.y[row] / y)),
    ]),
  }
}

function seriesColumn(label: string | undefined, title: string, count: number): string {
  if (label === undefined) return title
  return count === 1 && title !== '' ? title : title === '' ? label : `${label}: ${title}`
}

function longTable(figure: Figure): FigureTable {
  return {
    columns: ['series', axisTitle(figure.x), axisTitle(figure.y), 'further value'],
    rows: figure.marks.flatMap((mark) => longRows(figure, mark)),
  }
}

function longRows(figure: Figure, mark: Mark): TableCell[][] {
  const x = axisUnit(figure.x).factor
  const y = axisUnit(figure.y).factor
  const series = ('label' in mark ? mark.label : undefined) ?? mark.mark
  switch (mark.mark) {
    case 'line':
    case 'area':
    case 'polygon':
      return pointsOf(mark.x, mark.y).map(([a, b]) => [series, a / x, b / y, null])
    case 'dot':
      return pointsOf(mark.x, mark.y).map(([a, b], index) => [series, a / x, b / y, mark.names?.[index] ?? null])
    case 'band':
      return pointsOf(mark.x, mark.low).map(([a, low], index) => [
        series,
        a / x,
        low / y,
        (mark.high[index] ?? low) / y,
      ])
    case 'contour': {
      const unit = displayUnit(Math.max(0, ...mark.value.map(Math.abs)), mark.dimension, mark.unit)
      return pointsOf(mark.x, mark.y).map(([a, b], index) => [
        series,
        a / x,
        b / y,
        (mark.value[index] ?? 0) / unit.factor,
      ])
    }
    case 'circle':
      return [[series, mark.x / x, mark.y / y, mark.radius / x]]
    case 'rule':
      return [[series, mark.axis === 'x' ? mark.at / x : null, mark.axis === 'y' ? mark.at / y : null, null]]
    default:
      return []
  }
}

function sameValues(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index])
}
