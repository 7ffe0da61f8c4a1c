/** Small results and programs for the tests of the client's bookkeeping. */
import type { Program, RunnableCell } from '../../../kernel/cells/program/index.js'
import { CellId, type CellResult, Fingerprint } from '../../../shared/contracts/index.js'

export const id = (text: string) => CellId.parse(text)

/** A fingerprint from a short word: its bytes, padded. */
export const print = (word: string) =>
  Fingerprint.parse(
    [...word]
      .map((letter) => letter.charCodeAt(0).toString(16))
      .join('')
      .padEnd(64, '0'),
  )

export function result(cell: string, version: string, value = 1): CellResult {
  return {
    cell: id(cell),
    fingerprint: print(version),
    outcome: 'computed',
    values: [{ name: cell, value: { kind: 'number', si: value }, dimension: null }],
    figures: [],
    advisories: [],
    assumptions: [],
    requirements: [],
    log: [],
  }
}

export function failure(cell: string, version: string, code = 'THROWN'): CellResult {
  return { ...result(cell, version), values: [], outcome: 'failed', error: { code, message: `${cell} went wrong.` } }
}

export function runnable(cell: string, version: string, reads: readonly string[] = []): RunnableCell {
  return {
    id: id(cell),
    fingerprint: print(version),
    code: '(function () {})',
    declares: [cell],
    reads: reads.map((name) => ({ name, from: id(name) })),
    assumptions: [],
  }
}

export function program(cells: readonly RunnableCell[], rest: Partial<Program> = {}): Program {
  return { kernelHash: 'kernel', cells, failed: [], heldBack: [], ...rest }
}
