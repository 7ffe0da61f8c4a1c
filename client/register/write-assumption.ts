/** A change of an assumption written into the source of its cell, as one step of this person. */
import type * as Y from 'yjs'
import type { AssumptionChange } from '../../kernel/cells/edit/index.js'
import type { CellId } from '../../shared/contracts/index.js'
import { rewrite, sourceOf, tooLong } from '../live/document.js'
import type { NotebookUndo } from '../live/undo.js'

export interface LiveNotebook {
  readonly doc: Y.Doc
  readonly undo: NotebookUndo
}

/** Absent before the server has answered. */
export type AskLive = () => LiveNotebook | undefined

/** Answers why the change cannot be made, `null` when it was. What others type in the cell meanwhile stays. */
export async function writeAssumption(
  live: AskLive,
  cell: CellId,
  name: string,
  change: AssumptionChange,
): Promise<string | null> {
  // Reading syntax is fetched when it is first asked for; the text is read after that, so it is the present one.
  const { editAssumption } = await import('../../kernel/cells/edit/index.js')
  const present = live()
  if (present === undefined) return 'The notebook is not connected yet; it can be edited in a moment.'
  const text = sourceOf(present.doc, cell)
  if (text === undefined) return `The cell that states "${name}" was removed meanwhile.`
  const edit = editAssumption(text.toString(), name, change)
  if (!edit.ok) return edit.message
  const refusal = tooLong(edit.source)
  if (refusal !== null) return refusal
  const what = Object.keys(change).join(' and ')
  present.undo.step(`the ${what} of ${name}`, () => rewrite(text, edit.source))
  return null
}
