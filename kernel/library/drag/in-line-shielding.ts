import { requireCount, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Length, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface InLineShieldingOptions {
  /** D/q of one in the free stream [m^2]. */
  readonly dragArea: Area
  /** Of one, seen along the stream [m^2]. */
  readonly frontalArea: Area
  /** From one to the next along the stream [m]. */
  readonly spacing: Length
  /** How many stand behind each other. */
  readonly count: Ratio
  /** Widening of the wake's radius per distance; 0.08 when left out. */
  readonly wakeGrowth?: Ratio
}

export interface InLineShielding {
  /** D/q of all [m^2]. */
  readonly dragArea: Area
  /** Drag of each over its drag in the free stream, from the first to the last. */
  readonly factors: readonly Ratio[]
  /** Drag of all over what they would have side by side. */
  readonly share: Ratio
}

const method = 'drag.inLineShielding'
const known = new Set(['dragArea', 'frontalArea', 'spacing', 'count', 'wakeGrowth'])
/** A body cannot take more than this of the stream's momentum in the wake formula. */
const greatestCoefficient = 0.9
const greatestDeficit = 0.9

/**
 * Drag of equal hubs or pods that stand one behind another along a boom.
 *
 * @equation deficit of one wake d = (1 - sqrt(1 - C)) (r_0/(r_0 + k x))^2, C = min(0.9, f/S_front), r_0 = sqrt(S_front/pi); behind
 * several sqrt(sum d^2); drag factor (1 - d)^2
 * @param options - `dragArea` f of one [m^2], `frontalArea` S_front [m^2], `spacing` x [m], `count`; optional `wakeGrowth` k (0.08)
 * @returns `dragArea` of all [m^2], `factors` from first to last, `share` of what they would have side by side
 * @throws InvalidInput for values that are not positive, bodies that overlap (spacing below the diameter of a circle of the frontal
 * area), more than 50 bodies, a wake growth outside 0.02 to 0.3, and an unknown option
 * @method House use of a published wake: the top-hat wake of wind turbines, growing linearly and keeping its momentum, lent to bluff
 * hubs. Reasonable because only momentum and growth enter; the growth of a hub's wake is the guess.
 * @validity Bodies truly in line with the stream: at a few degrees of sideslip the shelter is gone. More than one body carries an advisory.
 * Growth 0.05 (smooth stream) to 0.1 (turbulent) spans the band.
 * @source Jensen, N. O., A Note on Wind Generator Interaction, Risoe-M-2411, 1983; several wakes: Katic, Hoejstrup and Jensen, 1986
 * (both from memory).
 * @example
 * const row = drag.inLineShielding({ dragArea: 0.02 * u.m2, frontalArea: 0.025 * u.m2, spacing: 3 * u.m, count: 2 })
 * row.share // 0.960
 */
export function inLineShielding(options: InLineShieldingOptions): InLineShielding {
  checkOptions(method, options, known)
  const { dragArea, frontalArea, spacing, count, wakeGrowth = 0.08 } = options
  requirePositive(method, 'dragArea', dragArea, 'm^2')
  requirePositive(method, 'frontalArea', frontalArea, 'm^2')
  requirePositive(method, 'spacing', spacing, 'm')
  requireCount(method, 'count', count)
  requireWithin(method, 'count', count, '1', 1, 50)
  requireWithin(method, 'wakeGrowth', wakeGrowth, '1', 0.02, 0.3)
  const radius = Math.sqrt(frontalArea / Math.PI)
  requireWithin(method, 'spacing', spacing, 'm', 2 * radius, Number.MAX_VALUE)
  const factors = shelter(dragArea / frontalArea, spacing / radius, count, wakeGrowth)
  const share = factors.reduce((sum, factor) => sum + factor, 0) / count
  requireRepresentable(method, dragArea * count)
  if (isListening() && count > 1)
    advise({
      code: 'IN_LINE_SHELTER',
      method,
      quantity: 'share',
      value: share,
      range: [share, 1],
      message: 'Shelter in line is a wake formula lent from wind turbines; a few degrees of sideslip end it.',
    })
  return { dragArea: dragArea * count * share, factors, share }
}

/** Factors by place in the row; distances in radii of the body. */
export function shelter(coefficient: number, spacing: number, count: number, growth: number): number[] {
  const deficit = 1 - Math.sqrt(1 - Math.min(greatestCoefficient, coefficient))
  return Array.from({ length: count }, (_, place) => {
    let square = 0
    for (let ahead = 1; ahead <= place; ahead += 1) square += (deficit / (1 + growth * ahead * spacing) ** 2) ** 2
    return (1 - Math.min(greatestDeficit, Math.sqrt(square))) ** 2
  })
}
