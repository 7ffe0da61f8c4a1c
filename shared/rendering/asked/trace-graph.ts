/** A trace as a small graph: assumptions at the left, the number at the right. The outline beside it says the same in words. */

import type { TraceStep } from '../../contracts/index.js'
import { element, svgElement } from '../dom.js'
import { type GraphEdge, type GraphNode, traceGraph } from './trace-graph-layout.js'
import type { TraceSubject } from './trace-words.js'

/** [px]; the drawer is about as wide, and the drawing shrinks with it. */
const width = 380
const rowHeight = 19
const margin = 10
/** Marks take at most this part of the width; what is left is for the labels. */
const marksShare = 0.42
/** Between layers [px], and how many lines have room there. */
const widestStep = 44
const mostLines = 5
/** Of the corners of lines [px]. */
const corner = 5
/** Of the label font at its size, on the wide side. */
const letterWidth = 5.9

/** Null where the number stands alone. Its links are for the pointer: the keyboard has those of the outline. */
export function renderTraceGraph(document: Document, subject: TraceSubject): HTMLElement | null {
  const { nodes, edges, layers, leftOut } = traceGraph(subject.trace)
  if (nodes.length < 2) return null
  const step = Math.min(widestStep, (width * marksShare - margin) / Math.max(layers - 1, 1))
  const place = ({ row, layer }: GraphNode): Place => ({ x: margin + layer * step, y: margin + row * rowHeight })
  const labelsAt = margin + (layers - 1) * step + 14
  const height = 2 * margin + (nodes.length - 1) * rowHeight
  const graph = svgElement(
    document,
    'svg',
    { class: 'trace-graph', viewBox: `0 0 ${width} ${height}`, width, height, 'aria-hidden': 'true' },
    edges.map((edge) => drawEdge(document, edge, place, trunkOf(edge.to, nodes, step))),
    nodes.map((node) => drawNode(document, node, place(node), labelsAt, subject)),
  )
  return element(
    document,
    'figure',
    { class: 'trace-figure' },
    graph,
    element(
      document,
      'figcaption',
      {},
      `Squares are assumptions, circles what is worked out; the number stands last. Hollow and dashed: does not move it, all else as it stands. ${leftOut}`.trim(),
    ),
  )
}

interface Place {
  readonly x: number
  readonly y: number
}

/**
 * All that goes into a node joins one upright line to the left of it: along the row, round the corner, down, and in. So a fan of many is one
 * line with many entries. Nodes of a layer have lines side by side, so that none runs through another node.
 */
function trunkOf(to: GraphNode, nodes: readonly GraphNode[], step: number): number {
  const beside = nodes.filter(({ layer }) => layer === to.layer)
  const lines = Math.min(beside.length, mostLines)
  return margin + to.layer * step - (step * (1 + (beside.indexOf(to) % lines))) / (lines + 1.5)
}

function drawEdge(
  document: Document,
  { from, to }: GraphEdge,
  place: (node: GraphNode) => Place,
  trunk: number,
): SVGElement {
  const [a, b] = [place(from), place(to)]
  const turn = Math.max(0, Math.min(corner, trunk - a.x, b.x - trunk, (b.y - a.y) / 2))
  return svgElement(document, 'path', {
    class: 'trace-edge',
    'data-acts': isIdle(from) || isIdle(to) ? 'inactive' : 'moves',
    d: [
      `M${at(a.x)} ${at(a.y)}H${at(trunk - turn)}Q${at(trunk)} ${at(a.y)} ${at(trunk)} ${at(a.y + turn)}`,
      `V${at(b.y - turn)}Q${at(trunk)} ${at(b.y)} ${at(trunk + turn)} ${at(b.y)}H${at(b.x)}`,
    ].join(''),
  })
}

function drawNode(
  document: Document,
  node: GraphNode,
  { x, y }: Place,
  labelsAt: number,
  subject: TraceSubject,
): SVGElement {
  const { step, folded } = node
  const nameAndValue = (one: TraceStep) =>
    [subject.label(one.name), one.value === undefined ? '' : subject.value(one)].join(' ').trim()
  const words = folded.length === 0 ? nameAndValue(step) : `and ${folded.length} more that are read alike`
  const title = folded.length === 0 ? words : folded.map(nameAndValue).join(', ')
  const idle = isIdle(node) ? ' (does not move it)' : ''
  const room = Math.floor((width - labelsAt) / letterWidth) - idle.length
  const acts = isIdle(node) ? 'inactive' : 'moves'
  const mark =
    step.kind === 'assumption'
      ? svgElement(document, 'rect', { class: 'trace-mark', x: at(x - 4), y: at(y - 4), width: 8, height: 8 })
      : svgElement(document, 'circle', {
          class: 'trace-mark',
          cx: at(x),
          cy: at(y),
          r: step.kind === 'other' ? 2.5 : 4,
        })
  return svgElement(
    document,
    'a',
    { class: 'trace-node', 'data-acts': acts, href: `#cell-${step.cell}-line-${step.line}`, tabindex: -1 },
    svgElement(document, 'title', {}, `${title}${idle}`),
    svgElement(document, 'path', { class: 'trace-leader', d: `M${at(x + 6)} ${at(y)}H${at(labelsAt - 4)}` }),
    folded.length === 0
      ? null
      : svgElement(document, 'rect', { class: 'trace-mark', x: at(x - 1), y: at(y - 7), width: 8, height: 8 }),
    mark,
    svgElement(document, 'text', { x: at(labelsAt), y: at(y + 4) }, `${shortened(words, room)}${idle}`),
  )
}

function isIdle({ step: { acts } }: GraphNode): boolean {
  return acts === 'inactive' || acts === 'hardly'
}

function shortened(words: string, room: number): string {
  const letters = [...words]
  return letters.length <= room
    ? words
    : `${letters
        .slice(0, Math.max(room - 1, 1))
        .join('')
        .trimEnd()}…`
}

function at(value: number): string {
  return String(Math.round(value * 10) / 10)
}
