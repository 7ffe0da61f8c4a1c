/**
 * The Sobol sequence: points that fill the unit cube more evenly than chance, as whole numbers of 32 bits.
 *
 * Source: Antonov, I. A., Saleev, V. M., "An economic method of computing LP-tau sequences", USSR Computational Mathematics and
 * Mathematical Physics 19 (1979) 252-256 (Gray code); recurrence of the direction numbers in Bratley, P., Fox, B. L., "Algorithm
 * 659", ACM Transactions on Mathematical Software 14 (1988) 88-100.
 */
import { type Direction, directions } from './sobol-directions.js'

const bits = 32

/** Dimensions for which direction numbers are at hand. */
export const sobolDimensions = directions.length + 1

/** Coordinate of a point in one dimension, as a whole number below 2^32; index and dimension are counted from 0. */
export function sobolBits(index: number, dimension: number): number {
  const numbers = directionNumbers(dimension)
  let gray = (index ^ (index >>> 1)) >>> 0
  let value = 0
  for (let bit = 0; gray !== 0; bit += 1, gray >>>= 1) if ((gray & 1) === 1) value ^= numbers[bit] as number
  return value >>> 0
}

const kept: (Uint32Array | undefined)[] = []

function directionNumbers(dimension: number): Uint32Array {
  const found = kept[dimension]
  if (found !== undefined) return found
  const numbers = dimension === 0 ? firstDimension() : fromRecurrence(directions[dimension - 1] as Direction)
  kept[dimension] = numbers
  return numbers
}

function firstDimension(): Uint32Array {
  return Uint32Array.from({ length: bits }, (_, bit) => 2 ** (bits - 1 - bit))
}

/** v_i = a_1 v_(i-1) + ... + a_(s-1) v_(i-s+1) + v_(i-s) + v_(i-s) / 2^s, sums without carry. */
function fromRecurrence({ degree, coefficients, initial }: Direction): Uint32Array {
  const numbers = new Uint32Array(bits)
  for (let bit = 0; bit < bits; bit += 1) {
    if (bit < degree) {
      numbers[bit] = (initial[bit] as number) * 2 ** (bits - 1 - bit)
      continue
    }
    const back = numbers[bit - degree] as number
    let value = back ^ (back >>> degree)
    for (let step = 1; step < degree; step += 1)
      if (((coefficients >>> (degree - 1 - step)) & 1) === 1) value ^= numbers[bit - step] as number
    numbers[bit] = value
  }
  return numbers
}
