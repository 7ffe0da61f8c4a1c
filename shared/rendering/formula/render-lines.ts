/** The substituted lines of a cell behind one quiet fold: a plain `details`, so it opens without a script and prints when open. */
import { element } from '../dom.js'
import type { CellView, SheetContext } from '../view.js'
import { between, row } from './box.js'
import { boxWords } from './box-words.js'
import { type Line, linesOf } from './lines.js'
import { mathPieces } from './math-nodes.js'

/** Null for a cell that has no line to show. */
export function renderLines(document: Document, cell: CellView, context: SheetContext): HTMLElement | null {
  const lines = linesOf(cell, context)
  if (lines.length === 0) return null
  return element(
    document,
    'details',
    { class: 'lines-fold' },
    element(document, 'summary', {}, 'Hand calculation'),
    element(
      document,
      'ul',
      { class: 'lines' },
      lines.map((line) => renderLine(document, line)),
    ),
  )
}

/** Each stage stays together where there is room for it; a longer one breaks before a sign. */
export function renderLine(document: Document, line: Line): HTMLElement {
  const stages = line.stages.map((stage) => row(between('='), stage))
  return element(
    document,
    'li',
    { class: 'hand-line', 'data-name': line.name },
    element(
      document,
      'span',
      { class: 'line-formula', role: 'math', 'aria-label': lineWords(line) },
      [line.symbol, ...stages].map((stage) =>
        element(document, 'span', { class: 'stage' }, mathPieces(document, stage)),
      ),
    ),
    line.notes.length === 0 ? null : element(document, 'span', { class: 'line-note' }, line.notes.join('; ')),
  )
}

/** `disk area = rotor count · π · rotor radius^2 = 8 · π · (1.3 m)^2 = 42.47 m²`. */
export function lineWords({ symbol, stages }: Line): string {
  return [symbol, ...stages].map(boxWords).join(' = ')
}
