/** The one call behind compute, trial values, `--set`, drivers, spread, trace and sweeps, and who answers it. */
import type { CellId, CellResult } from '../../../shared/contracts/index.js'
import type { Overrides, Program, Wanted } from './program.js'

/** The part of a platform's AbortSignal that a run needs, so that this layer names no platform. */
export interface StopSignal {
  readonly aborted: boolean
  addEventListener(type: 'abort', listener: () => void, options?: { once?: boolean }): void
  removeEventListener(type: 'abort', listener: () => void): void
}

export interface EvaluationOptions {
  /** Ends the run at once; cells not finished fail with the code STOPPED. */
  readonly signal?: StopSignal
  /** Called as each cell finishes, so that a long run shows its results one by one. */
  readonly onResult?: (result: CellResult) => void
  /** Called as each cell begins. */
  readonly onBegin?: (cell: CellId) => void
  /** [ms]; `limits.evaluationMilliseconds` when absent. */
  readonly timeLimit?: number
}

export interface Evaluation {
  /**
   * One per wanted cell and per cell upstream of these, in evaluation order. Dimensions are null: the checker fills them.
   * Places of an error (`place`, `calledFrom`) are lines and columns of `RunnableCell.code`, both counted from 1; the pipeline
   * maps them back to the cell's TypeScript.
   */
  readonly results: readonly CellResult[]
  /** Cells that really ran; the others were remembered from an earlier call with the same fingerprint and overrides. */
  readonly ran: readonly CellId[]
}

/**
 * Runs programs in isolation. Stateless to its callers: the same program and overrides give the same answer; that it remembers
 * finished cells by fingerprint only makes it quicker. Calls queue; a run that overstays is ended and the worker replaced.
 */
export interface EvaluationHost {
  evaluate(program: Program, overrides: Overrides, wanted: Wanted, options?: EvaluationOptions): Promise<Evaluation>
  /** One program under many overrides; stops early at `signal`, giving what it has. */
  evaluateBatch(
    program: Program,
    overrides: readonly Overrides[],
    wanted: Wanted,
    options?: EvaluationOptions,
  ): Promise<readonly Evaluation[]>
  close(): Promise<void>
}
