/** The few statistics a benchmark needs. */

/** The value below which a share of the values lies; 0.5 is the median. */
export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]
}

export function median(values) {
  return quantile(values, 0.5)
}

/** `12.3 ms (p90 15.0, n 40)` */
export function milliseconds(values) {
  return `${median(values).toFixed(1)} ms (p90 ${quantile(values, 0.9).toFixed(1)}, n ${values.length})`
}
