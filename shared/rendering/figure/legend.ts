/** A legend above the plot for the series that carry no label of their own, each with a sample of its stroke or fill. */
import type { Mark } from '../../contracts/index.js'
import { svgElement } from '../dom.js'
import { textSize, textWidth } from './frame.js'
import type { MarkStyle } from './inks.js'
import { surfaceFill } from './patterns.js'

export interface LegendEntry {
  readonly mark: Mark['mark']
  readonly text: string
  readonly style: MarkStyle
  readonly filled: boolean
  readonly x: number
  readonly y: number
}

const sample = 26
const gap = 20
const row = 19

/** Entries from left to right, in as many rows as they need. */
export function placeLegend(entries: readonly Omit<LegendEntry, 'x' | 'y'>[], width: number): LegendEntry[] {
  let x = 0
  let y = 0
  return entries.map((entry) => {
    const wide = sample + 7 + textWidth(entry.text)
    if (x > 0 && x + wide > width) {
      x = 0
      y += row
    }
    const placed = { ...entry, x, y }
    x += wide + gap
    return placed
  })
}

export function legendHeight(entries: readonly LegendEntry[]): number {
  return entries.length === 0 ? 0 : Math.max(...entries.map((entry) => entry.y)) + row + 6
}

export function drawLegend(document: Document, entries: readonly LegendEntry[], id: string): SVGElement | null {
  if (entries.length === 0) return null
  return svgElement(
    document,
    'g',
    { class: 'figure-legend' },
    entries.map((entry) =>
      svgElement(
        document,
        'g',
        { transform: `translate(${entry.x},${entry.y + row / 2})` },
        drawSample(document, entry, id),
        svgElement(
          document,
          'text',
          { x: sample + 7, dy: '0.35em', 'text-anchor': 'start', 'font-size': textSize },
          entry.text,
        ),
      ),
    ),
  )
}

function drawSample(document: Document, entry: LegendEntry, id: string): SVGElement {
  const { style, mark } = entry
  const stroke = {
    class: `ink-${style.ink}`,
    stroke: 'currentColor',
    'stroke-width': 2,
    'stroke-dasharray': style.dash,
  }
  if (mark === 'dot')
    return svgElement(document, 'path', {
      class: `ink-${style.ink}`,
      d: symbolPath(style.symbol),
      transform: `translate(${sample / 2},0)`,
      stroke: 'currentColor',
      'stroke-width': 1.6,
      fill: 'none',
    })
  if (mark === 'line' || mark === 'contour' || ((mark === 'polygon' || mark === 'circle') && !entry.filled))
    return svgElement(document, 'path', { ...stroke, d: `M0,0H${sample}`, fill: 'none' })
  const { fill, fillOpacity } = surfaceFill(id, style)
  const light = mark === 'band' || mark === 'area' || entry.filled ? fillOpacity * 0.25 : fillOpacity
  return svgElement(document, 'rect', {
    class: `ink-${style.ink}`,
    y: -6,
    width: sample,
    height: 12,
    fill,
    'fill-opacity': style.fill === 'solid' || style.fill === 'light' ? light : 1,
    stroke: 'currentColor',
  })
}

/** Outlines of the point shapes, about 8 px across. */
export function symbolPath(symbol: MarkStyle['symbol']): string {
  switch (symbol) {
    case 'circle':
      return 'M4,0A4,4,0,1,1,-4,0A4,4,0,1,1,4,0Z'
    case 'square':
      return 'M-3.6,-3.6H3.6V3.6H-3.6Z'
    case 'triangle':
      return 'M0,-4.6L4.2,3H-4.2Z'
    case 'diamond2':
      return 'M0,-4.8L4.8,0L0,4.8L-4.8,0Z'
    case 'plus':
      return 'M-4.6,0H4.6M0,-4.6V4.6'
  }
}
