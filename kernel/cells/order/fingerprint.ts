/**
 * Fingerprints: what a cell's result depends on, as one hash. Equal fingerprints mean equal values, so results are kept and
 * shared by them. Ids and the order on the page do not enter: moving a cell changes nothing that it computes.
 */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { CellId, Fingerprint } from '../../../shared/contracts/index.js'
import { type AnalysedCell, components, type Graph } from '../program/index.js'

/** Raised when the way from a cell to its result changes without a change of the kernel. */
const version = 'hoverfolio cell 1'

/**
 * SHA-256 over the version, the kernel's hash, the cell's source, and for each name it reads from other cells the name with the
 * fingerprint of the cell that owns it. A cell that cannot run has its error in the hash too, since that is its result.
 * Cells in a circle have each other's sources in place of fingerprints.
 */
export function fingerprints(graph: Graph, kernelHash: string): ReadonlyMap<CellId, Fingerprint> {
  const cells = new Map(graph.cells.map((cell) => [cell.id, cell]))
  const known = new Map<CellId, Fingerprint>()
  const groups = components([...cells.keys()], (id) => graph.upstream.get(id) ?? [])
  for (const group of groups) {
    const members = group.flatMap((id) => cells.get(id) ?? [])
    const circle = group.length === 1 ? [] : members.map((cell) => cell.source).sort()
    const hashed = members.map((cell) => [cell.id, hashCell(cell, graph, kernelHash, known, circle)] as const)
    for (const [id, fingerprint] of hashed) known.set(id, fingerprint)
  }
  return known
}

function hashCell(
  cell: AnalysedCell,
  graph: Graph,
  kernelHash: string,
  known: ReadonlyMap<CellId, Fingerprint>,
  circle: readonly string[],
): Fingerprint {
  const declarers = (graph.upstream.get(cell.id) ?? []).flatMap((id) => {
    const fingerprint = known.get(id)
    return fingerprint === undefined ? [] : [{ id, fingerprint }]
  })
  const upstream = cell.reads.flatMap((name) => {
    const owner = graph.owner.get(name)
    return declarers.filter(({ id }) => id === owner).map(({ fingerprint }) => [name, fingerprint])
  })
  const error = graph.failed.get(cell.id)
  const failure = error === undefined ? [] : [error.code, error.message]
  // A name with two owners has no one fingerprint; the cells that declare it count as a set.
  const unowned = cell.reads.every((name) => graph.owner.has(name))
    ? []
    : declarers.map((one) => one.fingerprint).sort()
  const text = JSON.stringify([version, kernelHash, cell.source, upstream.sort(byName), unowned, failure, circle])
  return bytesToHex(sha256(utf8ToBytes(text))) as Fingerprint
}

function byName(a: readonly (string | undefined)[], b: readonly (string | undefined)[]): number {
  return (a[0] ?? '') < (b[0] ?? '') ? -1 : 1
}
