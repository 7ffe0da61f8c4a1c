/** Rows of text as columns that line up. */

/** Columns named in `numeric` stand to the right. */
export function alignColumns(rows: readonly (readonly string[])[], numeric: ReadonlySet<number>): string[] {
  const widths: number[] = []
  for (const row of rows)
    row.forEach((text, column) => {
      widths[column] = Math.max(widths[column] ?? 0, text.length)
    })
  return rows.map((row) =>
    row
      .map((text, column) =>
        numeric.has(column) ? text.padStart(widths[column] ?? 0) : text.padEnd(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd(),
  )
}
