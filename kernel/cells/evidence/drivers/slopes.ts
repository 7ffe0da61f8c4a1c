/** What the numbers at small steps either side of a value say: the slope there, and whether there is one. */

/** The number at the value, one step below and above it, and half a step. */
export interface Near {
  readonly base: number
  readonly below: number
  readonly above: number
  readonly halfBelow: number
  readonly halfAbove: number
}

/** Slopes may disagree by this share of the steepest. House convention: below it no reader would act differently. */
const disagreement = 0.02

/** Of the number: what closures leave open must not pass for a bend. House convention. */
const noise = 1e-7

/** Rounding in the last digits is no movement. */
const rounding = 1e-12

/** Change of the number over one step, by central difference over the two steps either side. */
export function centralChange({ below, above }: Near): number {
  return (above - below) / 2
}

/**
 * A smooth function has f(x + h) - 2 f(x) + f(x - h) = h^2 f'' to the fourth order in h, so that this, over h, halves with the step; and its
 * central slopes agree to the second order. At a bend the first stays, next to one the second differ.
 *
 * @source Abramowitz, M., Stegun, I. A., Handbook of Mathematical Functions, 1964, 25.3.20 and 25.3.23 (from memory)
 */
export function bends({ base, below, above, halfBelow, halfAbove }: Near): boolean {
  const slopes = [above - base, base - below, 2 * (halfAbove - base), 2 * (base - halfBelow)] as const
  const [up, down, halfUp, halfDown] = slopes
  const allowed = disagreement * Math.max(...slopes.map(Math.abs)) + noise * Math.abs(base)
  const between = up - down - 2 * (halfUp - halfDown)
  const central = (up + down) / 2 - (halfUp + halfDown) / 2
  return Math.abs(between) > allowed || Math.abs(central) > allowed
}

/** Whether a number is another than the base, to more than rounding. */
export function moved(value: number, base: number): boolean {
  return Math.abs(value - base) > rounding * Math.abs(base)
}
