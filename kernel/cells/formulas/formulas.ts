/** Formulas of whole notebooks, remembered by the text of each cell: an edit costs one cell. */
import type { CellId, Formula } from '../../../shared/contracts/index.js'
import { BoundedCache, type Graph } from '../program/index.js'
import { readFormulas } from './read-formulas.js'

const known = new BoundedCache<string, readonly Formula[]>(4000)

/**
 * The formulas of every cell that can be read, in the order of its source. Names that have none (a list, a value changed in a loop)
 * are left out. The same text gives the same object, so that a change is seen by identity.
 */
export function formulasOf(graph: Pick<Graph, 'cells' | 'shadowed'>): ReadonlyMap<CellId, readonly Formula[]> {
  const shadowed = new Set(graph.shadowed)
  return new Map(
    graph.cells.flatMap(({ id, code }) => (code === undefined ? [] : [[id, formulasOfCell(code, shadowed)] as const])),
  )
}

function formulasOfCell(code: string, shadowed: ReadonlySet<string>): readonly Formula[] {
  const key = `${[...shadowed].sort().join(' ')}\n${code}`
  const remembered = known.get(key)
  if (remembered !== undefined) return remembered
  const read = readFormulas(code, shadowed)
  known.set(key, read)
  return read
}
