/** Evaluating a number at points, for whatever asks: what the caller hands in, and what is read of the outcomes. */
import type { EvaluateMany, NumbersOutcome, Point } from '../../../shared/contracts/index.js'
import type { StopSignal } from '../program/index.js'

/** What the caller hands in. */
export interface Tools {
  readonly evaluateMany: EvaluateMany<StopSignal>
  readonly signal?: StopSignal
  /** Points evaluated so far and points asked for at most, of the part that runs. */
  readonly onProgress?: (done: number, asked: number) => void
}

/** Points handed over at once: few enough for several signs of life a second, enough to keep two workers busy. */
const usualBatch = 64

/** Hands the points over in batches, so that a stop loses little; false when it was stopped. */
export async function evaluateInBatches(
  points: readonly Point[],
  { evaluateMany, signal }: Tools,
  onBatch: (points: readonly Point[], outcomes: readonly NumbersOutcome[]) => void,
  batch = usualBatch,
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

/** The number of a point, if it has a finite one. */
export function numberAt(outcome: NumbersOutcome, target: string): number | undefined {
  const value = outcome.numbers[target]
  return value !== undefined && Number.isFinite(value) ? value : undefined
}
