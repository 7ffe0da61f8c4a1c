import { requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface PolarOptions {
  /** Drag coefficient at zero lift, on the wing's reference area. */
  readonly zeroLiftDrag: Ratio
  /** Span squared over area. */
  readonly aspectRatio: Ratio
  /** Oswald's factor: the whole aircraft's, from 0 to 1. */
  readonly spanEfficiency: Ratio
}

/** What the performance methods need of a polar; a record of one's own with these two does as well. */
export interface ParabolicPolar {
  readonly zeroLiftDrag: Ratio
  /** K in C_D = C_D0 + K C_L^2. */
  readonly inducedFactor: Ratio
}

export interface Polar extends ParabolicPolar {
  readonly aspectRatio: Ratio
  readonly spanEfficiency: Ratio
  /** Largest lift-to-drag ratio. */
  readonly maximumLiftToDrag: Ratio
  /** Lift coefficient at the largest lift-to-drag ratio, where drag is least. */
  readonly liftAtBestRatio: Ratio
  /** Lift coefficient at which level flight takes least power. */
  readonly liftAtLeastPower: Ratio
}

const known = new Set(['zeroLiftDrag', 'aspectRatio', 'spanEfficiency'])

/**
 * Parabolic drag polar of the whole aircraft, and its two best points.
 *
 * @equation C_D = C_D0 + K C_L^2, K = 1/(pi AR e); (L/D)max = 1/(2 sqrt(K C_D0)) at C_L = sqrt(C_D0/K); least power at sqrt(3 C_D0/K)
 * @param options - `zeroLiftDrag` C_D0, `aspectRatio` AR, `spanEfficiency` e (0 to 1)
 * @returns `zeroLiftDrag`, `inducedFactor` K, `maximumLiftToDrag`, `liftAtBestRatio`, `liftAtLeastPower`, and what was given
 * @throws InvalidInput for a value that is not positive, a span efficiency above 1, and an unknown option
 * @method Closed form.
 * @validity Attached flow, below the drag rise. A span efficiency below 0.5 or above 0.95 for a whole aircraft carries an advisory
 * (range from memory).
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, chapters 2 and 5 (from memory).
 * @example
 * const cleanPolar = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency: 0.8 })
 * cleanPolar.maximumLiftToDrag // 12.533
 */
export function polar(options: PolarOptions): Polar {
  const method = 'drag.polar'
  checkOptions(method, options, known)
  const { zeroLiftDrag, aspectRatio, spanEfficiency } = options
  requirePositive(method, 'zeroLiftDrag', zeroLiftDrag, '1')
  requirePositive(method, 'aspectRatio', aspectRatio, '1')
  if (typeof spanEfficiency !== 'number' || !(spanEfficiency > 0 && spanEfficiency <= 1))
    throw new InvalidInput({
      method,
      argument: 'spanEfficiency',
      value: describeValue(spanEfficiency),
      accepted: 'greater than 0 and at most 1, the bound of a planar wing',
    })
  if (isListening() && (spanEfficiency < 0.5 || spanEfficiency > 0.95)) adviseEfficiency(spanEfficiency)
  const inducedFactor = 1 / (Math.PI * aspectRatio * spanEfficiency)
  const maximumLiftToDrag = 0.5 / Math.sqrt(inducedFactor * zeroLiftDrag)
  const liftAtBestRatio = Math.sqrt(zeroLiftDrag / inducedFactor)
  const liftAtLeastPower = Math.sqrt((3 * zeroLiftDrag) / inducedFactor)
  requireRepresentable(method, inducedFactor + maximumLiftToDrag + liftAtLeastPower)
  return {
    zeroLiftDrag,
    inducedFactor,
    aspectRatio,
    spanEfficiency,
    maximumLiftToDrag,
    liftAtBestRatio,
    liftAtLeastPower,
  }
}

/** Checks the two numbers that the performance methods read from a polar. */
export function requirePolar(method: string, value: ParabolicPolar): void {
  if (typeof value !== 'object' || value === null)
    throw new InvalidInput({
      method,
      argument: 'polar',
      value: describeValue(value),
      accepted: 'a record with zeroLiftDrag and inducedFactor, such as drag.polar returns',
    })
  requirePositive(method, 'polar.zeroLiftDrag', value.zeroLiftDrag, '1')
  requirePositive(method, 'polar.inducedFactor', value.inducedFactor, '1')
}

function adviseEfficiency(spanEfficiency: number): void {
  advise({
    code: 'SPAN_EFFICIENCY',
    method: 'drag.polar',
    quantity: 'spanEfficiency',
    value: spanEfficiency,
    range: [0.5, 0.95],
    message: `A span efficiency of ${spanEfficiency} is unusual for a whole aircraft (0.5 to 0.95).`,
  })
}
