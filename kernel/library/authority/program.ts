/**
 * Linear programs of a trim, handed to the library: least or greatest of a linear form of the thrusts, with exact sums and upper limits.
 * Numbers come scaled to about 1, because the library rounds its answers to an absolute precision.
 */
import { type Constraint, solve } from 'yalps'

/** Rounding of the library's answers, and the size below which it takes a number for zero. */
export const precision = 1e-10

export interface Program {
  /** Coefficients of the form to be made least, one per unknown. */
  readonly cost: Float64Array
  /** Sums that must come out exactly: one row of coefficients each. */
  readonly rows: readonly Float64Array[]
  readonly sums: ArrayLike<number>
  /** Greatest value of each unknown; all are 0 or more. Infinity: no limit. */
  readonly upper: Float64Array
  /** With it, the last unknown is the peak: none of the others may exceed it. */
  readonly lastIsPeak?: boolean
}

/** The unknowns at the least of the form; undefined where no point satisfies the sums within the limits. */
export function minimise(program: Program): Float64Array | undefined {
  const { rows, sums, upper, cost, lastIsPeak = false } = program
  const count = cost.length
  const constraints: [number, Constraint][] = rows.map((_, row) => [row, { equal: sums[row] as number }])
  const variables: [number, [number, number][]][] = []
  const peak = count - 1
  for (let at = 0; at < count; at += 1) {
    const terms: [number, number][] = [[-1, cost[at] as number]]
    rows.forEach((row, index) => {
      const value = row[at] as number
      if (value !== 0) terms.push([index, value])
    })
    const limit = upper[at] as number
    if (limit < Number.POSITIVE_INFINITY) {
      constraints.push([1000 + at, { max: limit }])
      terms.push([1000 + at, 1])
    }
    if (lastIsPeak && at < peak) {
      constraints.push([2000 + at, { max: 0 }])
      terms.push([2000 + at, 1])
    }
    variables.push([at, terms])
  }
  if (lastIsPeak) for (let at = 0; at < peak; at += 1) variables[peak]?.[1].push([2000 + at, -1])
  const answer = solve({ direction: 'minimize', objective: -1, constraints, variables }, { precision })
  if (answer.status !== 'optimal') return undefined
  const found = new Float64Array(count)
  for (const [at, value] of answer.variables) found[at] = value
  return found
}
