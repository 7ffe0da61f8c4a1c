/** What is worth saying aloud about the states of the cells. DOM-free. */
import type { CellView, SheetView } from '../../shared/rendering/index.js'

/** One sentence on what changed from one view to the next, or `null`: failures by cell, and that all is current again. */
export function newsOf(before: SheetView, after: SheetView): string | null {
  const earlier = new Map(before.cells.map((cell) => [cell.id, cell]))
  const failed = after.cells.filter(
    (cell) => cell.state === 'failed' && messageOf(cell) !== messageOf(earlier.get(cell.id)) && messageOf(cell) !== '',
  )
  if (failed.length > 0) return failed.map((cell) => `Cell ${cell.number} failed: ${messageOf(cell)}`).join(' ')
  const settled = (view: SheetView) => view.cells.every((cell) => cell.kind === 'rationale' || cell.state === 'current')
  return settled(after) && !settled(before) ? 'All cells are current.' : null
}

function messageOf(cell: CellView | undefined): string {
  return cell?.state === 'failed' ? (cell.result?.error?.message ?? '') : ''
}
