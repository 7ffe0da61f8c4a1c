/** Where a caret or selection stands after edits that someone else made. */
import type { OffsetSelection, TextEdit } from './bound-model.js'

/**
 * The place of the same character after the edits. Text inserted exactly at an offset comes after it, so that a person who
 * types there goes on where they were; inside a removed stretch the place is its start.
 */
export function carryOffset(offset: number, edits: readonly TextEdit[]): number {
  let moved = offset
  for (const edit of edits) {
    if (edit.at + edit.removed <= offset && (edit.at < offset || edit.removed > 0))
      moved += edit.inserted.length - edit.removed
    else if (edit.at < offset) moved -= offset - edit.at
  }
  return moved
}

/** Both ends carried; a selection does not grow by what is inserted at its edges. */
export function carrySelection(selection: OffsetSelection, edits: readonly TextEdit[]): OffsetSelection {
  const { anchor, caret } = selection
  if (anchor === caret) {
    const place = carryOffset(caret, edits)
    return { anchor: place, caret: place }
  }
  const start = carryStart(Math.min(anchor, caret), edits)
  const end = Math.max(start, carryOffset(Math.max(anchor, caret), edits))
  return anchor < caret ? { anchor: start, caret: end } : { anchor: end, caret: start }
}

/** As `carryOffset`, but text inserted exactly at the offset comes before it. */
function carryStart(offset: number, edits: readonly TextEdit[]): number {
  const insertedThere = edits.find((edit) => edit.at === offset && edit.removed === 0)
  return carryOffset(offset, edits) + (insertedThere?.inserted.length ?? 0)
}
