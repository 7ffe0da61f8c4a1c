/**
 * One evaluation, through as many attempts as it takes. A cell that overstays its time or memory ends its isolate; it fails, and
 * the cells that do not depend on it go on in a fresh one. A stop ends everything: cells not finished fail with STOPPED.
 */
import { type CellError, type CellId, type CellResult, limits } from '../../../../shared/contracts/index.js'
import {
  type Evaluation,
  type EvaluationOptions,
  type Overrides,
  type Program,
  pipelineMessage,
  type RunnableCell,
  type Wanted,
} from '../../program/index.js'
import { type AttemptEnd, attempt } from './attempt.js'
import { refusedCode } from './code-guard.js'
import type { Isolates } from './isolates.js'
import { closure, neededCells } from './needed.js'
import { failedResult, settledResults, stoppedError } from './outcomes.js'
import type { Loss, Platform } from './platform.js'

export interface RunRequest {
  readonly program: Program
  readonly overrides: Overrides
  readonly wanted: Wanted
  readonly options: EvaluationOptions
}

export interface Run extends Evaluation {
  readonly stopped: boolean
}

/** Attempts that may end without any cell to blame before the rest is given up. */
const fruitlessAttempts = 2

export async function runProgram(platform: Platform, isolates: Isolates, request: RunRequest): Promise<Run> {
  const state = new RunState(request)
  let fruitless = 0
  while (state.unfinished.length > 0) {
    if (request.options.signal?.aborted === true) return state.stop()
    const end = await attemptRest(platform, isolates, state)
    if (end.how === 'complete') break
    isolates.discard()
    if (end.how === 'stopped') return state.stop()
    if (end.running !== undefined) state.block(end.running, errorOf(end, state.timeLimit))
    else if (state.unfinished.length > 0) {
      fruitless += 1
      if (fruitless >= fruitlessAttempts) state.giveUp(errorOf(end, state.timeLimit))
    }
  }
  return state.evaluation(false)
}

function attemptRest(platform: Platform, isolates: Isolates, state: RunState): Promise<AttemptEnd> {
  const { program, overrides, options } = state.request
  const cells = state.cellsToRun()
  return isolates.take(program.cells).then(
    (isolate) =>
      attempt(platform, isolate, {
        cells,
        blocked: [...state.blocked],
        known: state.known,
        overrides,
        timeLimit: state.timeLimit,
        signal: options.signal,
        onBegin: (cell) => state.begin(cell),
        onFinished: (result, ran) => state.finish(result, ran),
      }),
    (fault): AttemptEnd => ({
      how: 'lost',
      running: undefined,
      loss: { code: 'EVALUATOR_LOST', reason: fault instanceof Error ? fault.message : 'it cannot be opened' },
    }),
  )
}

function errorOf(end: Exclude<AttemptEnd, { how: 'complete' | 'stopped' }>, timeLimit: number): CellError {
  if (end.how === 'overtime')
    return { code: 'TIME_LIMIT', message: pipelineMessage('TIME_LIMIT', { milliseconds: timeLimit }) }
  return { code: end.loss.code, message: lossMessage(end.loss) }
}

function lossMessage(loss: Loss): string {
  return loss.code === 'MEMORY_LIMIT'
    ? pipelineMessage('MEMORY_LIMIT', { megabytes: loss.megabytes })
    : pipelineMessage('EVALUATOR_LOST', { reason: loss.reason })
}

/** What is finished, what is to blame, what is left. */
class RunState {
  readonly request: RunRequest
  readonly timeLimit: number
  readonly known: ReadonlySet<CellId>
  /** Cells that ended an attempt or may not run at all. */
  readonly blocked = new Set<CellId>()
  readonly #needed: readonly RunnableCell[]
  readonly #settled: readonly CellResult[]
  readonly #finished = new Map<CellId, CellResult>()
  readonly #ran = new Set<CellId>()

  constructor(request: RunRequest) {
    this.request = request
    this.timeLimit = request.options.timeLimit ?? limits.evaluationMilliseconds
    this.#needed = neededCells(request.program, request.wanted)
    this.#settled = settledResults(request.program, request.wanted)
    this.known = new Set(request.program.cells.map(({ id }) => id))
    for (const result of this.#settled) request.options.onResult?.(result)
    for (const cell of this.#needed) {
      const message = refusedCode(cell.code)
      if (message !== undefined) this.block(cell, { code: 'CODE_REFUSED', message })
    }
  }

  get unfinished(): readonly RunnableCell[] {
    return this.#needed.filter(({ id }) => !this.#finished.has(id))
  }

  /** The unfinished cells and what they read; finished ones among these run again in a fresh isolate, or are remembered in an old one. */
  cellsToRun(): readonly RunnableCell[] {
    const ids = new Set(this.unfinished.map(({ id }) => id))
    return closure(this.#needed, ids).filter(({ id }) => !this.blocked.has(id))
  }

  begin(cell: CellId): void {
    if (!this.#finished.has(cell)) this.request.options.onBegin?.(cell)
  }

  finish(result: CellResult, ran: boolean): void {
    if (ran) this.#ran.add(result.cell)
    if (this.#finished.has(result.cell)) return
    this.#finished.set(result.cell, result)
    this.request.options.onResult?.(result)
  }

  block(cell: RunnableCell, error: CellError): void {
    this.blocked.add(cell.id)
    this.finish(failedResult({ cell: cell.id, fingerprint: cell.fingerprint }, error), error.code !== 'CODE_REFUSED')
  }

  giveUp(error: CellError): void {
    for (const cell of this.unfinished)
      this.finish(failedResult({ cell: cell.id, fingerprint: cell.fingerprint }, error), false)
  }

  stop(): Run {
    this.giveUp(stoppedError())
    return this.evaluation(true)
  }

  evaluation(stopped: boolean): Run {
    const results = [...this.#settled]
    for (const { id } of this.#needed) {
      const result = this.#finished.get(id)
      if (result !== undefined) results.push(result)
    }
    const ran = this.#needed.map(({ id }) => id).filter((id) => this.#ran.has(id))
    return { results, ran, stopped }
  }
}
