/** Which cells a call concerns: the wanted ones and everything upstream of them. */
import type { CellId } from '../../../../shared/contracts/index.js'
import type { Program, RunnableCell, Wanted } from '../../program/index.js'

/** Runnable cells to finish, in evaluation order. */
export function neededCells(program: Program, wanted: Wanted): readonly RunnableCell[] {
  return wanted === 'all' ? program.cells : closure(program.cells, new Set(wanted))
}

/** The cells of a set and everything they read, directly or through others; keeps the order. */
export function closure(cells: readonly RunnableCell[], ids: ReadonlySet<CellId>): readonly RunnableCell[] {
  const needed = new Set(ids)
  // Readers come after what they read, so one pass from the end reaches everything.
  for (const cell of cells.toReversed()) if (needed.has(cell.id)) for (const { from } of cell.reads) needed.add(from)
  return cells.filter((cell) => needed.has(cell.id))
}
