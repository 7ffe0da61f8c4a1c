/** Value of a polynomial whose coefficients go from the constant term up. */
export function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0
  for (let index = coefficients.length - 1; index >= 0; index -= 1) sum = sum * x + (coefficients[index] as number)
  return sum
}
