/** Evenly spread standard normal numbers, the same for the same seed on every machine. */
import { normalQuantile } from './normal-quantile.js'
import { dimensionSeed, scramble } from './scramble.js'
import { sobolBits } from './sobol-sequence.js'

/** Coordinates of one point in the dimensions from `first` on, each as a standard normal number; counted from 0. */
export function evenNormals(index: number, first: number, count: number, seed: number): Float64Array {
  const normals = new Float64Array(count)
  for (let at = 0; at < count; at += 1) {
    const dimension = first + at
    const bits = scramble(sobolBits(index, dimension), dimensionSeed(seed, dimension))
    // The middle of its cell: never 0 nor 1, whose quantiles are infinite.
    normals[at] = normalQuantile((bits + 0.5) / 2 ** 32)
  }
  return normals
}
