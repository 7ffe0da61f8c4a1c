/** A list of records as a table of words: a column per field, its unit in the head; for the sheet and for the command. */
import type { NamedValue, ResultValue } from '../../contracts/index.js'
import {
  countOf,
  type DisplayUnit,
  displayUnit,
  formatNumber,
  formatQuantity,
  humaniseName,
  numberOf,
} from '../quantity/index.js'
import { valueWords } from './value-words.js'

type RecordValue = Extract<ResultValue, { kind: 'record' }>

export interface RecordTable {
  readonly name: string
  readonly label: string
  /** `3 rows`, `first 100 of 250 rows`, with a word on units where none are known. */
  readonly remark: string
  readonly stated: boolean
  /** Whether every cell can be read as it stands: none is a record or list of its own. */
  readonly plain: boolean
  readonly heads: readonly RecordTableHead[]
  /** Text by row and column. */
  readonly rows: readonly (readonly string[])[]
}

export interface RecordTableHead {
  readonly text: string
  readonly numeric: boolean
}

interface Column {
  readonly field: string
  readonly unit: DisplayUnit
  /** Whether its numbers take the unit that each row names. */
  readonly byRow: boolean
  readonly numeric: boolean
}

/** The table that a value is; null for anything but a list of records. */
export function recordTable(named: NamedValue): RecordTable | null {
  const { value } = named
  if (value.kind !== 'list' || value.items.length === 0) return null
  const rows = value.items.filter((item): item is RecordValue => item.kind === 'record' && item.entries.length > 0)
  if (rows.length < value.items.length) return null
  const columns = columnsOf(named, rows)
  return {
    name: named.name,
    label: named.label ?? humaniseName(named.name),
    remark: remarkOf(columns, rows.length, value.length),
    stated: named.stated === true,
    plain: rows.every((row) => row.entries.every(([, entry]) => entry.kind !== 'record' && entry.kind !== 'list')),
    heads: columns.map(headOf),
    rows: rows.map((row) => columns.map((column) => cellText(row, column))),
  }
}

function remarkOf(columns: readonly Column[], shown: number, length: number): string {
  const count = countOf(length, 'row')
  const numbers = columns.filter((column) => column.numeric)
  const known = numbers.length === 0 || numbers.some((column) => column.byRow || column.unit.symbol !== '')
  return `${shown < length ? `first ${shown} of ${count}` : count}${known ? '' : ', numbers in SI'}`
}

function columnsOf(named: NamedValue, rows: readonly RecordValue[]): readonly Column[] {
  const fields = [...new Set(rows.flatMap((row) => row.entries.map(([field]) => field)))]
  const dimensions = new Map(Object.entries(named.columns ?? {}))
  const units = new Map(Object.entries(named.units ?? {}))
  // Only where dimensions are known is a number without one known to be in the row's own unit.
  const unitByRow = named.columns !== undefined && rows.every((row) => entryOf(row, 'unit')?.kind === 'text')
  return fields
    .filter((field) => !(unitByRow && field === 'unit'))
    .map((field) => {
      const sizes = rows.flatMap((row) => sizeOf(entryOf(row, field)))
      const [dimension, unit] = [dimensions.get(field) ?? null, units.get(field)]
      return {
        field,
        unit: displayUnit(Math.max(0, ...sizes.filter(Number.isFinite)), dimension, unit),
        byRow: unitByRow && dimension === null && unit === undefined,
        numeric: sizes.length > 0,
      }
    })
}

function sizeOf(cell: ResultValue | undefined): readonly number[] {
  return cell?.kind === 'number' ? [Math.abs(numberOf(cell.si))] : []
}

function headOf({ field, unit, numeric }: Column): RecordTableHead {
  const symbol = numeric && unit.symbol !== '' ? `, ${unit.symbol}` : ''
  return { text: `${humaniseName(field)}${symbol}`, numeric }
}

function cellText(row: RecordValue, column: Column): string {
  const value = entryOf(row, column.field)
  if (value === undefined || value.kind === 'nothing') return '–'
  if (value.kind !== 'number') return valueWords(value)
  if (!column.byRow) return formatNumber(numberOf(value.si) / column.unit.factor)
  const unit = entryOf(row, 'unit')
  return formatQuantity(value.si, null, unit?.kind === 'text' ? unit.text : undefined).text
}

function entryOf(row: RecordValue, field: string): ResultValue | undefined {
  return row.entries.find(([name]) => name === field)?.[1]
}
