/** What a cell threw, as data: code, sentence, and the places in generated code that the stack names. */
import type { CellError, CellId, SourcePlace } from '../../../../shared/contracts/index.js'
import { pipelineMessage } from '../../program/trouble.js'
import { bounds } from '../protocol.js'
import { describeForLog } from './console-log.js'
import { CrossingError } from './crossing.js'
import { cut, encodeNumber } from './encode.js'

type Details = NonNullable<CellError['details']>

/** Turns anything thrown by a cell into a `CellError`. Reads the thrown value with care: every property may be a trap. */
export function describeFailure(thrown: unknown): CellError {
  try {
    return describeThrown(thrown)
  } catch {
    return { code: 'THROWN', message: 'The cell threw something whose description fails by itself.' }
  }
}

function describeThrown(thrown: unknown): CellError {
  if (!(thrown instanceof Error))
    return {
      code: 'THROWN',
      message: cut(`The cell threw ${describeForLog([thrown]).slice(1, -1)}, which is not an Error.`, bounds.message),
    }
  if (thrown instanceof CrossingError)
    return { code: thrown.code, message: cut(String(thrown.message), bounds.message) }
  const places = placesIn(thrown.stack)
  const error: CellError = { ...codeAndMessage(thrown), ...placesOf(places) }
  const details = detailsOf(thrown)
  return details === undefined ? error : { ...error, details }
}

function codeAndMessage(thrown: Error): { code: string; message: string } {
  const message = cut(String(thrown.message), bounds.message)
  if (thrown instanceof RangeError && /call stack/i.test(message))
    return { code: 'STACK_OVERFLOW', message: pipelineMessage('STACK_OVERFLOW', undefined) }
  if (thrown instanceof RangeError && /buffer allocation/i.test(message))
    return { code: 'MEMORY_LIMIT', message: `The cell asked for more memory than there is (${message}).` }
  const { code } = thrown as { code?: unknown }
  if (typeof code === 'string' && /^[A-Z][A-Z_]{1,59}$/.test(code)) return { code, message }
  const name = String(thrown.name)
  const told = name === 'Error' ? message : `${name}: ${message}`
  return { code: 'THROWN', message: cut(pipelineMessage('THROWN', { reason: told }), bounds.message) }
}

/** The innermost frame inside any cell, and behind it the frames at which another cell called. */
function placesOf(places: readonly SourcePlace[]): Pick<CellError, 'place' | 'calledFrom'> {
  const [place, ...rest] = places
  if (place === undefined) return {}
  const calledFrom: SourcePlace[] = []
  let current = place.cell
  for (const caller of rest) {
    if (caller.cell !== current) calledFrom.push(caller)
    current = caller.cell
  }
  return calledFrom.length === 0 ? { place } : { place, calledFrom: calledFrom.slice(0, 20) }
}

/** Frames named `cell:ID` by the `sourceURL` of compiled cells. A cell may forge its stack; it then misplaces its own error. */
function placesIn(stack: unknown): SourcePlace[] {
  if (typeof stack !== 'string') return []
  const places: SourcePlace[] = []
  for (const line of stack.slice(0, 20_000).split('\n')) {
    const match = /cell:([A-Za-z0-9_-]{1,64}):(\d{1,9}):(\d{1,9})\)?$/.exec(line)
    if (match !== null) places.push({ cell: match[1] as CellId, line: Number(match[2]), column: Number(match[3]) })
  }
  return places
}

/** Data fields of a typed error: plain values only, at most twenty. */
function detailsOf(thrown: Error): Details | undefined {
  const { details } = thrown as { details?: unknown }
  if (typeof details !== 'object' || details === null) return undefined
  const kept: Details = {}
  for (const [key, value] of Object.entries(details).slice(0, 20)) {
    const name = cut(key, 60)
    if (typeof value === 'number') kept[name] = encodeNumber(value)
    else if (typeof value === 'string') kept[name] = cut(value, bounds.nestedText)
    else if (typeof value === 'boolean' || value === null) kept[name] = value
  }
  return kept
}
