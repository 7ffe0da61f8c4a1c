/** Outside its range a method still answers; these two lines of words per method say so. */

import { suggest } from '../../shared/contracts/suggest.js'
import { describeValue, InvalidInput } from './errors.js'
import { writeNumber } from './number-text.js'
import { advise, isListening } from './recorder.js'

export interface Watched {
  readonly code: string
  readonly method: string
  readonly quantity: string
  /** Ends of the range; a missing one is open. */
  readonly low?: number
  readonly high?: number
  /** What it means to be outside, after "an aspect ratio of 3.000": `: below 4 a lifting line says too much lift`. */
  readonly because: string
}

/** Records an advisory where a value has left the range in which a method was found good. */
export function adviseOutside(value: number, watched: Watched): void {
  const { low, high } = watched
  if (!isListening() || ((low === undefined || value >= low) && (high === undefined || value <= high))) return
  advise({
    code: watched.code,
    method: watched.method,
    quantity: watched.quantity,
    value,
    range: [low ?? null, high ?? null],
    message: `${watched.quantity} of ${writeNumber(value)}: ${watched.because}.`,
  })
}

/** One of a few words; a misspelt one is refused with the nearest. */
export function requireChoice<T extends string>(method: string, argument: string, value: T, choices: readonly T[]): T {
  if (choices.includes(value)) return value
  const near = typeof value === 'string' ? suggest(value, new Set<string>(choices)) : ''
  throw new InvalidInput({
    method,
    argument,
    value: `${describeValue(value)}${near}`,
    accepted: `one of ${choices.map((choice) => `"${choice}"`).join(', ')}`,
  })
}
