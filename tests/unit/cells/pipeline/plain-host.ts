/**
 * A host for tests of the pipeline alone: it runs cells where it stands, without isolation, and reports a failure with the place
 * in generated code, as the contract of hosts says. Values are numbers only.
 */
import { runInNewContext } from 'node:vm'
import type {
  Evaluation,
  EvaluationHost,
  Overrides,
  Program,
  RunnableCell,
} from '../../../../kernel/cells/program/index.js'
import type { CellError, CellId, CellResult, SourcePlace } from '../../../../shared/contracts/index.js'

export interface PlainHost extends EvaluationHost {
  /** Programs that arrived. */
  readonly programs: Program[]
}

const empty = { values: [], figures: [], advisories: [], assumptions: [], requirements: [], log: [] }

export function plainHost(): PlainHost {
  const programs: Program[] = []
  const evaluate: EvaluationHost['evaluate'] = async (program, overrides, _wanted, options) => {
    programs.push(program)
    const known = new Map<CellId, Record<string, unknown>>()
    const failed = program.failed.map(
      ({ id, fingerprint, error }): CellResult => ({ cell: id, fingerprint, outcome: 'failed', ...empty, error }),
    )
    const ran = program.cells.map((cell) => {
      const result = runCell(cell, overrides, known)
      options?.onResult?.(result)
      return result
    })
    return { results: [...ran, ...failed], ran: program.cells.map(({ id }) => id) } satisfies Evaluation
  }
  return { programs, evaluate, evaluateBatch: async () => [], close: async () => undefined }
}

function runCell(cell: RunnableCell, overrides: Overrides, known: Map<CellId, Record<string, unknown>>): CellResult {
  const base = { cell: cell.id, fingerprint: cell.fingerprint, ...empty }
  const globals = { assumption: (name: string, value: number) => overrides[name] ?? value, u: { km: 1000 } }
  const reads = Object.fromEntries(cell.reads.map(({ name, from }) => [name, known.get(from)?.[name]]))
  try {
    const made = (runInNewContext(cell.code, globals, `cell:${cell.id}`) as (reads: object) => Record<string, unknown>)(
      reads,
    )
    known.set(cell.id, made)
    const numbers = Object.entries(made).filter((entry): entry is [string, number] => typeof entry[1] === 'number')
    const values = numbers.map(([name, si]) => ({ name, value: { kind: 'number' as const, si }, dimension: null }))
    return { ...base, outcome: 'computed', values }
  } catch (thrown) {
    return { ...base, outcome: 'failed', error: errorOf(thrown as Error) }
  }
}

function errorOf({ message, stack = '' }: Error): CellError {
  const places = [...stack.matchAll(/cell:([\w-]+):(\d+):(\d+)/g)].map(
    ([, cell, line, column]): SourcePlace => ({ cell: cell as CellId, line: Number(line), column: Number(column) }),
  )
  const [place, ...calledFrom] = places
  return { code: 'THROWN', message, ...(place === undefined ? {} : { place }), calledFrom }
}
