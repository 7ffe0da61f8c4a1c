/** What is worth saying aloud about the states of the cells. DOM-free. */
import type { CellView, SheetView } from '../../shared/rendering/index.js'

/** One sentence on what changed from one view to the next, or `null`: failures by cell, and that all is current again. */
export function newsOf(before: SheetView, after: SheetView): string | null {
  const earlier = new Map(before.cells.map((cell) => [cell.id, cell]))
  const failed = after.cells.filter(
    (cell) => cell.state === 'failed' && messageOf(cell) !== messageOf(earlier.get(cell.id)) && messageOf(cell) !== '',
  )
  if (failed.length > 0) return sentenceOf(failed)
  const settled = (view: SheetView) => view.cells.every((cell) => cell.kind === 'rationale' || cell.state === 'current')
  return settled(after) && !settled(before) ? 'All cells are current.' : null
}

function messageOf(cell: CellView | undefined): string {
  return cell?.state === 'failed' ? (cell.result?.error?.message ?? '') : ''
}

/** Cells that failed for one reason share a sentence; more reasons than a listener would keep are only counted. */
function sentenceOf(failed: readonly CellView[]): string {
  const byMessage = new Map<string, string[]>()
  for (const cell of failed) {
    const message = messageOf(cell)
    byMessage.set(message, [...(byMessage.get(message) ?? []), cell.number])
  }
  const sentences = [...byMessage].map(([message, numbers]) =>
    numbers.length === 1 ? `Cell ${numbers[0]} failed: ${message}` : `Cells ${numbers.join(', ')} failed: ${message}`,
  )
  return sentences.length > 2 ? `${sentences[0]} ${failed.length - 1} other cells failed.` : sentences.join(' ')
}
