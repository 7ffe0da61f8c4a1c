/** Writes a renaming into every cell it touches, as one step of undo. */
import type * as Y from 'yjs'
import type { CellId } from '../../shared/contracts/index.js'
import { ownEdit } from '../live/document.js'
import type { CellEdit } from './language/protocol.js'

/** False, and nothing changed, when a cell is no longer what the renaming was worked out for. */
export function applyRenaming(
  edits: readonly CellEdit[],
  name: string,
  textOf: (cell: CellId) => Y.Text | undefined,
  undo: Y.UndoManager,
): boolean {
  const changes = edits.map((edit) => ({ edit, text: textOf(edit.cell) }))
  const stands = changes.every(({ edit, text }) => text?.toString().slice(edit.at, edit.at + edit.removed) === name)
  const doc = changes[0]?.text?.doc
  if (!stands || doc === null || doc === undefined) return false
  undo.stopCapturing()
  doc.transact(() => {
    for (const { edit, text } of changes.sort((a, b) => b.edit.at - a.edit.at)) {
      text?.delete(edit.at, edit.removed)
      text?.insert(edit.at, edit.inserted)
    }
  }, ownEdit)
  undo.stopCapturing()
  return true
}
