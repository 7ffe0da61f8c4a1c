/**
 * Carrying own unsaved work into a new life (epoch) of the document. The Y history of the old life means nothing in the new one,
 * so the work is carried over as text: what I had, what the server had confirmed of it, and what it has now.
 */
import * as Y from 'yjs'
import type { CellId } from '../../shared/contracts/index.js'
import { addCell, removeCell } from './cell-operations.js'
import { cellsOf, type DocumentSnapshot, ownEdit, rewrite, snapshotOf, sourceOf, titleOf } from './document.js'
import { mergeLines } from './line-merge.js'

/** Applies the changes `confirmed` to `mine` to `target`, as own edits. Returns how many cells (or the title) changed. */
export function carryOver(confirmed: DocumentSnapshot, mine: DocumentSnapshot, target: Y.Doc): number {
  const before = new Map(confirmed.cells.map((cell) => [cell.id, cell]))
  const kept = new Set(mine.cells.map((cell) => cell.id))
  let changed = 0
  target.transact(() => {
    changed += carryTitle(confirmed.title, mine.title, target)
    mine.cells.forEach((cell, index) => {
      const old = before.get(cell.id)
      const above = mine.cells[index - 1]?.id ?? null
      if (old === undefined || old.source !== cell.source) changed += carryCell(cell, old?.source ?? '', above, target)
      for (const key of ['order', 'kind', 'number'] as const)
        if (old !== undefined && old[key] !== cell[key]) changed += carryField(cell.id, key, cell[key], target)
    })
    for (const cell of confirmed.cells)
      if (!kept.has(cell.id) && sourceOf(target, cell.id) !== undefined) {
        removeCell(target, cell.id)
        changed += 1
      }
  }, ownEdit)
  return changed
}

function carryTitle(before: string, mine: string, target: Y.Doc): number {
  const title = titleOf(target)
  if (mine === before || mine === title.toString()) return 0
  rewrite(title, mine)
  return 1
}

function carryCell(
  cell: DocumentSnapshot['cells'][number],
  before: string,
  above: CellId | null,
  target: Y.Doc,
): number {
  const source = sourceOf(target, cell.id)
  if (source === undefined) {
    // Theirs has no such cell (new here, or removed there while I typed in it): my words come back under the same id.
    const present = new Set(snapshotOf(target).cells.map((other) => other.id))
    addCell(target, cell.kind, above !== null && present.has(above) ? above : lastOf(target), cell.id, cell.source)
    return 1
  }
  const merged = mergeLines(before, cell.source, source.toString())
  if (merged === source.toString()) return 0
  rewrite(source, merged)
  return 1
}

function carryField(id: CellId, key: 'order' | 'kind' | 'number', value: string | undefined, target: Y.Doc): number {
  const cell = cellsOf(target).get(id)
  if (!(cell instanceof Y.Map) || cell.get(key) === value) return 0
  if (value === undefined) cell.delete(key)
  else cell.set(key, value)
  return 1
}

function lastOf(target: Y.Doc): CellId | null {
  return snapshotOf(target).cells.at(-1)?.id ?? null
}
