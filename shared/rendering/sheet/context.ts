/** Names cells to readers by their number in the margin. */
import type { CellId } from '../../contracts/index.js'
import { element } from '../dom.js'
import type { CellView, KnownName, SheetContext, SheetView } from '../view.js'

export function sheetContext(view: Pick<SheetView, 'cells' | 'units'>): SheetContext {
  const numbers = new Map(view.cells.map((cell) => [cell.id, cell.number]))
  // Gathered at the first question: most redrawings ask for no name.
  let known: ReadonlyMap<string, KnownName> | undefined
  return {
    ...(view.units === undefined ? {} : { units: view.units }),
    numberOf: (id) => numbers.get(id),
    known: (name) => {
      known ??= new Map(view.cells.flatMap(namesOf))
      return known.get(name)
    },
  }
}

function namesOf({ result, state }: CellView): [string, KnownName][] {
  if (result === undefined) return []
  const tried = new Set(result.assumptions.flatMap(({ name, trial }) => (trial === undefined ? [] : [name])))
  return result.values.map((value) => [value.name, { value, state, trial: tried.has(value.name) }])
}

/** A cell drawn alone knows only its own number and names. */
export function aloneContext(cell: CellView): SheetContext {
  return sheetContext({ cells: [cell] })
}

/** `cell 3` or `cell 3, line 4` as a link to the place; `another cell` when its number is not known. */
export function cellLink(document: Document, context: SheetContext, id: CellId, line?: number): HTMLElement {
  const number = context.numberOf(id)
  const words = number === undefined ? 'another cell' : `cell ${number}`
  if (line === undefined) return element(document, 'a', { href: `#cell-${id}` }, words)
  return element(document, 'a', { href: `#cell-${id}-line-${line}` }, `${words}, line ${line}`)
}
