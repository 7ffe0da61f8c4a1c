/** The part of a program that a few numbers need: cells by what is read of them, and of each cell the statements that count. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { CellId, Fingerprint } from '../../../../shared/contracts/index.js'
import { readStatements, type Statement } from '../../analyse/index.js'
import { writeRunnable } from '../../compile/index.js'
import type { Graph, Program, RunnableCell, WantedNumbers } from '../../program/index.js'
import { codeOf, neededStatements } from './slice-cell.js'

/** A program as it was read. */
export interface ReadProgram {
  readonly graph: Graph
  readonly program: Program
}

/** What of a cell counts. */
export interface CellPart {
  /** With everything else blanked out. */
  readonly cell: RunnableCell
  /** In the order of the text; empty where the cell had to be kept whole. */
  readonly statements: readonly Statement[]
}

/**
 * A program that gives the same numbers, as far as can be told from the text: whoever runs it compares the two first. Its assumptions
 * are those that can reach a wanted number.
 */
export function sliceProgram(read: ReadProgram, wanted: WantedNumbers): Program {
  return { ...read.program, cells: neededParts(read, wanted).map(({ cell }) => cell) }
}

/** The parts of cells that count, in evaluation order. */
export function neededParts({ graph, program }: ReadProgram, wanted: WantedNumbers): readonly CellPart[] {
  const needs = new Map<CellId, Set<string>>()
  const need = (cell: CellId, name: string) => needs.set(cell, (needs.get(cell) ?? new Set<string>()).add(name))
  for (const { name, cell } of wanted.names) need(cell, name)
  const code = new Map(graph.cells.map((cell) => [cell.id, cell.code]))
  const parts: CellPart[] = []
  // Readers come after what they read, so one pass from the end reaches everything.
  for (const cell of program.cells.toReversed()) {
    const requirements = wanted.requirements.includes(cell.id)
    const names = needs.get(cell.id)
    if (names === undefined && !requirements) continue
    const part = sliceCell(cell, code.get(cell.id), { names: names ?? new Set(), requirements })
    for (const { name, from } of part.cell.reads) need(from, name)
    parts.unshift(part)
  }
  return parts
}

function sliceCell(
  cell: RunnableCell,
  code: string | undefined,
  needs: Parameters<typeof neededStatements>[2],
): CellPart {
  if (code === undefined) return { cell, statements: [] }
  const statements = readStatements(code)
  const shared = new Set([...cell.declares, ...cell.reads.map(({ name }) => name)])
  const kept = neededStatements(statements, shared, needs)
  const declared = new Set(kept.flatMap(({ declares }) => declares))
  const used = new Set(kept.flatMap(({ reads, changes }) => [...reads, ...changes]))
  const declares = cell.declares.filter((name) => declared.has(name))
  const reads = cell.reads.filter(({ name }) => used.has(name))
  const text = writeRunnable({
    id: cell.id,
    code: codeOf(code, statements, kept),
    declares,
    reads: reads.map(({ name }) => name),
  })
  if (text === undefined) return { cell, statements: [] }
  const fingerprint = bytesToHex(sha256(utf8ToBytes(JSON.stringify([cell.fingerprint, text])))) as Fingerprint
  const assumptions = cell.assumptions.filter((name) => declared.has(name))
  return { cell: { id: cell.id, fingerprint, code: text, declares, reads, assumptions }, statements: kept }
}
