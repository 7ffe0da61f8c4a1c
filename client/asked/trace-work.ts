/** What a view of a trace has found and is finding out. DOM-free: it runs the engine, keeps the answers and says when they changed. */
import { EvidenceTrouble, type TraceOptions, traceNumber } from '../../kernel/cells/evidence/index.js'
import type { NumbersHost } from '../../kernel/cells/program/index.js'
import type { Trace } from '../../shared/contracts/index.js'
import { askable } from './askable.js'
import type { Asking } from './asking.js'
import { assumptionsOf, editionOf, trialsOf } from './edition.js'
import { Kept } from './kept.js'
import { OneAtATime, type Running } from './one-at-a-time.js'

export interface TraceSources extends Pick<Asking, 'view' | 'reading' | 'say' | 'now'> {
  /** Isolates beside the page's: a trace runs programs of its own. */
  host(): Promise<NumbersHost>
}

/** The answer about one number, as far as it goes. */
export interface TraceAnswer {
  readonly target: string
  /** The state of the notebook it belongs to. */
  readonly edition: string
  /** Trial values were in force. */
  readonly trials: boolean
  readonly trace?: Trace
  readonly trouble?: string
}

/** Runs the engine; tests put another in its place. */
export type FindTrace = (options: TraceOptions, host: NumbersHost) => Promise<Trace>

export class TraceWork {
  readonly #sources: TraceSources
  readonly #onChange: (what: 'trace' | 'state') => void
  readonly #find: FindTrace
  readonly #kept = new Kept<TraceAnswer>()
  readonly #turns: OneAtATime<'trace'>
  #answer: TraceAnswer | undefined

  constructor(sources: TraceSources, onChange: (what: 'trace' | 'state') => void, find: FindTrace = traceNumber) {
    this.#sources = sources
    this.#onChange = onChange
    this.#find = find
    this.#turns = new OneAtATime({ now: () => sources.now(), onState: () => onChange('state') })
  }

  get answer(): TraceAnswer | undefined {
    return this.#answer
  }

  get running(): Running<'trace'> | undefined {
    return this.#turns.running
  }

  /** The notebook is no longer what the answer belongs to. */
  get outdated(): boolean {
    return this.#answer !== undefined && this.#answer.edition !== editionOf(this.#sources.view())
  }

  /** Shows what is known of a number; false when nothing is, or only part, or of another state of the notebook. */
  recall(target: string): boolean {
    this.#turns.drop()
    this.#answer = this.#kept.get(target)
    this.#onChange('state')
    return this.#answer?.trace?.left.length === 0 && !this.outdated
  }

  async trace(target: string): Promise<void> {
    const view = this.#sources.view()
    const assumptions = assumptionsOf(view)
    const trials = trialsOf(assumptions)
    this.#answer = { target, edition: editionOf(view), trials: Object.keys(trials).length > 0 }
    await this.#turns.run(
      'trace',
      async ({ signal, onProgress, mine }) => {
        const cell = askable(view, target)?.cell
        const read = this.#sources.reading()
        if (cell === undefined) throw new Error(`"${target}" is no number of this sheet any more.`)
        if (read === undefined) throw new Error('The cells have not been read yet; ask again in a moment.')
        const options = { read, target: { name: target, cell }, assumptions, trials, signal, onProgress }
        const trace = await this.#find(options, await this.#sources.host())
        if (mine()) this.#learn(trace)
      },
      (fault) => this.#fail(fault),
    )
  }

  /** Ends what runs; what it has found so far is shown. */
  stop(): void {
    this.#turns.stop()
  }

  #learn(trace: Trace): void {
    if (this.#answer === undefined) return
    this.#answer = { ...this.#answer, trace }
    this.#kept.put(this.#answer.target, this.#answer)
    this.#onChange('trace')
  }

  #fail(fault: unknown): void {
    const said = fault instanceof Error ? fault.message : String(fault)
    const trouble = fault instanceof EvidenceTrouble ? said : `Tracing ended: ${said}`
    if (this.#answer !== undefined) this.#answer = { ...this.#answer, trouble }
    this.#onChange('state')
  }
}
