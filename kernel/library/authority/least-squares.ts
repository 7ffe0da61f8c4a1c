/**
 * Thrusts of least sum of squares with given sums and limits: what makes a trim unique once its peak is known.
 *
 * An active-set method of our own, because the thrusts under a least peak often have one point only to choose from, and a general
 * quadratic program has to find its way into such a set first. Starting from a point that satisfies everything, every step keeps
 * the sums and the limits, so that at worst the answer is not quite the least one.
 *
 * Source: Nocedal, J., Wright, S. J., Numerical Optimization, 2nd edition, 2006, algorithm 16.3.
 */
import { solveLinear } from '../numerics/index.js'

/** A component this small against the largest does not move, and a limit this near has been reached. */
const still = 1e-11
const wrongSign = 1e-9

/** Improves `point` in place. `rows` must be independent; `upper` may be infinite. */
export function leastSquares(point: Float64Array, rows: readonly Float64Array[], upper: Float64Array): void {
  const count = point.length
  const held = new Int8Array(count)
  const multipliers = new Float64Array(rows.length)
  for (let step = 0; step < 12 * count; step += 1) {
    if (!towards(point, rows, held, multipliers)) return
    const blocking = advance(point, rows, upper, held, multipliers)
    if (blocking >= 0) {
      const up = direction(blocking, rows, multipliers) > (point[blocking] as number)
      held[blocking] = up ? 1 : -1
      point[blocking] = up ? (upper[blocking] as number) : 0
      continue
    }
    const released = worstHeld(point, rows, held, multipliers)
    if (released < 0) return
    held[released] = 0
  }
}

/** Multipliers of the sums for the least point that keeps the held rotors where they are; false where the free rows depend on each other. */
function towards(
  point: Float64Array,
  rows: readonly Float64Array[],
  held: Int8Array,
  multipliers: Float64Array,
): boolean {
  const size = rows.length
  const matrix = new Float64Array(size * size)
  multipliers.fill(0)
  for (let at = 0; at < point.length; at += 1) {
    if (held[at] !== 0) continue
    for (let row = 0; row < size; row += 1) {
      const value = (rows[row] as Float64Array)[at] as number
      // What the free rotors give now must stay: the sums less what is held.
      multipliers[row] = (multipliers[row] as number) + value * (point[at] as number)
      for (let column = 0; column < size; column += 1)
        matrix[row * size + column] =
          (matrix[row * size + column] as number) + value * ((rows[column] as Float64Array)[at] as number)
    }
  }
  return size === 0 || solveLinear(matrix, size, multipliers)
}

/** The free rotor's least value: the multipliers seen through its column. */
function direction(at: number, rows: readonly Float64Array[], multipliers: Float64Array): number {
  let value = 0
  for (let row = 0; row < rows.length; row += 1)
    value += ((rows[row] as Float64Array)[at] as number) * (multipliers[row] as number)
  return value
}

/** Goes as far as the limits allow; the rotor that stops it, or -1 at the end of the way. */
function advance(
  point: Float64Array,
  rows: readonly Float64Array[],
  upper: Float64Array,
  held: Int8Array,
  multipliers: Float64Array,
): number {
  let share = 1
  let blocking = -1
  for (let at = 0; at < point.length; at += 1) {
    if (held[at] !== 0) continue
    const now = point[at] as number
    const move = direction(at, rows, multipliers) - now
    if (Math.abs(move) <= still) continue
    const room = move > 0 ? (upper[at] as number) - now : now
    const allowed = Math.max(0, room) / Math.abs(move)
    if (allowed < share) {
      share = allowed
      blocking = at
    }
  }
  for (let at = 0; at < point.length; at += 1) {
    if (held[at] !== 0) continue
    const now = point[at] as number
    point[at] = Math.min(upper[at] as number, Math.max(0, now + share * (direction(at, rows, multipliers) - now)))
  }
  return blocking
}

/** The held rotor that the sum of squares most wants back inside, or -1. */
function worstHeld(
  point: Float64Array,
  rows: readonly Float64Array[],
  held: Int8Array,
  multipliers: Float64Array,
): number {
  let worst = -1
  let most = wrongSign
  for (let at = 0; at < point.length; at += 1) {
    const side = held[at] as number
    if (side === 0) continue
    // At the upper limit the least value must lie above it, at zero below it.
    const inward = side * ((point[at] as number) - direction(at, rows, multipliers))
    if (inward > most) {
      most = inward
      worst = at
    }
  }
  return worst
}

/** Rows that do not follow from others, so that the sums they stand for can be solved for. `rows` are scaled to about 1. */
export function independentRows(rows: readonly Float64Array[]): Float64Array[] {
  const kept: Float64Array[] = []
  const basis: Float64Array[] = []
  for (const row of rows) {
    const rest = Float64Array.from(row)
    // Twice, because once leaves a trace of the size of rounding over the rest.
    for (let pass = 0; pass < 2; pass += 1)
      for (const unit of basis) {
        const along = inner(rest, unit)
        for (let at = 0; at < rest.length; at += 1) rest[at] = (rest[at] as number) - along * (unit[at] as number)
      }
    const length = Math.sqrt(inner(rest, rest))
    if (!(length > 1e-8 * Math.sqrt(inner(row, row)))) continue
    for (let at = 0; at < rest.length; at += 1) rest[at] = (rest[at] as number) / length
    basis.push(rest)
    kept.push(row)
  }
  return kept
}

function inner(one: Float64Array, other: Float64Array): number {
  let sum = 0
  for (let at = 0; at < one.length; at += 1) sum += (one[at] as number) * (other[at] as number)
  return sum
}

/** Takes what rounding left between the sums and what the point gives, by the smallest change that does it. */
export function correct(point: Float64Array, rows: readonly Float64Array[], sums: ArrayLike<number>): void {
  const size = rows.length
  const matrix = new Float64Array(size * size)
  const missing = Float64Array.from(rows, (row, index) => (sums[index] as number) - inner(row, point))
  const inside = Float64Array.from(point, (value) => (value > 1e-6 ? 1 : 0))
  for (let row = 0; row < size; row += 1)
    for (let column = 0; column < size; column += 1)
      for (let at = 0; at < point.length; at += 1)
        matrix[row * size + column] =
          (matrix[row * size + column] as number) +
          (inside[at] as number) *
            ((rows[row] as Float64Array)[at] as number) *
            ((rows[column] as Float64Array)[at] as number)
  if (size === 0 || !solveLinear(matrix, size, missing)) return
  for (let at = 0; at < point.length; at += 1) {
    const change = (inside[at] as number) * direction(at, rows, missing)
    if (Math.abs(change) < 1e-7) point[at] = Math.max(0, (point[at] as number) + change)
  }
}
