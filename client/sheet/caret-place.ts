/** Offsets in a text and places (line and column, from 1), each from the other. */
import type { CaretPlace } from '../editor/editing-surface.js'

export function placeOfOffset(text: string, offset: number): CaretPlace {
  const before = text.slice(0, offset)
  const lineStart = before.lastIndexOf('\n') + 1
  return { line: before.split('\n').length, column: offset - lineStart + 1 }
}

/** The nearest offset there is: beyond the end of a line it is that line's end. */
export function offsetOfPlace(text: string, place: CaretPlace): number {
  const lines = text.split('\n')
  const line = Math.min(Math.max(place.line, 1), lines.length)
  const before = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0)
  return before + Math.min(Math.max(place.column - 1, 0), (lines[line - 1] ?? '').length)
}
