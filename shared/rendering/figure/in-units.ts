/** A figure with its axes and levels in the units of the reader's system. Its data stay as they are, in SI. */
import type { Axis, Figure, Mark } from '../../contracts/index.js'
import { type UnitSystem, unitFor } from '../quantity/index.js'
import { extentOf } from './series.js'

export function figureInUnits(figure: Figure, system: UnitSystem): Figure {
  if (system === 'as written') return figure
  return {
    ...figure,
    x: axisInUnits(figure.x, reachOf(figure, 'x'), system),
    y: axisInUnits(figure.y, reachOf(figure, 'y'), system),
    marks: figure.marks.map((mark) => markInUnits(mark, figure.caption, system)),
  }
}

function reachOf(figure: Figure, which: 'x' | 'y'): number {
  const { from = 0, to = 0 } = figure[which]
  const { low, high } = extentOf(figure, which) ?? { low: 0, high: 0 }
  return Math.max(...[low, high, from, to].map(Math.abs))
}

function axisInUnits(axis: Axis, largest: number, system: UnitSystem): Axis {
  const { unit, dimension, label } = axis
  return withUnit(axis, unitFor(system, { unit, dimension, name: label, largest }))
}

/** Lines of equal value carry a unit of their own. */
function markInUnits(mark: Mark, caption: string, system: UnitSystem): Mark {
  if (mark.mark !== 'contour') return mark
  const { unit, dimension } = mark
  const largest = Math.max(0, ...mark.levels.map(Math.abs))
  return withUnit(mark, unitFor(system, { unit, dimension, name: mark.label ?? caption, largest }))
}

const withUnit = <T>(of: T, unit: string | undefined): T => (unit === undefined ? of : { ...of, unit })
