/** What is sampled, what is an interval, what is held: read from the assumptions of a notebook. */
import type { AssumptionRecord, Interval, Point } from '../../../../shared/contracts/index.js'
import { EvidenceTrouble } from '../trouble.js'
import { type Correlations, readCorrelations } from './correlation.js'
import { type Distribution, valueAt } from './distribution.js'
import { sobolDimensions } from './sobol-sequence.js'

export interface Uncertain {
  readonly name: string
  readonly distribution: Distribution
}

export interface Inputs {
  /** In the order of their names, so that the place of an assumption on the page changes nothing. */
  readonly uncertain: readonly Uncertain[]
  readonly intervals: readonly Interval[]
  readonly correlations: Correlations
}

/** Two dimensions each: shares of the variance need two independent points. */
const most = Math.floor(sobolDimensions / 2)

/** @throws EvidenceTrouble for too many distributions and for correlations that cannot be */
export function readInputs(assumptions: readonly AssumptionRecord[]): Inputs {
  const sorted = [...assumptions].sort((one, other) => (one.name < other.name ? -1 : 1))
  const uncertain = sorted.flatMap(({ name, distribution }) =>
    distribution === undefined ? [] : [{ name, distribution }],
  )
  if (uncertain.length > most) throw new EvidenceTrouble('TOO_MANY_UNCERTAIN', { count: uncertain.length, most })
  const names = uncertain.map(({ name }) => name)
  return { uncertain, intervals: sorted.flatMap(intervalOf), correlations: readCorrelations(names, sorted) }
}

function intervalOf({ name, distribution, low, high }: AssumptionRecord): readonly Interval[] {
  if (distribution !== undefined || typeof low !== 'number' || typeof high !== 'number' || low === high) return []
  return [{ name, low, high }]
}

/** Values of the uncertain assumptions for their standard normal numbers, which are correlated already. */
export function pointAt(uncertain: readonly Uncertain[], normals: Float64Array, base: Point = {}): Point {
  const point: Record<string, number> = { ...base }
  uncertain.forEach(({ name, distribution }, at) => {
    point[name] = valueAt(distribution, normals[at] as number)
  })
  return point
}
