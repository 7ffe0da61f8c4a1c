/** Yjs tells a change of a text as a delta (keep, insert, remove, in order); editors want edits by place in the old text. */
import type { TextEdit } from './bound-model.js'

export interface DeltaStep {
  readonly retain?: number | undefined
  readonly insert?: unknown
  readonly delete?: number | undefined
}

/** Edits with places in the text before the change, rising; an insertion next to a removal becomes one replacement. */
export function editsOfDelta(delta: readonly DeltaStep[]): TextEdit[] {
  const edits: TextEdit[] = []
  let at = 0
  const put = (edit: TextEdit) => {
    const last = edits.at(-1)
    if (last === undefined || last.at + last.removed !== edit.at) edits.push(edit)
    else
      edits[edits.length - 1] = {
        at: last.at,
        removed: last.removed + edit.removed,
        inserted: last.inserted + edit.inserted,
      }
  }
  for (const step of delta) {
    if (step.retain !== undefined) at += step.retain
    else if (step.delete !== undefined) {
      put({ at, removed: step.delete, inserted: '' })
      at += step.delete
    } else if (typeof step.insert === 'string') put({ at, removed: 0, inserted: step.insert })
  }
  return edits
}

/** The text after the edits. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  let result = ''
  let at = 0
  for (const edit of edits) {
    result += text.slice(at, edit.at) + edit.inserted
    at = edit.at + edit.removed
  }
  return result + text.slice(at)
}
