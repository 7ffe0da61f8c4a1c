/** Runs one compiled cell and turns what it gave into a reply and into values for other cells. */
import type { CellError, CellResult, Figure, NamedValue } from '../../../../shared/contracts/index.js'
import { limits } from '../../../../shared/contracts/limits.js'
import { setRecorder } from '../../../library/recorder.js'
import type { Overrides, RunnableCell } from '../../program/index.js'
import { pipelineMessage } from '../../program/trouble.js'
import type { Log } from './console-log.js'
import { type Crossing, crossOver } from './crossing.js'
import { encodeNumber, encodeValue } from './encode.js'
import { describeFailure } from './failure.js'
import type { FinishedCell } from './memory.js'
import { type Presentation, Recording } from './recording.js'

export type CompiledCell = (reads: Readonly<Record<string, unknown>>) => Record<string, unknown>

/** The part of a `CellResult` that the inside speaks about; the outside adds cell and fingerprint. */
export type ReplyBody = Omit<CellResult, 'cell' | 'fingerprint' | 'heldBackBy'>

/** Never throws, whatever the cell does. */
export function runCell(
  cell: RunnableCell,
  compiled: CompiledCell,
  reads: Readonly<Record<string, unknown>>,
  overrides: Overrides,
  log: Log,
): FinishedCell {
  const recording = new Recording(overrides, cell.assumptions)
  const exports = new Map<string, Crossing>()
  let outcome: Pick<ReplyBody, 'outcome' | 'values' | 'figures'> & { error?: CellError }
  setRecorder(recording)
  try {
    const declared = compiled(reads)
    for (const name of cell.declares) exports.set(name, crossOver(name, declared[name]))
    outcome = { outcome: 'computed', ...shownValues(exports, recording.presentations) }
  } catch (thrown) {
    exports.clear()
    outcome = { outcome: 'failed', values: [], figures: [], error: describeFailure(thrown) }
  } finally {
    setRecorder(undefined)
  }
  const { body, failed } = encodeBody({ ...outcome, ...recording.collected(), log: log.lines })
  let weight = body.length / 8
  for (const crossing of exports.values()) weight += crossing.weight
  return { body, failed, exports: failed ? new Map() : exports, weight }
}

function shownValues(
  exports: ReadonlyMap<string, Crossing>,
  presentations: ReadonlyMap<string, Presentation>,
): { values: NamedValue[]; figures: Figure[] } {
  const values: NamedValue[] = []
  const figures: Figure[] = []
  for (const [name, crossing] of exports)
    values.push({ name, value: encodeValue(name, crossing.value, figures), ...presented(presentations.get(name)) })
  // Results and tables stated under a name that is no top-level name of the cell are shown as well.
  for (const [name, presentation] of presentations)
    if (presentation.stated && !exports.has(name))
      values.push({
        name,
        value:
          typeof presentation.value === 'number'
            ? { kind: 'number', si: encodeNumber(presentation.value) }
            : encodeValue(name, presentation.value, figures),
        ...presented(presentation),
      })
  return { values, figures }
}

function presented(presentation: Presentation | undefined): Omit<NamedValue, 'name' | 'value'> {
  if (presentation === undefined) return { dimension: null }
  const { value: _value, stated, ...fields } = presentation
  return stated ? { dimension: null, ...fields, stated } : { dimension: null, ...fields }
}

/** JSON of the reply; a failure in its place when it is larger than results may be. */
function encodeBody(reply: ReplyBody): { body: string; failed: boolean } {
  const body = JSON.stringify(reply)
  if (body.length <= limits.resultBytes) return { body, failed: reply.outcome === 'failed' }
  const message = pipelineMessage('OUTPUT_TOO_LARGE', { bytes: body.length, limit: limits.resultBytes })
  const error: CellError = reply.error ?? { code: 'OUTPUT_TOO_LARGE', message }
  const empty = { values: [], figures: [], advisories: [], assumptions: [], requirements: [], log: [] }
  return { body: JSON.stringify({ outcome: 'failed', ...empty, error }), failed: true }
}
