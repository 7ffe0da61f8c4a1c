import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'

/** Lowest, best and highest factor by place. */
const factors = {
  body: [1, 1, 1],
  'wing, high or mid': [1, 1, 1],
  'wing, low and filleted': [1, 1, 1],
  'wing, low without fillet': [1.1, 1.25, 1.4],
  'tail, conventional': [1.04, 1.045, 1.05],
  'tail, V': [1.03, 1.03, 1.03],
  'tail, H': [1.08, 1.08, 1.08],
  'pod on wing or body': [1.5, 1.5, 1.5],
  'pod within one diameter': [1.3, 1.3, 1.3],
  'pod beyond one diameter': [1, 1, 1],
} as const

export type InterferencePlace = keyof typeof factors

export interface InterferenceOptions {
  readonly place: InterferencePlace
}

export interface Interference {
  readonly low: Ratio
  readonly best: Ratio
  readonly high: Ratio
}

const method = 'drag.interference'
const known = new Set(['place'])
const places = Object.keys(factors) as InterferencePlace[]

/**
 * Interference factor of a part by where it sits, with its band.
 *
 * @equation D/q = C_f F Q S_wet; Q from a table
 * @param options - `place`: 'body', 'wing, high or mid', 'wing, low and filleted', 'wing, low without fillet', 'tail, conventional',
 * 'tail, V', 'tail, H', 'pod on wing or body', 'pod within one diameter', 'pod beyond one diameter'
 * @returns `low`, `best` and `high` factor Q
 * @throws InvalidInput for an unknown place or option
 * @method Table; where the source gives a range, `best` is its middle.
 * @validity Junctions of ordinary aeroplanes. Booms under a wing count as pods.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, section 12.5.5 (from memory; body and wing 1.0, tails 1.04 read second-hand).
 * @example
 * const joint = drag.interference({ place: 'pod on wing or body' })
 * joint.best // 1.5
 */
export function interference(options: InterferenceOptions): Interference {
  checkOptions(method, options, known)
  requireChoice(method, 'place', options.place, places)
  const [low, best, high] = factors[options.place]
  return { low, best, high }
}
