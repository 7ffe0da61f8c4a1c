/** Programs written by hand, past analysis and checking: what a host must cope with is any text at all. */
import { createHash } from 'node:crypto'
import type { Program, RunnableCell } from '../../kernel/cells/program/index.js'
import type { CellId, Fingerprint } from '../../shared/contracts/index.js'

export interface HandWrittenCell {
  readonly id: string
  /** Statements of the cell. */
  readonly body: string
  readonly declares?: readonly string[]
  /** Names read from other cells: name to owner. */
  readonly reads?: Readonly<Record<string, string>>
  readonly assumptions?: readonly string[]
  /** The whole text in place of the usual one. */
  readonly code?: string
}

export function cellId(id: string): CellId {
  return id as CellId
}

export function fingerprintOf(text: string): Fingerprint {
  return createHash('sha256').update(text).digest('hex') as Fingerprint
}

/** A runnable cell of the form the compiler gives: one line of opening, so that line 1 of `body` is line 2. */
export function handWritten(cell: HandWrittenCell): RunnableCell {
  const { id, body, declares = [], reads = {}, assumptions = [] } = cell
  const names = Object.keys(reads)
  const receive = names.length === 0 ? '' : ` const { ${names.join(', ')} } = reads;`
  const code =
    cell.code ??
    `(function (reads) { "use strict";${receive}\n${body}\nreturn { ${declares.join(', ')} };\n})\n//# sourceURL=cell:${id}\n`
  return {
    id: cellId(id),
    fingerprint: fingerprintOf(`${id} ${code}`),
    code,
    declares,
    reads: names.map((name) => ({ name, from: cellId(reads[name] as string) })),
    assumptions,
  }
}

export function programOf(kernelHash: string, cells: readonly HandWrittenCell[]): Program {
  return { kernelHash, cells: cells.map(handWritten), failed: [], heldBack: [] }
}
