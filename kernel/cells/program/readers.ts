/** Who reads what: for the register, whose rows say where an assumption is used. */
import type { CellId } from '../../../shared/contracts/index.js'
import type { Graph } from './analysis.js'

/** Cells that read a name: others, and its own where another declaration is made from it. */
export function readersOf(name: string, graph: Graph | undefined): readonly CellId[] {
  return (graph?.cells ?? [])
    .filter((cell) => cell.reads.includes(name) || cell.declares.some(({ reads }) => reads.includes(name)))
    .map((cell) => cell.id)
}
