/** Cells written as a record from id to source, read by the real compiler. */
import { transform } from 'esbuild-wasm'
import { analyse } from '../../../../kernel/cells/analyse/index.js'
import { createEraser } from '../../../../kernel/cells/compile/index.js'
import type { AnalysedCell, Declaration, Graph, SizingCell } from '../../../../kernel/cells/program/index.js'
import type { CellId } from '../../../../shared/contracts/index.js'

export const erase = createEraser(transform)

export const kernelNames: ReadonlySet<string> = new Set(['u', 'air', 'rotor', 'mass', 'drag', 'assumption', 'sizing'])

export function cellsOf(sources: Readonly<Record<string, string>>): SizingCell[] {
  return Object.entries(sources).map(([id, source]) => ({ id: id as CellId, source }))
}

export function graphOf(sources: Readonly<Record<string, string>>): Promise<Graph> {
  return analyse(cellsOf(sources), erase, kernelNames)
}

/** One cell among others that own the names `other`, `density` and `span`. */
export async function readAlone(source: string): Promise<AnalysedCell & { graph: Graph }> {
  const graph = await graphOf({ it: source, others: 'const other = 1, density = 1.2, span = 12' })
  const cell = graph.cells[0]
  if (cell === undefined) throw new Error('the cell is missing from its graph')
  return { ...cell, graph }
}

export function declared(cell: AnalysedCell, name: string): Declaration | undefined {
  return cell.declares.find((declaration) => declaration.name === name)
}

/** `line:column kind severity: message` of every finding, for one cell. */
export function said(graph: Graph, id: string): string[] {
  return graph.findings
    .filter((finding) => finding.cell === id)
    .map(({ line, column, kind, severity, message }) => `${line}:${column} ${kind} ${severity}: ${message}`)
}
