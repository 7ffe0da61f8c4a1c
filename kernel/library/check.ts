/** Checks of arguments, one line at the head of each kernel function; each names method, argument, value and unit. */
import { parseUnit, type Unit } from '../../shared/contracts/unit-text.js'
import { describeValue, InvalidInput } from './errors.js'
import { writeNumber } from './number-text.js'

/** A finite number above zero. Compares without coercion: the text "5" is refused although it is greater than 0. */
export function requirePositive(method: string, argument: string, value: number, unit: string): void {
  if (typeof value !== 'number' || !(value > 0 && value < Number.POSITIVE_INFINITY))
    refuse(method, argument, value, unit, `a finite number greater than 0${inUnit(unit)}`)
}

/** A finite number, zero or above. */
export function requireNonNegative(method: string, argument: string, value: number, unit: string): void {
  if (typeof value !== 'number' || !(value >= 0 && value < Number.POSITIVE_INFINITY))
    refuse(method, argument, value, unit, `a finite number of 0 or more${inUnit(unit)}`)
}

/** Any finite number. */
export function requireFinite(method: string, argument: string, value: number, unit: string): void {
  if (!Number.isFinite(value)) refuse(method, argument, value, unit, `a finite number${inUnit(unit)}`)
}

/** A finite number from `low` to `high`, both included. */
export function requireWithin(
  method: string,
  argument: string,
  value: number,
  unit: string,
  low: number,
  high: number,
): void {
  if (typeof value !== 'number' || !(value >= low && value <= high))
    refuse(method, argument, value, unit, `from ${writeNumber(low)} to ${writeNumber(high)}${inUnit(unit)}`)
}

/** A share of a whole: above 0 and at most 1. */
export function requireShare(method: string, argument: string, value: number): void {
  if (typeof value !== 'number' || !(value > 0 && value <= 1))
    refuse(method, argument, value, '1', 'a share greater than 0 and at most 1')
}

/** A whole number of at least 1. */
export function requireCount(method: string, argument: string, value: number): void {
  if (!(Number.isInteger(value) && value >= 1)) refuse(method, argument, value, '1', 'a whole number of 1 or more')
}

/**
 * Answers that double precision can hold: arguments of absurd size must not come back as Infinity or NaN. The caller passes the
 * sum of its numbers, which is finite only if each is: one test instead of ten.
 */
export function requireRepresentable(method: string, sum: number): void {
  if (Number.isFinite(sum)) return
  throw new InvalidInput({
    method,
    argument: 'what follows from the arguments',
    value: sum,
    accepted: 'within the range of numbers; at least one argument is of a size that no aircraft has',
  })
}

/** Text that is not empty. */
export function requireText(method: string, argument: string, value: string): void {
  if (typeof value !== 'string' || value.trim() === '') refuse(method, argument, value, '1', 'text that is not empty')
}

/** Reads unit text; a unit that cannot be read is InvalidInput with the reader's own explanation. */
export function requireUnit(method: string, argument: string, text: string): Unit {
  if (typeof text !== 'string') refuse(method, argument, text, '1', 'the text of a unit, for instance "km"')
  const reading = parseUnit(text)
  if (reading.ok) return reading.unit
  throw new InvalidInput({
    method,
    argument,
    value: `the text "${text.slice(0, 40)}"`,
    accepted: 'the text of a unit',
    remedy: reading.message,
  })
}

function refuse(method: string, argument: string, value: unknown, unit: string, accepted: string): never {
  throw new InvalidInput({ method, argument, value: describeValue(value), unit, accepted })
}

function inUnit(unit: string): string {
  return unit === '1' ? '' : ` ${unit}`
}
