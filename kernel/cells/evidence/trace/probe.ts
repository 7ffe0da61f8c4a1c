/** Asking for the number at points, each at most once, and what an answer says beside another. */
import type { EvaluateMany, NumbersOutcome, Point, Trace } from '../../../../shared/contracts/index.js'
import type { StopSignal } from '../../program/index.js'
import { evaluateInBatches, numberAt, type Tools } from '../evaluation.js'
import type { Quantity } from './scan.js'

export interface TraceTools extends Tools {
  /** The same, of a program in which numbers on the way can be set; absent where none can. */
  readonly evaluateHandled?: EvaluateMany<StopSignal>
  /** The trace so far, as things are found out. */
  readonly onTrace?: (trace: Trace) => void
}

/** Points handed over at once: what moves the number is told while the rest is tried. */
const batch = 16

/** The number, or that there is none. */
export type Reading = number | 'fails'
export type Answer = 'same' | 'hardly' | 'moved' | 'fails'

/** Of the number: what closures leave open must not pass for an effect. House convention. */
const openDigits = 1e-9

export function answerOf(reading: Reading, base: number): Answer {
  if (reading === 'fails') return 'fails'
  if (reading === base) return 'same'
  return Math.abs(reading - base) <= openDigits * Math.abs(base) ? 'hardly' : 'moved'
}

/** A quantity at a value, together with another where one decides about the other. */
export interface Question {
  readonly point: Point
  readonly handled: boolean
}

export class Probe {
  readonly #target: string
  readonly #trials: Point
  readonly #tools: TraceTools
  readonly #onAnswers: () => void
  readonly #known = new Map<string, Reading>()
  #asked = 0
  #runs = 0
  #stopped = false

  constructor(target: string, trials: Point, tools: TraceTools, onAnswers: () => void = () => {}) {
    this.#target = target
    this.#trials = trials
    this.#tools = tools
    this.#onAnswers = onAnswers
  }

  get runs(): number {
    return this.#runs
  }

  get stopped(): boolean {
    return this.#stopped
  }

  /** Evaluates whatever is not known yet. */
  async ask(questions: readonly Question[]): Promise<void> {
    for (const handled of [false, true]) {
      const fresh = new Map<string, Point>()
      for (const question of questions) {
        const key = keyOf(question)
        if (question.handled === handled && !this.#known.has(key)) fresh.set(key, question.point)
      }
      await this.#evaluate([...fresh], handled)
    }
  }

  /** Undefined where it was not evaluated. */
  reading(question: Question): Reading | undefined {
    return this.#known.get(keyOf(question))
  }

  async #evaluate(fresh: readonly (readonly [key: string, point: Point])[], handled: boolean): Promise<void> {
    const { evaluateMany, evaluateHandled, signal, onProgress } = this.#tools
    const evaluate = handled ? evaluateHandled : evaluateMany
    if (fresh.length === 0 || evaluate === undefined || this.#stopped) return
    this.#asked += fresh.length
    onProgress?.(this.#runs, this.#asked)
    let at = 0
    const tools: Tools = { evaluateMany: evaluate, ...(signal === undefined ? {} : { signal }) }
    const points = fresh.map(([, point]) => ({ ...this.#trials, ...point }))
    const take = (_: readonly Point[], outcomes: readonly NumbersOutcome[]) => {
      for (const outcome of outcomes) this.#keep(fresh[at++]?.[0], outcome)
      onProgress?.(this.#runs, this.#asked)
      this.#onAnswers()
    }
    const ended = await evaluateInBatches(points, tools, take, batch)
    if (!ended) this.#stopped = true
  }

  #keep(key: string | undefined, outcome: NumbersOutcome): void {
    this.#runs += 1
    if (key !== undefined) this.#known.set(key, numberAt(outcome, this.#target) ?? 'fails')
  }
}

export function questionOf({ name, handled }: Quantity, at: number, beside: Point = {}): Question {
  return { point: { ...beside, [name]: at }, handled }
}

function keyOf({ point, handled }: Question): string {
  return JSON.stringify([handled, Object.entries(point).sort(([a], [b]) => (a < b ? -1 : 1))])
}
