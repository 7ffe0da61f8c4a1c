/** Strongly connected cells: the order in which cells can run, and the circles that keep them from running. */
import type { CellId } from '../../../shared/contracts/index.js'

/**
 * Groups cells that read each other in a circle; a healthy cell is a group of its own. Every group comes after the groups it
 * reads, and otherwise in page order (Tarjan's algorithm: R. Tarjan, *Depth-first search and linear graph algorithms*,
 * SIAM Journal on Computing 1 (2), 1972). Depth is bounded by the number of cells, which the contracts limit to 1000.
 */
export function components(
  cells: readonly CellId[],
  upstream: (cell: CellId) => readonly CellId[],
): readonly (readonly CellId[])[] {
  const index = new Map<CellId, number>()
  const low = new Map<CellId, number>()
  const open: CellId[] = []
  const isOpen = new Set<CellId>()
  const groups: CellId[][] = []

  function visit(cell: CellId): void {
    const own = index.size
    index.set(cell, own)
    low.set(cell, own)
    open.push(cell)
    isOpen.add(cell)
    for (const next of upstream(cell)) {
      if (!index.has(next)) visit(next)
      if (isOpen.has(next)) low.set(cell, Math.min(low.get(cell) ?? own, low.get(next) ?? own))
    }
    if (low.get(cell) !== own) return
    const group = open.splice(open.indexOf(cell))
    for (const member of group) isOpen.delete(member)
    groups.push(group)
  }

  for (const cell of cells) if (!index.has(cell)) visit(cell)
  return groups
}
