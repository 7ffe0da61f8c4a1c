/** Plain functions in the place of notebooks, so that the answers are known in closed form. */
import type { Tools } from '../../../../../kernel/cells/evidence/index.js'
import type { AssumptionRecord, NumbersOutcome, Point } from '../../../../../shared/contracts/index.js'

export const normal = (
  name: string,
  mean: number,
  deviation: number,
  more: Partial<AssumptionRecord> = {},
): AssumptionRecord => ({ name, value: mean, distribution: { kind: 'normal', mean, deviation }, ...more })

export const uniform = (name: string, low: number, high: number): AssumptionRecord => ({
  name,
  value: (low + high) / 2,
  distribution: { kind: 'uniform', low, high },
})

export const lognormal = (name: string, median: number, factor: number): AssumptionRecord => ({
  name,
  value: median,
  distribution: { kind: 'lognormal', median, factor },
})

export const range = (name: string, value: number, low: number, high: number): AssumptionRecord => ({
  name,
  value,
  low,
  high,
})

/** The number `y` of a model, and the requirement `limit` where the model has one. */
export interface Answer {
  readonly y: number
  readonly margin?: number
}

/** A model that throws fails at that point with the code THROWN. */
export const toolsOf = (model: (point: Point) => number | Answer, more: Omit<Tools, 'evaluateMany'> = {}) => {
  const evaluated: Point[] = []
  const outcomeOf = (point: Point): NumbersOutcome => {
    try {
      const given = model(point)
      const { y, margin } = typeof given === 'number' ? { y: given, margin: undefined } : given
      return { ok: true, numbers: { y }, requirements: margin === undefined ? {} : { limit: { actual: y, margin } } }
    } catch (fault) {
      return { ok: false, code: 'THROWN', message: (fault as Error).message, numbers: {}, requirements: {} }
    }
  }
  const evaluateMany: Tools['evaluateMany'] = async (points, signal) => {
    if (signal?.aborted === true) return []
    evaluated.push(...points)
    return points.map(outcomeOf)
  }
  return { ...more, evaluateMany, evaluated }
}
