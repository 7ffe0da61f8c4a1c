/** The waterfall: from the old answer to the new, step by step in two orders, with each step's share. */
import {
  type CellId,
  cautionLine,
  type Waterfall,
  type WaterfallPart,
  type WaterfallRow,
} from '../../contracts/index.js'
import { element, svgElement } from '../dom.js'
import { countOf, formatQuantity, humaniseName, typesetNodes } from '../quantity/index.js'
import { changeWords, type Shown } from './change-words.js'

export interface WaterfallNames {
  /** How the two sides are called: `A`, `live text`. */
  readonly from: string
  readonly to: string
  /** Number in the margin on either side. */
  numberOf(cell: CellId): string | undefined
  /** Dimension and unit of the result, under its own name, and of assumptions. */
  shown(name: string): Shown
  /** A reason of the pipeline with its cells called by their numbers. */
  reason(words: string): string
}

/** A line of the table: words, and numbers in SI where there are any. */
export interface WaterfallLine {
  readonly words: string
  readonly together?: string
  /** Undefined where it is told together with a later line. */
  readonly forward?: number
  readonly reverse?: number
  readonly share?: number
}

export function waterfallLines(waterfall: Waterfall, names: WaterfallNames): readonly WaterfallLine[] {
  const { steps, shares, kernel } = waterfall
  const [forward, reverse] = [effectsByStep(waterfall.forward), effectsByStep(waterfall.reverse)]
  const lines = steps.map(({ parts, together }, index): WaterfallLine => {
    const [down, up] = [forward.get(index), reverse.get(index)]
    const share = shares.kind === 'none' ? undefined : shares.values[index]
    return {
      words: parts.map((part) => partWords(part, names)).join('; '),
      ...(together === undefined ? {} : { together: names.reason(together) }),
      ...(down === undefined ? {} : { forward: down }),
      ...(up === undefined ? {} : { reverse: up }),
      ...(share === undefined ? {} : { share }),
    }
  })
  if (kernel === undefined) return lines
  const words = 'another version of the kernel, the same text'
  return [{ words, forward: kernel, reverse: kernel, share: kernel }, ...lines]
}

/** The effect stands with the last of the steps that were taken together. */
function effectsByStep(rows: readonly WaterfallRow[]): ReadonlyMap<number, number> {
  return new Map(
    rows.flatMap(({ steps, effect }) => (steps.length === 0 ? [] : [[steps.at(-1) ?? 0, effect] as const])),
  )
}

export function partWords(part: WaterfallPart, names: WaterfallNames): string {
  if (part.kind === 'cell') return `cell ${names.numberOf(part.cell) ?? part.cell} ${part.change}`
  const { dimension, unit } = names.shown(part.name)
  const show = (si: number) => formatQuantity(si, dimension, unit).text
  return `${humaniseName(part.name)} from ${show(part.from)} to ${show(part.to)}`
}

export function renderWaterfall(document: Document, waterfall: Waterfall, names: WaterfallNames): HTMLElement {
  const shown = names.shown(waterfall.name)
  const lines = waterfallLines(waterfall, names)
  const scale = scaleOf(waterfall, lines)
  let total = waterfall.from
  const rows = lines.map((line) => {
    const before = total
    total += line.forward ?? 0
    return stepRow(document, line, shown, scale, [before, total])
  })
  return element(
    document,
    'div',
    { class: 'waterfall' },
    element(
      document,
      'div',
      { class: 'compare-scroll', tabindex: 0, role: 'group', 'aria-label': 'Waterfall' },
      element(
        document,
        'table',
        { class: 'compare-table waterfall-table' },
        head(document),
        element(
          document,
          'tbody',
          {},
          endRow(document, names.from, waterfall.from, shown),
          rows,
          endRow(document, names.to, waterfall.to, shown),
        ),
      ),
    ),
    notes(waterfall, names).map((note) => element(document, 'p', { class: 'waterfall-note' }, note)),
  )
}

function head(document: Document): HTMLElement {
  const titles = ['Step', '', 'First to last', 'Last to first', 'Share']
  return element(
    document,
    'thead',
    {},
    element(
      document,
      'tr',
      {},
      titles.map((title) => element(document, title === '' ? 'td' : 'th', title === '' ? {} : { scope: 'col' }, title)),
    ),
  )
}

function endRow(document: Document, words: string, si: number, { dimension, unit }: Shown): HTMLElement {
  return element(
    document,
    'tr',
    { class: 'waterfall-end' },
    element(document, 'th', { scope: 'row' }, words),
    element(document, 'td', {}),
    element(document, 'td', { colspan: 3 }, typesetNodes(document, formatQuantity(si, dimension, unit).text)),
  )
}

function stepRow(
  document: Document,
  line: WaterfallLine,
  shown: Shown,
  scale: (si: number) => number,
  span: readonly [number, number],
): HTMLElement {
  const cell = (si: number | undefined) =>
    element(document, 'td', {}, si === undefined ? 'with the next' : typesetNodes(document, changeWords(si, shown)))
  const share = line.share === undefined ? '' : typesetNodes(document, changeWords(line.share, shown))
  return element(
    document,
    'tr',
    {},
    element(
      document,
      'th',
      { scope: 'row' },
      typesetNodes(document, line.words),
      line.together === undefined
        ? null
        : element(document, 'span', { class: 'together' }, ` (together: ${line.together})`),
    ),
    element(document, 'td', {}, bar(document, scale(span[0]), scale(span[1]))),
    cell(line.forward),
    cell(line.reverse),
    element(document, 'td', {}, share),
  )
}

const barWidth = 160
const barHeight = 12

function scaleOf(waterfall: Waterfall, lines: readonly WaterfallLine[]): (si: number) => number {
  let total = waterfall.from
  const totals = [total, waterfall.to, ...lines.map((line) => (total += line.forward ?? 0))]
  const [low, high] = [Math.min(...totals), Math.max(...totals)]
  return (si) => (high === low ? 0 : ((si - low) / (high - low)) * (barWidth - 2))
}

/** Rising steps are filled, falling ones are outlined: the numbers beside them say so too. */
function bar(document: Document, from: number, to: number): SVGElement {
  const [left, right] = [Math.min(from, to), Math.max(from, to)]
  return svgElement(
    document,
    'svg',
    {
      class: 'waterfall-bar',
      width: barWidth,
      height: barHeight,
      viewBox: `0 0 ${barWidth} ${barHeight}`,
      'aria-hidden': 'true',
      focusable: 'false',
    },
    svgElement(document, 'rect', {
      class: to < from ? 'fall' : 'rise',
      x: left + 1,
      y: 2,
      width: Math.max(0.5, right - left),
      height: barHeight - 4,
    }),
  )
}

function notes(waterfall: Waterfall, names: WaterfallNames): string[] {
  const { shares, without, forward, reverse, evaluations } = waterfall
  const failures = [...new Set([...forward, ...reverse].flatMap((row) => row.failures))]
  const parts = without.map((part) => partWords(part, names))
  return [
    sharesNote(waterfall, names),
    ...failures.map((reason) => `In between there was no answer: ${names.reason(reason)}`),
    ...(parts.length === 0
      ? []
      : [`Without effect, since no way leads from there to the result: ${parts.join('; ')}.`]),
    ...(shares.kind === 'none' ? [] : [`${countOf(evaluations, 'evaluation')} with the kernel at hand.`]),
    cautionLine,
  ]
}

function sharesNote({ shares }: Waterfall, names: WaterfallNames): string {
  switch (shares.kind) {
    case 'exact':
      return 'Share: the mean effect over all orders in which the steps could be adopted (Shapley). Shares add up to the difference.'
    case 'sampled':
      return `Share: the mean effect over ${shares.orders} orders drawn by chance (seed ${shares.seed})${shares.leftOut === 0 ? '' : `; ${shares.leftOut} more were left out, because something in between could not be computed`}. Shares add up to the difference.`
    case 'none':
      return `No shares are given: ${names.reason(shares.reason)}`
  }
}
