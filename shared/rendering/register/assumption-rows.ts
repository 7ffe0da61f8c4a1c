/** The register's rows: every assumption of the sheet with what it rests on and where it is read. */
import type { AssumptionRecord, CellId } from '../../contracts/index.js'
import { resultAsWritten } from '../sheet/in-units.js'
import type { CellState, SheetView } from '../view.js'

export interface AssumptionRow {
  readonly name: string
  readonly cell: CellId
  /** Number of its cell in the margin. */
  readonly number: string
  /** Place in page order. */
  readonly order: number
  readonly state: CellState
  readonly record: AssumptionRecord
  /** As its author wrote it, where a reader sees it in other units. */
  readonly stated?: AssumptionRecord
  /** In base units, `null` where it is not known. */
  readonly dimension: string | null
  /** Cells that read the name directly, its own among them when it does. */
  readonly usedIn: readonly { readonly cell: CellId; readonly number: string }[]
}

/** Cells that read a name directly. */
export type Readers = (name: string) => readonly CellId[]

export function assumptionRows(view: SheetView, readers: Readers = () => []): readonly AssumptionRow[] {
  const numbers = new Map(view.cells.map((cell) => [cell.id, cell.number]))
  const rows: AssumptionRow[] = []
  for (const { id, number, state, result } of view.cells) {
    const dimensions = new Map(result?.values.map((value) => [value.name, value.dimension]))
    const stated = result === undefined ? [] : resultAsWritten(result).assumptions
    result?.assumptions.forEach((record, index) => {
      rows.push({
        name: record.name,
        cell: id,
        number,
        order: rows.length,
        state,
        record,
        ...(stated[index] === record || stated[index] === undefined ? {} : { stated: stated[index] }),
        dimension: dimensions.get(record.name) ?? null,
        usedIn: readers(record.name).map((cell) => ({ cell, number: numbers.get(cell) ?? '' })),
      })
    })
  }
  return rows
}

export function hasSource({ source }: AssumptionRecord): boolean {
  return source !== undefined && source.trim() !== ''
}
