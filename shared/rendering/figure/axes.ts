/** Axes in display units: factor to SI, title with unit, ends. */
import type { Axis, Figure } from '../../contracts/index.js'
import { displayUnit, siUnit } from '../quantity/index.js'
import { extentOf } from './series.js'
import { roundedOut } from './ticks.js'

export interface DisplayAxis {
  /** Divide a value in SI by this to get what is shown. */
  readonly factor: number
  /** `true airspeed, m/s`. */
  readonly title: string
  readonly unit: string
  readonly logarithmic: boolean
  /** Ends in display units. */
  readonly low: number
  readonly high: number
}

/** About how many ticks an axis carries. */
export const wantedTicks = { x: 7, y: 5 } as const

export function axisUnit(axis: Axis): { readonly factor: number; readonly symbol: string } {
  return displayUnit(1, axis.dimension, axis.unit ?? siUnit(axis.dimension))
}

/** `label, unit`: the way an axis and a column of a table are headed. */
export function axisTitle(axis: Axis): string {
  const { symbol } = axisUnit(axis)
  if (symbol === '') return axis.label
  return axis.label === '' ? symbol : `${axis.label}, ${symbol}`
}

export function displayAxis(figure: Figure, which: 'x' | 'y'): DisplayAxis {
  const axis = figure[which]
  const { factor, symbol } = axisUnit(axis)
  const extent = extentOf(figure, which) ?? { low: axis.from ?? 0, high: axis.to ?? (axis.from ?? 0) + factor }
  const logarithmic = axis.scale === 'logarithmic' && (axis.from ?? extent.low) > 0 && (axis.to ?? extent.high) > 0
  const ends = spread(extent.low / factor, extent.high / factor, logarithmic)
  const [low, high] =
    logarithmic || figure.marks.some((mark) => mark.mark === 'contour')
      ? ends
      : figure.toScale === true
        ? withRoom(ends)
        : roundedOut(ends[0], ends[1], wantedTicks[which])
  const from = axis.from === undefined ? low : axis.from / factor
  const to = axis.to === undefined ? high : axis.to / factor
  const sound = to > from
  return {
    factor,
    title: axisTitle(axis),
    unit: symbol,
    logarithmic,
    low: sound ? from : low,
    high: sound ? to : high,
  }
}

/** A single value gets room on both sides; otherwise an axis would have no length. */
function spread(low: number, high: number, logarithmic: boolean): [number, number] {
  if (high > low) return [low, high]
  if (logarithmic) return [low / 2, high * 2]
  const room = low === 0 ? 1 : Math.abs(low) * 0.1
  return [low - room, high + room]
}

/** A drawing stands a little off the edge of its field. */
function withRoom([low, high]: readonly [number, number]): [number, number] {
  const room = (high - low) * 0.03
  return [low - room, high + room]
}
