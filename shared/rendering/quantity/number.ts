/** Numbers as people read them: four significant digits, thin groups of three, a true minus, powers of ten. */
import type { ResultNumber } from '../../contracts/index.js'

/** Narrow no-break space: groups digits and parts a number from its unit. */
export const narrowSpace = '\u202f'
const minus = '\u2212'
const significantDigits = 4
/** Magnitudes outside are written as a power of ten. */
const plainFrom = 1e-3
const plainBelow = 1e6
/** A value this close to a shorter decimal was typed that way, so its trailing zeros say nothing. */
const typedTolerance = 1e-12

const superscriptDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹'

/** Names of numbers that are not finite travel as text in results; this reads either form. */
export function numberOf(value: ResultNumber): number {
  return typeof value === 'number' ? value : Number(value)
}

/** `1 637`, `−0.0425`, `6.022×10²³`, `not a number`, `infinity`. Never `-0`. */
export function formatNumber(value: ResultNumber, digits: number = significantDigits): string {
  const number = numberOf(value)
  if (Number.isNaN(number)) return 'not a number'
  if (!Number.isFinite(number)) return number > 0 ? 'infinity' : 'minus infinity'
  if (number === 0) return '0'
  const magnitude = Math.abs(number)
  return (number < 0 ? minus : '') + formatMagnitude(magnitude, digits)
}

function formatMagnitude(magnitude: number, digits: number): string {
  if (Number.isInteger(magnitude) && magnitude < 1e5) return groupThousands(String(magnitude))
  const rounded = Number(magnitude.toPrecision(digits))
  const typed = Math.abs(rounded - magnitude) <= typedTolerance * magnitude
  if (rounded >= plainFrom && rounded < plainBelow) return groupThousands(plainDecimals(rounded, digits, typed))
  const [mantissa = '', exponent = '0'] = magnitude.toExponential(digits - 1).split('e')
  const shown = typed ? String(Number(mantissa)) : mantissa
  const power = `10${superscript(Number(exponent))}`
  return shown === '1' ? power : `${shown}×${power}`
}

/** Digits after the point so that `digits` are significant in all; none are dropped unless the value was typed short. */
function plainDecimals(rounded: number, digits: number, typed: boolean): string {
  if (typed) return String(rounded)
  const before = Math.floor(Math.log10(rounded)) + 1
  return rounded.toFixed(Math.max(0, digits - before))
}

/** Thin groups of three in a plain decimal, `12 345.67`. */
export function groupThousands(text: string): string {
  const [whole = '', decimals] = text.split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, narrowSpace)
  return decimals === undefined ? grouped : `${grouped}.${decimals}`
}

/** `⁻²⁴`: an exponent in superscript characters. Fractions keep their point: `⁰·⁵`. */
export function superscript(exponent: number | string): string {
  return String(exponent)
    .replace(/\d/g, (digit) => superscriptDigits[Number(digit)] ?? digit)
    .replace('-', '⁻')
    .replace('.', '·')
}
