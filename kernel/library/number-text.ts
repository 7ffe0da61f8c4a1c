/** Numbers written for sentences: four digits, the integer part whole, no grouping. Intl is absent where cells run. */
import { parseUnit, typesetUnit } from '../../shared/contracts/unit-text.js'

/** `8`, `1637`, `165.0`, `0.01800`; as many digits as a reader of a sentence can use. */
export function writeNumber(value: number): string {
  if (!Number.isFinite(value) || value === 0) return String(value)
  const size = Math.abs(value)
  if (Number.isInteger(value) && size < 1e7) return String(value)
  if (size >= 1e7 || size < 1e-4) return value.toExponential(3)
  return size >= 1000 ? value.toFixed(0) : value.toPrecision(4)
}

/** A value in SI, written in a unit: `165.0 km`. Falls back to SI without a unit where the text cannot be read. */
export function writeQuantity(si: number, unit: string | undefined): string {
  const reading = parseUnit(unit ?? '1')
  if (!reading.ok || unit === undefined || unit === '1') return writeNumber(si)
  return `${writeNumber(si / reading.unit.factor)} ${typesetUnit(unit)}`
}
