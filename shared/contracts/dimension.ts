/**
 * Physical dimensions as exponents of the five base units this field needs, and their one text form.
 *
 * Angles are pure numbers (radian = 1). Exponents are multiples of 1/12 in practice: square and cube roots of
 * products stay exact as text because exponents are rounded to a twelfth when written.
 */

/** Exponents of kilogram, metre, second, kelvin and ampere, in this order. */
export type Dimension = readonly [mass: number, length: number, time: number, temperature: number, current: number]

const baseUnits = ['kg', 'm', 's', 'K', 'A'] as const

/** The dimension of a pure number. */
export const pureNumber: Dimension = [0, 0, 0, 0, 0]

export function multiplyDimensions(a: Dimension, b: Dimension): Dimension {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3], a[4] + b[4]]
}

export function divideDimensions(a: Dimension, b: Dimension): Dimension {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3], a[4] - b[4]]
}

export function raiseDimension(a: Dimension, power: number): Dimension {
  return [a[0] * power, a[1] * power, a[2] * power, a[3] * power, a[4] * power]
}

/** Equality up to rounding of fractional exponents (a cube root taken three times is the base again). */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, index) => Math.abs(exponent - (b[index] ?? 0)) < 1e-9)
}

/** `kg m^2 s^-3` for a power, `1` for a pure number; the base units in fixed order, exponent 1 left out. */
export function formatDimension(dimension: Dimension): string {
  const factors: string[] = []
  dimension.forEach((raw, index) => {
    const exponent = Math.round(raw * 12) / 12
    if (exponent === 0) return
    const text = Number.isInteger(exponent) ? String(exponent) : String(Number(exponent.toPrecision(12)))
    factors.push(exponent === 1 ? `${baseUnits[index]}` : `${baseUnits[index]}^${text}`)
  })
  return factors.length === 0 ? '1' : factors.join(' ')
}

/** Reads the text form back; `null` for anything `formatDimension` would not write (order of factors is free). */
export function parseDimension(text: string): Dimension | null {
  const exponents = [0, 0, 0, 0, 0]
  if (text.trim() === '1') return pureNumber
  for (const factor of text.trim().split(/\s+/)) {
    const match = /^(kg|m|s|K|A)(?:\^(-?\d+(?:\.\d+)?))?$/.exec(factor)
    if (match === null) return null
    const index = baseUnits.indexOf(match[1] as (typeof baseUnits)[number])
    exponents[index] = (exponents[index] ?? 0) + (match[2] === undefined ? 1 : Number(match[2]))
  }
  return exponents as unknown as Dimension
}
