/** The points of marks as pairs, and how far they reach; x and y of unequal length are cut to the shorter. */
import type { Figure, Mark } from '../../contracts/index.js'

export type Point = readonly [x: number, y: number]
export type MarkOf<K extends Mark['mark']> = Extract<Mark, { mark: K }>

export interface Extent {
  readonly low: number
  readonly high: number
}

export function pointsOf(x: readonly number[], y: readonly number[]): Point[] {
  return Array.from({ length: Math.min(x.length, y.length) }, (_, index) => [x[index] ?? 0, y[index] ?? 0])
}

export function isBarFigure(figure: Figure): boolean {
  return figure.marks.some((mark) => mark.mark === 'bar')
}

/** Smallest and largest value [SI] of all marks along an axis; null when there is none. */
export function extentOf(figure: Figure, axis: 'x' | 'y'): Extent | null {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const mark of figure.marks)
    for (const value of reachOf(mark, axis)) {
      if (!Number.isFinite(value)) continue
      low = Math.min(low, value)
      high = Math.max(high, value)
    }
  return low <= high ? { low, high } : null
}

function reachOf(mark: Mark, axis: 'x' | 'y'): readonly number[] {
  switch (mark.mark) {
    case 'line':
    case 'dot':
    case 'polygon':
    case 'contour':
      return mark[axis]
    case 'area':
      return axis === 'x' ? mark.x : mark.y.length === 0 ? [] : [mark.base ?? 0, ...mark.y]
    case 'band':
      return axis === 'x' ? mark.x : [...mark.low, ...mark.high]
    case 'bar':
      return axis === 'x' ? [0, ...mark.value, ...(mark.start ?? [])] : []
    case 'rule':
      return mark.axis === axis ? [mark.at] : []
    case 'text':
      return [mark[axis]]
    case 'circle':
      return [mark[axis] - mark.radius, mark[axis] + mark.radius]
  }
}
