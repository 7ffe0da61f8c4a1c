/** Decides the frame of a plot: margins that hold tick words, names, direct labels and legend. */
import type { Figure, Mark } from '../../contracts/index.js'
import { formatNumber } from '../quantity/index.js'
import { type DisplayAxis, displayAxis, wantedTicks } from './axes.js'
import { type BarRow, barRows } from './bar-rows.js'
import { drawnToScale, type Frame, pixelX, pixelY, textWidth } from './frame.js'
import { type MarkStyle, markStyles } from './inks.js'
import { type LegendEntry, legendHeight, placeLegend } from './legend.js'
import { isBarFigure } from './series.js'
import { tickFormat, tickValues } from './ticks.js'

export interface DirectLabel {
  readonly text: string
  readonly style: MarkStyle
  /** The line's right end [px]. */
  readonly endX: number
  readonly endY: number
}

export interface PlotLayout {
  readonly frame: Frame
  readonly styles: readonly MarkStyle[]
  readonly xTicks: readonly number[]
  readonly yTicks: readonly number[]
  readonly direct: readonly DirectLabel[]
  readonly legend: readonly LegendEntry[]
  /** Rows of a bar figure; empty for others. */
  readonly rows: readonly BarRow[]
}

const plotHeight = 300
const tallestDrawing = 460
const titleRow = 26
const tickRow = 42
/** Names of rules stand above the bars, which fill the field. */
export const ruleRow = 16
/** More labelled lines than this go to a legend. */
const directLimit = 6

export function layOut(figure: Figure, width: number, id: string): PlotLayout {
  const styles = markStyles(figure.marks)
  return isBarFigure(figure) ? layOutBars(figure, width, id, styles) : layOutField(figure, width, id, styles)
}

function layOutField(figure: Figure, width: number, id: string, styles: readonly MarkStyle[]): PlotLayout {
  const x = displayAxis(figure, 'x')
  const y = displayAxis(figure, 'y')
  const directMarks = directlyLabelled(figure.marks, width)
  const legend = placeLegend(legendMarks(figure.marks, styles, directMarks), width)
  const longest = Math.max(0, ...directMarks.map((index) => textWidth(labelOf(figure.marks[index]))))
  const format = axisFormat(y, 'y')
  const yWords = axisTicks(y, 'y').map(format)
  const plain: Frame = {
    width,
    height: plotHeight + legendHeight(legend),
    top: titleRow + legendHeight(legend),
    right: Math.max(longest + 16, 22),
    bottom: tickRow,
    left: Math.max(...yWords.map(textWidth), 12) + 16,
    x,
    y,
    id,
  }
  const frame = figure.toScale === true ? drawnToScale(plain, tallestDrawing) : plain
  return {
    frame,
    styles,
    xTicks: axisTicks(frame.x, 'x'),
    yTicks: axisTicks(frame.y, 'y'),
    direct: directMarks
      .map((index) => directLabel(figure.marks[index], styles[index], frame))
      .filter((label) => label !== null),
    legend,
    rows: [],
  }
}

function layOutBars(figure: Figure, width: number, id: string, styles: readonly MarkStyle[]): PlotLayout {
  const bars = barRows(figure)
  const legend = placeLegend(legendMarks(figure.marks, styles, []), width)
  const room = Math.max(0, ...bars.rows.map((row) => textWidth(row.shown)))
  const rowHeight = bars.rows.length > 40 ? 16 : Math.max(24, 14 * bars.slots + 8)
  const ruleNames = figure.marks.some((mark) => mark.mark === 'rule' && mark.label !== undefined)
  const top = 10 + legendHeight(legend) + (ruleNames ? ruleRow : 0)
  const left = Math.min(room + 14, width * 0.42)
  const right = 22
  const x = barAxis(figure, displayAxis(figure, 'x'), width - left - right)
  const frame: Frame = {
    width,
    height: top + Math.max(1, bars.rows.length) * rowHeight + tickRow,
    top,
    right,
    bottom: tickRow,
    left,
    x,
    y: { factor: 1, title: '', unit: '', logarithmic: false, low: 0, high: 1 },
    id,
  }
  return { frame, styles, xTicks: axisTicks(x, 'x'), yTicks: [], direct: [], legend, rows: bars.rows }
}

/** Bars end where their largest value does, with room for the number written at that end. */
function barAxis(figure: Figure, axis: DisplayAxis, inner: number): DisplayAxis {
  const labelShare = Math.min(0.25, 54 / inner)
  const span = axis.high - axis.low
  return {
    ...axis,
    logarithmic: false,
    low: axis.low < 0 && figure.x.from === undefined ? axis.low - span * labelShare : axis.low,
    high: axis.high > 0 && figure.x.to === undefined ? axis.high + span * labelShare : axis.high,
  }
}

export function axisTicks(axis: DisplayAxis, which: 'x' | 'y'): number[] {
  if (!axis.logarithmic) return tickValues(axis.low, axis.high, wantedTicks[which])
  const decades = Math.log10(axis.high / axis.low)
  if (decades < 1) return tickValues(axis.low, axis.high, wantedTicks[which])
  const steps = decades > 4 ? [1] : decades > 2 ? [1, 3] : [1, 2, 5]
  const ticks: number[] = []
  for (let power = Math.floor(Math.log10(axis.low)); power <= Math.ceil(Math.log10(axis.high)); power++)
    for (const step of steps) {
      const value = Number((step * 10 ** power).toPrecision(6))
      if (value >= axis.low * (1 - 1e-9) && value <= axis.high * (1 + 1e-9)) ticks.push(value)
    }
  return ticks
}

export function axisFormat(axis: DisplayAxis, which: 'x' | 'y'): (value: number) => string {
  return axis.logarithmic ? (value) => formatNumber(value, 3) : tickFormat(axis.low, axis.high, wantedTicks[which])
}

function labelOf(mark: Mark | undefined): string {
  return mark !== undefined && 'label' in mark ? (mark.label ?? '') : ''
}

/** Lines are named at their right end when they are few, named, and the names leave room for the plot. */
function directlyLabelled(marks: readonly Mark[], width: number): number[] {
  const named = marks.flatMap((mark, index) =>
    mark.mark === 'line' && labelOf(mark) !== '' && mark.x.length > 0 ? [index] : [],
  )
  const longest = Math.max(0, ...named.map((index) => textWidth(labelOf(marks[index]))))
  return named.length <= directLimit && longest <= width * 0.3 ? named : []
}

function directLabel(mark: Mark | undefined, style: MarkStyle | undefined, frame: Frame): DirectLabel | null {
  if (mark?.mark !== 'line' || style === undefined) return null
  const last = mark.x.reduce((best, x, index) => (x >= (mark.x[best] ?? x) ? index : best), 0)
  return {
    text: labelOf(mark),
    style,
    endX: pixelX(frame, (mark.x[last] ?? 0) / frame.x.factor),
    endY: pixelY(frame, (mark.y[last] ?? 0) / frame.y.factor),
  }
}

function legendMarks(
  marks: readonly Mark[],
  styles: readonly MarkStyle[],
  direct: readonly number[],
): Omit<LegendEntry, 'x' | 'y'>[] {
  return marks.flatMap((mark, index) => {
    const style = styles[index]
    const text = labelOf(mark)
    if (text === '' || style === undefined || mark.mark === 'rule' || direct.includes(index)) return []
    return [{ mark: mark.mark, text, style, filled: 'filled' in mark && mark.filled === true }]
  })
}
