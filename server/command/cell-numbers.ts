/** The numbers in the sheet's margin, as on the page. */
import { type CellId, marginNumbers, type Notebook } from '../../shared/contracts/index.js'
import { pageOrder } from './notebook-input.js'

export function cellNumbers(notebook: Notebook): ReadonlyMap<CellId, string> {
  return marginNumbers(pageOrder(notebook))
}
