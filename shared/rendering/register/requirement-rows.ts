/** Every requirement of the sheet, with the row that states it. */
import type { CellId, RequirementRecord } from '../../contracts/index.js'
import type { CellState, SheetView } from '../view.js'

export interface RequirementRow {
  readonly cell: CellId
  /** Number of its cell in the margin. */
  readonly number: string
  readonly state: CellState
  readonly record: RequirementRecord
  /** A trial has changed it. */
  readonly tried: boolean
}

export function requirementRows(view: SheetView): readonly RequirementRow[] {
  return view.cells.flatMap(({ id, number, state, result, trial }) =>
    (result?.requirements ?? []).map((record) => ({
      cell: id,
      number,
      state,
      record,
      tried: trial?.requirements.includes(record.name) === true,
    })),
  )
}
