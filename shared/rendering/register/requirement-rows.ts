/** Every requirement of the sheet, with the row that states it. */
import type { CellId, RequirementRecord } from '../../contracts/index.js'
import type { CellState, SheetView } from '../view.js'

export interface RequirementRow {
  readonly cell: CellId
  /** Number of its cell in the margin. */
  readonly number: string
  readonly state: CellState
  readonly record: RequirementRecord
}

export function requirementRows(view: SheetView): readonly RequirementRow[] {
  return view.cells.flatMap(({ id, number, state, result }) =>
    (result?.requirements ?? []).map((record) => ({ cell: id, number, state, record })),
  )
}
