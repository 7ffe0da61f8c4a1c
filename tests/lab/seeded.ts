/** Chance that repeats: the same seed gives the same run, so a failing seed in a test's title is the whole bug report. */

export interface Chance {
  /** Between 0 and 1. */
  next(): number
  /** A whole number from 0 to `below` - 1. */
  whole(below: number): number
  pick<T>(items: readonly T[]): T
}

/** The 32-bit generator known as mulberry32 (T. Ettinger, public domain, from memory). */
export function seededChance(seed: number): Chance {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let value = state
    value = Math.imul(value ^ (value >>> 15), value | 1)
    value ^= value + Math.imul(value ^ (value >>> 7), value | 61)
    return ((value ^ (value >>> 14)) >>> 0) / 4294967296
  }
  const whole = (below: number) => Math.floor(next() * below)
  return {
    next,
    whole,
    pick: (items) => {
      const item = items[whole(items.length)]
      if (item === undefined) throw new RangeError('nothing to pick from')
      return item
    },
  }
}
