/** Results of cells that did not run to their end. */
import type { CellError, CellId, CellResult } from '../../../../shared/contracts/index.js'
import { type Program, pipelineMessage, type Wanted } from '../../program/index.js'

type Identity = Pick<CellResult, 'cell' | 'fingerprint'>

const empty = { values: [], figures: [], advisories: [], assumptions: [], requirements: [], log: [] }

export function failedResult(identity: Identity, error: CellError): CellResult {
  const { cell, fingerprint } = identity
  return { cell, fingerprint, outcome: 'failed', ...empty, error }
}

export function heldBackResult(identity: Identity, heldBackBy: CellId): CellResult {
  const { cell, fingerprint } = identity
  return { cell, fingerprint, outcome: 'held back', ...empty, heldBackBy }
}

export function stoppedError(): CellError {
  return { code: 'STOPPED', message: pipelineMessage('STOPPED', undefined) }
}

/** Cells that cannot run because of what they are, and those they hold back: known before anything runs. */
export function settledResults(program: Program, wanted: Wanted): CellResult[] {
  const asked = wanted === 'all' ? undefined : new Set(wanted)
  const held = program.heldBack.filter(({ id }) => asked === undefined || asked.has(id))
  const failing = new Set(held.map(({ by }) => by))
  return [
    ...program.failed
      .filter(({ id }) => asked === undefined || asked.has(id) || failing.has(id))
      .map(({ id, fingerprint, error }) => failedResult({ cell: id, fingerprint }, error)),
    ...held.map(({ id, fingerprint, by }) => heldBackResult({ cell: id, fingerprint }, by)),
  ]
}
