/** Minimum of a function of one variable by Brent's method: golden section, sped up by parabolas. */

export interface Minimum {
  readonly x: number
  readonly value: number
  readonly evaluations: number
}

const golden = 0.5 * (3 - Math.sqrt(5))

/**
 * Local minimum of a function between `low` and `high`; of an only one if it has only one there.
 *
 * `x` is accurate to about the square root of machine precision, which makes `value` accurate to rounding. `stopBelow` ends the
 * search at the first value at or under it: a caller that asks only for a sign need not wait.
 *
 * Source: Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973, chapter 5.
 */
export function brentMinimum(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
  stopBelow = Number.NEGATIVE_INFINITY,
  maxSteps = 100,
): Minimum {
  let a = low
  let b = high
  // x: least value so far; w: second least; v: the w before.
  let x = a + golden * (b - a)
  let w = x
  let v = x
  let fx = f(x)
  let fw = fx
  let fv = fx
  let step = 0
  let stepBefore = 0
  let evaluations = 1
  while (evaluations < maxSteps && fx > stopBelow) {
    const middle = 0.5 * (a + b)
    const least = tolerance * Math.abs(x) + 1e-300
    if (Math.abs(x - middle) <= 2 * least - 0.5 * (b - a)) break
    const parabola = Math.abs(stepBefore) > least ? parabolicStep(x, w, v, fx, fw, fv) : Number.NaN
    const usable = Math.abs(parabola) < Math.abs(0.5 * stepBefore) && x + parabola > a && x + parabola < b
    stepBefore = usable ? step : x >= middle ? a - x : b - x
    step = usable ? parabola : golden * stepBefore
    if (usable && (x + step - a < 2 * least || b - (x + step) < 2 * least)) step = x < middle ? least : -least
    const trial = x + (Math.abs(step) >= least ? step : step > 0 ? least : -least)
    const value = f(trial)
    evaluations += 1
    if (value <= fx) {
      if (trial >= x) a = x
      else b = x
      v = w
      fv = fw
      w = x
      fw = fx
      x = trial
      fx = value
    } else {
      if (trial < x) a = trial
      else b = trial
      if (value <= fw || w === x) {
        v = w
        fv = fw
        w = trial
        fw = value
      } else if (value <= fv || v === x || v === w) {
        v = trial
        fv = value
      }
    }
  }
  return { x, value: fx, evaluations }
}

/** Step from `x` to the vertex of the parabola through three points; NaN where they lie on a line. */
function parabolicStep(x: number, w: number, v: number, fx: number, fw: number, fv: number): number {
  const r = (x - w) * (fx - fv)
  const q = (x - v) * (fx - fw)
  const numerator = (x - v) * q - (x - w) * r
  const denominator = 2 * (q - r)
  return denominator === 0 ? Number.NaN : -numerator / denominator
}
