/** First derivatives by differences, extrapolated to a vanishing step. */

export interface Derivative {
  readonly value: number
  /** Estimated error of the value. */
  readonly error: number
}

const tables = 8
const shrink = 1.4

/**
 * Derivative of a function at a point from differences over steps that shrink, extrapolated (Ridders' method): as exact as
 * double precision allows where the function is smooth, with an honest estimate of the error where it is not.
 *
 * `side` takes differences to one side only: what a kink needs. Source: Ridders, C. J. F., Advances in Engineering Software 4 (2),
 * 1982, 75-76 (from memory).
 */
export function derivative(f: (x: number) => number, x: number, firstStep: number, side: -1 | 0 | 1 = 0): Derivative {
  const here = side === 0 ? 0 : f(x)
  const difference = (step: number) =>
    side === 0 ? (f(x + step) - f(x - step)) / (2 * step) : (f(x + side * step) - here) / (side * step)
  // Errors of central differences come in even powers of the step, those of one-sided ones in all powers.
  const order = side === 0 ? shrink * shrink : shrink
  let row = [difference(firstStep)]
  let best: Derivative = { value: row[0] as number, error: Number.POSITIVE_INFINITY }
  let step = firstStep
  for (let depth = 1; depth < tables; depth += 1) {
    step /= shrink
    const next = [difference(step)]
    let power = order
    for (const older of row) {
      const last = next.at(-1) as number
      const value = (last * power - older) / (power - 1)
      power *= order
      const error = Math.max(Math.abs(value - last), Math.abs(value - older))
      next.push(value)
      if (error <= best.error) best = { value, error }
    }
    // Rounding has taken over.
    if (Math.abs((next.at(-1) as number) - (row.at(-1) as number)) >= 2 * best.error && depth > 1) return best
    row = next
  }
  return best
}
