/** One number over its samples: percentiles, mean and the curve of its distribution. */
import type { Summary } from '../../../../shared/contracts/index.js'
import { deviationOf, meanOf, quantileInterval, quantileOf } from './statistics.js'

export const percentileShares = [0.05, 0.1, 0.5, 0.9, 0.95] as const
const curveSteps = 100

/** Undefined where nothing was computed. */
export function summarise(values: Float64Array): Summary | undefined {
  if (values.length === 0) return undefined
  const sorted = values.toSorted()
  const mean = meanOf(values)
  return {
    count: values.length,
    mean,
    deviation: deviationOf(values, mean),
    least: sorted[0] as number,
    greatest: sorted[sorted.length - 1] as number,
    percentiles: percentileShares.map((share) => ({
      share,
      value: quantileOf(sorted, share),
      between: quantileInterval(sorted, share),
    })),
    curve: Array.from({ length: curveSteps + 1 }, (_, step) => quantileOf(sorted, step / curveSteps)),
  }
}
