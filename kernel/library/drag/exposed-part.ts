import { requireCount, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Area, Ratio } from '../quantity.js'

/** Drag area over frontal area: lowest, best, highest. */
const coefficients = {
  'wheel and tyre': [0.25, 0.25, 0.25],
  'second wheel in tandem': [0.15, 0.15, 0.15],
  'streamlined wheel': [0.18, 0.18, 0.18],
  'wheel with fairing': [0.13, 0.13, 0.13],
  'streamlined strut': [0.05, 0.05, 0.05],
  'round strut or wire': [0.3, 0.3, 0.3],
  'flat spring leg': [1.4, 1.4, 1.4],
  'fork or fitting': [1, 1.2, 1.4],
  'circular cylinder across the stream': [1.17, 1.17, 1.17],
} as const

export type ExposedKind = keyof typeof coefficients
export const exposedKinds = Object.keys(coefficients) as ExposedKind[]

export interface ExposedPartOptions {
  readonly kind: ExposedKind
  /** Of one, seen along the stream [m^2]. */
  readonly frontalArea: Area
  /** 1 when left out. */
  readonly count?: Ratio
}

export interface ExposedPart {
  /** D/q of all alike [m^2]. */
  readonly dragArea: Area
  readonly low: Area
  readonly high: Area
  /** On the frontal area. */
  readonly coefficient: Ratio
}

const method = 'drag.exposedPart'
const known = new Set(['kind', 'frontalArea', 'count'])

/**
 * Drag of a strut, wheel, leg or fitting in the stream, by its frontal area.
 *
 * @equation D/q = n C S_front; C from a table
 * @param options - `kind` ('wheel and tyre', 'second wheel in tandem', 'streamlined wheel', 'wheel with fairing', 'streamlined strut',
 * 'round strut or wire', 'flat spring leg', 'fork or fitting', 'circular cylinder across the stream'), `frontalArea` S_front [m^2];
 * optional `count` n (1)
 * @returns `dragArea`, `low`, `high` [m^2], `coefficient`
 * @throws InvalidInput for an unknown kind, a frontal area that is not positive, a count that is not whole, and an unknown option
 * @method Table; where the source gives a range, the middle is taken. A round strut has 0.30 past the Reynolds number of 4e5 at which
 * its flow turns turbulent, 1.17 below 2e5.
 * @validity Streamlined struts of 1/6 to 1/3 thickness. Without interference: `drag.fixedGear` adds it.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, table 12.6; cylinder: Hoerner, S. F., Fluid-Dynamic Drag, 1965 (both
 * from memory).
 * @example
 * const leg = drag.exposedPart({ kind: 'round strut or wire', frontalArea: 0.02 * u.m2, count: 2 })
 * leg.dragArea // 0.012
 */
export function exposedPart(options: ExposedPartOptions): ExposedPart {
  checkOptions(method, options, known)
  const { kind, frontalArea, count = 1 } = options
  requireChoice(method, 'kind', kind, exposedKinds)
  requirePositive(method, 'frontalArea', frontalArea, 'm^2')
  requireCount(method, 'count', count)
  const [low, best, high] = coefficients[kind]
  const area = count * frontalArea
  requireRepresentable(method, area * high)
  return { dragArea: area * best, low: area * low, high: area * high, coefficient: best }
}
