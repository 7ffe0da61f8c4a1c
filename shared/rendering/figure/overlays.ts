/** What is placed in pixels over the plot: rules, circles, contours and every label, kept clear of each other. */
import type { Mark } from '../../contracts/index.js'
import { svgElement } from '../dom.js'
import { displayUnit, formatNumber, joinUnit } from '../quantity/index.js'
import { type Bar, barsOf } from './bar-rows.js'
import { contourLevels } from './contour-lines.js'
import { type Frame, pixelX, pixelY, textSize, textWidth } from './frame.js'
import type { MarkStyle } from './inks.js'
import type { PlotLayout } from './layout.js'
import { type Box, firstFree, type LabelPlace, labelBox, placesAround, spreadApart } from './place-labels.js'
import type { MarkOf } from './series.js'

export interface OverlaySetting {
  readonly document: Document
  readonly layout: PlotLayout
  readonly style: MarkStyle
  /** Boxes of labels already placed. */
  readonly taken: Box[]
}

export function overlayOf(mark: Mark, setting: OverlaySetting): SVGElement | null {
  switch (mark.mark) {
    case 'rule':
      return drawRule(mark, setting)
    case 'circle':
      return drawCircle(mark, setting)
    case 'contour':
      return drawContour(mark, setting)
    case 'dot':
      return drawNames(mark, setting)
    case 'text':
      return drawText(mark, setting)
    default:
      return null
  }
}

/** A label with a rim of paper colour, so that a line behind it does not cross the letters. */
export function label(document: Document, text: string, place: LabelPlace, ink?: string): SVGElement {
  return svgElement(
    document,
    'text',
    {
      class: ink === undefined ? 'figure-label' : `figure-label ink-${ink}`,
      x: rounded(place.x),
      y: rounded(place.y),
      dy: '0.35em',
      'text-anchor': place.anchor,
      'font-size': textSize,
      fill: 'currentColor',
    },
    text,
  )
}

function fieldOf(frame: Frame): Box {
  return { left: frame.left, right: frame.width - 2, top: frame.top - 8, bottom: frame.height - frame.bottom }
}

function drawRule(mark: MarkOf<'rule'>, { document, layout, style, taken }: OverlaySetting): SVGElement | null {
  const { frame } = layout
  const upright = mark.axis === 'x'
  if (!upright && layout.rows.length > 0) return null
  const axis = upright ? frame.x : frame.y
  const at = mark.at / axis.factor
  if (at < axis.low || at > axis.high) return null
  const bottom = frame.height - frame.bottom
  const position = upright ? pixelX(frame, at) : pixelY(frame, at)
  const path = upright
    ? `M${rounded(position)},${frame.top}V${bottom}`
    : `M${frame.left},${rounded(position)}H${frame.width - frame.right}`
  const made = svgElement(
    document,
    'g',
    { class: `ink-${style.ink}` },
    svgElement(document, 'path', {
      d: path,
      stroke: 'currentColor',
      'stroke-width': 1.4,
      'stroke-dasharray': style.dash,
      fill: 'none',
    }),
  )
  if (mark.label !== undefined) {
    const place =
      layout.rows.length > 0
        ? placeOverBars(mark.label, position, frame, taken)
        : rulePlace(mark.label, upright, position, frame, taken)
    made.appendChild(label(document, mark.label, place))
  }
  return made
}

/** Above the bars, over the rule or to one side of it. */
function placeOverBars(text: string, position: number, frame: Frame, taken: Box[]): LabelPlace {
  const y = frame.top - 9
  const places: LabelPlace[] = [
    { x: position, y, anchor: 'middle' },
    { x: position + 3, y, anchor: 'start' },
    { x: position - 3, y, anchor: 'end' },
  ]
  const field = { left: 0, right: frame.width, top: 0, bottom: frame.top }
  return firstFree(places, textWidth(text), taken, field) ?? { x: position - 3, y, anchor: 'end' }
}

/** Beside an upright rule, as high as there is room; above or below a level rule, from its ends inwards. */
function rulePlace(text: string, upright: boolean, position: number, frame: Frame, taken: Box[]): LabelPlace {
  const places: LabelPlace[] = []
  const bottom = frame.height - frame.bottom
  if (upright)
    for (let y = frame.top + 8; y < bottom - 8; y += 16)
      places.push({ x: position + 6, y, anchor: 'start' }, { x: position - 6, y, anchor: 'end' })
  else
    for (let step = 6; step < (frame.width - frame.left - frame.right) / 2; step += 24)
      for (const y of [position - 9, position + 10])
        places.push(
          { x: frame.left + step, y, anchor: 'start' },
          { x: frame.width - frame.right - step, y, anchor: 'end' },
        )
  const field = { ...fieldOf(frame), left: frame.left }
  const crowded: LabelPlace = upright
    ? { x: position + 6, y: frame.top + 8, anchor: 'start' }
    : { x: frame.left + 4, y: position - 9, anchor: 'start' }
  return firstFree(places, textWidth(text), taken, field) ?? crowded
}

function drawCircle(mark: MarkOf<'circle'>, { document, layout: { frame }, style }: OverlaySetting): SVGElement {
  const centreX = mark.x / frame.x.factor
  const centreY = mark.y / frame.y.factor
  return svgElement(document, 'ellipse', {
    class: `ink-${style.ink}`,
    cx: rounded(pixelX(frame, centreX)),
    cy: rounded(pixelY(frame, centreY)),
    rx: rounded(Math.abs(pixelX(frame, centreX + mark.radius / frame.x.factor) - pixelX(frame, centreX))),
    ry: rounded(Math.abs(pixelY(frame, centreY + mark.radius / frame.y.factor) - pixelY(frame, centreY))),
    stroke: 'currentColor',
    'stroke-width': 1.4,
    'stroke-dasharray': style.dash,
    fill: mark.filled === true ? 'currentColor' : 'none',
    'fill-opacity': 0.1,
  })
}

function drawContour(
  mark: MarkOf<'contour'>,
  { document, layout: { frame }, style, taken }: OverlaySetting,
): SVGElement | null {
  const levels = contourLevels(mark)
  if (levels === null) return null
  const made = svgElement(document, 'g', { class: `ink-${style.ink}` })
  const unit = displayUnit(Math.max(...mark.levels.map(Math.abs)), mark.dimension, mark.unit)
  for (const { level, segments } of levels) {
    const pixels = segments.map(([from, to]) =>
      [from, to].map(([x, y]) => [pixelX(frame, x / frame.x.factor), pixelY(frame, y / frame.y.factor)] as const),
    )
    const path = pixels.map(
      ([from, to]) =>
        `M${rounded(from?.[0] ?? 0)},${rounded(from?.[1] ?? 0)}L${rounded(to?.[0] ?? 0)},${rounded(to?.[1] ?? 0)}`,
    )
    made.appendChild(
      svgElement(document, 'path', {
        d: path.join(''),
        stroke: 'currentColor',
        'stroke-width': 1.3,
        'stroke-dasharray': style.dash,
        fill: 'none',
      }),
    )
    const words = joinUnit(formatNumber(level / unit.factor, 3), unit.symbol)
    const place = contourPlace(
      pixels.map(([from]) => from ?? ([0, 0] as const)),
      textWidth(words),
      taken,
      fieldOf(frame),
    )
    if (place !== null) made.appendChild(label(document, words, place))
  }
  return made
}

/** The first point of a level, from its middle outwards, around which a label has room. */
function contourPlace(
  points: readonly (readonly [number, number])[],
  width: number,
  taken: Box[],
  field: Box,
): LabelPlace | null {
  const middle = Math.floor(points.length / 2)
  const outwards = points.map((_, turn) => points[middle + (turn % 2 === 0 ? turn / 2 : -(turn + 1) / 2)])
  const places = outwards
    .filter((point) => point !== undefined)
    .map(([x, y]): LabelPlace => ({ x, y, anchor: 'middle' }))
  return firstFree(places, width, taken, { ...field, top: field.top + 8 })
}

/** Names of points where there is room; the table of values carries them all. */
function drawNames(
  mark: MarkOf<'dot'>,
  { document, layout: { frame }, style, taken }: OverlaySetting,
): SVGElement | null {
  if (mark.names === undefined) return null
  const made = svgElement(document, 'g', {})
  mark.names.slice(0, Math.min(mark.x.length, mark.y.length)).forEach((name, index) => {
    const x = pixelX(frame, (mark.x[index] ?? 0) / frame.x.factor)
    const y = pixelY(frame, (mark.y[index] ?? 0) / frame.y.factor)
    const place = firstFree(placesAround(x, y), textWidth(name), taken, fieldOf(frame))
    if (place !== null) made.appendChild(label(document, name, place, style.ink))
  })
  return made
}

function drawText(mark: MarkOf<'text'>, { document, layout, style, taken }: OverlaySetting): SVGElement | null {
  const { frame } = layout
  if (layout.rows.length > 0) return null
  const x = pixelX(frame, mark.x / frame.x.factor)
  const y = pixelY(frame, mark.y / frame.y.factor)
  const place: LabelPlace = { x, y, anchor: mark.anchor ?? 'middle' }
  taken.push(labelBox(place, textWidth(mark.text)))
  return label(document, mark.text, place, style.ink)
}

/** Names of lines at their right ends; a name that had to move is joined to its end by a thin line. */
export function drawDirectLabels(document: Document, layout: PlotLayout): SVGElement | null {
  const { frame, direct } = layout
  if (direct.length === 0) return null
  const made = svgElement(document, 'g', { class: 'figure-direct' })
  const ends = direct.map((line) => line.endY)
  const places = spreadApart(ends, 15, frame.top, frame.height - frame.bottom - 4)
  direct.forEach((line, index) => {
    const y = places[index] ?? line.endY
    const path = `M${rounded(line.endX + 1)},${rounded(line.endY)}L${rounded(line.endX + 7)},${rounded(y)}`
    const joint = { class: `ink-${line.style.ink}`, d: path, stroke: 'currentColor', fill: 'none', 'stroke-width': 0.8 }
    if (Math.abs(y - line.endY) > 3) made.appendChild(svgElement(document, 'path', joint))
    made.appendChild(label(document, line.text, { x: line.endX + 9, y, anchor: 'start' }, line.style.ink))
  })
  return made
}

export interface BarPlace {
  /** Which of the bars that share a row, and how many do. */
  readonly slot: number
  readonly slots: number
  /** Whether no other bar mark is in the figure. */
  readonly alone: boolean
}

/** The number at the end of each bar: its length where bars stand on the axis or on each other, both ends where one alone spans a range. */
export function drawBarValues(mark: MarkOf<'bar'>, place: BarPlace, setting: OverlaySetting): SVGElement {
  const { slot, slots } = place
  const { document, layout } = setting
  const { frame, rows } = layout
  const rowHeight = (frame.height - frame.top - frame.bottom) / Math.max(1, rows.length)
  const rowOf = new Map(rows.map((row, index) => [row.key, index]))
  const made = svgElement(document, 'g', { class: 'figure-values' })
  const spans = mark.start !== undefined && place.alone
  for (const bar of barsOf(mark)) {
    const shownValue = (bar.value - bar.start) / frame.x.factor
    const end = pixelX(frame, bar.value / frame.x.factor)
    const back = shownValue < 0
    const y =
      frame.top + rowHeight * ((rowOf.get(bar.key) ?? 0) + 0.5) + (slot - (slots - 1) / 2) * (slots > 1 ? 14 : 0)
    made.appendChild(
      label(document, spans ? spanWords(bar, frame.x.factor) : formatNumber(shownValue), {
        x: back ? end - 5 : end + 5,
        y,
        anchor: back ? 'end' : 'start',
      }),
    )
  }
  return made
}

/** Both ends to three digits: a span is read as a range, not to its last place. */
function spanWords({ start, value }: Bar, factor: number): string {
  const words = (end: number) => formatNumber(Number((end / factor).toPrecision(3)))
  return start === value ? words(value) : `${words(start)} to ${words(value)}`
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100
}
