/** The numbers in the sheet's margin: a cell's own where it keeps one, else its place on the page. */
import type { CellId, Notebook } from '../../shared/contracts/index.js'
import { pageOrder } from './notebook-input.js'

export function cellNumbers(notebook: Notebook): ReadonlyMap<CellId, string> {
  return new Map(pageOrder(notebook).map((cell, index) => [cell.id, cell.number ?? String(index + 1)]))
}
