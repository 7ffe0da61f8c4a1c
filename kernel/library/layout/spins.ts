/** Which way each rotor turns. Left and right are mirror images and turn opposite ways, so that reaction torques cancel. */
import { describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'

/**
 * `'alternating'`: neighbours along and across turn opposite ways; `'ahead and behind'`: the right side's rotors ahead of the wing turn one way, those
 * behind it the other; `'by side'`: all on the right one way, all on the left the other; or a list of +1 and -1.
 */
export type SpinPattern = 'alternating' | 'ahead and behind' | 'by side' | readonly Ratio[]

export interface SpinPlace {
  /** Rows from the front, from 0. */
  readonly row: number
  /** Columns from the middle, from 0. */
  readonly column: number
  readonly ahead: boolean
}

/** Spin of each place of the right side, in their order. */
export function spinsOf(method: string, pattern: SpinPattern, places: readonly SpinPlace[]): readonly number[] {
  if (typeof pattern !== 'string') return listedSpins(method, pattern, places.length, 'of the right side')
  requireChoice<string>(method, 'spin', pattern, ['alternating', 'ahead and behind', 'by side'])
  return places.map(({ row, column, ahead }) => {
    if (pattern === 'by side') return 1
    if (pattern === 'ahead and behind') return ahead ? 1 : -1
    return (row + column) % 2 === 0 ? 1 : -1
  })
}

/** A list of `count` spins, as its author wrote it. */
export function listedSpins(method: string, list: readonly number[], count: number, of: string): readonly number[] {
  if (Array.isArray(list) && list.length === count && list.every((spin) => spin === 1 || spin === -1)) return list
  throw new InvalidInput({
    method,
    argument: 'spin',
    value: Array.isArray(list) && list.length === count ? 'a list with something else' : describeValue(list),
    accepted: `a pattern by name, or a list of ${count} of +1 and -1, one per rotor ${of}`,
  })
}
