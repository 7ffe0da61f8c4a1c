/**
 * Lines of the sandbox, judged before anything in them is believed: kind, whose turn it is, length, JSON, schema. The cell's id
 * and fingerprint are the outside's own.
 */
import { type CellId, CellResult, Figure, limits } from '../../../../shared/contracts/index.js'
import { pipelineMessage, type RunnableCell } from '../../program/index.js'
import { failedResult, heldBackResult } from './outcomes.js'

/** No honest line is longer: results are bounded inside, in characters; what exceeds this is not even parsed. */
export const longestLine = limits.resultBytes + 1024

export type Reply =
  | { readonly kind: 'begin' }
  | { readonly kind: 'finished'; readonly ran: boolean; readonly result: CellResult }
  | { readonly kind: 'end' }
  | { readonly kind: 'breach'; readonly reason: string }

/** Reads a line while `cell` is the one whose turn it is (undefined when all are done). */
export function readReply(line: string, cell: RunnableCell | undefined, known: ReadonlySet<CellId>): Reply {
  if (line === 'end') return cell === undefined ? { kind: 'end' } : breach('it ended before every cell was done')
  if (line === 'fault') return breach('it reported a fault of its own')
  if (cell === undefined) return breach('it went on after the last cell')
  if (line.length > longestLine) return breach('it sent more than it may')
  const space = line.indexOf(' ')
  const kind = line.slice(0, space)
  const rest = line.slice(space + 1)
  if (kind === 'begin') return rest === cell.id ? { kind: 'begin' } : breach('it began another cell')
  if (kind === 'held') return readHeld(rest, cell, known)
  if (kind !== 'result' && kind !== 'kept') return breach('it sent something unknown')
  return { kind: 'finished', ran: kind === 'result', result: readBody(rest, cell) }
}

function breach(reason: string): Reply {
  return { kind: 'breach', reason }
}

function readHeld(rest: string, cell: RunnableCell, known: ReadonlySet<CellId>): Reply {
  const [id, by] = rest.split(' ')
  if (id !== cell.id || !known.has(by as CellId)) return breach('it held back another cell')
  const identity = { cell: cell.id, fingerprint: cell.fingerprint }
  return { kind: 'finished', ran: false, result: heldBackResult(identity, by as CellId) }
}

function readBody(text: string, cell: RunnableCell): CellResult {
  const identity = { cell: cell.id, fingerprint: cell.fingerprint }
  try {
    const read = CellResult.safeParse({ ...JSON.parse(text), ...identity })
    if (read.success) return read.data
    const { path, message } = read.error.issues[0] ?? { path: [], message: '' }
    if (path[0] === 'values' && path.length === 1) return failedResult(identity, tooManyValues(JSON.parse(text).values))
    if (path[0] === 'figures') return failedResult(identity, figureError(JSON.parse(text).figures))
    const problem = `${path.join('.')}: ${message}`
    return failedResult(identity, { code: 'OUTPUT_INVALID', message: pipelineMessage('OUTPUT_INVALID', { problem }) })
  } catch {
    const problem = 'it cannot be read'
    return failedResult(identity, { code: 'OUTPUT_INVALID', message: pipelineMessage('OUTPUT_INVALID', { problem }) })
  }
}

/** Only a list can be wrong as a whole, by its length; that of what a cell declares is the one that people write too long. */
function tooManyValues(values: unknown): { code: string; message: string } {
  const problem = Array.isArray(values)
    ? `it has ${values.length} named values; at most ${limits.cellValues} are accepted. Put them into a list or a table, or into several cells`
    : 'its values are no list'
  return { code: 'OUTPUT_INVALID', message: pipelineMessage('OUTPUT_INVALID', { problem }) }
}

/** Names the first figure that cannot be drawn and what is wrong with it. */
function figureError(figures: readonly unknown[]): { code: string; message: string } {
  for (const [index, figure] of figures.entries()) {
    const read = Figure.safeParse(figure)
    if (read.success) continue
    const { path, message } = read.error.issues[0] ?? { path: [], message: '' }
    const problem = `${path.join('.')}: ${message}`
    return { code: 'FIGURE_INVALID', message: pipelineMessage('FIGURE_INVALID', { number: index + 1, problem }) }
  }
  return { code: 'OUTPUT_INVALID', message: pipelineMessage('OUTPUT_INVALID', { problem: 'too many figures' }) }
}
