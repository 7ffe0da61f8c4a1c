/** Dense linear systems of a few hundred unknowns, solved in place: what the lifting line and the vortex lattice need. */

/** A pivot this much smaller than the largest number of the matrix means that rows depend on each other. */
const smallestPivot = 1e-13

/**
 * Solves A x = b for one or more right sides; false where the matrix is singular to working precision.
 *
 * `matrix` holds `size` rows one after another and is overwritten; `sides` holds the right sides one after another and becomes the
 * solutions. Elimination with row exchanges costs 2/3 n^3 operations; nothing is allocated.
 *
 * Source: Golub, G. H., Van Loan, C. F., Matrix Computations, 3rd edition, 1996, section 3.4 (partial pivoting).
 */
export function solveLinear(matrix: Float64Array, size: number, sides: Float64Array): boolean {
  const sideCount = Math.floor(sides.length / size)
  let scale = 0
  for (let index = 0; index < size * size; index += 1) scale = Math.max(scale, Math.abs(matrix[index] as number))
  if (!(scale > 0 && scale < Number.POSITIVE_INFINITY)) return false
  for (let column = 0; column < size; column += 1) {
    const pivotRow = findPivot(matrix, size, column)
    if (pivotRow !== column) exchangeRows(matrix, size, sides, sideCount, column, pivotRow)
    const pivot = matrix[column * size + column] as number
    if (!(Math.abs(pivot) > smallestPivot * scale)) return false
    eliminate(matrix, size, sides, sideCount, column, pivot)
  }
  substituteBack(matrix, size, sides, sideCount)
  return true
}

function findPivot(matrix: Float64Array, size: number, column: number): number {
  let best = column
  let largest = -1
  for (let row = column; row < size; row += 1) {
    const value = Math.abs(matrix[row * size + column] as number)
    if (value > largest) {
      largest = value
      best = row
    }
  }
  return best
}

function exchangeRows(
  matrix: Float64Array,
  size: number,
  sides: Float64Array,
  sideCount: number,
  one: number,
  other: number,
): void {
  for (let column = 0; column < size; column += 1) exchange(matrix, one * size + column, other * size + column)
  for (let side = 0; side < sideCount; side += 1) exchange(sides, side * size + one, side * size + other)
}

function exchange(values: Float64Array, one: number, other: number): void {
  const kept = values[one] as number
  values[one] = values[other] as number
  values[other] = kept
}

function eliminate(
  matrix: Float64Array,
  size: number,
  sides: Float64Array,
  sideCount: number,
  column: number,
  pivot: number,
): void {
  const from = column * size
  for (let row = column + 1; row < size; row += 1) {
    const to = row * size
    const factor = (matrix[to + column] as number) / pivot
    if (factor === 0) continue
    for (let at = column + 1; at < size; at += 1)
      matrix[to + at] = (matrix[to + at] as number) - factor * (matrix[from + at] as number)
    for (let side = 0; side < sideCount; side += 1) {
      const start = side * size
      sides[start + row] = (sides[start + row] as number) - factor * (sides[start + column] as number)
    }
  }
}

function substituteBack(matrix: Float64Array, size: number, sides: Float64Array, sideCount: number): void {
  for (let side = 0; side < sideCount; side += 1) {
    const start = side * size
    for (let row = size - 1; row >= 0; row -= 1) {
      let sum = sides[start + row] as number
      for (let column = row + 1; column < size; column += 1)
        sum -= (matrix[row * size + column] as number) * (sides[start + column] as number)
      sides[start + row] = sum / (matrix[row * size + row] as number)
    }
  }
}
