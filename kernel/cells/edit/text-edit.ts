/** Changes of a source by place, so that nothing else of it is touched. */

/** `to` is after the last character that goes; places are of the source before any edit. */
export interface TextEdit {
  readonly from: number
  readonly to: number
  readonly insert: string
}

/** The source with edits that do not overlap. */
export function applyEdits(source: string, edits: readonly TextEdit[]): string {
  // The last comes first, so that the places of the others stay true.
  return [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((text, { from, to, insert }) => text.slice(0, from) + insert + text.slice(to), source)
}
