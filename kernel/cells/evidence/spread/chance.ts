/** Whole numbers by chance from a seed, for choices that need no evenness: permutations and resampling. */

/**
 * Period 2^128; the same on every machine.
 *
 * Source: Blackman, D., Vigna, S., "Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical Software 47
 * (2021), article 36: xoshiro128**, public domain. Its state is filled from the seed by a Weyl sequence through a hash.
 */
export class Chance {
  #a: number
  #b: number
  #c: number
  #d: number

  constructor(seed: number) {
    const state = [1, 2, 3, 4].map((step) => mix((seed + Math.imul(step, 0x9e3779b9)) >>> 0))
    this.#a = state[0] as number
    this.#b = state[1] as number
    this.#c = state[2] as number
    this.#d = state[3] as number
  }

  /** A whole number from 0 to below `limit`, which is far below 2^32: the remaining bias is limit / 2^32. */
  below(limit: number): number {
    return Math.floor((this.#next() / 2 ** 32) * limit)
  }

  /** A permutation of the whole numbers below `count`. */
  permutation(count: number): number[] {
    const order = Array.from({ length: count }, (_, at) => at)
    for (let last = count - 1; last > 0; last -= 1) {
      const chosen = this.below(last + 1)
      const kept = order[last] as number
      order[last] = order[chosen] as number
      order[chosen] = kept
    }
    return order
  }

  #next(): number {
    const result = Math.imul(rotate(Math.imul(this.#b, 5), 7), 9) >>> 0
    const shifted = this.#b << 9
    this.#c ^= this.#a
    this.#d ^= this.#b
    this.#b ^= this.#c
    this.#a ^= this.#d
    this.#c ^= shifted
    this.#d = rotate(this.#d, 11)
    return result
  }
}

function rotate(value: number, by: number): number {
  return (value << by) | (value >>> (32 - by))
}

function mix(value: number): number {
  let x = value
  x = Math.imul(x ^ (x >>> 16), 0x7feb352d)
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b)
  return x ^ (x >>> 16)
}
