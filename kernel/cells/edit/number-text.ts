/** Numbers as an author would write them in the source. */

/** One part in 10¹⁵: the last bit or two of a double. */
const lastBits = 1e-15

/**
 * The shortest number that, put into the source, computes to the value wanted: `240`, not `239.99999999999997`.
 * `computed` computes what the source would; `unit` is what it gives for 1.
 */
export function shortestNumber(value: number, unit: number, computed: (number: number) => number): string {
  const exact = value / unit
  for (let digits = 1; digits <= 17; digits += 1) {
    const candidate = Number(exact.toPrecision(digits))
    if (Math.abs(computed(candidate) - value) <= lastBits * Math.abs(value)) return numberText(candidate)
  }
  return numberText(exact)
}

/** JavaScript's own text, without the plus sign of an exponent; `-0` is `0`. */
export function numberText(value: number): string {
  return Object.is(value, -0) ? '0' : String(value).replace('e+', 'e')
}
