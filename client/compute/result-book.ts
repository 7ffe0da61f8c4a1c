/**
 * What is known of every sizing cell: results by fingerprint, the last good values by cell, and from both the state in words.
 * A result belongs to a text, not to a moment: an edit that is taken back finds its result still here.
 */

import type { Program } from '../../kernel/cells/program/index.js'
import type { CellId, CellResult, Fingerprint } from '../../shared/contracts/index.js'
import type { CellState, TrialMarks } from '../../shared/rendering/index.js'

export interface Standing {
  readonly state: CellState
  readonly result?: CellResult
  /** The result is one of a trial; what of it differs from the document's. */
  readonly trial?: TrialMarks
}

/** Failures that lie in this browser's circumstances; they are not shared with others. */
const ownCircumstances = new Set(['STOPPED', 'TIME_LIMIT', 'MEMORY_LIMIT', 'EVALUATOR_LOST'])

/** True when another reader may be shown this result as theirs. */
export function mayBeShared(result: CellResult): boolean {
  return result.outcome === 'computed' || (result.error !== undefined && !ownCircumstances.has(result.error.code))
}

/** Results remembered at most; beyond it the oldest that no cell shows are let go. */
const mostRemembered = 2000

export class ResultBook {
  readonly #results = new Map<Fingerprint, CellResult>()
  readonly #lastGood = new Map<CellId, CellResult>()
  readonly #computing = new Set<CellId>()
  readonly #stopped = new Set<Fingerprint>()
  #current: ReadonlyMap<CellId, Fingerprint> = new Map()
  /** Cells that cannot run because of what they are, by their current text. */
  #barred: ReadonlyMap<CellId, CellResult> = new Map()

  /**
   * Results stored with the notebook, shown before this browser has read the cells: `current` are those whose text the server
   * found unchanged, `older` those of earlier texts.
   */
  showStored(current: readonly CellResult[], older: readonly CellResult[]): void {
    for (const result of [...older, ...current]) {
      this.#results.set(result.fingerprint, result)
      this.#noteGood(result.cell, result)
    }
    this.#current = new Map(current.map((result) => [result.cell, result.fingerprint]))
  }

  /** The cells as they now read. */
  setProgram(program: Program): void {
    const current = new Map<CellId, Fingerprint>()
    const barred = new Map<CellId, CellResult>()
    for (const cell of program.cells) current.set(cell.id, cell.fingerprint)
    for (const cell of program.failed) {
      current.set(cell.id, cell.fingerprint)
      barred.set(cell.id, { ...emptyResult(cell.id, cell.fingerprint), outcome: 'failed', error: cell.error })
    }
    for (const cell of program.heldBack) {
      current.set(cell.id, cell.fingerprint)
      barred.set(cell.id, { ...emptyResult(cell.id, cell.fingerprint), outcome: 'held back', heldBackBy: cell.by })
    }
    this.#current = current
    this.#barred = barred
    for (const [cell, fingerprint] of current) this.#noteGood(cell, this.#results.get(fingerprint))
  }

  /** Takes results in, whoever computed them. STOPPED is no result: the cell stays out of date. */
  accept(results: readonly CellResult[]): void {
    for (const result of results) {
      if (result.error?.code === 'STOPPED') continue
      this.#results.delete(result.fingerprint)
      this.#results.set(result.fingerprint, result)
      if (this.#current.get(result.cell) !== result.fingerprint) continue
      this.#computing.delete(result.cell)
      this.#stopped.delete(result.fingerprint)
      this.#noteGood(result.cell, result)
    }
    this.#letGo()
  }

  /** The result of the cell's present text, if there is one. */
  currentResult(cell: CellId): CellResult | undefined {
    const fingerprint = this.#current.get(cell)
    return fingerprint === undefined ? undefined : (this.#barred.get(cell) ?? this.#results.get(fingerprint))
  }

  fingerprintOf(cell: CellId): Fingerprint | undefined {
    return this.#current.get(cell)
  }

  /** Cells whose present text has no result yet and was not stopped by the reader. */
  needed(): readonly CellId[] {
    return [...this.#current].flatMap(([cell, fingerprint]) =>
      this.currentResult(cell) === undefined && !this.#stopped.has(fingerprint) ? [cell] : [],
    )
  }

  begin(cells: Iterable<CellId>): void {
    for (const cell of cells) this.#computing.add(cell)
  }

  endRun(): void {
    this.#computing.clear()
  }

  get computing(): ReadonlySet<CellId> {
    return this.#computing
  }

  /** These texts are not computed again by themselves, until they change or everything is asked for. */
  markStopped(cells: Iterable<CellId>): void {
    for (const cell of cells) {
      const fingerprint = this.#current.get(cell)
      if (fingerprint !== undefined) this.#stopped.add(fingerprint)
    }
  }

  /** Before computing everything: failures and stops are forgotten, good results stay until replaced. */
  forgetFailures(): void {
    this.#stopped.clear()
    for (const [fingerprint, result] of this.#results)
      if (result.outcome !== 'computed') this.#results.delete(fingerprint)
  }

  /** State in words, with what the sheet shows beside it: the last good values stay while a cell computes or fails. */
  standing(cell: CellId): Standing {
    const good = this.#lastGood.get(cell)
    const kept = good === undefined ? {} : { result: good }
    if (this.#computing.has(cell)) return { state: 'computing', ...kept }
    const current = this.currentResult(cell)
    if (current?.outcome === 'computed') return { state: 'current', result: current }
    if (current !== undefined)
      return { state: current.outcome === 'failed' ? 'failed' : 'held back', result: onTopOf(current, good) }
    return good === undefined ? { state: 'not computed' } : { state: 'out of date', result: good }
  }

  #noteGood(cell: CellId, result: CellResult | undefined): void {
    if (result?.outcome === 'computed') this.#lastGood.set(cell, result)
  }

  #letGo(): void {
    if (this.#results.size <= mostRemembered) return
    const shown = new Set(this.#current.values())
    for (const fingerprint of this.#results.keys()) {
      if (this.#results.size <= mostRemembered) return
      if (!shown.has(fingerprint)) this.#results.delete(fingerprint)
    }
  }
}

/** A failure with the last good values under it. */
export function onTopOf(failure: CellResult, good: CellResult | undefined): CellResult {
  if (good === undefined || failure.values.length > 0) return failure
  return { ...failure, values: good.values, figures: good.figures, requirements: good.requirements }
}

function emptyResult(cell: CellId, fingerprint: Fingerprint) {
  return { cell, fingerprint, values: [], figures: [], advisories: [], assumptions: [], requirements: [], log: [] }
}
