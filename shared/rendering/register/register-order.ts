/** Which rows of the register are shown, and in which order. */
import { numberOf } from '../quantity/index.js'
import { type AssumptionRow, hasSource } from './assumption-rows.js'

export const registerColumns = [
  'name',
  'value',
  'trial',
  'source',
  'sureness',
  'note',
  'owner',
  'unit',
  'row',
  'used',
] as const
export type RegisterColumn = (typeof registerColumns)[number]

export interface RegisterOrder {
  readonly column: RegisterColumn
  readonly descending: boolean
}

export interface RegisterFilter {
  /** Every word must occur in a name, source, note, owner, unit or row; case does not matter. */
  readonly words: string
  readonly withoutSource: boolean
}

/** As the sheet has them. */
export const pageOrder: RegisterOrder = { column: 'row', descending: false }
export const everything: RegisterFilter = { words: '', withoutSource: false }

/** The order after a press on a head: the column first rises, then falls. */
export function nextOrder(order: RegisterOrder, column: RegisterColumn): RegisterOrder {
  return { column, descending: order.column === column && !order.descending }
}

/** Sorted and filtered. Rows that are alike in the column stay in page order, and what is not stated comes last either way. */
export function arrangeRows(
  rows: readonly AssumptionRow[],
  order: RegisterOrder = pageOrder,
  filter: RegisterFilter = everything,
): readonly AssumptionRow[] {
  const direction = order.descending ? -1 : 1
  return rows
    .filter((row) => passes(row, filter))
    .sort((one, other) => {
      const [a, b] = [keyOf(one, order.column), keyOf(other, order.column)]
      if (a === undefined || b === undefined)
        return Number(a === undefined) - Number(b === undefined) || one.order - other.order
      return direction * compare(a, b) || one.order - other.order
    })
}

function passes(row: AssumptionRow, { words, withoutSource }: RegisterFilter): boolean {
  if (withoutSource && hasSource(row.record)) return false
  const { source = '', note = '', owner = '', unit = '' } = row.record
  const text = [row.name, source, note, owner, unit, row.number].join('\n').toLowerCase()
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word))
}

type Key = string | number | undefined

/** What a column is sorted by: values in SI. */
function keyOf(row: AssumptionRow, column: RegisterColumn): Key {
  const { record } = row
  switch (column) {
    case 'name':
      return row.name
    case 'value':
      return finite(numberOf(record.value))
    case 'trial':
      return record.trial === undefined ? undefined : finite(numberOf(record.trial))
    case 'sureness':
      return record.distribution?.kind ?? (record.low === undefined ? undefined : 'range')
    case 'source':
    case 'note':
    case 'owner':
    case 'unit':
      return stated(record[column])
    case 'row':
      return row.order
    case 'used':
      return row.usedIn.length
  }
}

const finite = (value: number) => (Number.isNaN(value) ? undefined : value)
const stated = (text: string | undefined) => (text === undefined || text.trim() === '' ? undefined : text)

function compare(a: string | number, b: string | number): number {
  if (typeof a === 'number' && typeof b === 'number') return a < b ? -1 : Number(a > b)
  return String(a).localeCompare(String(b), 'en', { numeric: true })
}
