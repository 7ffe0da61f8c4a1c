/** Probabilities in words that claim no more than the samples can. */
import { narrowSpace } from '../quantity/number.js'

/** `87.5 %`, `under 0.1 %`, `over 99.9 %`; 0 and 100 only where it is so. */
export function percentText(share: number): string {
  const percent = share * 100
  if (percent > 0 && percent < 0.1) return `under 0.1${narrowSpace}%`
  if (percent < 100 && percent > 99.9) return `over 99.9${narrowSpace}%`
  return `${Number(percent.toFixed(1))}${narrowSpace}%`
}

/** `84.1 to 89 %`; one number where both ends read alike. */
export function percentRange([low, high]: readonly [low: number, high: number]): string {
  const [from, to] = [percentText(low), percentText(high)]
  return from === to ? from : `${from.replace(`${narrowSpace}%`, '')} to ${to}`
}
