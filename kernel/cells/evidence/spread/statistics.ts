/** Statistics of samples; all take finite numbers. */

/** Percentile by linear interpolation between order statistics: definition 7 of Hyndman, R. J., Fan, Y., "Sample quantiles in statistical packages", The American Statistician 50 (1996) 361-365. */
export function quantileOf(sorted: Float64Array, share: number): number {
  const at = (sorted.length - 1) * share
  const below = Math.floor(at)
  const value = sorted[below] as number
  const next = sorted[Math.min(below + 1, sorted.length - 1)] as number
  return value + (next - value) * (at - below)
}

export function meanOf(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}

/** Standard deviation with n - 1; 0 for a single value. */
export function deviationOf(values: Float64Array, mean = meanOf(values)): number {
  if (values.length < 2) return 0
  let sum = 0
  for (const value of values) sum += (value - mean) ** 2
  return Math.sqrt(sum / (values.length - 1))
}

/** Two-sided 95 %. */
const reach = 1.959963984540054

/**
 * Where a probability lies with 95 % when `hits` of `trials` independent draws were hits. Evenly spread samples usually do better.
 *
 * Source: Wilson, E. B., "Probable inference, the law of succession, and statistical inference", Journal of the American
 * Statistical Association 22 (1927) 209-212.
 */
export function probabilityInterval(hits: number, trials: number): readonly [low: number, high: number] {
  if (trials === 0) return [0, 1]
  const share = hits / trials
  const z2 = reach ** 2 / trials
  const middle = (share + z2 / 2) / (1 + z2)
  const half = (reach / (1 + z2)) * Math.sqrt((share * (1 - share)) / trials + z2 / (4 * trials))
  return [hits === 0 ? 0 : middle - half, hits === trials ? 1 : middle + half]
}

/**
 * Where a percentile lies with 95 %, whatever the distribution: between two order statistics.
 *
 * Source: David, H. A., Nagaraja, H. N., Order Statistics, 3rd edition, 2003, section 7.1 (normal approximation of the ranks).
 */
export function quantileInterval(sorted: Float64Array, share: number): readonly [low: number, high: number] {
  const half = (reach * Math.sqrt(share * (1 - share))) / Math.sqrt(sorted.length)
  return [quantileOf(sorted, Math.max(share - half, 0)), quantileOf(sorted, Math.min(share + half, 1))]
}
