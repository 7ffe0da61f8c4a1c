/** The value of an assumption as its owner types it, in its unit. */
import { describeDimension, parseDimension, parseQuantity, parseUnit, sameDimension } from '../../contracts/index.js'
import { displayUnit, numberOf } from '../quantity/index.js'
import type { AssumptionRow } from './assumption-rows.js'

export type ValueReading =
  | { readonly ok: true; readonly si: number }
  /** A sentence: what came, what would be accepted. */
  | { readonly ok: false; readonly message: string }

/** The number alone, in the unit it is shown in, with as many digits as it was written with. */
export function valueText(row: AssumptionRow): string {
  return numberText(numberOf(row.record.value), row)
}

/** Another number of the row, such as an end of its range, in the same unit. */
export function numberText(si: number, row: AssumptionRow): string {
  return String(Number((si / unitOf(row).factor).toPrecision(14)))
}

/** Reads `235`, `1 637.5`, `2.3e5` in the unit shown, or with a unit of the same quantity: `0.235 kWh/kg`. */
export function readValue(text: string, row: AssumptionRow): ValueReading {
  const reading = readNumber(text, row)
  return reading.ok ? reading : { ok: false, message: `${reading.message} ${accepted(unitOf(row).symbol)}` }
}

/** As `readValue`, with a message that says only what came. */
export function readNumber(text: string, row: AssumptionRow): ValueReading {
  const refuse = (message: string): ValueReading => ({ ok: false, message })
  const typed = plain(text)
  if (typed === '') return refuse('Nothing was typed.')
  if (/\d,\d/.test(typed)) return refuse(`"${typed}" holds a comma, which can mean two things.`)
  const reading = parseQuantity(typed)
  if (!reading.ok) return refuse(reading.message)
  const { unit, si } = reading
  const bare = unit.text === '1'
  const wanted = dimensionOf(row)
  if (!bare && wanted === null)
    return refuse(`Of what quantity "${row.name}" is, is not known, so a unit is not taken.`)
  if (!bare && wanted !== null && !sameDimension(unit.dimension, wanted))
    return refuse(`"${typed}" is in ${describeDimension(unit.dimension)}, not in ${describeDimension(wanted)}.`)
  const value = bare ? si * unitOf(row).factor : si
  return Number.isFinite(value) ? { ok: true, si: value } : refuse(`"${typed}" is too great.`)
}

/** As typed on any keyboard or copied from the sheet: with its minus, with groups of three digits. */
export const plain = (text: string) =>
  text
    .replaceAll('\u2212', '-')
    .replace(/(?<=\d)\s(?=\d{3}(?!\d))/g, '')
    .trim()

const accepted = (symbol: string) =>
  symbol === ''
    ? 'Accepted is a number such as 0.72, with a point for decimals.'
    : `Accepted is a number in ${symbol}, with a point for decimals, or one with a unit of the same quantity.`

/** The unit that the row is shown in. */
export const unitOf = ({ record, dimension }: AssumptionRow) =>
  displayUnit(numberOf(record.value), dimension, record.unit)

/** Of what quantity the row is; `null` where that is not known. */
export function dimensionOf({ record, dimension }: AssumptionRow) {
  if (dimension !== null) return parseDimension(dimension)
  const unit = record.unit === undefined ? undefined : parseUnit(record.unit)
  return unit?.ok === true ? unit.unit.dimension : null
}
