/** Bracketed root finding by Brent's method: never slower than bisection by more than a constant, usually much quicker. */

export interface Root {
  readonly x: number
  /** The function there. Far from zero where the function jumps across zero instead of passing through it. */
  readonly value: number
  readonly evaluations: number
}

/**
 * Root of a continuous function between two points where its signs differ.
 *
 * Inverse quadratic interpolation, the secant or bisection, whichever the history permits, so that the bracket always shrinks.
 * Converged when the bracket is below `2 * (tolerance * |x| + 2 ulp)`. The caller has the end values already, so they are passed in.
 *
 * Source: Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973, chapter 4.
 */
export function brentRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  valueLow: number,
  valueHigh: number,
  tolerance: number,
  maxSteps = 200,
): Root {
  let a = low
  let fa = valueLow
  // `b` is the best point so far, `a` the one before it, `c` the other end of the bracket.
  let b = high
  let fb = valueHigh
  let c = a
  let fc = fa
  let step = b - a
  let stepBefore = step
  let evaluations = 0
  while (evaluations < maxSteps) {
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      step = b - a
      stepBefore = step
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance * Math.abs(b)
    const half = 0.5 * (c - b)
    if (Math.abs(half) <= least || fb === 0) break
    const proposal =
      Math.abs(stepBefore) >= least && Math.abs(fa) > Math.abs(fb) ? interpolate(a, b, c, fa, fb, fc) : half
    const inside =
      proposal / half > 0 && Math.abs(proposal) < Math.min(1.5 * Math.abs(half), 0.5 * Math.abs(stepBefore))
    stepBefore = inside ? step : half
    step = inside ? proposal : half
    a = b
    fa = fb
    b += Math.abs(step) > least ? step : Math.sign(half) * least
    fb = f(b)
    evaluations += 1
  }
  return { x: b, value: fb, evaluations }
}

/** Step from `b` by the secant (two distinct points) or inverse quadratic interpolation (three). */
function interpolate(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa
  if (a === c) return (s * (c - b)) / (s - 1)
  const q = fa / fc
  const r = fb / fc
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1))
  return -p / ((q - 1) * (r - 1) * (s - 1))
}
