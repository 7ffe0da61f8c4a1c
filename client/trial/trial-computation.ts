/**
 * Computes what trial values reach, beside the document's own results and never among them. One run at a time, the latest values win: while a
 * slider is dragged each run shows what it found and the next one takes the values of that moment. DOM-free.
 */
import type { Reading } from '../../kernel/cells/index.js'
import type { Evaluation, EvaluationOptions, Overrides, Wanted } from '../../kernel/cells/program/index.js'
import type { CellId, CellResult } from '../../shared/contracts/index.js'
import { onTopOf, type Standing } from '../compute/result-book.js'
import { borrowDimensions } from './borrowed-dimensions.js'
import { TrialBook } from './trial-book.js'
import { fittingOverrides, trialKeys } from './trial-keys.js'
import { trialMarks } from './trial-marks.js'

export interface TrialParts {
  /** In an isolate apart from that of the document. */
  evaluate(reading: Reading, overrides: Overrides, wanted: Wanted, options: EvaluationOptions): Promise<Evaluation>
  after(milliseconds: number, call: () => void): () => void
}

export interface TrialComputationEvents {
  onChange(): void
  /** A run lasts long enough to be worth a word (true), or ended (false). */
  onLongRun(running: boolean): void
  onTrouble(sentence: string): void
}

/** How long an overtaken run may still take: ending it also loses what the isolate remembers. [ms] */
const grace = 3000
/** Until then the values of the moment before stay, so that dragging does not flicker. [ms] */
const noticeable = 400

interface Run {
  readonly controller: AbortController
  readonly keys: ReadonlyMap<CellId, string>
  /** It will be ended unless it ends in time. */
  overtaken: boolean
}

export class TrialComputation {
  readonly #parts: TrialParts
  readonly #events: TrialComputationEvents
  readonly #book = new TrialBook()
  /** The last values of a trial that each cell showed. */
  readonly #shown = new Map<CellId, CellResult>()
  #reading: Reading | undefined
  #asked: Overrides = {}
  #overrides: Overrides = {}
  #keys: ReadonlyMap<CellId, string> = new Map()
  #run: Run | undefined
  /** Runs follow one another without a gap in which another could begin. */
  #working = false
  #long = false
  #prepared = false
  /** Not computed again by itself until a value or a text changes. */
  #stopped = false

  constructor(parts: TrialParts, events: TrialComputationEvents) {
    this.#parts = parts
    this.#events = events
  }

  /** The cells were read anew. */
  take(reading: Reading): void {
    this.#reading = reading
    this.#renew()
  }

  /** The values in force now; none shows the document again at once. */
  set(overrides: Overrides): void {
    if (this.#asked === overrides) return
    this.#asked = overrides
    this.#renew()
    this.#events.onChange()
  }

  /** Opens the isolate, which takes a moment, before the first value comes. */
  prepare(): void {
    const reading = this.#reading
    const first = reading?.program.cells.find(({ assumptions }) => assumptions.length > 0)
    if (reading === undefined || first === undefined || this.#prepared) return
    this.#prepared = true
    // If that fails, the first trial says why.
    this.#parts.evaluate(reading, {}, [first.id], {}).catch(() => undefined)
  }

  /** Failed and stopped cells anew. */
  computeAll(): void {
    this.#book.forgetFailures()
    this.#renew()
  }

  /** Ends the run at once; false when there is none to end. */
  stop(): boolean {
    if (this.#run === undefined || this.#run.controller.signal.aborted) return false
    this.#stopped = true
    this.#run.controller.abort()
    return true
  }

  get running(): boolean {
    return this.#working
  }

  get progress(): { readonly done: number; readonly of: number } {
    return { done: this.#keys.size - this.#needed().length, of: this.#keys.size }
  }

  /** With the document's standing of a cell, what the sheet shows of it. */
  standing(cell: CellId, own: Standing): Standing {
    const key = this.#keys.get(cell)
    if (key === undefined) return own
    const said = own.state === 'current' ? own.result : undefined
    const result = this.#book.get(key)
    if (result?.outcome === 'computed')
      return { state: 'current', result: borrowDimensions(result, said), trial: trialMarks(result, said) }
    const last = this.#shown.get(cell)
    const shown = last === undefined ? undefined : borrowDimensions(last, said)
    const kept = shown ?? own.result
    const marked = shown === undefined ? {} : { trial: trialMarks(shown, said) }
    if (result !== undefined)
      return {
        state: result.outcome === 'failed' ? 'failed' : 'held back',
        result: this.#withAssumptions(onTopOf(result, kept), kept),
        trial: shown === undefined ? noMarks : trialMarks(shown, said),
      }
    if (kept === undefined) return own
    return { state: this.#waiting(kept, own), result: kept, ...marked }
  }

  /** A moment's values stay `current` for as long as nobody would notice. */
  #waiting(kept: CellResult, own: Standing): Standing['state'] {
    if (!this.#working || this.#stopped) return 'out of date'
    return this.#long || kept.fingerprint !== this.#fingerprintOf(kept.cell) ? 'computing' : own.state
  }

  #fingerprintOf(cell: CellId): string | undefined {
    return this.#reading?.program.cells.find(({ id }) => id === cell)?.fingerprint
  }

  /** What fails under a trial keeps its rows in the register, or the value could not be moved back there. */
  #withAssumptions(failure: CellResult, kept: CellResult | undefined): CellResult {
    const stated = new Set(failure.assumptions.map(({ name }) => name))
    const lost = (kept?.assumptions ?? []).filter(({ name }) => !stated.has(name))
    if (lost.length === 0) return failure
    const patched = lost.map(({ trial: _, ...record }) => {
      const trial = this.#overrides[record.name]
      return trial === undefined ? record : { ...record, trial }
    })
    return { ...failure, assumptions: [...failure.assumptions, ...patched] }
  }

  #renew(): void {
    const program = this.#reading?.program
    this.#overrides = program === undefined ? {} : fittingOverrides(program, this.#asked)
    this.#keys = program === undefined ? new Map() : trialKeys(program, this.#overrides)
    this.#stopped = false
    for (const cell of this.#shown.keys()) if (!this.#keys.has(cell)) this.#shown.delete(cell)
    for (const [cell, key] of this.#keys) this.#show(cell, this.#book.get(key))
    if (!this.#working) void this.#compute()
    else if (this.#run !== undefined && !sameKeys(this.#run.keys, this.#keys)) this.#overtake(this.#run)
  }

  #overtake(run: Run): void {
    if (run.overtaken) return
    run.overtaken = true
    this.#parts.after(grace, () => {
      if (this.#run === run && !sameKeys(run.keys, this.#keys)) run.controller.abort()
    })
  }

  #needed(): readonly CellId[] {
    return [...this.#keys].flatMap(([cell, key]) => (this.#book.get(key) === undefined ? [cell] : []))
  }

  async #compute(): Promise<void> {
    this.#working = true
    for (let wanted = this.#needed(); wanted.length > 0 && !this.#stopped; wanted = this.#needed()) {
      const keys = this.#keys
      await this.#evaluate(wanted)
      // Whoever evaluates answers for every cell unless it was stopped; if it did not, asking again would not help.
      if (keys === this.#keys && this.#needed().length >= wanted.length) this.#stopped = true
    }
    this.#working = false
    this.#events.onChange()
  }

  async #evaluate(wanted: readonly CellId[]): Promise<void> {
    const reading = this.#reading
    if (reading === undefined) return
    const run: Run = { controller: new AbortController(), keys: this.#keys, overtaken: false }
    this.#run = run
    const cancel = this.#parts.after(noticeable, () => this.#setLong(true))
    const take = (results: readonly CellResult[]) => {
      for (const result of results) this.#take(run, result)
      this.#events.onChange()
    }
    try {
      const { results } = await this.#parts.evaluate(reading, this.#overrides, wanted, {
        signal: run.controller.signal,
        onResult: (result) => take([result]),
      })
      take(results)
    } catch (error) {
      this.#stopped = true
      this.#events.onTrouble(
        `The trial was not computed: ${error instanceof Error ? error.message : String(error)} The document is as it was.`,
      )
    } finally {
      cancel()
      this.#run = undefined
      this.#setLong(false)
    }
  }

  /** Known under the values and the text it was computed with, whatever is asked for by now. */
  #take(run: Run, result: CellResult): void {
    const key = run.keys.get(result.cell)
    if (key === undefined) return
    this.#book.note(key, result)
    if (this.#keys.has(result.cell)) this.#show(result.cell, result)
  }

  #show(cell: CellId, result: CellResult | undefined): void {
    if (result?.outcome === 'computed') this.#shown.set(cell, result)
  }

  #setLong(long: boolean): void {
    if (this.#long === long) return
    this.#long = long
    this.#events.onLongRun(long)
    this.#events.onChange()
  }
}

const noMarks = { values: [], requirements: [], figures: false }

function sameKeys(one: ReadonlyMap<CellId, string>, other: ReadonlyMap<CellId, string>): boolean {
  return one === other || (one.size === other.size && [...one].every(([cell, key]) => other.get(cell) === key))
}
