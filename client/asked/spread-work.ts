/** What a spread view has found and is finding out. DOM-free: it runs the engine, keeps the answers and says when they changed. */
import {
  drawSamples,
  runEnvelope,
  runShares,
  runSpread,
  type Samples,
  type SpreadRequest,
  type Tools,
} from '../../kernel/cells/evidence/index.js'
import type { Envelope, Shares, Spread } from '../../shared/contracts/index.js'
import type { Asking } from './asking.js'
import { assumptionsOf, editionOf, trialsOf } from './edition.js'
import { Kept } from './kept.js'
import { OneAtATime, type Running } from './one-at-a-time.js'
import { troubleWords } from './trouble-words.js'

export type SpreadSources = Omit<Asking, 'reading' | 'open'>

export type Part = 'samples' | 'shares' | 'ranges'

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

export class SpreadWork {
  readonly #sources: SpreadSources
  readonly #onChange: (part: Part | 'state') => void
  readonly #kept = new Kept<{ readonly answers: Answers; readonly samples: Samples }>()
  readonly #turns: OneAtATime<Part>
  #answers: Answers | undefined
  #samples: Samples | undefined

  constructor(sources: SpreadSources, onChange: (part: Part | 'state') => void) {
    this.#sources = sources
    this.#onChange = onChange
    this.#turns = new OneAtATime({ now: () => sources.now(), onState: () => onChange('state') })
  }

  get answers(): Answers | undefined {
    return this.#answers
  }

  get running(): Running<Part> | undefined {
    return this.#turns.running
  }

  /** The notebook is no longer what the answers belong to. */
  get outdated(): boolean {
    return this.#answers !== undefined && this.#answers.edition !== editionOf(this.#sources.view())
  }

  /** Shows what is known of a number; false when nothing is. */
  recall(target: string): boolean {
    this.#turns.drop()
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
    // Trial values of what is not sampled stay in force.
    const base = trialsOf(assumptions.filter(({ distribution }) => distribution === undefined))
    const request: SpreadRequest = { assumptions, target, base, ...options }
    this.#turns.drop()
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
    const reaching = this.#sources.reaching(answers.target)
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
    this.#turns.stop()
  }

  #run(part: Part, work: (tools: Tools, learn: (found: Partial<Answers>) => void) => Promise<unknown>): Promise<void> {
    const target = this.#answers?.target ?? ''
    return this.#turns.run(
      part,
      async ({ signal, onProgress, mine }) => {
        const evaluateMany: Tools['evaluateMany'] = async (points) => this.#sources.evaluateMany(target, points, signal)
        await work({ evaluateMany, signal, onProgress }, (found) => mine() && this.#learn(part, found))
      },
      (fault) => this.#fail(fault),
    )
  }

  #learn(part: Part, found: Partial<Answers>): void {
    if (this.#answers === undefined || this.#samples === undefined) return
    this.#answers = { ...this.#answers, ...found }
    this.#kept.put(this.#answers.target, { answers: this.#answers, samples: this.#samples })
    this.#onChange(part)
  }

  #fail(fault: unknown): void {
    const trouble = troubleWords(fault, 'Sampling')
    if (this.#answers !== undefined) this.#answers = { ...this.#answers, trouble }
    this.#onChange('state')
  }
}
