/** Where a dragged cell would land. DOM-free. */

/** One row of the page: its upper and lower edge, in the same measure as the pointer's height. */
export interface Row {
  readonly top: number
  readonly bottom: number
}

/** The gap among the rows that is nearest to height `y`: 0 above the first row, `rows.length` below the last. */
export function gapAt(rows: readonly Row[], y: number): number {
  return rows.filter(({ top, bottom }) => y > (top + bottom) / 2).length
}

/** The place that the row at `from` takes when it is dropped into a gap; `from` itself when it stays. */
export function placeForGap(from: number, gap: number): number {
  return gap > from ? gap - 1 : gap
}
