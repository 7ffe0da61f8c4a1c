import { requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Area, Ratio } from '../quantity.js'
import { type ExposedPartOptions, exposedPart } from './exposed-part.js'

export interface FixedGearOptions {
  readonly parts: readonly ExposedPartOptions[]
  /** Factor for the parts' influence on each other, 1.2 when left out. */
  readonly interference?: Ratio
}

export interface FixedGear {
  /** D/q [m^2]. */
  readonly dragArea: Area
  readonly low: Area
  readonly high: Area
}

const method = 'drag.fixedGear'
const known = new Set(['parts', 'interference'])

/**
 * Drag of a fixed landing gear or skid from its wheels, legs and fittings.
 *
 * @equation D/q = k sum n C S_front, k = 1.2
 * @param options - `parts`, a list of what `drag.exposedPart` takes; optional `interference` k (1.2)
 * @returns `dragArea`, `low`, `high` [m^2]
 * @throws InvalidInput for no parts, an interference outside 1 to 2.5, whatever `drag.exposedPart` refuses, and an unknown option
 * @method Sum with one factor. In a wind tunnel fittings and interference made 44 % of gear drag on average, which a factor of 1.2 does
 * not reach: count the fittings.
 * @validity Whole gears of small aeroplanes measured 0.047 to 0.356 m^2 of drag area.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, table 12.6 (from memory); measurements: Herrnstein, W. H., Biermann,
 * D., NACA Report 485, 1934 (summary read).
 * @example
 * const gear = drag.fixedGear({ parts: [
 *   { kind: 'wheel and tyre', frontalArea: 0.05 * u.m2, count: 3 },
 *   { kind: 'flat spring leg', frontalArea: 0.03 * u.m2, count: 2 },
 * ] })
 * gear.dragArea // 0.1458
 */
export function fixedGear(options: FixedGearOptions): FixedGear {
  checkOptions(method, options, known)
  const { parts, interference = 1.2 } = options
  if (!Array.isArray(parts) || parts.length === 0)
    throw new InvalidInput({
      method,
      argument: 'parts',
      value: describeValue(parts),
      accepted: 'a list of at least one part of the gear',
    })
  requireWithin(method, 'interference', interference, '1', 1, 2.5)
  let [best, low, high] = [0, 0, 0]
  for (const part of parts) {
    const one = exposedPart(part)
    best += one.dragArea
    low += one.low
    high += one.high
  }
  return { dragArea: interference * best, low: interference * low, high: interference * high }
}
