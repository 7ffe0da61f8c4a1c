/** Each mark of the figure contract as marks of the plotting library, in display units. */
import * as Plot from '@observablehq/plot'
import type { Figure, Mark } from '../../contracts/index.js'
import { barsOf, sharedSlots } from './bar-rows.js'
import { contourLevels } from './contour-lines.js'
import type { Frame } from './frame.js'
import type { MarkStyle } from './inks.js'
import { surfaceFill } from './patterns.js'
import { type MarkOf, type Point, pointsOf } from './series.js'

export interface MarkSetting {
  readonly figure: Figure
  readonly frame: Frame
  readonly style: MarkStyle
  /** Which of the bar marks this is. */
  readonly slot: number
}

/** Marks that the plotting library draws; rules, labels, circles and contours are drawn over it (overlays.ts). */
export function plotMarks(mark: Mark, setting: MarkSetting): Plot.Markish[] {
  switch (mark.mark) {
    case 'line':
      return [lineMark(shown(pointsOf(mark.x, mark.y), setting), setting, false)]
    case 'dot':
      return [dotMark(mark, setting)]
    case 'area':
      return areaMarks(mark, setting)
    case 'band':
      return bandMarks(mark, setting)
    case 'bar':
      return [barMark(mark, setting)]
    case 'polygon':
      return [polygonMark(mark, setting)]
    case 'contour':
      return contourLevels(mark) === null ? [scatteredContour(mark, setting)] : []
    default:
      return []
  }
}

function shown(points: readonly Point[], { frame }: MarkSetting): Point[] {
  return points
    .map(([x, y]): Point => [x / frame.x.factor, y / frame.y.factor])
    .filter(([x, y]) => (!frame.x.logarithmic || x > 0) && (!frame.y.logarithmic || y > 0))
}

function lineMark(points: readonly Point[], { style }: MarkSetting, thin: boolean): Plot.Markish {
  return Plot.line(points as Point[], {
    className: `ink-${style.ink}`,
    stroke: 'currentColor',
    strokeWidth: thin ? 1 : 2,
    ...(style.dash === undefined ? {} : { strokeDasharray: style.dash }),
  })
}

function dotMark(mark: MarkOf<'dot'>, setting: MarkSetting): Plot.Markish {
  return Plot.dot(shown(pointsOf(mark.x, mark.y), setting), {
    className: `ink-${setting.style.ink}`,
    stroke: 'currentColor',
    strokeWidth: 1.6,
    symbol: setting.style.symbol,
    r: 3.6,
  })
}

function areaMarks(mark: MarkOf<'area'>, setting: MarkSetting): Plot.Markish[] {
  const points = pointsOf(mark.x, mark.y)
  const base = (mark.base ?? 0) / setting.frame.y.factor
  return [surface(shown(points, setting), () => base, setting), lineMark(shown(points, setting), setting, false)]
}

function bandMarks(mark: MarkOf<'band'>, setting: MarkSetting): Plot.Markish[] {
  const low = shown(pointsOf(mark.x, mark.low), setting)
  const high = shown(pointsOf(mark.x, mark.high), setting)
  return [
    surface(high, (_, index) => low[index]?.[1] ?? 0, setting),
    lineMark(low, setting, true),
    lineMark(high, setting, true),
  ]
}

function surface(
  points: Point[],
  below: (point: Point, index: number) => number,
  { frame, style }: MarkSetting,
): Plot.Markish {
  const { fill } = surfaceFill(frame.id, style)
  return Plot.areaY(points, {
    className: `ink-${style.ink}`,
    x: (point: Point) => point[0],
    y1: below,
    y2: (point: Point) => point[1],
    fill,
    fillOpacity: fill === 'currentColor' ? 0.14 : 1,
  })
}

function barMark(mark: MarkOf<'bar'>, { figure, frame, style, slot }: MarkSetting): Plot.Markish {
  const slots = sharedSlots(figure)
  const slotHeight = 14
  const offset = slots === 1 ? {} : { insetTop: slot * slotHeight, insetBottom: (slots - 1 - slot) * slotHeight }
  return Plot.barX(barsOf(mark), {
    className: `ink-${style.ink}`,
    y: 'key',
    x1: (bar: { start: number }) => bar.start / frame.x.factor,
    x2: (bar: { value: number }) => bar.value / frame.x.factor,
    ...surfaceFill(frame.id, style),
    stroke: 'currentColor',
    strokeWidth: 1,
    ...offset,
  })
}

function polygonMark(mark: MarkOf<'polygon'>, setting: MarkSetting): Plot.Markish {
  const { style } = setting
  return Plot.line(shown(pointsOf(mark.x, mark.y), setting), {
    className: `ink-${style.ink}`,
    curve: 'linear-closed',
    stroke: 'currentColor',
    strokeWidth: 1.4,
    fill: mark.filled === true ? 'currentColor' : 'none',
    fillOpacity: 0.1,
    ...(style.dash === undefined ? {} : { strokeDasharray: style.dash }),
  })
}

/** Points that make no grid: the library interpolates between them. A full grid is drawn with its labels (overlays.ts). */
function scatteredContour(mark: MarkOf<'contour'>, { frame, style }: MarkSetting): Plot.Markish {
  const points = pointsOf(mark.x, mark.y).slice(0, mark.value.length)
  return Plot.contour(points, {
    className: `ink-${style.ink}`,
    x: (point: Point) => point[0] / frame.x.factor,
    y: (point: Point) => point[1] / frame.y.factor,
    value: (_: Point, index: number) => mark.value[index],
    thresholds: mark.levels as number[],
    interpolate: 'barycentric',
    pixelSize: 4,
    stroke: 'currentColor',
    strokeWidth: 1.3,
  })
}
