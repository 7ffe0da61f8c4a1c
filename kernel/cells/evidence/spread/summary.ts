/** One number over its samples: percentiles, mean and the curve of its distribution. */
import { deviationOf, meanOf, quantileInterval, quantileOf } from './statistics.js'

export interface Percentile {
  readonly share: number
  readonly value: number
  /** Where it lies with 95 %, had the samples been drawn independently. */
  readonly between: readonly [low: number, high: number]
}

export interface Summary {
  /** Samples behind it: those at which the number was computed. */
  readonly count: number
  readonly mean: number
  readonly deviation: number
  readonly least: number
  readonly greatest: number
  /** P5, P10, P50, P90, P95. */
  readonly percentiles: readonly Percentile[]
  /** Values at the shares 0, 1/100 ... 1: the empirical distribution, thinned. */
  readonly curve: readonly number[]
}

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

/** Percentile of a summary by its share: 0.9 for P90. */
export function percentile(summary: Summary, share: (typeof percentileShares)[number]): number {
  return (summary.percentiles.find((one) => one.share === share) as Percentile).value
}
