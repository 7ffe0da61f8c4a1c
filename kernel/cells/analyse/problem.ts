/** What is wrong with a cell as far as the cell alone can tell; a finding before it knows whose it is. */
import type { CellId, Finding } from '../../../shared/contracts/index.js'
import { type PipelineCode, type PipelineData, pipelineMessage } from '../program/index.js'
import type { Place } from './places.js'

export interface Problem {
  readonly code: PipelineCode
  readonly severity: 'error' | 'warning'
  readonly message: string
  readonly place: Place
  /** Characters marked from the place on, all on one line. */
  readonly length: number
}

const warnings: ReadonlySet<PipelineCode> = new Set(['KERNEL_NAME_OWNED', 'HIDDEN_STATE'])
const syntax: ReadonlySet<PipelineCode> = new Set(['SYNTAX', 'FORM_REFUSED'])

export function problem<C extends PipelineCode>(code: C, data: PipelineData<C>, place: Place, length = 1): Problem {
  const severity = warnings.has(code) ? 'warning' : 'error'
  return { code, severity, message: pipelineMessage(code, data), place, length }
}

export function toFinding(cell: CellId, { code, severity, message, place, length }: Problem): Finding {
  const end = { endLine: place.line, endColumn: place.column + length }
  return { cell, ...place, ...end, kind: syntax.has(code) ? 'syntax' : 'order', severity, message }
}
