/** Relative comparison, shared by the kernel's tests. */
import { expect } from 'vitest'

export function expectClose(actual: number, expected: number, relative: number, what = ''): void {
  const error = Math.abs(actual - expected) / Math.max(Math.abs(expected), Number.MIN_VALUE)
  expect(
    error <= relative,
    `${what} ${actual} should be ${expected} within ${relative}, is off by ${error.toExponential(2)}`,
  ).toBe(true)
}
