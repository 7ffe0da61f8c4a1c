/** What a view has found out about one number, and is finding out: answers are kept by number and belong to a state of the notebook. DOM-free. */
import type { Asking } from './asking.js'
import { editionOf } from './edition.js'
import { Kept } from './kept.js'
import { OneAtATime, type Running, type Turn } from './one-at-a-time.js'
import { troubleWords } from './trouble-words.js'

/** The answer about one number, as far as it goes. */
export interface Answer<Found> {
  readonly target: string
  /** The state of the notebook it belongs to. */
  readonly edition: string
  /** Trial values were in force. */
  readonly trials: boolean
  readonly found?: Found
  readonly trouble?: string
}

/** What is found says what of it is left to do. */
interface Findings {
  readonly left: readonly string[]
}

export class NumberWork<Found extends Findings> {
  readonly #sources: Pick<Asking, 'view' | 'now'>
  readonly #name: string
  readonly #onChange: (what: 'found' | 'state') => void
  readonly #kept = new Kept<Answer<Found>>()
  readonly #turns: OneAtATime<string>
  #answer: Answer<Found> | undefined

  /** `name` says what is done: `Varying`. */
  constructor(sources: Pick<Asking, 'view' | 'now'>, name: string, onChange: (what: 'found' | 'state') => void) {
    this.#sources = sources
    this.#name = name
    this.#onChange = onChange
    this.#turns = new OneAtATime({ now: () => sources.now(), onState: () => onChange('state') })
  }

  get answer(): Answer<Found> | undefined {
    return this.#answer
  }

  get running(): Running<string> | undefined {
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
    return this.#answer?.found?.left.length === 0 && !this.outdated
  }

  /** Ends what runs; what it has found so far stays. */
  stop(): void {
    this.#turns.stop()
  }

  /** Asks anew; `learn` is told what is known so far, and says nothing once another question has begun. */
  protected async ask(
    target: string,
    work: (turn: Turn, learn: (found: Found, trials: boolean) => void) => Promise<void>,
  ): Promise<void> {
    this.#answer = { target, edition: editionOf(this.#sources.view()), trials: false }
    await this.#turns.run(
      this.#name,
      (turn) => work(turn, (found, trials) => turn.mine() && this.#learn(found, trials)),
      (fault) => this.#fail(fault),
    )
  }

  #learn(found: Found, trials: boolean): void {
    if (this.#answer === undefined) return
    this.#answer = { ...this.#answer, found, trials }
    this.#kept.put(this.#answer.target, this.#answer)
    this.#onChange('found')
  }

  #fail(fault: unknown): void {
    const trouble = troubleWords(fault, this.#name)
    if (this.#answer !== undefined) this.#answer = { ...this.#answer, trouble }
    this.#onChange('state')
  }
}
