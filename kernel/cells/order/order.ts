/** From a graph and its runnable texts to a program: every cell after what it reads, and those that cannot run set apart. */
import type { CellError, CellId, Fingerprint } from '../../../shared/contracts/index.js'
import {
  type AnalysedCell,
  components,
  type FailedCell,
  type Graph,
  type HeldBackCell,
  type Program,
  pipelineMessage,
  type RunnableCell,
} from '../program/index.js'
import { fingerprints } from './fingerprint.js'

/**
 * Orders what can run, upstream first and otherwise as on the page. A cell with an error fails before anything runs; what reads
 * it, directly or not, is held back by it.
 */
export function order(graph: Graph, compiled: ReadonlyMap<CellId, string>, kernelHash: string): Program {
  const prints = fingerprints(graph, kernelHash)
  const errors = allErrors(graph, compiled)
  const stopped = new Map<CellId, CellId>()
  const cells: RunnableCell[] = []
  const failed: FailedCell[] = []
  const heldBack: HeldBackCell[] = []
  for (const { cell, group } of inSequence(graph)) {
    const fingerprint = prints.get(cell.id)
    const code = compiled.get(cell.id)
    const error = errors.get(cell.id)
    if (fingerprint === undefined) continue
    const by = error === undefined ? stopper(cell, group, graph, errors, stopped) : cell.id
    if (by !== undefined) stopped.set(cell.id, by)
    if (error !== undefined) failed.push({ id: cell.id, fingerprint, error })
    else if (by !== undefined) heldBack.push({ id: cell.id, fingerprint, by })
    else if (code !== undefined) cells.push(runnable(cell, code, fingerprint, graph))
  }
  return { kernelHash, cells, failed, heldBack }
}

interface Step {
  readonly cell: AnalysedCell
  /** The cells it goes round in a circle with, itself included. */
  readonly group: readonly CellId[]
}

function inSequence(graph: Graph): Step[] {
  const byId = new Map(graph.cells.map((cell) => [cell.id, cell]))
  const groups = components([...byId.keys()], (id) => graph.upstream.get(id) ?? [])
  return groups.flatMap((group) => group.flatMap((id) => byId.get(id) ?? []).map((cell) => ({ cell, group })))
}

/** The failed cell that holds another back: one above it, or, through a name with two owners, one it goes round with. */
function stopper(
  cell: AnalysedCell,
  group: readonly CellId[],
  graph: Graph,
  errors: ReadonlyMap<CellId, CellError>,
  stopped: ReadonlyMap<CellId, CellId>,
): CellId | undefined {
  for (const above of graph.upstream.get(cell.id) ?? []) {
    const by = stopped.get(above)
    if (by !== undefined) return by
  }
  return group.find((other) => errors.has(other))
}

function allErrors(graph: Graph, compiled: ReadonlyMap<CellId, string>): ReadonlyMap<CellId, CellError> {
  const errors = new Map(graph.failed)
  for (const { id } of graph.cells) if (!compiled.has(id) && !errors.has(id)) errors.set(id, notEnclosed(id))
  return errors
}

function runnable(cell: AnalysedCell, code: string, fingerprint: Fingerprint, graph: Graph): RunnableCell {
  return {
    id: cell.id,
    fingerprint,
    code,
    declares: cell.declares.map((declaration) => declaration.name),
    reads: cell.reads.flatMap((name) => {
      const from = graph.owner.get(name)
      return from === undefined ? [] : [{ name, from }]
    }),
    assumptions: cell.assumptions,
  }
}

/** The compiler could not enclose the cell in a function, so it must not run whatever the reason. */
function notEnclosed(cell: CellId): CellError {
  const message = pipelineMessage('SYNTAX', { reason: 'The cell cannot be made into one function, so it is not run.' })
  return { code: 'SYNTAX', message, place: { cell, line: 1, column: 1 } }
}
