/** What the tables of the drawer share. */
import type { CellId } from '../../contracts/index.js'
import { element } from '../dom.js'

export function headRow(document: Document, heads: readonly string[]): HTMLElement {
  const cells = heads.map((head) => element(document, 'th', { scope: 'col' }, head))
  return element(document, 'thead', {}, element(document, 'tr', {}, cells))
}

/** Number of a cell, leading to it. */
export function rowLink(document: Document, place: { readonly cell: CellId; readonly number: string }): HTMLElement {
  return element(document, 'a', { href: `#cell-${place.cell}` }, place.number)
}
