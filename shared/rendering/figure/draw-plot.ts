/** A figure as one SVG element without inline style: colours come from ink classes, so that light, dark and print share it. */
import * as Plot from '@observablehq/plot'
import type { Figure } from '../../contracts/index.js'
import { svgElement } from '../dom.js'
import { sharedSlots } from './bar-rows.js'
import { textSize } from './frame.js'
import { axisFormat, layOut, type PlotLayout } from './layout.js'
import { drawLegend } from './legend.js'
import { obstacles } from './obstacles.js'
import { drawBarValues, drawDirectLabels, overlayOf } from './overlays.js'
import { patternDefinitions } from './patterns.js'
import type { Box } from './place-labels.js'
import { plotMarks } from './plot-marks.js'
import { extentOf } from './series.js'

export const fontFamily = "'Barlow Semi Condensed', 'Arial Narrow', 'Liberation Sans Narrow', system-ui, sans-serif"

/** Draws `figure` at `width` [px]; `id` begins the ids of its patterns and must be unique in the page. */
export function drawPlot(document: Document, figure: Figure, width: number, id: string): SVGSVGElement {
  const layout = layOut(figure, width, id)
  const { frame } = layout
  const bars = layout.rows.length > 0
  const made = Plot.plot({
    document,
    width: frame.width,
    height: frame.height,
    marginTop: frame.top,
    marginRight: frame.right,
    marginBottom: frame.bottom,
    marginLeft: frame.left,
    x: { type: frame.x.logarithmic ? 'log' : 'linear', domain: [frame.x.low, frame.x.high], axis: null },
    y: bars
      ? {
          type: 'band',
          domain: layout.rows.map((row) => row.key),
          paddingInner: 0.28,
          paddingOuter: 0.14,
          round: false,
          axis: null,
        }
      : { type: frame.y.logarithmic ? 'log' : 'linear', domain: [frame.y.low, frame.y.high], axis: null },
    marks: [...axisMarks(layout, bars, figure.toScale === true), ...markList(figure, layout)],
  }) as SVGSVGElement
  tidy(made)
  for (const part of [
    patternDefinitions(document, id, layout.styles),
    axisTitles(document, layout),
    drawLegend(document, layout.legend, id),
    ...overlays(document, figure, layout),
    drawDirectLabels(document, layout),
    nothingDrawn(document, figure, layout),
  ])
    if (part !== null) made.appendChild(part)
  return made
}

function axisMarks(layout: PlotLayout, bars: boolean, drawing: boolean): Plot.Markish[] {
  const { frame, xTicks, yTicks, rows } = layout
  const tick = { className: 'figure-axis', tickSize: 5, label: null }
  const marks: Plot.Markish[] = []
  const grid = { className: 'figure-grid', stroke: 'currentColor', strokeOpacity: 1 }
  if (bars || drawing) marks.push(Plot.gridX(xTicks as number[], grid))
  if (!bars) marks.push(Plot.gridY(yTicks as number[], grid))
  marks.push(Plot.axisX(xTicks as number[], { ...tick, tickFormat: axisFormat(frame.x, 'x') }))
  if (bars) {
    const names = new Map(rows.map((row) => [row.key, row.shown]))
    marks.push(Plot.axisY({ ...tick, tickSize: 0, tickFormat: (key: string) => names.get(key) ?? key }))
    if (frame.x.low <= 0 && frame.x.high >= 0)
      marks.push(Plot.ruleX([0], { className: 'figure-base', stroke: 'currentColor' }))
  } else {
    marks.push(Plot.axisY(yTicks as number[], { ...tick, tickFormat: axisFormat(frame.y, 'y') }))
    if (!drawing) marks.push(Plot.ruleY([frame.y.low], { className: 'figure-base', stroke: 'currentColor' }))
  }
  return marks
}

function markList(figure: Figure, layout: PlotLayout): Plot.Markish[] {
  let slot = 0
  const bars = layout.rows.length > 0
  return figure.marks.flatMap((mark, index) => {
    const style = layout.styles[index]
    // Names and numbers cannot share an axis: a bar figure draws its bars and upright rules only.
    if (style === undefined || bars !== (mark.mark === 'bar')) return []
    return plotMarks(mark, { figure, frame: layout.frame, style, slot: mark.mark === 'bar' ? slot++ : 0 })
  })
}

function overlays(document: Document, figure: Figure, layout: PlotLayout): (SVGElement | null)[] {
  const taken: Box[] = layout.rows.length > 0 ? [] : obstacles(figure, layout.frame)
  const slots = sharedSlots(figure)
  const alone = figure.marks.filter((mark) => mark.mark === 'bar').length === 1
  let slot = 0
  return figure.marks.map((mark, index) => {
    const style = layout.styles[index]
    if (style === undefined) return null
    const setting = { document, layout, style, taken }
    if (mark.mark === 'bar') return drawBarValues(mark, { slot: slot++, slots, alone }, setting)
    return layout.rows.length > 0 && mark.mark !== 'rule' ? null : overlayOf(mark, setting)
  })
}

function axisTitles(document: Document, { frame, legend, rows }: PlotLayout): SVGElement {
  const text = { class: 'figure-title', 'font-size': textSize, fill: 'currentColor' }
  return svgElement(
    document,
    'g',
    { class: 'figure-titles' },
    svgElement(
      document,
      'text',
      { ...text, x: frame.width - frame.right, y: frame.height - 6, 'text-anchor': 'end' },
      frame.x.title,
    ),
    rows.length > 0 || frame.y.title === ''
      ? null
      : svgElement(
          document,
          'text',
          { ...text, x: 0, y: frame.top - (legend.length > 0 ? 10 : 12), 'text-anchor': 'start' },
          frame.y.title,
        ),
  )
}

function nothingDrawn(document: Document, figure: Figure, { frame }: PlotLayout): SVGElement | null {
  if (extentOf(figure, 'x') !== null) return null
  const x = (frame.left + frame.width - frame.right) / 2
  const y = (frame.top + frame.height - frame.bottom) / 2
  return svgElement(
    document,
    'text',
    { class: 'figure-empty', x, y, 'text-anchor': 'middle', 'font-size': textSize, fill: 'currentColor' },
    'no values to draw',
  )
}

/**
 * The library's own style element and class go; size and font become attributes. Its labels of groups become data: inside
 * one image only the image has a name.
 */
function tidy(made: SVGSVGElement): void {
  for (const style of Array.from(made.querySelectorAll('style'))) style.remove()
  // The library leaves a fill out where it equals that of its root; written out it also holds in a file of its own.
  for (const group of Array.from(made.children))
    if (!group.hasAttribute('fill')) group.setAttribute('fill', 'currentColor')
  for (const group of Array.from(made.querySelectorAll('[aria-label]'))) {
    group.setAttribute('data-part', group.getAttribute('aria-label') ?? '')
    group.removeAttribute('aria-label')
    group.removeAttribute('aria-hidden')
  }
  made.setAttribute('class', 'figure-plot')
  made.setAttribute('font-size', String(textSize))
  made.setAttribute('font-family', fontFamily)
}
