/** The lower triangle L with L L' = matrix; rows one after another. */

/** A pivot below this means that a name follows from the others to working precision. */
const smallestPivot = 1e-10

/**
 * Undefined where the matrix is not positive definite.
 *
 * Source: Golub, G. H., Van Loan, C. F., Matrix Computations, 3rd edition, 1996, section 4.2.
 */
export function cholesky(matrix: Float64Array, size: number): Float64Array | undefined {
  const root = new Float64Array(size * size)
  for (let row = 0; row < size; row += 1)
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * size + column] as number
      for (let at = 0; at < column; at += 1)
        sum -= (root[row * size + at] as number) * (root[column * size + at] as number)
      if (row !== column) root[row * size + column] = sum / (root[column * size + column] as number)
      else if (sum > smallestPivot) root[row * size + row] = Math.sqrt(sum)
      else return undefined
    }
  return root
}

/** root * values. */
export function multiplyLower(root: Float64Array, values: Float64Array): Float64Array {
  const size = values.length
  const product = new Float64Array(size)
  for (let row = 0; row < size; row += 1) {
    let sum = 0
    for (let column = 0; column <= row; column += 1)
      sum += (root[row * size + column] as number) * (values[column] as number)
    product[row] = sum
  }
  return product
}

/** x of root * x = values. */
export function solveLower(root: Float64Array, values: Float64Array): Float64Array {
  const size = values.length
  const solution = new Float64Array(size)
  for (let row = 0; row < size; row += 1) {
    let sum = values[row] as number
    for (let column = 0; column < row; column += 1)
      sum -= (root[row * size + column] as number) * (solution[column] as number)
    solution[row] = sum / (root[row * size + row] as number)
  }
  return solution
}
