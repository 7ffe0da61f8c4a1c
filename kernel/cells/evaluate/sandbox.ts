/**
 * The inside: what runs in the isolation, bundled with the kernel into one classic script (`bundle.mjs`) whose value is the
 * function `step`. Locks the realm down first; from then on the only thing that leaves is the text that `step` returns.
 */
import type { CellId } from '../../../shared/contracts/index.js'
import { preloaded } from '../../library/preloaded.js'
import type { RunnableCell } from '../program/index.js'
import { Log } from './inside/console-log.js'
import { copyValue } from './inside/crossing.js'
import { lockDown } from './inside/lockdown.js'
import { type FinishedCell, Memory, memoryKeys } from './inside/memory.js'
import { numbersRun } from './inside/numbers-run.js'
import { type CompiledCell, runCell } from './inside/run-cell.js'
import type { MessageIn, RunMessage, Step } from './protocol.js'

/** The log of the cell that is running; lines written while none runs (a leftover of an asynchronous call) are dropped. */
let log: Log | undefined
const cellConsole = Object.freeze({ log: (...values: unknown[]) => log?.add(values) })

lockDown({ ...preloaded, console: cellConsole })

const memory = new Memory()
const compiledCells = new Map<string, CompiledCell>()
let program: readonly RunnableCell[] = []

/** Lines of one run, in the order of `protocol.ts`. What is sent into it answers `compile`. */
function* run(message: RunMessage): Generator<string, string, unknown> {
  const { overrides } = message
  const keys = memoryKeys(program, overrides)
  const needed = new Set(message.needed)
  const failedAt = new Map<CellId, CellId>(message.blocked.map((id) => [id, id]))
  const finished = new Map<CellId, FinishedCell>()
  for (const cell of program) {
    if (!needed.has(cell.id) || failedAt.has(cell.id)) continue
    const root = cell.reads.map(({ from }) => failedAt.get(from)).find((id) => id !== undefined)
    if (root !== undefined) {
      failedAt.set(cell.id, root)
      yield `held ${cell.id} ${root}`
      continue
    }
    const key = keys.get(cell.id) ?? ''
    let done = memory.recall(key)
    if (done !== undefined) yield `kept ${done.body}`
    else {
      yield `begin ${cell.id}`
      const compiled = yield* compiledOf(cell)
      log = new Log()
      done = runCell(cell, compiled, readsOf(cell, finished), overrides, log)
      log = undefined
      memory.remember(key, done)
      yield `result ${done.body}`
    }
    finished.set(cell.id, done)
    if (done.failed) failedAt.set(cell.id, cell.id)
  }
  return 'end'
}

/** The names a cell reads from others, as a frozen record; typed arrays are its own copies. */
function readsOf(
  cell: RunnableCell,
  finished: ReadonlyMap<CellId, Pick<FinishedCell, 'exports'>>,
): Readonly<Record<string, unknown>> {
  const reads: Record<string, unknown> = {}
  for (const { name, from } of cell.reads) {
    const crossing = finished.get(from)?.exports.get(name)
    const value = crossing?.copied === true ? copyValue(crossing.value) : crossing?.value
    Object.defineProperty(reads, name, { value, enumerable: true })
  }
  return Object.freeze(reads)
}

function* compiledOf({ code }: RunnableCell): Generator<string, CompiledCell, unknown> {
  const known = compiledCells.get(code)
  if (known !== undefined) return known
  const compiled = (yield `compile ${code}`) as CompiledCell
  if (compiledCells.size > 2000) compiledCells.clear()
  compiledCells.set(code, compiled)
  return compiled
}

let running: Generator<string, string, unknown> | undefined

export const step: Step = (message, compiled) => {
  try {
    if (message !== undefined) {
      const read = JSON.parse(message) as MessageIn
      if (read.type === 'program') {
        program = read.cells
        return 'loaded'
      }
      running = read.type === 'numbers' ? numbersRun(read, { program, compiledOf, readsOf }) : run(read)
    }
    const line = running?.next(compiled).value
    return typeof line === 'string' ? line : 'end'
  } catch {
    return 'fault'
  }
}
