/** Assumptions as the sheet names and shows them, for whatever lists them beside a number. */
import type { CellId } from '../../contracts/index.js'
import { element } from '../dom.js'
import { formatQuantity } from '../quantity/format-quantity.js'
import { humaniseName } from '../quantity/words.js'
import { assumptionRows } from '../register/assumption-rows.js'
import type { SheetView } from '../view.js'

export interface NamedAssumption {
  readonly label: string
  /** In base units; null where not known. */
  readonly dimension: string | null
  readonly unit?: string
  /** Where it is stated; absent once it is not on the sheet any more. */
  readonly cell?: CellId
  /** A trial value is in force in place of the document's. */
  readonly trial: boolean
}

export type AssumptionNames = (name: string) => NamedAssumption

export function assumptionNames(view: SheetView): AssumptionNames {
  const rows = new Map(assumptionRows(view).map((row) => [row.name, row]))
  const values = view.cells.flatMap(({ result }) => result?.values ?? [])
  const labels = new Map(values.map(({ name, label }) => [name, label]))
  return (name) => {
    const row = rows.get(name)
    const label = labels.get(name) ?? humaniseName(name)
    if (row === undefined) return { label, dimension: null, trial: false }
    const { cell, dimension, record } = row
    const { unit, trial } = record
    return { label, dimension, ...(unit === undefined ? {} : { unit }), cell, trial: trial !== undefined }
  }
}

/** A value of the assumption in the unit that its owner names. */
export function showAssumption({ dimension, unit }: NamedAssumption, value: number): string {
  return formatQuantity(value, dimension, unit).text
}

/** Its name, as a link to the row that states it. */
export function assumptionLink(document: Document, { label, cell }: NamedAssumption): HTMLElement {
  if (cell === undefined) return element(document, 'span', {}, label)
  return element(document, 'a', { href: `#cell-${cell}` }, label)
}
