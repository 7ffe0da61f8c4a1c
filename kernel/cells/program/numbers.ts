/** The quick form of the one call: one program at many points, of which nothing but a few numbers is wanted. */
import type { CellId, NumbersOutcome } from '../../../shared/contracts/index.js'
import type { StopSignal } from './evaluation.js'
import type { Overrides, Program } from './program.js'

export interface WantedNumbers {
  /** Top-level names, names stated by `result(...)`, and margins of requirements (`marginName`), each with the cell that has it. */
  readonly names: readonly { readonly name: string; readonly cell: CellId }[]
  /** Cells of which every requirement is wanted. */
  readonly requirements: readonly CellId[]
}

export interface NumbersOptions {
  /** Ends the run within a moment; what was evaluated before is given. */
  readonly signal?: StopSignal
  /** Points evaluated so far. */
  readonly onProgress?: (done: number) => void
  /** For one point [ms]; `limits.evaluationMilliseconds` when absent. */
  readonly timeLimit?: number
}

/**
 * Evaluates in isolates of its own, apart from those of an `EvaluationHost`, so that a page stays live meanwhile. A cell that
 * neither a wanted name nor a wanted requirement needs does not run; figures, tables, advisories and the log are not collected.
 * A requirement is known by its name; the second of a name, in the order of evaluation, as `NAME (2)`.
 */
export interface NumbersHost {
  /** Outcomes in the order of the points; fewer than points when it was stopped. */
  evaluateNumbers(
    program: Program,
    points: readonly Overrides[],
    wanted: WantedNumbers,
    options?: NumbersOptions,
  ): Promise<readonly NumbersOutcome[]>
  close(): Promise<void>
}
