import { requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Ratio } from '../quantity.js'

export interface BreakEvenGrowthOptions {
  /** Share by which the aircraft's drag at zero lift falls; below 0 where it rises. */
  readonly dragCut: Ratio
}

export interface BreakEvenGrowth {
  /** Growth of gross mass at which nothing is left of the longer range. */
  readonly range: Ratio
  /** Growth of gross mass at which nothing is left of the longer endurance. */
  readonly endurance: Ratio
  /** Gain in range without any growth. */
  readonly rangeGain: Ratio
  /** Gain in endurance without any growth. */
  readonly enduranceGain: Ratio
}

const method = 'drag.breakEvenGrowth'
const known = new Set(['dragCut'])

/**
 * How much heavier an aircraft may become for a cut in its zero-lift drag before the gain is gone.
 *
 * @equation range: (1 - f)^(-1/2) - 1; endurance: (1 - f)^(-1/6) - 1; gains at equal mass (1 - f)^(-1/2) - 1 and (1 - f)^(-1/4) - 1
 * @param options - `dragCut` f, share of the zero-lift drag that is saved
 * @returns `range` and `endurance`, break-even growth of gross mass as a share; `rangeGain` and `enduranceGain` without growth
 * @throws InvalidInput for a cut outside -10 to 0.99, and an unknown option
 * @method Exact for a parabolic polar, equal battery and wing, each flown at its best speed: least drag 2 W sqrt(K C_D0), least power in
 * proportion to C_D0^(1/4) W^(3/2).
 * @validity Best speeds free to move: with a speed floor the gain in endurance is larger and the break-even with it. Hover power, which
 * grows with mass^(3/2), is not in it: put the growth through `sizing.close`.
 * @source Closed forms of the parabolic polar; Anderson, J. D., Aircraft Performance and Design, 1999, chapter 5 (from memory).
 * @example
 * const limit = drag.breakEvenGrowth({ dragCut: 0.38 })
 * limit.endurance // 0.0829
 */
export function breakEvenGrowth(options: BreakEvenGrowthOptions): BreakEvenGrowth {
  checkOptions(method, options, known)
  requireWithin(method, 'dragCut', options.dragCut, '1', -10, 0.99)
  const left = 1 - options.dragCut
  const range = left ** -0.5 - 1
  return { range, endurance: left ** (-1 / 6) - 1, rangeGain: range, enduranceGain: left ** -0.25 - 1 }
}
