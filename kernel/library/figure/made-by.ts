/** Figures that draw the answer of one method refuse everything else. */
import { describeValue, InvalidInput } from '../errors.js'

/** Refuses what is not the answer of a method; `fits` is asked about it. */
export function requireMadeBy(method: string, argument: string, given: unknown, maker: string, fits: boolean): void {
  if (!fits)
    throw new InvalidInput({ method, argument, value: describeValue(given), accepted: `what ${maker} returns` })
}

/** A member of a value of any kind, or nothing. */
export function memberOf(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined
}
