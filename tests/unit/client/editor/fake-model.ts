/** A text buffer as simple as can be, with carets that nothing but `select` moves, so that the binding must carry them. */
import type { BoundModel, OffsetSelection, TextEdit } from '../../../../client/editor/binding/bound-model.js'
import { applyEdits } from '../../../../client/editor/binding/text-delta.js'

export class FakeModel implements BoundModel {
  #text = ''
  #selections: readonly OffsetSelection[] = [{ anchor: 0, caret: 0 }]
  readonly #listeners = new Set<(edits: readonly TextEdit[]) => void>()
  /** Edits that came from outside, to see how small they are. */
  readonly applied: (readonly TextEdit[])[] = []

  value(): string {
    return this.#text
  }

  apply(edits: readonly TextEdit[]): void {
    this.applied.push(edits)
    this.#change(edits)
  }

  /** What a person does: the caret ends after the last edit. */
  type(...edits: readonly TextEdit[]): void {
    const last = edits.at(-1)
    const shift = edits.slice(0, -1).reduce((sum, edit) => sum + edit.inserted.length - edit.removed, 0)
    const caret = last === undefined ? 0 : last.at + shift + last.inserted.length
    this.#selections = [{ anchor: caret, caret }]
    this.#change(edits)
  }

  onEdits(listener: (edits: readonly TextEdit[]) => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  selections(): readonly OffsetSelection[] {
    return this.#selections
  }

  select(selections: readonly OffsetSelection[]): void {
    this.#selections = selections
  }

  /** Line ends as an editor keeps them: one form only. */
  #change(edits: readonly TextEdit[]): void {
    this.#text = applyEdits(this.#text, edits).replace(/\r\n?/g, '\n')
    for (const listener of this.#listeners) listener(edits)
  }
}
