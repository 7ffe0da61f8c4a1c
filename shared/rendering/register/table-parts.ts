/** What the tables of the drawer share. */
import type { CellId } from '../../contracts/index.js'
import { element } from '../dom.js'

/** Wider than a narrow drawer: reached and scrolled by keyboard too. */
export function scrollingTable(
  document: Document,
  label: string,
  head: HTMLElement,
  rows: readonly HTMLElement[],
): HTMLElement {
  return element(
    document,
    'div',
    { class: 'record-table-field', tabindex: 0, role: 'region', 'aria-label': label },
    element(document, 'table', {}, element(document, 'thead', {}, head), element(document, 'tbody', {}, rows)),
  )
}

/** Number of a cell, leading to it. */
export function rowLink(document: Document, place: { readonly cell: CellId; readonly number: string }): HTMLElement {
  return element(document, 'a', { href: `#cell-${place.cell}` }, place.number)
}
