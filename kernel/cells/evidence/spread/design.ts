/** What the ways to estimate shares of the variance have in common. */
import type { Estimate, Point, Share, Shares } from '../../../../shared/contracts/index.js'
import { Chance } from './chance.js'
import { quantileOf } from './statistics.js'

/** Numbers of one row: at its sample, and at the points that the design adds; NaN where there is none. */
export interface Row {
  readonly sample: number
  readonly values: Float64Array
}

/** One way: which points a row needs beyond its sample, and what rows say. */
export interface Design {
  readonly method: Shares['method']
  readonly runsPerRow: number
  points(row: number): readonly Point[]
  /** Names that it leaves out have no share. */
  estimate(rows: readonly Row[]): readonly Share[]
}

const resamplings = 200

/**
 * Values of a statistic over rows, each with the middle 95 % of its values over rows drawn anew with replacement.
 *
 * Source: Efron, B., Tibshirani, R. J., An Introduction to the Bootstrap, 1993, chapter 13 (percentile interval); for shares of
 * variance Archer, G. E. B., Saltelli, A., Sobol', I. M., Journal of Statistical Computation and Simulation 58 (1997) 99-120.
 */
export function bootstrap<R>(
  rows: readonly R[],
  seed: number,
  statistic: (rows: readonly R[]) => Float64Array,
): readonly Estimate[] {
  const chance = new Chance(seed)
  const drawn = Array.from({ length: resamplings }, () =>
    statistic(rows.map(() => rows[chance.below(rows.length)] as R)),
  )
  return Array.from(statistic(rows), (value, at) => {
    const sorted = Float64Array.from(drawn, (values) => values[at] as number).sort()
    return { value, low: quantileOf(sorted, 0.025), high: quantileOf(sorted, 0.975) }
  })
}
