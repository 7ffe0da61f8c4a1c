/** Cells in an order in which each comes after the cells it reads; cells of a cycle come in page order. */
import type { CellId } from '../../../shared/contracts/index.js'
import type { AnalysedCell, Graph } from '../program/index.js'

export function inDependencyOrder(graph: Graph): readonly AnalysedCell[] {
  const byId = new Map(graph.cells.map((cell) => [cell.id, cell]))
  const entered = new Set<CellId>()
  const ordered: AnalysedCell[] = []
  for (const start of graph.cells) {
    const path: { readonly cell: AnalysedCell; readonly rest: CellId[] }[] = []
    const enter = (cell: AnalysedCell | undefined): void => {
      if (cell === undefined || entered.has(cell.id)) return
      entered.add(cell.id)
      path.push({ cell, rest: [...(graph.upstream.get(cell.id) ?? [])] })
    }
    enter(start)
    for (let step = path.at(-1); step !== undefined; step = path.at(-1)) {
      const next = step.rest.shift()
      if (next !== undefined) enter(byId.get(next))
      else {
        ordered.push(step.cell)
        path.pop()
      }
    }
  }
  return ordered
}
