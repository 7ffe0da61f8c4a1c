/** A figure's values as CSV (RFC 4180), in display units and full digits, with the caution in the last row. */
import { cautionLine, type Figure } from '../../contracts/index.js'
import { figureTable, type TableCell } from './table.js'

/**
 * Rows end in CR LF. A text that begins with = + - @ (or a tab or return) would run as a formula in a spreadsheet, so it
 * gets an apostrophe in front; numbers stay numbers.
 */
export function figureToCsv(figure: Figure): string {
  const { columns, rows } = figureTable(figure)
  // As many fields as every other row, so that whatever reads tables reads this one.
  const caution = columns.map((_, column) => (column === 0 ? cautionLine : null))
  return [columns, ...rows, caution].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')
}

function csvCell(cell: TableCell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return String(cell)
  const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell)
  const safe = !plainNumber && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
