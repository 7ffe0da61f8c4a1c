/** The whole calculation sheet. */
import { element } from '../dom.js'
import type { SheetView } from '../view.js'
import { renderCell } from './cell.js'
import { sheetContext } from './context.js'
import { renderNoCells } from './empty.js'
import { renderCaution, renderTitleBlock } from './title-block.js'

/**
 * `<main class="sheet">`: `.sheet-head` (title block, caution, column heads; print repeats it on every page), then `.cells`
 * with one section per cell.
 */
export function renderSheet(document: Document, view: SheetView): HTMLElement {
  const context = sheetContext(view)
  return renderSheetAround(
    document,
    view,
    view.cells.map((cell) => renderCell(document, cell, context)),
  )
}

/** The sheet with its rows given: for whoever has them drawn already. A sheet without cells says how to begin. */
export function renderSheetAround(document: Document, view: SheetView, rows: readonly Node[]): HTMLElement {
  return element(
    document,
    'main',
    { class: 'sheet', id: 'sheet', 'data-notebook': view.id },
    element(
      document,
      'div',
      { class: 'sheet-head' },
      renderTitleBlock(document, view),
      renderCaution(document),
      renderColumnHeads(document, view),
    ),
    element(document, 'div', { class: 'cells' }, view.cells.length === 0 ? renderNoCells(document) : rows),
  )
}

/** Whoever reads it on paper is told that the units are not those that the author wrote. */
export function renderColumnHeads(document: Document, { units }: Pick<SheetView, 'units'>): HTMLElement {
  return element(
    document,
    'div',
    { class: 'column-heads' },
    element(document, 'span', {}),
    ['Reference', 'Calculation', resultHead(units)].map((head) => element(document, 'span', {}, head)),
  )
}

function resultHead(units: SheetView['units']): string {
  return units === undefined ? 'Result' : `Result, ${units === 'SI' ? 'SI' : 'aviation'} units`
}
