/** What a spread view has found and is finding out. DOM-free: it runs the engine, keeps the answers and says when they changed. */
import {
  drawSamples,
  EvidenceTrouble,
  runEnvelope,
  runShares,
  runSpread,
  type Samples,
  type SpreadRequest,
  type Tools,
} from '../../kernel/cells/evidence/index.js'
import type { AssumptionRecord, Envelope, NumbersOutcome, Point, Shares, Spread } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/page.js'

export interface SpreadSources {
  view(): SheetView
  /** The number and all requirements at points; fewer outcomes than points when it was stopped. */
  evaluateMany(target: string, points: readonly Point[], signal: AbortSignal): Promise<readonly NumbersOutcome[]>
  /** Assumptions that can reach the number; undefined where that is not known. */
  reaching?(target: string): readonly string[] | undefined
  /** Puts values in force as trial values. */
  tryPoint?(point: Point): void
  /** Aloud, to people who do not see the page. */
  say(sentence: string): void
  /** [ms] */
  now(): number
}

export type Part = 'samples' | 'shares' | 'ranges'

export interface Running {
  readonly part: Part
  readonly done: number
  readonly asked: number
  /** Still to go [s]; absent until it can be told. */
  readonly secondsLeft?: number
}

export interface SpreadOptions {
  readonly count: number
  readonly seed: number
  readonly untilSettled: boolean
}

/** Answers about one number, as far as they go. */
export interface Answers {
  readonly target: string
  /** The state of the notebook they belong to. */
  readonly edition: string
  readonly spread?: Spread
  readonly shares?: Shares
  readonly envelope?: Envelope
  readonly trouble?: string
}

/** Partial answers are drawn this far apart, so that drawing takes little from sampling. [ms] */
const redrawing = 300

/** Numbers whose answers are kept, so that going back to one shows it at once. */
const keptAnswers = 8

export class SpreadWork {
  readonly #sources: SpreadSources
  readonly #onChange: (part: Part | 'state') => void
  readonly #kept = new Map<string, { readonly answers: Answers; readonly samples: Samples }>()
  #answers: Answers | undefined
  #samples: Samples | undefined
  #running: Running | undefined
  #stop: AbortController | undefined

  constructor(sources: SpreadSources, onChange: (part: Part | 'state') => void) {
    this.#sources = sources
    this.#onChange = onChange
  }

  get answers(): Answers | undefined {
    return this.#answers
  }

  get running(): Running | undefined {
    return this.#running
  }

  /** The notebook is no longer what the answers belong to. */
  get outdated(): boolean {
    return this.#answers !== undefined && this.#answers.edition !== editionOf(this.#sources.view())
  }

  /** Shows what is known of a number; false when nothing is. */
  recall(target: string): boolean {
    this.#drop()
    const known = this.#kept.get(target)
    this.#answers = known?.answers
    this.#samples = known?.samples
    this.#onChange('state')
    return known !== undefined && !this.outdated
  }

  /** Samples anew; what was known of shares and ranges belongs to other samples and goes. */
  async sample(target: string, options: SpreadOptions): Promise<void> {
    const view = this.#sources.view()
    const assumptions = assumptionsOf(view)
    const request: SpreadRequest = { assumptions, target, base: trialsHeld(assumptions), ...options }
    this.#drop()
    this.#samples = undefined
    this.#answers = { target, edition: editionOf(view) }
    try {
      this.#samples = drawSamples(request)
    } catch (fault) {
      this.#fail(fault)
      return
    }
    const samples = this.#samples
    let shown = Number.NEGATIVE_INFINITY
    await this.#run('samples', async (tools, learn) => {
      const onSpread = (spread: Spread) => {
        if (this.#sources.now() - shown < redrawing) return
        shown = this.#sources.now()
        learn({ spread })
      }
      learn({ spread: await runSpread(request, samples, { ...tools, onSpread }) })
    })
  }

  /** What shares the variance, on the samples that there are. */
  async shareOut(): Promise<void> {
    const [answers, samples] = [this.#answers, this.#samples]
    if (answers === undefined || samples === undefined) return
    const reaching = this.#sources.reaching?.(answers.target)
    const request = { target: answers.target, ...(reaching === undefined ? {} : { reaching }) }
    await this.#run('shares', (tools, learn) =>
      runShares(request, samples, { ...tools, onShares: (shares) => learn({ shares }) }),
    )
  }

  /** What the bare ranges do. */
  async varyRanges(): Promise<void> {
    const [answers, samples] = [this.#answers, this.#samples]
    if (answers === undefined || samples === undefined) return
    await this.#run('ranges', (tools, learn) =>
      runEnvelope({ target: answers.target }, samples, { ...tools, onEnvelope: (envelope) => learn({ envelope }) }),
    )
  }

  /** Ends what runs; what it has found so far stays. */
  stop(): void {
    this.#stop?.abort()
  }

  /** Ends what runs, and hears no more of it: it belongs to another number or to other samples. */
  #drop(): void {
    this.stop()
    this.#stop = undefined
    this.#running = undefined
  }

  async #run(
    part: Part,
    work: (tools: Tools, learn: (found: Partial<Answers>) => void) => Promise<unknown>,
  ): Promise<void> {
    this.#drop()
    const stop = new AbortController()
    const target = this.#answers?.target ?? ''
    const began = this.#sources.now()
    this.#stop = stop
    this.#running = { part, done: 0, asked: 0 }
    this.#onChange('state')
    const mine = () => this.#stop === stop
    const tools: Tools = {
      evaluateMany: async (points) => this.#sources.evaluateMany(target, points, stop.signal),
      signal: stop.signal,
      onProgress: (done, asked) => {
        if (!mine()) return
        this.#running = { part, done, asked, ...timeLeft(this.#sources.now() - began, done, asked) }
        this.#onChange('state')
      },
    }
    try {
      await work(tools, (found) => mine() && this.#learn(part, found))
    } catch (fault) {
      if (mine()) this.#fail(fault)
    } finally {
      if (mine()) this.#end()
    }
  }

  #end(): void {
    this.#running = undefined
    this.#stop = undefined
    this.#onChange('state')
  }

  #learn(part: Part, found: Partial<Answers>): void {
    if (this.#answers === undefined || this.#samples === undefined) return
    this.#answers = { ...this.#answers, ...found }
    this.#kept.delete(this.#answers.target)
    this.#kept.set(this.#answers.target, { answers: this.#answers, samples: this.#samples })
    for (const target of [...this.#kept.keys()].slice(0, -keptAnswers)) this.#kept.delete(target)
    this.#onChange(part)
  }

  #fail(fault: unknown): void {
    const said = fault instanceof Error ? fault.message : String(fault)
    const trouble = fault instanceof EvidenceTrouble ? said : `Sampling ended: ${said}`
    if (this.#answers !== undefined) this.#answers = { ...this.#answers, trouble }
    this.#onChange('state')
  }
}

export function assumptionsOf(view: SheetView): readonly AssumptionRecord[] {
  return view.cells.flatMap(({ result }) => result?.assumptions ?? [])
}

/** Trial values of what is not sampled stay in force. */
function trialsHeld(assumptions: readonly AssumptionRecord[]): Point {
  return Object.fromEntries(
    assumptions.flatMap(({ name, trial, distribution }) =>
      typeof trial === 'number' && distribution === undefined ? [[name, trial]] : [],
    ),
  )
}

/** Changes whenever an answer might: sources by fingerprint, and trial values. */
function editionOf(view: SheetView): string {
  const prints = view.cells.map(({ result }) => result?.fingerprint ?? '')
  return JSON.stringify([prints, assumptionsOf(view).map(({ name, trial }) => [name, trial])])
}

/** Told once it has run for a moment, from the pace so far. */
function timeLeft(elapsed: number, done: number, asked: number): { secondsLeft?: number } {
  if (elapsed < 1000 || done === 0) return {}
  return { secondsLeft: Math.ceil(((elapsed / done) * (asked - done)) / 1000) }
}
