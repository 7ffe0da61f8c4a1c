/** A kernel of a few lines for tests of the server: a fingerprint is a hash of source and kernel, computing echoes the source. */
import { createHash } from 'node:crypto'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import type { ServerKernel } from '../../server/kernel.js'
import { type CellId, type CellResult, Fingerprint } from '../../shared/contracts/index.js'

export const labKernelHash = 'lab'

export function labFingerprint(source: string): Fingerprint {
  return Fingerprint.parse(createHash('sha256').update(`${labKernelHash}\n${source}`).digest('hex'))
}

export function labResult({ id, source }: SizingCell, si = 1): CellResult {
  return {
    cell: id,
    fingerprint: labFingerprint(source),
    outcome: 'computed',
    values: [{ name: 'x', value: { kind: 'number', si }, dimension: 'kg', unit: 'kg', stated: true }],
    figures: [],
    advisories: [],
    assumptions: [],
    requirements: [],
    log: [],
  }
}

export function labKernel(options: { readonly computes?: boolean } = {}): ServerKernel {
  return {
    hash: labKernelHash,
    erase: async (sources) => sources.map((code) => ({ ok: true, code, map: '{}' })),
    fingerprints: async (cells) =>
      new Map<CellId, Fingerprint>(cells.map(({ id, source }) => [id, labFingerprint(source)])),
    ...(options.computes === true ? { compute: async (cells) => cells.map((cell) => labResult(cell)) } : {}),
  }
}
