import { requireFinite, requireText, requireUnit } from '../check.js'
import { checkOptions } from '../errors.js'
import { recordResult } from '../recorder.js'
import type { Widened } from './assumption.js'

export interface ResultOptions {
  /** Unit text in which it is shown: `"kW"`. */
  readonly unit?: string
  /** TeX. */
  readonly symbol?: string
  readonly label?: string
}

const known = new Set(['unit', 'symbol', 'label'])

/**
 * States a number for the Result column and returns it unchanged.
 *
 * @equation result = value
 * @param name - what the result is called, in the sheet and in the command's output
 * @param value - the value [SI]
 * @param options - all optional: `unit` (text) for display, `symbol` (TeX), `label`
 * @returns the value, of its own type
 * @throws InvalidInput for an empty name, a value that is not finite, unit text that cannot be read
 * @method Tells the recorder of the running cell.
 * @validity Any finite number.
 * @source House convention, no publication.
 * @example
 * const hoverPower = result('hoverPower', 315.9 * u.kW, { unit: 'kW', symbol: 'P_h' })
 */
export function result<Q extends number>(name: string, value: Q, options: ResultOptions = {}): Widened<Q> {
  const method = 'result'
  requireText(method, 'name', name)
  checkOptions(method, options, known)
  requireFinite(method, `"${name}"`, value, '1')
  if (options.unit !== undefined) requireUnit(method, `the unit of "${name}"`, options.unit)
  recordResult({ name, value, ...options })
  return value as unknown as Widened<Q>
}
