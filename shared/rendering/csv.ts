/** Values separated by commas (RFC 4180), safe to open in a spreadsheet. */

export type CsvCell = string | number | null

/** Rows end in CR LF. */
export function writeCsv(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(csvField).join(',')}\r\n`).join('')
}

/**
 * A text that begins with = + - @ (or a tab or return) would run as a formula in a spreadsheet, so it gets an apostrophe in front; numbers
 * stay numbers. Spaces and control characters before such a sign do not hide it.
 */
export function csvField(cell: CsvCell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return String(cell)
  const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: what a spreadsheet passes over before it reads a formula
  const safe = !plainNumber && /^[\u0000-\u0020\u00a0\ufeff]*[=+\-@＝＋－＠]|^[\t\r]/.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
