/** Whatever a cell might pass to a function of the kernel, and what must come back: finite numbers or a typed error. */
import fc from 'fast-check'
import { expect } from 'vitest'
import { InvalidInput, KernelError } from '../../../kernel/library/index.js'

/** Anything a cell might pass: sane, absurd, zero, negative, not a number, text. */
export const anything = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 0.01, max: 3, noNaN: true }) },
  { weight: 3, arbitrary: fc.double({ min: 0.01, max: 1e4, noNaN: true }) },
  fc.double(),
  fc.constantFrom(0, -0, 1, -1, Number.MAX_VALUE, Number.MIN_VALUE, Number.NaN, Number.POSITIVE_INFINITY),
  fc.constant('5' as unknown as number),
)

export const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Numbers drawn for one call. */
export type V = readonly number[]
export const v = (values: V, index: number): number => values[index] ?? 0

/** All numbers in an answer, however deep; nothing where the call refused with an error of the kernel. */
export function numbersOf(call: () => unknown): number[] {
  try {
    return flatten(call())
  } catch (error) {
    expect(error).toBeInstanceOf(KernelError)
    if (error instanceof InvalidInput) expect(error.argument).not.toBe('')
    return []
  }
}

/** All numbers in a value, however deep. */
export function flatten(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(flatten) : []
}
