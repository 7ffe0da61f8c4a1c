/**
 * Keeps results in step with the text: read, evaluate what the edit touched, show each cell as it finishes. Never blocks: reading
 * is quick, evaluation is elsewhere, and a run that an edit has overtaken is ended after a short grace. DOM-free.
 */
import { formulasOf } from '../../kernel/cells/formulas/index.js'
import { allFindings, type Reading } from '../../kernel/cells/index.js'
import type {
  CheckReport,
  Evaluation,
  EvaluationOptions,
  Graph,
  Overrides,
  Pause,
  SizingCell,
  Wanted,
} from '../../kernel/cells/program/index.js'
import type { CellId, CellResult, Finding, Formula, NameDimension } from '../../shared/contracts/index.js'
import { TrialComputation } from '../trial/trial-computation.js'
import { type DimensionTable, dimensionTable, withDimensions } from './dimensions.js'
import { phasesOf } from './phases.js'
import { mayBeShared, ResultBook, type Standing } from './result-book.js'

export interface ComputationParts {
  read(cells: readonly SizingCell[]): Promise<Reading>
  evaluate(reading: Reading, overrides: Overrides, wanted: Wanted, options: EvaluationOptions): Promise<Evaluation>
  /** As `evaluate`, in an isolate of its own, so that a trial and the document wait for each other at no time. */
  evaluateTrial(reading: Reading, overrides: Overrides, wanted: Wanted, options: EvaluationOptions): Promise<Evaluation>
  /** Resolves to `null` when a newer question has made this one pointless. */
  check(graph: Graph): Promise<CheckReport | null>
  /** Results computed here, with dimensions, for everyone. */
  share(results: readonly CellResult[]): void
  after(milliseconds: number, call: () => void): () => void
  /** Lets the page answer between pieces of long work. */
  readonly pause?: Pause
}

export interface ComputationEvents {
  /** Something that the sheet shows may have changed. */
  onChange(): void
  /** A run lasts long enough to be worth a word (true), or ended (false). */
  onLongRun(running: boolean): void
  onTrouble(sentence: string): void
}

/** Pause in typing after which the cells are read. [ms] */
const typingPause = 80
/** How long an overtaken run may still take to finish. [ms] */
const grace = 200
/** A run shorter than this is not announced. [ms] */
const noticeable = 150

interface Run {
  readonly controller: AbortController
  readonly done: Promise<void>
}

export class Computation {
  readonly book = new ResultBook()
  readonly #parts: ComputationParts
  readonly #events: ComputationEvents
  readonly #slow = new Set<CellId>()
  readonly #trial: TrialComputation
  #cells: readonly SizingCell[] = []
  #texts = ''
  #reading: Reading | undefined
  #formulas: ReadonlyMap<CellId, readonly Formula[]> = new Map()
  #report: CheckReport = { findings: [], names: [] }
  #findings: ReadonlyMap<CellId, readonly Finding[]> = new Map()
  #names: readonly NameDimension[] = []
  #dimensions: DimensionTable = new Map()
  #checked: Graph | undefined
  #run: Run | undefined
  /** The run has lasted long enough to be shown; so has that of a trial. */
  #long = false
  #longTrial = false
  #cancelPause: (() => void) | undefined
  /** What the run was asked for, and what of it has come. */
  #wanted: ReadonlySet<CellId> = new Set()
  #come = new Set<CellId>()
  #turn = 0
  readonly #toShare = new Map<CellId, CellResult>()

  constructor(parts: ComputationParts, events: ComputationEvents) {
    this.#parts = parts
    this.#events = events
    this.#trial = new TrialComputation(
      { evaluate: (...call) => parts.evaluateTrial(...call), after: (...call) => parts.after(...call) },
      {
        onChange: () => events.onChange(),
        onLongRun: (running) => this.#showLong(this.#long, running),
        onTrouble: (sentence) => events.onTrouble(sentence),
      },
    )
  }

  /** Shows what comes of other values of assumptions, SI by name; none shows the document again. */
  tryOut(overrides: Overrides): void {
    this.#trial.set(overrides)
  }

  /** Somebody is about to try something. */
  prepareTrial(): void {
    this.#trial.prepare()
  }

  /** The sizing cells as they now are, in page order. Computes after a pause in typing when a text changed. */
  setCells(cells: readonly SizingCell[]): void {
    const texts = JSON.stringify(cells.map((cell) => [cell.id, cell.source]))
    if (texts === this.#texts) return
    this.#texts = texts
    this.#cells = cells
    this.#cancelPause?.()
    this.#cancelPause = this.#parts.after(typingPause, () => void this.#bringUpToDate(false))
  }

  /** Everything anew, failures and stopped cells included. */
  computeAll(): Promise<void> {
    this.#cancelPause?.()
    this.book.forgetFailures()
    this.#slow.clear()
    this.#trial.computeAll()
    return this.#bringUpToDate(true)
  }

  /**
   * Ends the run at once; false when there is none to end. What had no result stays out of date until it is edited or everything is
   * computed. A run that is ending already does not count: it must not swallow the Escape that leaves the editor.
   */
  stop(): boolean {
    const stopped = this.#trial.stop()
    if (this.#run === undefined || this.#run.controller.signal.aborted) return stopped
    this.book.markStopped(this.book.needed())
    this.#run.controller.abort()
    return true
  }

  get running(): boolean {
    return this.#run !== undefined || this.#trial.running
  }

  /** How far the run has come, and the cell that computes now. */
  get progress(): { readonly done: number; readonly of: number; readonly cell: CellId | undefined } {
    if (this.#run === undefined && this.#trial.running) return { ...this.#trial.progress, cell: undefined }
    const [cell] = this.book.computing
    return { done: this.#come.size, of: this.#wanted.size, cell }
  }

  /** The server did not take them: they are offered again with the next check. */
  offerAgain(results: readonly CellResult[]): void {
    for (const result of results) if (!this.#toShare.has(result.cell)) this.#toShare.set(result.cell, result)
  }

  /** Results that someone else computed. */
  receive(results: readonly CellResult[]): void {
    this.book.accept(results)
    this.#events.onChange()
  }

  standing(cell: CellId): Standing {
    const standing = this.#trial.standing(cell, this.book.standing(cell))
    return standing.result === undefined
      ? standing
      : { ...standing, result: withDimensions(standing.result, this.#dimensions) }
  }

  /** Syntax and order findings from the last reading, types and units from the last check. */
  findings(cell: CellId): readonly Finding[] {
    return this.#findings.get(cell) ?? []
  }

  /** How the names of a cell are worked out, from the last reading; absent before it and for a cell that cannot be read. */
  formulas(cell: CellId): readonly Formula[] | undefined {
    return this.#formulas.get(cell)
  }

  /** What depends on what, from the last reading. */
  get graph(): Graph | undefined {
    return this.#reading?.graph
  }

  /** What was read last; absent before the first reading. */
  get reading(): Reading | undefined {
    return this.#reading
  }

  /** Dimensions of all names, from the last check. */
  get names(): readonly NameDimension[] {
    return this.#names
  }

  async #bringUpToDate(all: boolean): Promise<void> {
    const turn = ++this.#turn
    try {
      const reading = await this.#parts.read(this.#cells)
      if (turn !== this.#turn) return
      const { graph, program } = reading
      this.#reading = reading
      void this.#readFormulas(graph, turn)
      this.#findings = findingsByCell(graph, this.#report)
      this.book.setProgram(program)
      this.#trial.take(reading)
      this.#events.onChange()
      void this.#check(graph)
      await this.#endOvertakenRun()
      if (turn !== this.#turn) return
      const wanted = all ? program.cells.map((cell) => cell.id) : this.book.needed()
      if (wanted.length > 0) await this.#evaluate(reading, wanted)
    } catch (error) {
      this.#events.onTrouble(`Computing did not begin: ${error instanceof Error ? error.message : String(error)}`)
    }
  }

  /** Those of a long sheet are read by turns, so that the page answers meanwhile; of a short one at once. */
  async #readFormulas({ cells, shadowed }: Graph, turn: number): Promise<void> {
    const formulas = new Map<CellId, readonly Formula[]>()
    let rested = false
    for (const cell of cells) {
      const rest = this.#parts.pause?.()
      if (rest !== undefined) {
        rested = true
        await rest
        if (turn !== this.#turn) return
      }
      for (const [id, read] of formulasOf({ cells: [cell], shadowed })) formulas.set(id, read)
    }
    this.#formulas = formulas
    if (rested) this.#events.onChange()
  }

  async #endOvertakenRun(): Promise<void> {
    const run = this.#run
    if (run === undefined) return
    const cancel = this.#parts.after(grace, () => {
      for (const cell of this.book.computing) this.#slow.add(cell)
      run.controller.abort()
    })
    await run.done
    cancel()
  }

  async #evaluate(reading: Reading, wanted: readonly CellId[]): Promise<void> {
    const controller = new AbortController()
    let end = () => {}
    const run: Run = { controller, done: new Promise((resolve) => (end = resolve)) }
    this.#run = run
    this.#wanted = new Set(wanted)
    this.#come = new Set()
    const cancelNotice = this.#parts.after(noticeable, () => {
      this.#showLong(true, this.#longTrial)
      this.#events.onChange()
    })
    try {
      for (const phase of phasesOf(reading.program, wanted, this.#slow)) {
        if (controller.signal.aborted) break
        await this.#evaluatePhase(reading, phase, controller)
      }
    } finally {
      cancelNotice()
      this.#run = undefined
      this.book.endRun()
      end()
      this.#showLong(false, this.#longTrial)
      this.#events.onChange()
    }
  }

  async #evaluatePhase(reading: Reading, phase: readonly CellId[], controller: AbortController): Promise<void> {
    const take = (results: readonly CellResult[]) => {
      this.book.accept(results)
      for (const { cell } of results) if (this.#wanted.has(cell)) this.#come.add(cell)
      this.#events.onChange()
    }
    const { results, ran } = await this.#parts.evaluate(reading, {}, phase, {
      signal: controller.signal,
      onBegin: (cell) => {
        this.book.begin([cell])
        if (this.#long) this.#events.onChange()
      },
      onResult: (result) => take([result]),
    })
    take(results)
    const here = new Set([...ran, ...phase])
    for (const result of results)
      if (here.has(result.cell) && mayBeShared(result)) this.#toShare.set(result.cell, result)
    this.#share()
  }

  /** The reader is told of both as one. */
  #showLong(long: boolean, longTrial: boolean): void {
    const before = this.#long || this.#longTrial
    this.#long = long
    this.#longTrial = longTrial
    if ((long || longTrial) !== before) this.#events.onLongRun(!before)
  }

  async #check(graph: Graph): Promise<void> {
    const report = await this.#parts.check(graph)
    if (report === null) return
    this.#report = report
    this.#findings = findingsByCell(graph, report)
    if (JSON.stringify(this.#names) !== JSON.stringify(report.names)) {
      this.#names = report.names
      this.#dimensions = dimensionTable(report.names)
    }
    this.#events.onChange()
    this.#checked = graph
    this.#share()
  }

  /**
   * Results wait for the check of the same text, so that what others see has its units. One whose cell was removed or rewritten
   * meanwhile waits for that text to come back by an undo, which computes nothing.
   */
  #share(): void {
    if (this.#checked !== this.graph) return
    const due = [...this.#toShare.values()].filter(
      (result) => this.book.fingerprintOf(result.cell) === result.fingerprint,
    )
    if (due.length === 0) return
    for (const { cell } of due) this.#toShare.delete(cell)
    this.#parts.share(due.map((result) => withDimensions(result, this.#dimensions)))
  }
}

function findingsByCell(graph: Graph, report: CheckReport): ReadonlyMap<CellId, readonly Finding[]> {
  const byCell = new Map<CellId, Finding[]>()
  for (const finding of allFindings(graph, report))
    byCell.set(finding.cell, [...(byCell.get(finding.cell) ?? []), finding])
  return byCell
}
