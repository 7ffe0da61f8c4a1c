/** A change of an assumption written into the source of its cell, as one step of this person. */
import type * as Y from 'yjs'
import type { AssumptionChange } from '../../kernel/cells/edit/index.js'
import type { CellId } from '../../shared/contracts/index.js'
import { ownEdit, rewrite, sourceOf, tooLong } from '../live/document.js'
import type { NotebookUndo } from '../live/undo.js'

export interface LiveNotebook {
  readonly doc: Y.Doc
  readonly undo: NotebookUndo
}

/** Absent before the server has answered. */
export type AskLive = () => LiveNotebook | undefined

export interface Writing {
  readonly cell: CellId
  readonly name: string
  readonly change: AssumptionChange
}

/** Answers why the change cannot be made, `null` when it was. What others type in the cell meanwhile stays. */
export async function writeAssumption(
  live: AskLive,
  cell: CellId,
  name: string,
  change: AssumptionChange,
): Promise<string | null> {
  const what = Object.keys(change).join(' and ')
  const [answer = null] = await writeAssumptions(live, [{ cell, name, change }], `the ${what} of ${name}`)
  return answer
}

/** As one step of undo, under a name that completes "Undone: ". Answers for each in turn; what can be made is made. */
export async function writeAssumptions(
  live: AskLive,
  writings: readonly Writing[],
  stepName: string,
): Promise<readonly (string | null)[]> {
  // Reading syntax is fetched when it is first asked for; the text is read after that, so it is the present one.
  const { editAssumption } = await import('../../kernel/cells/edit/index.js')
  const present = live()
  if (present === undefined)
    return writings.map(() => 'The notebook is not connected yet; it can be edited in a moment.')
  const { doc, undo } = present
  const texts = new Map<CellId, string>()
  const answers = writings.map(({ cell, name, change }) => {
    const text = texts.get(cell) ?? sourceOf(doc, cell)?.toString()
    if (text === undefined) return `The cell that states "${name}" was removed meanwhile.`
    const edit = editAssumption(text, name, change)
    if (!edit.ok) return edit.message
    const refusal = tooLong(edit.source)
    if (refusal === null) texts.set(cell, edit.source)
    return refusal
  })
  if (texts.size > 0) undo.step(stepName, () => doc.transact(() => writeAll(doc, texts), ownEdit))
  return answers
}

function writeAll(doc: Y.Doc, texts: ReadonlyMap<CellId, string>): void {
  for (const [cell, source] of texts) {
    const text = sourceOf(doc, cell)
    if (text !== undefined) rewrite(text, source)
  }
}
