/** A figure's values as CSV, in display units and full digits, with the caution and where it comes from in the last row. */
import { cautionLine, type Figure } from '../../contracts/index.js'
import { type CsvCell, writeCsv } from '../csv.js'
import { figureTable } from './table.js'

/** `mark` is the line of provenance; absent for a figure without a sheet. */
export function figureToCsv(figure: Figure, mark = ''): string {
  const { columns, rows } = figureTable(figure)
  // As many fields as every other row, so that whatever reads tables reads this one.
  const lastRow = (text: string): CsvCell[] => columns.map((_, column) => (column === 0 ? text : null))
  return writeCsv([columns, ...rows, lastRow(cautionLine), ...(mark === '' ? [] : [lastRow(mark)])])
}
