/** How far an assumption is varied, and by which small steps its slope is taken. */
import type { AssumptionRecord, EndsFrom, Point, Unvaried } from '../../../../shared/contracts/index.js'
import { valueAt } from '../spread/distribution.js'
import { normalQuantile } from '../spread/normal-quantile.js'

/** House convention where neither range nor distribution is stated. */
const share = 0.1

/** Of the value, and of the distance to the farther end where the value is 0. */
const smallStep = 0.01

export interface Varied {
  readonly name: string
  readonly unit?: string
  readonly value: number
  readonly from: EndsFrom
  readonly low: number
  readonly high: number
  /** The larger of the two steps by which slopes are taken; the other is half of it. */
  readonly step: number
}

/** What is varied and how far, in the order given; `base` holds trial values. */
export function readVaried(
  assumptions: readonly AssumptionRecord[],
  base: Point,
): { readonly varied: readonly Varied[]; readonly unvaried: readonly Unvaried[] } {
  const varied: Varied[] = []
  const unvaried: Unvaried[] = []
  for (const assumption of assumptions) {
    const { name, unit } = assumption
    const value = base[name] ?? Number(assumption.value)
    if (!Number.isFinite(value)) {
      unvaried.push({ name, reason: 'not finite' })
      continue
    }
    const ends = endsOf(assumption, value)
    if (ends === undefined) {
      unvaried.push({ name, reason: 'zero without a range' })
      continue
    }
    const { low, high } = ends
    const step = smallStep * (value === 0 ? Math.max(Math.abs(low), Math.abs(high)) : Math.abs(value))
    varied.push({ name, ...(unit === undefined ? {} : { unit }), value, ...ends, step })
  }
  return { varied, unvaried }
}

/** Undefined where there is nothing to take a step from. */
function endsOf(
  { low, high, distribution }: AssumptionRecord,
  value: number,
): Pick<Varied, 'from' | 'low' | 'high'> | undefined {
  if (typeof low === 'number' && typeof high === 'number' && low < high) return { from: 'range', low, high }
  if (distribution !== undefined) {
    const [least, greatest] = [valueAt(distribution, normalQuantile(0.05)), valueAt(distribution, normalQuantile(0.95))]
    if (Number.isFinite(least) && Number.isFinite(greatest) && least < greatest)
      return { from: 'distribution', low: least, high: greatest }
  }
  if (value === 0) return undefined
  return { from: 'ten percent', low: value - share * Math.abs(value), high: value + share * Math.abs(value) }
}

/** The values at which an assumption is tried, in the order in which `readDriver` reads them. */
export function valuesTried({ value, low, high, step }: Varied): readonly number[] {
  return [low, high, value - step, value + step, value - step / 2, value + step / 2]
}
