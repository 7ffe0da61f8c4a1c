/** One cell: a numbered row across the sheet. */
import { element } from '../dom.js'
import { renderFigure } from '../figure/index.js'
import type { CellView, SheetContext } from '../view.js'
import { renderCalculation } from './calculation-column.js'
import { aloneContext } from './context.js'
import { renderRecordTables } from './record-tables.js'
import { renderReference } from './reference-column.js'
import { renderResult } from './result-column.js'

/**
 * `<section class="cell" id="cell-ID">` with the parts `.number`, `.reference`, `.calculation`, `.result`, `.figures`, in
 * this order, each made by its own function so that a page can replace one and leave the others alone.
 */
export function renderCell(
  document: Document,
  cell: CellView,
  context: SheetContext = aloneContext(cell),
): HTMLElement {
  return element(
    document,
    'section',
    {
      class: 'cell',
      id: `cell-${cell.id}`,
      'data-cell': cell.id,
      'data-kind': cell.kind,
      'data-state': cell.state,
      'aria-label': `Cell ${cell.number}`,
    },
    renderNumber(document, cell),
    renderReference(document, cell, context),
    renderCalculation(document, cell, context),
    renderResult(document, cell, context),
    renderFigures(document, cell),
  )
}

/** The number in the margin, a link to the cell itself. */
export function renderNumber(document: Document, cell: CellView): HTMLElement {
  const link = element(document, 'a', { href: `#cell-${cell.id}`, 'aria-label': `Cell ${cell.number}` }, cell.number)
  return element(document, 'div', { class: 'number' }, link)
}

/** Tables and figures of the cell, across calculation and result; empty (and hidden by style) when there are none. */
export function renderFigures(document: Document, cell: CellView): HTMLElement {
  const figures = cell.result?.figures ?? []
  return element(
    document,
    'div',
    { class: 'figures' },
    cell.trial?.figures === true && figures.length > 0
      ? element(
          document,
          'p',
          { class: 'tried' },
          "Trial: these figures are drawn with trial values, not the document's.",
        )
      : null,
    renderRecordTables(document, cell.result?.values ?? [], cell.trial),
    figures.map((figure, index) => renderFigure(document, figure, { number: String(cell.firstFigure + index) })),
  )
}
