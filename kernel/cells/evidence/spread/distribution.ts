/** From a standard normal number to the value of an assumption: every distribution is read through its quantile function. */
import type { AssumptionRecord } from '../../../../shared/contracts/index.js'
import { normalCumulative } from './normal-cumulative.js'

export type Distribution = NonNullable<AssumptionRecord['distribution']>

/**
 * The value that is as likely to be exceeded as `z` is in a standard normal distribution; strictly increasing in `z`.
 *
 * @equation F(x) = Phi(z). Normal: x = mean + deviation z. Lognormal: x = median factor^z. Uniform: x = low + (high - low) p.
 *   Triangular: x = low + sqrt(p (high - low)(mode - low)) below the mode, x = high - sqrt((1 - p)(high - low)(high - mode)) above, p = Phi(z)
 * @source Johnson, N. L., Kotz, S., Balakrishnan, N., Continuous Univariate Distributions, 2nd edition, 1994-1995 (from memory)
 */
export function valueAt(distribution: Distribution, z: number): number {
  switch (distribution.kind) {
    case 'normal':
      return Number(distribution.mean) + Number(distribution.deviation) * z
    case 'lognormal':
      return Number(distribution.median) * Number(distribution.factor) ** z
    case 'uniform': {
      const [low, high] = [Number(distribution.low), Number(distribution.high)]
      return low + (high - low) * normalCumulative(z)
    }
    case 'triangular':
      return triangular(Number(distribution.low), Number(distribution.mode), Number(distribution.high), z)
  }
}

function triangular(low: number, mode: number, high: number, z: number): number {
  const below = normalCumulative(z)
  const width = high - low
  if (below * width <= mode - low) return low + Math.sqrt(below * width * (mode - low))
  // From the upper tail, so that values next to the upper bound keep their digits.
  return high - Math.sqrt(normalCumulative(-z) * width * (high - mode))
}

/** Least and greatest value that it can give; infinite where it has no end. */
export function support(distribution: Distribution): readonly [low: number, high: number] {
  switch (distribution.kind) {
    case 'normal':
      return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    case 'lognormal':
      return [0, Number.POSITIVE_INFINITY]
    default:
      return [Number(distribution.low), Number(distribution.high)]
  }
}
