/** Mean lines of the NACA four- and five-digit sections: two parabolic or cubic arcs, so two quadratics in slope. */
import { describeValue, InvalidInput } from '../errors.js'

/** dz/dx = constant + linear x + quadratic x^2, x in chords from the leading edge. */
export interface SlopeArc {
  readonly constant: number
  readonly linear: number
  readonly quadratic: number
}

export interface MeanLine {
  /** Where the arcs meet [chords]. */
  readonly joint: number
  readonly fore: SlopeArc
  readonly aft: SlopeArc
}

/** First two digits after the lift digit: joint r and k_1 at a design lift coefficient of 0.3 (NACA Report 537 and later, from memory). */
const plain: Readonly<Record<string, readonly [number, number]>> = {
  '10': [0.058, 361.4],
  '20': [0.126, 51.64],
  '30': [0.2025, 15.957],
  '40': [0.29, 6.643],
  '50': [0.391, 3.23],
}

/** Reflexed lines: r, k_1 and k_2/k_1 (from memory). */
const reflexed: Readonly<Record<string, readonly [number, number, number]>> = {
  '21': [0.13, 51.99, 0.000764],
  '31': [0.217, 15.793, 0.00677],
  '41': [0.318, 6.52, 0.0303],
  '51': [0.441, 3.191, 0.1355],
}

const flat: SlopeArc = { constant: 0, linear: 0, quadratic: 0 }

/** Reads `2412` or `23012`; the last two digits are thickness and do not matter here. */
export function readMeanLine(method: string, digits: string): MeanLine {
  if (typeof digits === 'string' && /^\d{4}$/.test(digits)) return fourDigit(method, digits)
  if (typeof digits === 'string' && /^\d{5}$/.test(digits)) return fiveDigit(method, digits)
  throw new InvalidInput({
    method,
    argument: 'section',
    value: describeValue(digits),
    accepted: 'the four or five digits of a NACA section, for instance "2412" or "23012"',
  })
}

function fourDigit(method: string, digits: string): MeanLine {
  const camber = Number(digits.charAt(0)) / 100
  const place = Number(digits.charAt(1)) / 10
  if (camber === 0) return { joint: 0.5, fore: flat, aft: flat }
  if (place === 0)
    throw new InvalidInput({
      method,
      argument: 'section',
      value: `the text "${digits}"`,
      accepted: 'a second digit of 1 to 9, the place of the greatest camber in tenths of the chord',
    })
  const fore = camber / (place * place)
  const aft = camber / ((1 - place) * (1 - place))
  return {
    joint: place,
    fore: { constant: 2 * fore * place, linear: -2 * fore, quadratic: 0 },
    aft: { constant: 2 * aft * place, linear: -2 * aft, quadratic: 0 },
  }
}

function fiveDigit(method: string, digits: string): MeanLine {
  const share = Number(digits.charAt(0)) / 2
  const line = digits.slice(1, 3)
  const simple = plain[line]
  const bent = reflexed[line]
  if (simple !== undefined) {
    const [r, k] = simple
    const sixth = (share * k) / 6
    return {
      joint: r,
      fore: { constant: sixth * r * r * (3 - r), linear: -6 * sixth * r, quadratic: 3 * sixth },
      aft: { constant: -sixth * r ** 3, linear: 0, quadratic: 0 },
    }
  }
  if (bent !== undefined) {
    const [r, k, ratio] = bent
    const sixth = (share * k) / 6
    const level = sixth * (-ratio * (1 - r) ** 3 - r ** 3)
    const arc = (times: number): SlopeArc => ({
      constant: level + 3 * times * sixth * r * r,
      linear: -6 * times * sixth * r,
      quadratic: 3 * times * sixth,
    })
    return { joint: r, fore: arc(1), aft: arc(ratio) }
  }
  throw new InvalidInput({
    method,
    argument: 'section',
    value: `the text "${digits}"`,
    accepted:
      'a five-digit section with the mean line 10, 20, 30, 40 or 50, or reflexed 21, 31, 41 or 51, as its second and third digit',
  })
}
