import { requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Area, Length, Ratio } from '../quantity.js'

export interface TailVolumeOptions {
  /** [m^2] */
  readonly tailArea: Area
  /** From the centre of gravity to the quarter chord of the tail [m]. */
  readonly tailArm: Length
  /** [m^2] */
  readonly wingArea: Area
  /** Mean aerodynamic chord for a horizontal tail, span for a vertical one [m]. */
  readonly referenceLength: Length
}

const method = 'wing.tailVolume'
const known = new Set(['tailArea', 'tailArm', 'wingArea', 'referenceLength'])

/**
 * Tail volume ratio.
 *
 * @equation V = S_t l_t/(S l_ref)
 * @param options - `tailArea` S_t [m^2], `tailArm` l_t [m], `wingArea` S [m^2], `referenceLength` l_ref [m]: mean chord (horizontal
 * tail) or span (vertical tail)
 * @returns the ratio
 * @throws InvalidInput for a value that is not positive, and for an unknown option
 * @method Definition.
 * @validity A ratio outside 0.01 to 1.5 carries an advisory: horizontal tails have 0.5 to 1.2, vertical ones 0.02 to 0.09. No published
 * value for lift plus cruise: booms and lift rotors ahead of the centre of gravity ask for more.
 * @source Definition; range of horizontal tails: aircraft-design text (read), of vertical ones: Raymer, D. P., Aircraft Design: A
 * Conceptual Approach, table 6.4 (from memory).
 * @example
 * wing.tailVolume({ tailArea: 0.02 * u.m2, tailArm: 0.17 * u.m, wingArea: 0.1 * u.m2, referenceLength: 0.1 * u.m }) // 0.34
 */
export function tailVolume(options: TailVolumeOptions): Ratio {
  checkOptions(method, options, known)
  const { tailArea, tailArm, wingArea, referenceLength } = options
  requirePositive(method, 'tailArea', tailArea, 'm^2')
  requirePositive(method, 'tailArm', tailArm, 'm')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'referenceLength', referenceLength, 'm')
  const volume = (tailArea * tailArm) / (wingArea * referenceLength)
  requireRepresentable(method, volume)
  adviseOutside(volume, {
    code: 'TAIL_VOLUME',
    method,
    quantity: 'tailVolume',
    low: 0.01,
    high: 1.5,
    because: 'outside 0.01 to 1.5 there is no aircraft to compare with',
  })
  return volume
}
