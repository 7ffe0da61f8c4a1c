/** A run at many points: the cells that are needed, each remembered by the values that reach it; one line per point. */

import { requirementOf } from '../../../../shared/contracts/evidence.js'
import type { CellId, NumbersBody, ResultNumber } from '../../../../shared/contracts/index.js'
import type { Overrides, RunnableCell } from '../../program/index.js'
import type { NumbersMessage } from '../protocol.js'
import { encodeNumber } from './encode.js'
import { Memory, memoryKeys } from './memory.js'
import type { CompiledCell } from './run-cell.js'
import { type FinishedNumbers, runForNumbers } from './run-numbers.js'

export interface Surroundings {
  readonly program: readonly RunnableCell[]
  /** Asks outside for a cell's function, unless it is known. */
  compiledOf(cell: RunnableCell): Generator<string, CompiledCell, unknown>
  readsOf(
    cell: RunnableCell,
    finished: ReadonlyMap<CellId, Pick<FinishedNumbers, 'exports'>>,
  ): Readonly<Record<string, unknown>>
}

const memory = new Memory<FinishedNumbers>()

/** Lines of `protocol.ts`. */
export function* numbersRun(
  { points, ...message }: NumbersMessage,
  around: Surroundings,
): Generator<string, string, unknown> {
  const needed = new Set(message.needed)
  const cells = around.program.filter(({ id }) => needed.has(id))
  for (const overrides of points) {
    const finished = yield* evaluatePoint(cells, overrides, around)
    yield `numbers ${JSON.stringify(bodyOf(message, cells, finished))}`
  }
  return 'end'
}

/** What finished, failures among it; a cell above which something failed is not there. */
function* evaluatePoint(
  cells: readonly RunnableCell[],
  overrides: Overrides,
  around: Surroundings,
): Generator<string, ReadonlyMap<CellId, FinishedNumbers>, unknown> {
  const keys = memoryKeys(cells, overrides)
  const finished = new Map<CellId, FinishedNumbers>()
  for (const cell of cells) {
    if (cell.reads.some(({ from }) => finished.get(from)?.failure !== undefined || !finished.has(from))) continue
    const key = keys.get(cell.id) ?? ''
    let done = memory.recall(key)
    if (done === undefined) {
      const compiled = yield* around.compiledOf(cell)
      done = runForNumbers(cell, compiled, around.readsOf(cell, finished), overrides)
      memory.remember(key, done)
    }
    finished.set(cell.id, done)
  }
  return finished
}

function bodyOf(
  { names, requirements }: Omit<NumbersMessage, 'points'>,
  cells: readonly RunnableCell[],
  finished: ReadonlyMap<CellId, FinishedNumbers>,
): NumbersBody {
  const failed = cells.find(({ id }) => finished.get(id)?.failure !== undefined)
  const failure = failed === undefined ? undefined : finished.get(failed.id)?.failure
  return {
    n: names.map(({ name, cell }) => numberIn(finished.get(cell), name)),
    r: requirements.flatMap((cell) => finished.get(cell)?.requirements ?? []),
    ...(failed === undefined || failure === undefined ? {} : { f: [failed.id, ...failure] }),
  }
}

function numberIn(cell: FinishedNumbers | undefined, name: string): ResultNumber | null {
  const crossing = cell?.exports.get(name)
  const value = crossing === undefined ? cell?.stated.get(name) : crossing.value
  if (typeof value === 'number') return encodeNumber(value)
  return value === undefined && cell !== undefined ? marginIn(cell, name) : null
}

/** Null also where two requirements of the cell have the name: there is no telling which is meant. */
function marginIn({ requirements }: FinishedNumbers, name: string): ResultNumber | null {
  const requirement = requirementOf(name)
  const [one, ...others] = requirements.filter(([each]) => each === requirement)
  return one === undefined || others.length > 0 ? null : one[2]
}
