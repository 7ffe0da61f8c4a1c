/** How sure a number is: all uncertain assumptions varied together, and what that makes of it. */
import type { AssumptionRecord, Point, Spread } from '../../../../shared/contracts/index.js'
import { numberAt, type Tools } from '../evaluation.js'
import { EvidenceTrouble } from '../trouble.js'
import { convergenceOf } from './convergence.js'
import { failuresOf } from './failures.js'
import { readInputs } from './inputs.js'
import { requirementSpreads } from './requirements.js'
import { Samples } from './samples.js'
import { summarise } from './summary.js'

export interface SpreadRequest {
  readonly assumptions: readonly AssumptionRecord[]
  /** The number asked about. */
  readonly target: string
  /** Trial values in force for what is not sampled. */
  readonly base?: Point
  /** At most so many samples; powers of 2 fill the space most evenly. */
  readonly count?: number
  readonly seed?: number
  /** Ends as soon as two doublings in a row changed nothing to speak of (`Convergence`). */
  readonly untilSettled?: boolean
}

export interface SpreadTools extends Tools {
  /** The answer so far, after each batch. */
  readonly onSpread?: (spread: Spread) => void
}

export const spreadDefaults = { count: 2048, seed: 1 } as const
export const mostSamples = 65_536
export const fewestSamples = 16

/** @throws EvidenceTrouble for a count or seed that cannot be, and as `readInputs` */
export function drawSamples({ assumptions, base = {}, count, seed }: SpreadRequest): Samples {
  const { count: asked, seed: sown } = { count: count ?? spreadDefaults.count, seed: seed ?? spreadDefaults.seed }
  if (!Number.isInteger(asked) || asked < fewestSamples || asked > mostSamples)
    throw new EvidenceTrouble('SAMPLES_INVALID', { value: String(asked), most: mostSamples })
  if (!Number.isInteger(sown) || sown < 0 || sown >= 2 ** 32)
    throw new EvidenceTrouble('SEED_INVALID', { value: String(sown) })
  return new Samples(readInputs(assumptions), sown, base)
}

/**
 * Samples and summarises. The same assumptions, seed and count give the same answer, however the page orders them.
 *
 * @param samples - from `drawSamples` of the same request; keeps what was evaluated, so that shares and intervals use it too
 */
export async function runSpread(request: SpreadRequest, samples: Samples, tools: SpreadTools): Promise<Spread> {
  const most = samples.inputs.uncertain.length === 0 ? 1 : (request.count ?? spreadDefaults.count)
  let complete = true
  for (let count = Math.min(stage, most); complete; count = Math.min(count * 2, most)) {
    complete = await samples.extend(count, {
      ...tools,
      onProgress: (done) => {
        tools.onProgress?.(done, most)
        tools.onSpread?.(describe(request, samples, most, false))
      },
    })
    if (count === most || (request.untilSettled === true && isSettled(request, samples))) break
  }
  return describe(request, samples, most, !complete)
}

/** The first look at whether it has settled. */
const stage = 128

function isSettled({ target }: SpreadRequest, samples: Samples): boolean {
  return convergenceOf(numbersOf(samples, target)).settledAt !== undefined
}

function describe({ target }: SpreadRequest, samples: Samples, asked: number, stopped: boolean): Spread {
  const numbers = numbersOf(samples, target)
  const { uncertain, intervals, correlations } = samples.inputs
  return {
    target,
    seed: samples.seed,
    asked,
    done: samples.outcomes.length,
    sampled: uncertain.map(({ name }) => name),
    intervals,
    correlated: correlations.any,
    summary: summarise(numbers.filter((value) => !Number.isNaN(value))),
    requirements: requirementSpreads(samples.outcomes),
    failures: failuresOf(samples.points, samples.outcomes, target),
    convergence: convergenceOf(numbers),
    stopped,
  }
}

/** One for each sample, NaN where it did not compute. */
function numbersOf({ outcomes }: Samples, target: string): Float64Array {
  return Float64Array.from(outcomes, (outcome) => numberAt(outcome, target) ?? Number.NaN)
}
