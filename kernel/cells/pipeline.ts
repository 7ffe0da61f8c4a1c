/**
 * Where a cell becomes a number:
 *
 *     cells -> analyse -> check -> compile -> order -> evaluate(program, overrides, wanted) -> results as data
 *
 * `analyse` finds what each cell declares and reads. `check` is TypeScript and dimensions; it is slow, complains without
 * stopping anybody, and nobody who computes waits for it. `compile` and `order` make a program. `evaluate` runs it in isolation.
 */
import type { CellResult, Finding } from '../../shared/contracts/index.js'
import { analyse } from './analyse/index.js'
import { compile } from './compile/index.js'
import { allFindings } from './findings.js'
import { order } from './order/index.js'
import { checkOverrides } from './overrides.js'
import type {
  Checker,
  CheckReport,
  Eraser,
  Evaluation,
  EvaluationHost,
  EvaluationOptions,
  Graph,
  Overrides,
  Pause,
  Program,
  SizingCell,
  Wanted,
} from './program/index.js'
import { resultInSource } from './result-places.js'

export interface PipelineParts {
  readonly erase: Eraser
  readonly host: EvaluationHost
  /** The kernel that the host holds: the hash results are keyed by, and the names that cells see. */
  readonly kernel: { readonly hash: string; readonly names: Iterable<string> }
  /** Loads the checker, at the first call of `check`. */
  readonly checker?: () => Promise<Checker>
  /** Lets others have the thread while many cells are read; nobody else needs it when absent. */
  readonly pause?: Pause
}

/** Cells as understood: what depends on what, and what can run. */
export interface Reading {
  readonly graph: Graph
  readonly program: Program
}

export interface Computation extends Evaluation {
  /** Syntax and order findings; a cell with an error among them is in `results` as failed. */
  readonly findings: readonly Finding[]
}

export interface Pipeline {
  read(cells: readonly SizingCell[]): Promise<Reading>
  /**
   * Runs what was read, with error places in the cells' own TypeScript.
   *
   * @throws PipelineTrouble ASSUMPTION_UNKNOWN or OVERRIDE_INVALID for overrides that do not fit the cells.
   */
  evaluate(reading: Reading, overrides: Overrides, wanted: Wanted, options?: EvaluationOptions): Promise<Evaluation>
  /** `read` and `evaluate` in one. */
  compute(
    cells: readonly SizingCell[],
    overrides: Overrides,
    wanted: Wanted,
    options?: EvaluationOptions,
  ): Promise<Computation>
  /** All findings in page order, and the dimension of every name; without a checker, syntax and order only. */
  check(cells: readonly SizingCell[]): Promise<CheckReport>
  /** Names that overrides may set, in page order. */
  assumptions(cells: readonly SizingCell[]): Promise<readonly string[]>
}

export function createPipeline({ erase, host, kernel, checker, pause }: PipelineParts): Pipeline {
  const kernelNames = new Set(kernel.names)
  let loading: Promise<Checker> | undefined

  async function read(cells: readonly SizingCell[]): Promise<Reading> {
    const graph = await analyse(cells, erase, kernelNames, pause)
    return { graph, program: order(graph, await compile(graph, pause), kernel.hash) }
  }

  async function evaluate(reading: Reading, overrides: Overrides, wanted: Wanted, options: EvaluationOptions = {}) {
    checkOverrides(overrides, reading.graph)
    const inSource = (result: CellResult) => resultInSource(result, reading)
    const { onResult } = options
    const evaluation = await host.evaluate(reading.program, overrides, wanted, {
      ...options,
      ...(onResult === undefined ? {} : { onResult: (result: CellResult) => onResult(inSource(result)) }),
    })
    return { ...evaluation, results: evaluation.results.map(inSource) }
  }

  return {
    read,
    evaluate,
    async compute(cells, overrides, wanted, options) {
      const reading = await read(cells)
      return { ...(await evaluate(reading, overrides, wanted, options)), findings: reading.graph.findings }
    },
    async check(cells) {
      const graph = await analyse(cells, erase, kernelNames)
      if (checker === undefined) return { findings: graph.findings, names: [] }
      loading ??= checker()
      const report = (await loading).check(graph)
      return { findings: allFindings(graph, report), names: report.names }
    },
    async assumptions(cells) {
      return (await analyse(cells, erase, kernelNames)).cells.flatMap((cell) => cell.assumptions)
    },
  }
}
