/** Which cells run first, so that one that will not end does not keep the others waiting. */
import type { Program } from '../../kernel/cells/program/index.js'
import type { CellId } from '../../shared/contracts/index.js'

/** Splits the wanted cells: those that do not need a slow one, then the slow ones with all that reads them. */
export function phasesOf(
  program: Program,
  wanted: readonly CellId[],
  slow: ReadonlySet<CellId>,
): readonly (readonly CellId[])[] {
  const late = new Set<CellId>()
  // Program order puts each cell after what it reads, so one pass is enough.
  for (const cell of program.cells)
    if (slow.has(cell.id) || cell.reads.some((read) => late.has(read.from))) late.add(cell.id)
  const phases = [wanted.filter((cell) => !late.has(cell)), wanted.filter((cell) => late.has(cell))]
  return phases.filter((phase) => phase.length > 0)
}
