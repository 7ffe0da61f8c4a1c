/** The samples of one spread, drawn and evaluated as far as they are asked for; everything that needs them shares them. */
import type { EvaluateMany, NumbersOutcome, Point } from '../../../../shared/contracts/index.js'
import type { StopSignal } from '../../program/index.js'
import { multiplyLower } from './cholesky.js'
import { evenNormals } from './even-points.js'
import { type Inputs, pointAt } from './inputs.js'

/** What the caller hands in. */
export interface Tools {
  readonly evaluateMany: EvaluateMany<StopSignal>
  readonly signal?: StopSignal
  /** Points evaluated so far and points asked for at most, of the part that runs. */
  readonly onProgress?: (done: number, asked: number) => void
}

/** Points handed over at once: few enough for several signs of life a second, enough to keep two workers busy. */
const batch = 64

export class Samples {
  readonly inputs: Inputs
  readonly seed: number
  /** Values that are held at something else than the document's: trial values. */
  readonly base: Point
  readonly points: Point[] = []
  readonly outcomes: NumbersOutcome[] = []

  constructor(inputs: Inputs, seed: number, base: Point) {
    this.inputs = inputs
    this.seed = seed
    this.base = base
  }

  /** Independent standard normal numbers of a sample; `turn` 1 gives another, independent of the first. */
  independentNormals(index: number, turn: 0 | 1): Float64Array {
    const size = this.inputs.uncertain.length
    return evenNormals(index, turn * size, size, this.seed)
  }

  /** The values at correlated normal numbers. */
  pointAt(normals: Float64Array): Point {
    return pointAt(this.inputs.uncertain, normals, this.base)
  }

  point(index: number): Point {
    const known = this.points[index]
    if (known !== undefined) return known
    return this.pointAt(multiplyLower(this.inputs.correlations.root, this.independentNormals(index, 0)))
  }

  /** Sees to it that the first `count` samples are evaluated; false when it was stopped before. */
  async extend(count: number, tools: Tools): Promise<boolean> {
    const missing = Array.from({ length: Math.max(count - this.outcomes.length, 0) }, (_, at) =>
      this.point(this.outcomes.length + at),
    )
    return evaluateInBatches(missing, tools, (points, outcomes) => {
      this.points.push(...points)
      this.outcomes.push(...outcomes)
      tools.onProgress?.(this.outcomes.length, count)
    })
  }
}

/** Hands the points over in batches, so that a stop loses little; false when it was stopped. */
export async function evaluateInBatches(
  points: readonly Point[],
  { evaluateMany, signal }: Tools,
  onBatch: (points: readonly Point[], outcomes: readonly NumbersOutcome[]) => void,
): Promise<boolean> {
  for (let from = 0; from < points.length; from += batch) {
    if (signal?.aborted === true) return false
    const some = points.slice(from, from + batch)
    const outcomes = await evaluateMany(some, signal)
    onBatch(some.slice(0, outcomes.length), outcomes)
    if (outcomes.length < some.length) return false
  }
  return true
}
