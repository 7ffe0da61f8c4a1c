/**
 * What bare ranges do to a number. A range says how far a value may lie and nothing about how likely any of it is, so it has no
 * place in a probability: the spread is worked out anew with the ranges at their ends, and the answer lies between.
 *
 * Source: Ferson, S. and others, Constructing Probability Boxes and Dempster-Shafer Structures, Sandia report SAND2002-4015, 2003
 * (a distribution known only to lie between two others). Only ends are looked at: where a number turns round inside a range the
 * box is wider than this.
 */
import type { Envelope, NumbersOutcome, Point, SpreadAtEnds } from '../../../../shared/contracts/index.js'
import { evaluateInBatches, numberAt, type Tools } from '../evaluation.js'
import { requirementSpreads } from './requirements.js'
import type { Samples } from './samples.js'
import { screen } from './screening.js'
import { summarise } from './summary.js'

export interface EnvelopeRequest {
  readonly target: string
  /** Names that can reach the number or a requirement, where known; the others cost nothing. */
  readonly reaching?: readonly string[]
  readonly count?: number
  /** How many ranges get spreads of their own. */
  readonly shown?: number
}

export interface EnvelopeTools extends Tools {
  readonly onEnvelope?: (envelope: Envelope) => void
}

/** House convention: enough for P10 to P90 to a tenth of the spread, so that a dozen spreads take no longer than one full one. */
export const envelopeDefaults = { count: 128, shown: 5 } as const

export async function runEnvelope(request: EnvelopeRequest, samples: Samples, tools: EnvelopeTools): Promise<Envelope> {
  const { target, reaching, shown = envelopeDefaults.shown } = request
  const count = samples.inputs.uncertain.length === 0 ? 1 : (request.count ?? envelopeDefaults.count)
  const intervals = samples.inputs.intervals.filter(({ name }) => reaching === undefined || reaching.includes(name))
  const work = new Work(samples, count, tools)
  work.planned = 2 * intervals.length + 1
  const screened = await screen(intervals, target, samples.base, (points) => work.evaluate(points))
  let envelope: Envelope = {
    ...empty(target, count),
    nominal: screened.nominal,
    effects: screened.effects,
    runs: work.runs,
    stopped: work.stopped,
  }
  const tell = (more: Partial<Envelope>) => {
    envelope = { ...envelope, ...more, runs: work.runs, stopped: work.stopped }
    tools.onEnvelope?.(envelope)
  }
  work.planned += count * (3 + 2 * Math.min(shown, intervals.length) + screened.worst.length)
  tell({ held: await work.spread(target, {}) })
  tell({ lowest: await work.spread(target, screened.lowering) })
  tell({ highest: await work.spread(target, screened.raising) })
  for (const { requirement, ends } of screened.worst) {
    const at = await work.spread(target, ends)
    const found = at?.requirements.find(({ name }) => name === requirement)
    if (found !== undefined) tell({ worst: [...envelope.worst, { requirement, ends, probability: found.probability }] })
  }
  for (const [at, { name, low, high }] of envelope.effects.slice(0, shown).entries()) {
    const spreads = {
      low: await work.spread(target, { [name]: low }),
      high: await work.spread(target, { [name]: high }),
    }
    if (spreads.low === undefined || spreads.high === undefined) continue
    const known = { low: spreads.low, high: spreads.high }
    tell({ effects: envelope.effects.map((effect, index) => (index === at ? { ...effect, spreads: known } : effect)) })
  }
  tell({})
  return envelope
}

function empty(target: string, count: number): Envelope {
  const nothing = { nominal: undefined, held: undefined, lowest: undefined, highest: undefined }
  return { target, count, ...nothing, effects: [], worst: [], runs: 0, stopped: false }
}

/** Evaluations counted, one after the other, none after a stop. */
class Work {
  runs = 0
  planned = 0
  stopped = false
  readonly #samples: Samples
  readonly #count: number
  readonly #tools: Tools
  readonly #known = new Map<string, SpreadAtEnds>()

  constructor(samples: Samples, count: number, tools: Tools) {
    this.#samples = samples
    this.#count = count
    this.#tools = tools
  }

  async evaluate(points: readonly Point[]): Promise<readonly NumbersOutcome[]> {
    const found: NumbersOutcome[] = []
    if (this.stopped) return found
    const complete = await evaluateInBatches(points, this.#tools, (_, outcomes) => {
      found.push(...outcomes)
      this.runs += outcomes.length
      this.#tools.onProgress?.(this.runs, Math.max(this.planned, this.runs))
    })
    if (!complete) this.stopped = true
    return found
  }

  /** The same samples each time, so that only the ends differ; undefined when it was stopped before the last of them. */
  async spread(target: string, ends: Point): Promise<SpreadAtEnds | undefined> {
    const key = JSON.stringify(Object.entries(ends).sort())
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const points = Array.from({ length: this.#count }, (_, at) => ({ ...this.#samples.point(at), ...ends }))
    const outcomes = Object.keys(ends).length === 0 ? await this.#held(points) : await this.evaluate(points)
    if (outcomes.length < points.length) return undefined
    const values = Float64Array.from(outcomes.flatMap((outcome) => numberAt(outcome, target) ?? []))
    const requirements = requirementSpreads(outcomes)
    const found = { ends, summary: summarise(values), requirements, failed: outcomes.length - values.length }
    this.#known.set(key, found)
    return found
  }

  /** What the spread itself has evaluated already. */
  async #held(points: readonly Point[]): Promise<readonly NumbersOutcome[]> {
    const ready = this.#samples.outcomes.slice(0, points.length)
    return [...ready, ...(await this.evaluate(points.slice(ready.length)))]
  }
}
