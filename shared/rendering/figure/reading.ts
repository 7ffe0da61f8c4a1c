/**
 * Reading a figure without seeing it whole: its series and points in words, and what stands nearest to a place of the drawing. All of it
 * comes from the figure's data and the layout it is drawn with; the picture itself is never asked.
 */
import type { Figure, Mark } from '../../contracts/index.js'
import { displayUnit, formatNumber, joinUnit } from '../quantity/index.js'
import { axisUnit } from './axes.js'
import { barsOf } from './bar-rows.js'
import { type Frame, pixelX, pixelY } from './frame.js'
import { layOut, type PlotLayout } from './layout.js'
import { type MarkOf, pointsOf } from './series.js'

/** One thing that can be read, where it stands on the drawing [px]. */
export interface ReadPoint {
  readonly x: number
  readonly y: number
  readonly words: string
  /** Value along x [SI], of points that share an axis with others. */
  readonly along?: number
  /** Half its size [px]: inside of it a thing is at no distance. */
  readonly reach?: number
  /** It is a line across the whole field, at this place of the axis. */
  readonly across?: 'x' | 'y'
}

export interface ReadSeries {
  readonly name: string
  readonly points: readonly ReadPoint[]
  /** Words for the value at any place along x [SI], between its points as well; null outside. */
  readonly at?: (x: number) => { readonly words: string; readonly y: number } | null
}

export interface FigureReading {
  readonly width: number
  readonly height: number
  readonly frame: Frame
  readonly series: readonly ReadSeries[]
  /** Words for a value along x. */
  readonly alongWords: (x: number) => string
}

/** `width` [px] is the one that the figure was drawn at; the ids of the drawing play no part. */
export function readFigure(figure: Figure, width: number): FigureReading {
  const layout = layOut(figure, width, 'reading')
  const series = layout.rows.length > 0 ? barSeries(figure, layout) : fieldSeries(figure, layout.frame)
  return {
    width: layout.frame.width,
    height: layout.frame.height,
    frame: layout.frame,
    series: series.filter(({ points }) => points.length > 0),
    alongWords: (x) => axisWords(figure, 'x', x),
  }
}

function fieldSeries(figure: Figure, frame: Frame): ReadSeries[] {
  const parts = figure.marks.flatMap((mark) => partOf(mark, figure, frame))
  const rules = figure.marks.flatMap((mark) => (mark.mark === 'rule' ? [rulePoint(mark, figure, frame)] : []))
  return [
    ...figure.marks.flatMap((mark) => valueSeries(mark, figure, frame)),
    { name: 'parts of the drawing', points: parts },
    { name: 'lines across', points: rules },
  ]
}

function valueSeries(mark: Mark, figure: Figure, frame: Frame): ReadSeries[] {
  switch (mark.mark) {
    case 'line':
    case 'area':
      return [alongSeries(mark.label ?? yName(figure), mark.x, [mark.y], figure, frame)]
    case 'band':
      return [alongSeries(mark.label ?? yName(figure), mark.x, [mark.low, mark.high], figure, frame)]
    case 'dot':
      return [dotSeries(mark, figure, frame)]
    case 'contour':
      return [contourSeries(mark, figure, frame)]
    default:
      return []
  }
}

/** One value of y for each x, or the two ends of a band. */
function alongSeries(
  name: string,
  xs: readonly number[],
  ys: readonly (readonly number[])[],
  figure: Figure,
  frame: Frame,
): ReadSeries {
  const length = Math.min(xs.length, ...ys.map((each) => each.length))
  const wordsOf = (values: readonly number[]) => values.map((value) => quantityWords(figure, 'y', value)).join(' to ')
  const heightOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const points: ReadPoint[] = []
  for (let index = 0; index < length; index++) {
    const along = xs[index] ?? 0
    const values = ys.map((each) => each[index] ?? 0)
    const place = placeOf(frame, along, heightOf(values))
    if (place !== null)
      points.push({ ...place, along, words: `${axisWords(figure, 'x', along)}, ${yName(figure)} ${wordsOf(values)}` })
  }
  return {
    name,
    points,
    at: (x) => {
      const values = ys.map((each) => between(xs, each, length, x))
      if (values.some((value) => value === null)) return null
      const known = values.filter((value) => value !== null)
      return { words: wordsOf(known), y: placeOf(frame, x, heightOf(known))?.y ?? 0 }
    },
  }
}

/** On the straight line between the two points that x lies between, wherever in the series they stand first. */
function between(xs: readonly number[], ys: readonly number[], length: number, x: number): number | null {
  for (let index = 0; index < length; index++) {
    const here = xs[index] ?? 0
    if (here === x) return ys[index] ?? null
    const next = xs[index + 1]
    if (index + 1 >= length || next === undefined || (here - x) * (next - x) >= 0) continue
    const share = (x - here) / (next - here)
    return (ys[index] ?? 0) + share * ((ys[index + 1] ?? 0) - (ys[index] ?? 0))
  }
  return null
}

function dotSeries(mark: MarkOf<'dot'>, figure: Figure, frame: Frame): ReadSeries {
  const points = pointsOf(mark.x, mark.y).flatMap(([x, y], index): ReadPoint[] => {
    const place = placeOf(frame, x, y)
    if (place === null) return []
    const name = mark.names?.[index]
    const words = `${axisWords(figure, 'x', x)}, ${axisWords(figure, 'y', y)}`
    return [{ ...place, words: name === undefined ? words : `${name}: ${words}`, reach: 4 }]
  })
  return { name: mark.label ?? 'points', points }
}

function contourSeries(mark: MarkOf<'contour'>, figure: Figure, frame: Frame): ReadSeries {
  const unit = displayUnit(Math.max(0, ...mark.levels.map(Math.abs)), mark.dimension, mark.unit)
  const name = mark.label ?? 'value'
  const points = pointsOf(mark.x, mark.y).flatMap(([x, y], index): ReadPoint[] => {
    const place = placeOf(frame, x, y)
    const value = mark.value[index]
    if (place === null || value === undefined) return []
    const words = joinUnit(formatNumber(value / unit.factor), unit.symbol)
    return [{ ...place, words: `${axisWords(figure, 'x', x)}, ${axisWords(figure, 'y', y)}: ${name} ${words}` }]
  })
  return { name, points }
}

/** A circle or outline of a drawing with its size; a text that stands inside a circle is part of its name. */
function partOf(mark: Mark, figure: Figure, frame: Frame): ReadPoint[] {
  if (mark.mark === 'circle') {
    const place = placeOf(frame, mark.x, mark.y)
    if (place === null) return []
    const inside = figure.marks.find(
      (each) => each.mark === 'text' && Math.hypot(each.x - mark.x, each.y - mark.y) <= mark.radius,
    )
    const names = [mark.label ?? 'circle', inside?.mark === 'text' ? inside.text : '']
    const name = names.filter((text) => text !== '').join(' ')
    const size = `radius ${quantityWords(figure, 'x', mark.radius)}`
    const centre = `centre at ${axisWords(figure, 'x', mark.x)}, ${axisWords(figure, 'y', mark.y)}`
    const rim = placeOf(frame, mark.x + mark.radius, mark.y)
    return [{ ...place, words: `${name}: ${size}, ${centre}`, reach: rim === null ? 0 : rim.x - place.x }]
  }
  if (mark.mark === 'text') {
    const place = placeOf(frame, mark.x, mark.y)
    const named = figure.marks.some(
      (each) => each.mark === 'circle' && Math.hypot(each.x - mark.x, each.y - mark.y) <= each.radius,
    )
    return place === null || named ? [] : [{ ...place, words: mark.text }]
  }
  if (mark.mark !== 'polygon' || mark.x.length === 0) return []
  const [west, east] = [Math.min(...mark.x), Math.max(...mark.x)]
  const [south, north] = [Math.min(...mark.y), Math.max(...mark.y)]
  const place = placeOf(frame, (west + east) / 2, (south + north) / 2)
  if (place === null) return []
  const size = `${quantityWords(figure, 'x', east - west)} across, ${quantityWords(figure, 'y', north - south)} along`
  const corner = placeOf(frame, east, north)
  const reach = corner === null ? 0 : Math.min(Math.abs(corner.x - place.x), Math.abs(corner.y - place.y))
  return [{ ...place, words: `${mark.label ?? 'outline'}: ${size}`, reach }]
}

function rulePoint(mark: MarkOf<'rule'>, figure: Figure, frame: Frame): ReadPoint {
  const words = axisWords(figure, mark.axis, mark.at)
  const middleX = (frame.left + frame.width - frame.right) / 2
  const upright = mark.axis === 'x'
  return {
    x: upright ? pixelX(frame, mark.at / frame.x.factor) : middleX,
    y: upright ? frame.top : pixelY(frame, mark.at / frame.y.factor),
    across: mark.axis,
    words: mark.label === undefined ? words : `${mark.label}: ${words}`,
  }
}

function barSeries(figure: Figure, { frame, rows }: PlotLayout): ReadSeries[] {
  const rowOf = new Map(rows.map((row, index) => [row.key, index]))
  const rowHeight = (frame.height - frame.top - frame.bottom) / Math.max(1, rows.length)
  const bars = figure.marks.flatMap((mark): ReadSeries[] => {
    if (mark.mark !== 'bar') return []
    const points = barsOf(mark).map(({ key, start, value }): ReadPoint => {
      const row = rowOf.get(key) ?? 0
      return {
        x: pixelX(frame, value / frame.x.factor),
        y: frame.top + rowHeight * (row + 0.5),
        words: `${rows[row]?.name ?? ''}: ${quantityWords(figure, 'x', value - start)}`,
      }
    })
    return [{ name: mark.label ?? (figure.x.label || 'bars'), points }]
  })
  const rules = figure.marks.flatMap((mark) =>
    mark.mark === 'rule' && mark.axis === 'x' ? [rulePoint(mark, figure, frame)] : [],
  )
  return [...bars, { name: 'lines across', points: rules }]
}

/** Where a value in SI stands; null where a logarithmic axis has no place for it. */
function placeOf(frame: Frame, x: number, y: number): { x: number; y: number } | null {
  const [shownX, shownY] = [x / frame.x.factor, y / frame.y.factor]
  if ((frame.x.logarithmic && shownX <= 0) || (frame.y.logarithmic && shownY <= 0)) return null
  const place = { x: pixelX(frame, shownX), y: pixelY(frame, shownY) }
  return Number.isFinite(place.x) && Number.isFinite(place.y) ? place : null
}

const yName = (figure: Figure) => (figure.y.label === '' ? 'value' : figure.y.label)

function quantityWords(figure: Figure, which: 'x' | 'y', value: number): string {
  const { factor, symbol } = axisUnit(figure[which])
  return joinUnit(formatNumber(value / factor), symbol)
}

function axisWords(figure: Figure, which: 'x' | 'y', value: number): string {
  const words = quantityWords(figure, which, value)
  return figure[which].label === '' ? words : `${figure[which].label} ${words}`
}
