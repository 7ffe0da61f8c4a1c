/** Checks of what is no number: lists, functions, truths, and records whose values are numbers. */
import { requireFinite } from './check.js'
import { describeValue, InvalidInput } from './errors.js'

/** A list of at least one; `items` says what of, to complete "a list of at least one ...". */
export function requireList(method: string, argument: string, value: readonly unknown[], items: string): void {
  if (!Array.isArray(value) || value.length === 0)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(value),
      accepted: `a list of at least one ${items}`,
    })
}

/** A function; `accepted` says of what and to what. */
export function requireFunction(method: string, argument: string, value: unknown, accepted: string): void {
  if (typeof value !== 'function') throw new InvalidInput({ method, argument, value: describeValue(value), accepted })
}

/** A record of finite numbers with at least one entry, as a function of the author answers it. */
export function requireNumbers(method: string, argument: string, value: unknown, accepted: string): void {
  if (typeof value !== 'object' || value === null || Array.isArray(value) || Object.keys(value).length === 0)
    throw new InvalidInput({ method, argument, value: describeValue(value), accepted })
  for (const [name, number] of Object.entries(value)) requireFinite(method, `"${name}" of ${argument}`, number, '1')
}

/** Rising finite numbers, at least `least` of them. */
export function requireRising(method: string, argument: string, values: readonly number[], least: number): void {
  const rising =
    Array.isArray(values) &&
    values.length >= least &&
    values.every((value, index) => Number.isFinite(value) && (index === 0 || value > (values[index - 1] as number)))
  if (!rising)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(values),
      accepted: `a list of at least ${least} finite numbers that rise`,
    })
}
