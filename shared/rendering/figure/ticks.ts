/** Round numbers along an axis, and their words with equal decimals. */
import { formatNumber, groupThousands } from '../quantity/index.js'

/** 1, 2 or 5 times a power of ten, so that about `wanted` steps span `low` to `high`. */
export function tickStep(low: number, high: number, wanted: number): number {
  const rough = (high - low) / Math.max(1, wanted)
  if (!(rough > 0) || !Number.isFinite(rough)) return 1
  const power = 10 ** Math.floor(Math.log10(rough))
  const share = rough / power
  return (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10) * power
}

export function tickValues(low: number, high: number, wanted: number): number[] {
  const step = tickStep(low, high, wanted)
  const first = Math.ceil(low / step - 1e-9)
  const count = Math.floor(high / step + 1e-9) - first + 1
  return Array.from({ length: Math.min(Math.max(count, 0), 60) }, (_, index) => exactMultiple(first + index, step))
}

/** Ends moved outwards to whole steps. */
export function roundedOut(low: number, high: number, wanted: number): [number, number] {
  const step = tickStep(low, high, wanted)
  return [exactMultiple(Math.floor(low / step + 1e-9), step), exactMultiple(Math.ceil(high / step - 1e-9), step)]
}

/** Words of a tick: as many decimals as the step needs, for all ticks alike. */
export function tickFormat(low: number, high: number, wanted: number): (value: number) => string {
  const step = tickStep(low, high, wanted)
  const largest = Math.max(Math.abs(low), Math.abs(high))
  if (largest >= 1e6 || (largest < 1e-3 && largest > 0)) return (value) => formatNumber(value, 3)
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  return (value) => {
    const fixed = groupThousands(Math.abs(value).toFixed(decimals))
    return value < 0 && Number(value.toFixed(decimals)) !== 0 ? `−${fixed}` : fixed
  }
}

function exactMultiple(count: number, step: number): number {
  const value = Number((count * step).toPrecision(12))
  return value === 0 ? 0 : value
}
