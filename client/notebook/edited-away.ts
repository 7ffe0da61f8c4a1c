/**
 * Where editing goes on when a cell that is being edited has become another kind, or went into another cell (joined by someone else, or
 * its split undone): at the same words, in the place where they are now.
 */
import type * as Y from 'yjs'
import type { CellId } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/index.js'
import type { CaretPlace } from '../editor/editing-surface.js'
import { joinedInto } from '../live/cell-operations.js'
import { sourceOf } from '../live/document.js'
import { offsetOfPlace, placeOfOffset } from '../sheet/caret-place.js'
import type { Sheet } from '../sheet/sheet.js'

export interface EditedAway {
  /** Number of the cell that was being edited. */
  readonly number: string
  /** The cell that has the words now; absent when they are gone from the page. */
  readonly goesOn?: CellId
  readonly caret?: CaretPlace
}

/** To be asked before the sheet follows from one view to the next: afterwards the editors of cells that are gone are closed. */
export function editedAway(before: SheetView, after: SheetView, doc: Y.Doc, sheet: Sheet): readonly EditedAway[] {
  const kinds = new Map(after.cells.map((cell) => [cell.id, cell.kind]))
  return before.cells.flatMap(({ id, kind, number, source }): EditedAway[] => {
    const surface = sheet.section(id)?.surface
    if (surface === undefined || kinds.get(id) === kind) return []
    const caret = surface.caret()
    if (kinds.has(id)) return [{ number, goesOn: id, caret }]
    if (!surface.hasFocus()) return []
    const into = joinedInto(doc, id)
    const text = into === null ? undefined : sourceOf(doc, into.cell)?.toString()
    if (into === null || text === undefined) return [{ number }]
    const offset = text.length - into.length + offsetOfPlace(source, caret)
    return [{ number, goesOn: into.cell, caret: placeOfOffset(text, Math.max(0, offset)) }]
  })
}
