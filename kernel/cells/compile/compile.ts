/** Turns the readable cells of a graph into text that an evaluator can run. */
import type { CellId } from '../../../shared/contracts/index.js'
import { type AnalysedCell, BoundedCache, type Graph, type Pause } from '../program/index.js'
import { writeRunnable } from './runnable.js'

/** Texts made lately, by everything they are made from. */
const written = new BoundedCache<string, { readonly text: string | undefined }>(4000)

/**
 * The runnable text of every cell that has no error, by cell. A cell whose text could not be enclosed in a function is left
 * out, and `order` lets it fail. Each text is read back, a millisecond a cell, so many of them rest between.
 */
export async function compile(graph: Graph, pause?: Pause): Promise<ReadonlyMap<CellId, string>> {
  const compiled = new Map<CellId, string>()
  for (const cell of graph.cells) {
    if (cell.code === undefined || graph.failed.has(cell.id)) continue
    const rest = pause?.()
    if (rest !== undefined) await rest
    const text = compileCell(cell, cell.code, graph)
    if (text !== undefined) compiled.set(cell.id, text)
  }
  return compiled
}

function compileCell(cell: AnalysedCell, code: string, graph: Graph): string | undefined {
  const declares = cell.declares.map((declaration) => declaration.name)
  const reads = cell.reads.filter((name) => graph.owner.has(name))
  const key = JSON.stringify([cell.id, code, declares, reads])
  const known = written.get(key)
  if (known !== undefined) return known.text
  const text = writeRunnable({ id: cell.id, code, declares, reads })
  written.set(key, { text })
  return text
}
