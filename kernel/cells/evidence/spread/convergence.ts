/** Whether more samples would still change the answer: the answer at doubling counts. */
import type { Convergence, ConvergenceRow } from '../../../../shared/contracts/index.js'
import { meanOf, quantileOf } from './statistics.js'

const first = 32

/** Share of P90 - P10. House convention: finer than a reader can use of a distribution that is itself a judgement. */
export const tolerance = 0.02

/**
 * Counts of samples double from 32 to all that there are; `values` holds one for each sample, NaN where it did not compute. A last
 * count that is no doubling is shown, and can only unsettle.
 */
export function convergenceOf(values: Float64Array): Convergence {
  const rows: ConvergenceRow[] = []
  for (let count = Math.min(first, values.length); count > 0; count = nextCount(count, values.length)) {
    const sorted = values
      .subarray(0, count)
      .filter((value) => !Number.isNaN(value))
      .sort()
    if (sorted.length === 0) continue
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

/** Settled once and for all: a later doubling that moves again takes it back. */
function settledAt(rows: readonly ConvergenceRow[]): number | undefined {
  const last = rows.at(-1)
  if (last === undefined) return undefined
  const allowed = tolerance * (last.p90 - last.p10)
  let doublings: number[] = []
  rows.forEach((row, at) => {
    const before = rows[at - 1]
    if (before === undefined) return
    const still = (['mean', 'p10', 'p50', 'p90'] as const).every((key) => Math.abs(row[key] - before[key]) <= allowed)
    if (!still) doublings = []
    else if (row.count === before.count * 2) doublings.push(row.count)
  })
  return doublings[1]
}
