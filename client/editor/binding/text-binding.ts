/**
 * Keeps an editor's buffer and a cell's `Y.Text` equal, both ways. What this person types goes to the document in one
 * transaction with their own origin, so that undo takes back only their own; what others do comes back as minimal edits with
 * every caret and selection kept. After an undo or redo the caret goes where the text changed.
 */
import type * as Y from 'yjs'
import { ownEdit, tooLong } from '../../live/document.js'
import { differenceOf } from '../../live/text-difference.js'
import type { BoundModel, TextEdit } from './bound-model.js'
import { carrySelection } from './carry-selection.js'
import { applyEdits, editsOfDelta } from './text-delta.js'

export class TextBinding {
  readonly #model: BoundModel
  readonly #text: Y.Text
  readonly #undo: Y.UndoManager
  readonly #onRefused: (sentence: string) => void
  readonly #endListening: () => void
  /** This binding is changing the document or the buffer just now; the echo is not to be answered. */
  #busy = false

  constructor(model: BoundModel, text: Y.Text, undo: Y.UndoManager, onRefused: (sentence: string) => void) {
    this.#model = model
    this.#text = text
    this.#undo = undo
    this.#onRefused = onRefused
    this.#reconcile()
    this.#endListening = model.onEdits((edits) => this.#typed(edits))
    text.observe(this.#changed)
  }

  dispose(): void {
    this.#endListening()
    this.#text.unobserve(this.#changed)
  }

  #typed(typed: readonly TextEdit[]): void {
    if (this.#busy) return
    const before = this.#text.toString()
    const edits = typed.flatMap((edit) => smallestEdit(before, edit))
    const refusal = tooLong(applyEdits(before, edits))
    if (refusal !== null) {
      this.#reconcile()
      this.#onRefused(refusal)
      return
    }
    this.#while(() => {
      this.#text.doc?.transact(() => {
        for (const edit of [...edits].reverse()) {
          if (edit.removed > 0) this.#text.delete(edit.at, edit.removed)
          if (edit.inserted !== '') this.#text.insert(edit.at, edit.inserted)
        }
      }, ownEdit)
    })
    this.#reconcile()
  }

  #changed = (event: Y.YTextEvent): void => {
    if (this.#busy) return
    const edits = editsOfDelta(event.delta)
    const undone = event.transaction.origin === this.#undo
    const before = this.#model.selections()
    this.#while(() => this.#model.apply(edits))
    const place = undone ? endOfChange(edits) : undefined
    this.#model.select(
      place === undefined
        ? before.map((selection) => carrySelection(selection, edits))
        : [{ anchor: place, caret: place }],
    )
    this.#reconcile()
  }

  /** The buffer follows the document should they ever differ (line ends that the editor keeps in another form). */
  #reconcile(): void {
    const difference = differenceOf(this.#model.value(), this.#text.toString())
    if (difference === null) return
    this.#while(() => this.#model.apply([difference]))
    const kept = this.#model.value()
    if (kept !== this.#text.toString()) this.#adoptLineEnds(kept)
  }

  /** Carriage returns cannot live in the buffer, so they leave the document too. */
  #adoptLineEnds(kept: string): void {
    this.#while(() => {
      this.#text.doc?.transact(() => {
        const source = this.#text.toString()
        for (let at = source.length - 1; at >= 0; at--) {
          if (source[at] !== '\r') continue
          this.#text.delete(at, 1)
          if (source[at + 1] !== '\n') this.#text.insert(at, '\n')
        }
      }, ownEdit)
    })
    const difference = differenceOf(kept, this.#text.toString())
    if (difference !== null) this.#while(() => this.#model.apply([difference]))
  }

  #while(change: () => void): void {
    const before = this.#busy
    this.#busy = true
    try {
      change()
    } finally {
      this.#busy = before
    }
  }
}

/**
 * What an edit really changes: a whole text typed or pasted over itself keeps the characters that stay, and with them the carets and
 * the typing of everybody else.
 */
function smallestEdit(before: string, { at, removed, inserted }: TextEdit): TextEdit[] {
  const difference = differenceOf(before.slice(at, at + removed), inserted)
  return difference === null ? [] : [{ ...difference, at: at + difference.at }]
}

/** Offset in the new text just after the last thing that changed. */
function endOfChange(edits: readonly TextEdit[]): number | undefined {
  const last = edits.at(-1)
  if (last === undefined) return undefined
  return (
    edits.reduce((place, edit) => place + (edit === last ? 0 : edit.inserted.length - edit.removed), last.at) +
    last.inserted.length
  )
}
