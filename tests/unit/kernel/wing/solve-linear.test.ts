import { describe, expect, it } from 'vitest'
import { solveLinear } from '../../../../kernel/library/numerics/index.js'

describe('solveLinear(matrix, size, sides)', () => {
  it('solves a system that needs an exchange of rows, for two right sides at once', () => {
    const sides = Float64Array.of(4, 5, 1, 0)
    expect(solveLinear(Float64Array.of(0, 2, 1, 1), 2, sides)).toBe(true)
    expect([...sides]).toEqual([3, 2, -0.5, 0.5])
  })

  it('solves the Hilbert matrix of order 6 to what its condition allows', () => {
    // Row sums as the right side, so the exact solution is ones; condition number 1.5e7.
    const size = 6
    const matrix = Float64Array.from({ length: size * size }, (_, at) => 1 / (Math.floor(at / size) + (at % size) + 1))
    const sides = Float64Array.from({ length: size }, (_, row) =>
      matrix.slice(row * size, (row + 1) * size).reduce((sum, value) => sum + value, 0),
    )
    expect(solveLinear(matrix, size, sides)).toBe(true)
    for (const value of sides) expect(Math.abs(value - 1)).toBeLessThan(1e-8)
  })

  it('is false for rows that depend on each other, for nothing but zeros and for what is not finite', () => {
    expect(solveLinear(Float64Array.of(1, 2, 2, 4), 2, Float64Array.of(1, 1))).toBe(false)
    expect(solveLinear(new Float64Array(4), 2, Float64Array.of(1, 1))).toBe(false)
    expect(solveLinear(Float64Array.of(1, Number.NaN, 1, 1), 2, Float64Array.of(1, 1))).toBe(false)
  })
})
