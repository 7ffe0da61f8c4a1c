/** What the binding needs of an editor's text buffer; so it can be tested without a browser. Offsets count UTF-16 units. */

/** Replaces `removed` characters from `at` by `inserted`. */
export interface TextEdit {
  readonly at: number
  readonly removed: number
  readonly inserted: string
}

export interface OffsetSelection {
  /** Where the selection began. */
  readonly anchor: number
  /** Where the caret is. */
  readonly caret: number
}

export interface BoundModel {
  value(): string
  /** Applies edits whose places are those of the text before all of them; rising and not overlapping. */
  apply(edits: readonly TextEdit[]): void
  /** Calls back after each change, whoever made it, with edits in the same form as `apply` takes. Gives back an end. */
  onEdits(listener: (edits: readonly TextEdit[]) => void): () => void
  selections(): readonly OffsetSelection[]
  select(selections: readonly OffsetSelection[]): void
}
