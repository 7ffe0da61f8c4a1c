/** A value in SI as number and unit, in the unit its author named or in a readable one. */
import { parseDimension, parseUnit, type ResultNumber, sameDimension, typesetUnit } from '../../contracts/index.js'
import { formatNumber, narrowSpace, numberOf, superscript } from './number.js'
import { chooseUnit } from './unit-choice.js'

export interface FormattedQuantity {
  /** Grouped digits, or the name of a number that is not finite. */
  readonly number: string
  /** Typeset unit, empty for a pure number. */
  readonly unit: string
  /** Both, for running text. */
  readonly text: string
}

/** A unit text with its factor to SI, ready to convert. */
export interface DisplayUnit {
  readonly factor: number
  /** Typeset; empty for a pure number. */
  readonly symbol: string
}

/**
 * Formats `si` [SI]. `dimension` is text in base units (`kg m^2 s^-3`, `1`), null where unknown; `unitText` is what the
 * author asked for. A unit that cannot be read or has another dimension is passed over for a readable one, because a
 * number must never be shown under a wrong unit. Without dimension and unit the bare number in SI is given.
 */
export function formatQuantity(si: ResultNumber, dimension: string | null, unitText?: string): FormattedQuantity {
  const value = numberOf(si)
  const unit = displayUnit(value, dimension, unitText)
  const number = formatNumber(value / unit.factor)
  if (!Number.isFinite(value)) return { number, unit: '', text: number }
  return { number, unit: unit.symbol, text: joinUnit(number, unit.symbol) }
}

/** `1 637 kg`, `12°`, `80 %`: number and typeset unit with the space between that the unit takes. */
export function joinUnit(number: string, symbol: string): string {
  if (symbol === '') return number
  return symbol === '°' ? `${number}${symbol}` : `${number}${narrowSpace}${symbol}`
}

/** The unit in which values like `si` are shown. */
export function displayUnit(si: number, dimension: string | null, unitText?: string): DisplayUnit {
  const asked = unitText === undefined ? null : readUnit(unitText, dimension)
  if (asked !== null) return asked
  if (dimension === null) return { factor: 1, symbol: '' }
  return readUnit(chooseUnit(dimension, si), dimension) ?? { factor: 1, symbol: typesetUnitText(dimension) }
}

function readUnit(text: string, dimension: string | null): DisplayUnit | null {
  const reading = parseUnit(text)
  if (!reading.ok) return null
  const wanted = dimension === null ? null : parseDimension(dimension)
  if (wanted !== null && !sameDimension(wanted, reading.unit.dimension)) return null
  return { factor: reading.unit.factor, symbol: typesetUnitText(reading.unit.text) }
}

/** `kg m^2 s^-3` as `kg m² s⁻³`; a pure number's `1` as nothing. */
export function typesetUnitText(text: string): string {
  if (text.trim() === '1') return ''
  return typesetUnit(text.replaceAll('**', '^')).replace(/\^(-?\d+(?:\.\d+)?)/g, (_, exponent: string) =>
    superscript(exponent),
  )
}
