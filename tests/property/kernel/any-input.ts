/** Whatever a cell might pass to a function of the kernel, and what must come back: finite numbers or a typed error. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InvalidInput, KernelError } from '../../../kernel/library/index.js'
import { runsAtNightAll, seedOfTheNight } from './runs.js'

/** Anything a cell might pass: sane, absurd, zero, negative, not a number, text. */
export const anything = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 0.01, max: 3, noNaN: true }) },
  { weight: 3, arbitrary: fc.double({ min: 0.01, max: 1e4, noNaN: true }) },
  fc.double(),
  fc.constantFrom(0, -0, 1, -1, Number.MAX_VALUE, Number.MIN_VALUE, Number.NaN, Number.POSITIVE_INFINITY),
  fc.constant('5' as unknown as number),
)

export const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** One absurd value among many sane ones reaches further than twenty absurd ones, which the first check refuses. */
export const mostlySane = fc.oneof({ weight: 25, arbitrary: within(0.01, 3) }, { weight: 1, arbitrary: anything })

/** Numbers drawn for one call. */
export type V = readonly number[]
export const v = (values: V, index: number): number => values[index] ?? 0

/**
 * One call of the table of a subject: its name begins with that of the function (`rotor.climb to a power`), how many numbers it
 * takes, the call, and of how many inputs in a thousand a slow one is tried (1000).
 */
export type AnyCall = readonly [name: string, count: number, call: (values: V) => unknown, inAThousand?: number]

/** Registers one test per call: whatever numbers come, finite numbers or an error that names its argument go back. */
export function answersAnything(title: string, calls: readonly AnyCall[], seed: number): void {
  describe(`${title} (seed ${seed + seedOfTheNight})`, () => {
    for (const [name, count, call, inAThousand = 1000] of calls)
      it(`${name} gives finite numbers or an error of the kernel, for any input`, () => {
        const wild = fc.array(anything, { minLength: count, maxLength: count })
        const tame = fc.array(mostlySane, { minLength: count, maxLength: count })
        let answered = 0
        fc.assert(
          fc.property(fc.oneof(wild, tame), (values) => {
            if (finiteNumbersOf(() => call(values)).length > 0) answered += 1
          }),
          { numRuns: runsAtNightAll(inAThousand), seed: seed + seedOfTheNight },
        )
        // A call that is never answered is a call that was never tried.
        expect(answered).toBeGreaterThan(0)
      })
  })
}

/** As `numbersOf`, and fails where one of them is not finite. */
export function finiteNumbersOf(call: () => unknown): number[] {
  const numbers = numbersOf(call)
  const place = numbers.findIndex((number) => !Number.isFinite(number))
  if (place >= 0) expect.fail(`number ${place + 1} of ${numbers.length} in the answer is ${numbers[place]}`)
  return numbers
}

/** All numbers in an answer, however deep; nothing where the call refused with an error of the kernel. */
export function numbersOf(call: () => unknown): number[] {
  try {
    return flatten(call())
  } catch (error) {
    if (!(error instanceof KernelError)) throw error
    if (error instanceof InvalidInput) expect(error.argument).not.toBe('')
    return []
  }
}

/** All numbers in a value, however deep. */
export function flatten(value: unknown): number[] {
  const found: number[] = []
  gather(value, found)
  return found
}

function gather(value: unknown, found: number[]): void {
  if (typeof value === 'number') found.push(value)
  else if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) gather(part, found)
}
