/**
 * The one reader of units written as text: `Wh/kg`, `kg m^2 s^-3`, `N*m`, `m/s`, `%`.
 *
 * Grammar: factors separated by a space, `*` or `·`; `/` divides by the single factor that follows it; a power is `^n`,
 * `**n`, a superscript, or for a few symbols (`m2`, `ft2`, `m3`) part of the symbol. `1` is the pure number, `%` a
 * hundredth. Temperatures are kelvin only: a Celsius reading has an offset, so it is refused rather than guessed.
 */
import {
  type Dimension,
  divideDimensions,
  formatDimension,
  multiplyDimensions,
  pureNumber,
  raiseDimension,
  sameDimension,
} from './dimension.js'
import { unitBySymbol, unitTable } from './unit-table.js'

export interface Unit {
  readonly text: string
  readonly factor: number
  readonly dimension: Dimension
}

export type UnitReading = { readonly ok: true; readonly unit: Unit } | { readonly ok: false; readonly message: string }

export type QuantityReading =
  | { readonly ok: true; readonly si: number; readonly unit: Unit }
  | { readonly ok: false; readonly message: string }

const superscripts: Readonly<Record<string, string>> = { '²': '^2', '³': '^3', '⁻¹': '^-1', '⁻²': '^-2', '⁻³': '^-3' }
const typesetUnits: ReadonlyMap<string, string> = new Map([
  ['Ω', 'ohm'],
  ['mΩ', 'mohm'],
  ['°', 'deg'],
  ['g₀', 'g0'],
])

/** Reads a unit. The message of a failure names what came and what would be accepted. */
export function parseUnit(text: string): UnitReading {
  const spelled = text
    .trim()
    .replace(/⁻[¹²³]|[²³]/g, (mark) => superscripts[mark] ?? mark)
    .replaceAll('**', '^')
  if (spelled === '' || spelled === '1') return { ok: true, unit: { text: '1', factor: 1, dimension: pureNumber } }
  let factor = 1
  let dimension: Dimension = pureNumber
  const tokens = spelled.match(/\/|[*·\s]+|[^/*·\s]+/g) ?? []
  let divide = false
  let expectFactor = true
  for (const token of tokens) {
    if (token === '/') {
      if (expectFactor) return unreadable(text, 'a division sign needs a unit on both sides')
      divide = true
      expectFactor = true
    } else if (/^[*·\s]+$/.test(token)) {
      if (token.trim() !== '' && expectFactor) return unreadable(text, 'a product sign needs a unit on both sides')
      if (token.trim() !== '') expectFactor = true
    } else {
      const reading = readFactor(token)
      if (reading === undefined) return unknownSymbol(text, token)
      factor = divide ? factor / reading.factor : factor * reading.factor
      dimension = divide
        ? divideDimensions(dimension, reading.dimension)
        : multiplyDimensions(dimension, reading.dimension)
      divide = false
      expectFactor = false
    }
  }
  if (expectFactor) return unreadable(text, 'it ends where a unit should follow')
  return { ok: true, unit: { text: text.trim(), factor, dimension } }
}

/** Reads a number with a unit, `235 Wh/kg`; a bare number is a pure number. */
export function parseQuantity(text: string): QuantityReading {
  const match = /^\s*([+-]?(?:\d[\d_]*\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s.exec(text)
  const value = match === null ? Number.NaN : Number((match[1] ?? '').replaceAll('_', ''))
  if (match === null || !Number.isFinite(value))
    return {
      ok: false,
      message: `"${text}" does not begin with a number; write a number and a unit, for instance "60 km".`,
    }
  const reading = parseUnit(match[2] ?? '')
  if (!reading.ok) return reading
  return { ok: true, si: value * reading.unit.factor, unit: reading.unit }
}

/** `kg m^2 s^-3 (for instance W)`: a dimension in words a reader can act on. */
export function describeDimension(dimension: Dimension): string {
  const text = formatDimension(dimension)
  if (text === '1') return 'a pure number'
  const example = unitTable.find((unit) => unit.factor === 1 && sameDimension(unit.dimension, dimension))
  return example === undefined || example.symbol === text ? text : `${text} (for instance ${example.symbol})`
}

/** Units typeset for people: `m/s`, `Wh/kg`, `N/m²`. */
export function typesetUnit(text: string): string {
  return text
    .replace(/[A-Za-z0-9]+/g, (symbol) => unitBySymbol.get(symbol)?.typeset ?? symbol)
    .replace(/\^2\b/g, '²')
    .replace(/\^3\b/g, '³')
    .replaceAll('*', ' ')
}

function readFactor(token: string): { factor: number; dimension: Dimension } | undefined {
  if (token === '%') return { factor: 0.01, dimension: pureNumber }
  if (token === '1') return { factor: 1, dimension: pureNumber }
  const match = /^(.+?)(?:\^(-?\d+(?:\.\d+)?))?$/.exec(token)
  const symbol = match?.[1] ?? token
  const unit = unitBySymbol.get(typesetUnits.get(symbol) ?? symbol)
  if (unit === undefined) return undefined
  const power = match?.[2] === undefined ? 1 : Number(match[2])
  return { factor: unit.factor ** power, dimension: raiseDimension(unit.dimension, power) }
}

function unreadable(text: string, why: string): UnitReading {
  return { ok: false, message: `"${text}" is not a unit: ${why}. Write for instance "Wh/kg" or "kg m^2 s^-3".` }
}

function unknownSymbol(text: string, symbol: string): UnitReading {
  if (symbol === '°C' || symbol === 'degC' || symbol === '°F')
    return { ok: false, message: `"${text}": ${symbol} has an offset and is refused; give a temperature in K.` }
  const near = unitTable.find((unit) => unit.symbol.toLowerCase() === symbol.toLowerCase())
  const hint =
    near === undefined
      ? `Known units: ${unitTable.map((unit) => unit.symbol).join(' ')}.`
      : `Did you mean "${near.symbol}"?`
  return { ok: false, message: `"${text}" has no unit "${symbol}". ${hint}` }
}
