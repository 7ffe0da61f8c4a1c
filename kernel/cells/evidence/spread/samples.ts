/** The samples of one spread, drawn and evaluated as far as they are asked for; everything that needs them shares them. */
import type { NumbersOutcome, Point } from '../../../../shared/contracts/index.js'
import { evaluateInBatches, type Tools } from '../evaluation.js'
import { multiplyLower } from './cholesky.js'
import { evenNormals } from './even-points.js'
import { type Inputs, pointAt } from './inputs.js'

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
