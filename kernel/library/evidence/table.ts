import { requireText, requireUnit } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { recordResult } from '../recorder.js'
import { requireList } from '../shapes.js'

export interface TableOptions {
  /** Above the table; the name as words when left out. */
  readonly label?: string
  /** Unit texts by field: `{ mass: 'kg' }`. A field without one is shown in the unit of the field's own dimension, where that is known. */
  readonly units?: Readonly<Record<string, string>>
}

const method = 'table'
const known = new Set(['label', 'units'])

/**
 * States a list of records as a table across the sheet, and returns it unchanged.
 *
 * @equation table = rows
 * @param name - what the table is called, in the sheet and in the command's output
 * @param rows - list of records; a column per field, numbers in SI
 * @param options - all optional: `label` (text), `units` (record of unit texts by field)
 * @returns the rows, of their own type
 * @throws InvalidInput for an empty name, rows that are no list of records, unit text that cannot be read, a unit for a field that no row has, and an unknown option
 * @method Tells the recorder of the running cell. A text field `unit` in the rows is the unit of the row's numbers that have none of their own. A list that is not stated is shown as well, folded where the cell states something else.
 * @validity The first 100 rows are shown.
 * @source House convention, no publication.
 * @example
 * const parts = table('parts', [{ part: 'wing', mass: 180 * u.kg }, { part: 'boom', mass: 21 * u.kg }], { units: { mass: 'kg' } })
 * parts.length // 2
 */
export function table<Rows extends readonly object[]>(name: string, rows: Rows, options: TableOptions = {}): Rows {
  requireText(method, 'name', name)
  checkOptions(method, options, known)
  const at = `"${name}"`
  requireList(method, at, rows, 'record')
  rows.forEach((row, index) => {
    if (typeof row !== 'object' || row === null || Array.isArray(row))
      throw new InvalidInput({ method, argument: `${at}[${index}]`, value: describeValue(row), accepted: 'a record' })
  })
  const { label, units = {} } = options
  if (label !== undefined) requireText(method, 'label', label)
  for (const [field, unit] of Object.entries(units)) {
    requireUnit(method, `the unit of "${field}" in ${at}`, unit)
    if (!rows.some((row) => field in row))
      throw new InvalidInput({
        method,
        argument: `the unit of "${field}" in ${at}`,
        value: 'for a field that no row has',
        accepted: `for one of ${Object.keys(rows[0] ?? {}).join(', ')}`,
      })
  }
  recordResult({ name, value: rows, ...options })
  return rows
}
