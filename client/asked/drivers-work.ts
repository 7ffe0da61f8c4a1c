/** What a view of drivers has found and is finding out. DOM-free: it runs the engine, keeps the answers and says when they changed. */
import { EvidenceTrouble, runDrivers } from '../../kernel/cells/evidence/index.js'
import type { Drivers } from '../../shared/contracts/index.js'
import { askable } from './askable.js'
import type { Asking } from './asking.js'
import { assumptionsOf, editionOf, trialsOf } from './edition.js'
import { Kept } from './kept.js'
import { OneAtATime, type Running } from './one-at-a-time.js'

export type DriversSources = Pick<Asking, 'view' | 'open' | 'say' | 'now'>

/** The answer about one number, as far as it goes. */
export interface DriversAnswer {
  readonly target: string
  /** The state of the notebook it belongs to. */
  readonly edition: string
  /** Trial values were in force among the assumptions that reach the number. */
  readonly trials: boolean
  readonly drivers?: Drivers
  readonly trouble?: string
}

export class DriversWork {
  readonly #sources: DriversSources
  readonly #onChange: (what: 'drivers' | 'state') => void
  readonly #kept = new Kept<DriversAnswer>()
  readonly #turns: OneAtATime<'drivers'>
  #answer: DriversAnswer | undefined

  constructor(sources: DriversSources, onChange: (what: 'drivers' | 'state') => void) {
    this.#sources = sources
    this.#onChange = onChange
    this.#turns = new OneAtATime({ now: () => sources.now(), onState: () => onChange('state') })
  }

  get answer(): DriversAnswer | undefined {
    return this.#answer
  }

  get running(): Running<'drivers'> | undefined {
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
    return this.#answer?.drivers?.left.length === 0 && !this.outdated
  }

  /** Varies each assumption that can reach the number. */
  async vary(target: string): Promise<void> {
    const view = this.#sources.view()
    this.#answer = { target, edition: editionOf(view), trials: false }
    await this.#turns.run(
      'drivers',
      async ({ signal, onProgress, mine }) => {
        const cell = askable(view, target)?.cell
        if (cell === undefined) throw new Error(`"${target}" is no number of this sheet any more.`)
        // The number alone: what its requirements need besides is not evaluated, and may fail without harm.
        const wanted = { names: [{ name: target, cell }], requirements: [] }
        const evaluator = await this.#sources.open(wanted, { signal })
        const assumptions = assumptionsOf(view).filter(({ name }) => evaluator.assumptions.includes(name))
        const base = trialsOf(assumptions)
        const trials = Object.keys(base).length > 0
        const learn = (drivers: Drivers) => mine() && this.#learn({ drivers, trials })
        const tools = { evaluateMany: evaluator.evaluateMany, signal, onProgress, onDrivers: learn }
        learn(await runDrivers({ target, assumptions, base }, tools))
      },
      (fault) => this.#fail(fault),
    )
  }

  /** Ends what runs; what it has found so far stays. */
  stop(): void {
    this.#turns.stop()
  }

  #learn(found: Pick<DriversAnswer, 'drivers' | 'trials'>): void {
    if (this.#answer === undefined) return
    this.#answer = { ...this.#answer, ...found }
    this.#kept.put(this.#answer.target, this.#answer)
    this.#onChange('drivers')
  }

  #fail(fault: unknown): void {
    const said = fault instanceof Error ? fault.message : String(fault)
    const trouble = fault instanceof EvidenceTrouble ? said : `Varying ended: ${said}`
    if (this.#answer !== undefined) this.#answer = { ...this.#answer, trouble }
    this.#onChange('state')
  }
}
