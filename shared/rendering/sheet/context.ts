/** Names cells to readers by their number in the margin. */
import type { CellId } from '../../contracts/index.js'
import { element } from '../dom.js'
import type { CellView, SheetContext, SheetView } from '../view.js'

export function sheetContext(view: Pick<SheetView, 'cells'>): SheetContext {
  const numbers = new Map(view.cells.map((cell) => [cell.id, cell.number]))
  return { numberOf: (id) => numbers.get(id) }
}

/** A cell drawn alone knows only its own number. */
export function aloneContext(cell: CellView): SheetContext {
  return { numberOf: (id) => (id === cell.id ? cell.number : undefined) }
}

/** `cell 3` or `cell 3, line 4` as a link to the place; `another cell` when its number is not known. */
export function cellLink(document: Document, context: SheetContext, id: CellId, line?: number): HTMLElement {
  const number = context.numberOf(id)
  const words = number === undefined ? 'another cell' : `cell ${number}`
  if (line === undefined) return element(document, 'a', { href: `#cell-${id}` }, words)
  return element(document, 'a', { href: `#cell-${id}-line-${line}` }, `${words}, line ${line}`)
}
