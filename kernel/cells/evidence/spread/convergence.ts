/** Whether more samples would still change the answer: the answer at doubling counts. */
import type { Convergence, ConvergenceRow } from '../../../../shared/contracts/index.js'
import { meanOf, quantileOf } from './statistics.js'

const first = 32

/** Share of P90 - P10. House convention: finer than a reader can use of a distribution that is itself a judgement. */
export const tolerance = 0.02

/** Counts double from 32 to all that there are. */
export function convergenceOf(values: Float64Array): Convergence {
  const rows: ConvergenceRow[] = []
  for (let count = Math.min(first, values.length); count > 0; count = nextCount(count, values.length)) {
    const sorted = values.subarray(0, count).toSorted()
    rows.push({
      count,
      mean: meanOf(sorted),
      p10: quantileOf(sorted, 0.1),
      p50: quantileOf(sorted, 0.5),
      p90: quantileOf(sorted, 0.9),
    })
  }
  return { rows, settledAt: settledAt(rows) }
}

function nextCount(count: number, all: number): number {
  return count === all ? 0 : Math.min(count * 2, all)
}

function settledAt(rows: readonly ConvergenceRow[]): number | undefined {
  const last = rows.at(-1)
  if (last === undefined) return undefined
  const allowed = tolerance * (last.p90 - last.p10)
  const still = rows.map((row, at) => {
    const before = rows[at - 1]
    if (before === undefined) return false
    return (['mean', 'p10', 'p50', 'p90'] as const).every((key) => Math.abs(row[key] - before[key]) <= allowed)
  })
  // Settled once and for all: a later doubling that moves again takes it back.
  let from = rows.length
  while (from > 0 && still[from - 1] === true) from -= 1
  return rows[from + 1]?.count
}
