/**
 * Scrambling by a seed: coordinates keep their evenness, become uniform by themselves, and another seed gives another, equally
 * good set. Each bit is flipped or not by the bits above it (nested scrambling), decided by a hash instead of stored trees.
 *
 * Source: Owen, A. B., "Randomly permuted (t,m,s)-nets and (t,s)-sequences", in Monte Carlo and Quasi-Monte Carlo Methods in
 * Scientific Computing, 1995, 299-317; Laine, S., Karras, T., "Stratified sampling for stochastic transparency", Computer Graphics
 * Forum 30 (2011) 1197-1204; Burley, B., "Practical hash-based Owen scrambling", Journal of Computer Graphics Techniques 9 (2020) 1-20.
 */

/** Bits of a coordinate scrambled; `seed` is a whole number below 2^32, another one for each dimension. */
export function scramble(value: number, seed: number): number {
  return reverse(permute(reverse(value), seed))
}

/** A seed of its own for each dimension. */
export function dimensionSeed(seed: number, dimension: number): number {
  return mix((seed ^ mix(dimension + 0x9e3779b9)) >>> 0)
}

/** Every bit depends on itself and the bits below it alone; read backwards that is a nested scramble. */
function permute(value: number, seed: number): number {
  let x = (value + seed) >>> 0
  x ^= Math.imul(x, 0x6c50b47c)
  x ^= Math.imul(x, 0xb82f1e52)
  x ^= Math.imul(x, 0xc7afe638)
  x ^= Math.imul(x, 0x8d22f6e6)
  return x >>> 0
}

function reverse(value: number): number {
  let x = value
  x = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1)
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2)
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4)
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8)
  return ((x >>> 16) | (x << 16)) >>> 0
}

/** Finaliser of the 32-bit MurmurHash3 (Appleby, A., public domain). */
function mix(value: number): number {
  let x = value >>> 0
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b)
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35)
  return (x ^ (x >>> 16)) >>> 0
}
