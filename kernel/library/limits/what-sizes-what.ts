import { requireNonNegative, requireRepresentable, requireText, requireUnit } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'
import { requireList } from '../shapes.js'

/** One limit worked out for one component: the size that it alone would ask for. */
export interface SizingLimit {
  /** `'battery'`, `'lift motor'`, `'wing'`. */
  readonly component: string
  /** `'landing power, old and cold'`. */
  readonly limit: string
  /** That this limit alone asks for [SI, the same quantity for all limits of a component]. */
  readonly size: number
  /** Unit text of the size. */
  readonly unit?: string
}

export interface WhatSizesWhatOptions {
  readonly limits: readonly SizingLimit[]
  /** `'gap'` (the closest race first) when left out, or `'given'` (as the components come). */
  readonly order?: 'gap' | 'given'
}

export interface SizingRow {
  readonly component: string
  /** The limit that asks for most. */
  readonly sizedBy: string
  /** [SI] */
  readonly size: number
  /** The limit behind it; "nothing" where there is one limit alone. */
  readonly next: string
  /** [SI]; 0 where there is one limit alone. */
  readonly nextSize: number
  /** By which the size would fall if the active limit were met otherwise: 0 where both bind, 1 where nothing is behind. */
  readonly gap: Ratio
  /** Unit text of both sizes. */
  readonly unit: string
}

const method = 'limits.whatSizesWhat'
const known = new Set(['limits', 'order'])
const knownLimit = new Set(['component', 'limit', 'size', 'unit'])

/**
 * What sizes what: for each component the limit that asks for most, the one behind it, and how far behind it is.
 *
 * @equation size = max over limits; gap = 1 - next size/size
 * @param options - `limits`: list of `{ component, limit, size [SI], unit (text) }`, any number per component; optional `order`: `'gap'` (the closest race first) or `'given'`
 * @returns a row per component: `component`, `sizedBy`, `size`, `next`, `nextSize` [SI], `gap`, `unit`
 * @throws InvalidInput for no limits, empty names, negative sizes, units of one component that differ, the same limit twice, an unknown order, and an unknown option
 * @method Sorts what has been worked out. A gap near 0 is a knife edge: improving the active limit buys nothing before the next binds.
 * @validity Sizes of limits worked out at the same gross mass.
 * @source House convention, no publication.
 * @example
 * const list = limits.whatSizesWhat({ limits: [
 *   { component: 'battery', limit: 'mission energy', size: 390 * u.kg, unit: 'kg' }, { component: 'battery', limit: 'landing power', size: 412 * u.kg, unit: 'kg' },
 *   { component: 'lift motor', limit: 'one rotor lost', size: 240 * u.N * u.m, unit: 'N m' },
 * ] })
 * list[0].gap // 0.0534
 */
export function whatSizesWhat(options: WhatSizesWhatOptions): SizingRow[] {
  checkOptions(method, options, known)
  const { limits, order = 'gap' } = options
  requireChoice(method, 'order', order, ['gap', 'given'])
  requireList(method, 'limits', limits, '{ component, limit, size, unit }')
  const byComponent = new Map<string, SizingLimit[]>()
  limits.forEach((limit, index) => {
    readLimit(limit, `limits[${index}]`, byComponent)
  })
  const rows = [...byComponent].map(([component, list]) => rowOf(component, list))
  requireRepresentable(
    method,
    rows.reduce((sum, row) => sum + row.size, 0),
  )
  return order === 'given' ? rows : rows.sort((a, b) => a.gap - b.gap)
}

function readLimit(limit: SizingLimit, at: string, byComponent: Map<string, SizingLimit[]>): void {
  checkOptions(`${method} ${at}`, limit, knownLimit)
  const { component, size, unit = '1' } = limit
  requireText(method, `${at}.component`, component)
  requireText(method, `${at}.limit`, limit.limit)
  requireNonNegative(method, `${at}.size`, size, 'SI')
  requireUnit(method, `${at}.unit`, unit)
  const others = byComponent.get(component) ?? []
  const first = others[0]
  if (first !== undefined && (first.unit ?? '1') !== unit)
    throw new InvalidInput({
      method,
      argument: `${at}.unit`,
      value: `"${unit}"`,
      accepted: `"${first.unit ?? '1'}" as for the other limits of "${component}"`,
    })
  if (others.some((other) => other.limit === limit.limit))
    throw new InvalidInput({
      method,
      argument: `${at}.limit`,
      value: `"${limit.limit}" again`,
      accepted: `named once for "${component}"`,
    })
  byComponent.set(component, [...others, limit])
}

function rowOf(component: string, limits: readonly SizingLimit[]): SizingRow {
  const [active, next] = [...limits].sort((a, b) => b.size - a.size) as [SizingLimit, SizingLimit?]
  const { size, unit = '1' } = active
  const nextSize = next?.size ?? 0
  return {
    component,
    sizedBy: active.limit,
    size,
    next: next?.limit ?? 'nothing',
    nextSize,
    gap: size > 0 ? 1 - nextSize / size : 0,
    unit,
  }
}
