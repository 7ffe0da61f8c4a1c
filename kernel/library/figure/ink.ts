import type { Ink } from '../../../shared/contracts/figure.js'
import { describeValue, InvalidInput } from '../errors.js'

const inks: readonly Ink[] = ['ink', 'accent', 'second', 'third', 'faint', 'warning']

/** One of the sheet's inks. */
export function requireInk(method: string, argument: string, ink: Ink): Ink {
  if (inks.includes(ink)) return ink
  throw new InvalidInput({ method, argument, value: describeValue(ink), accepted: `one of ${inks.join(', ')}` })
}
