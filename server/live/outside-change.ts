/** A notebook file that was changed by someone else comes into the live document as a difference, cell by cell. */
import { generateNKeysBetween } from 'fractional-indexing'
import * as Y from 'yjs'
import type { CellId } from '../../shared/contracts/index.js'
import { cellsOf, type LiveCell, type LiveContent, readContent, titleOf } from './document.js'
import { putCell } from './notebook-content.js'
import { mergeText } from './text-merge.js'

/** Carries the change from `base` to `outside` into `doc`. */
export function applyOutsideChange(doc: Y.Doc, base: LiveContent, outside: LiveContent): void {
  const live = new Map(readContent(doc).cells.map((cell) => [cell.id, cell]))
  const before = new Map(base.cells.map((cell) => [cell.id, cell]))
  const after = new Map(outside.cells.map((cell) => [cell.id, cell]))
  doc.transact(() => {
    mergeInto(titleOf(doc), base.title, outside.title)
    for (const id of before.keys()) {
      if (after.has(id) || !live.has(id)) continue
      setField(doc, id, 'removed', true)
      setField(doc, id, 'into', undefined)
    }
    for (const cell of outside.cells) applyCell(doc, cell, before.get(cell.id), live.has(cell.id))
    if (!sameOrder(base, outside)) applyOrder(doc, outside.cells)
  })
}

function applyCell(doc: Y.Doc, cell: LiveCell, before: LiveCell | undefined, isLive: boolean): void {
  const map = cellsOf(doc).get(cell.id)
  const source = map instanceof Y.Map ? map.get('source') : undefined
  if (!(map instanceof Y.Map) || !(source instanceof Y.Text)) {
    putCell(doc, cell)
    return
  }
  // Removed here, untouched there: it stays removed. Changed there, or new there: it comes back.
  if (!isLive && (before === undefined || before.source !== cell.source)) map.set('removed', false)
  if (before === undefined && !isLive) {
    source.delete(0, source.length)
    source.insert(0, cell.source)
    map.set('order', cell.order)
  } else mergeInto(source, before?.source ?? source.toString(), cell.source)
  if (before?.kind !== cell.kind && map.get('kind') !== cell.kind) map.set('kind', cell.kind)
  if (before?.number !== cell.number) setField(doc, cell.id, 'number', cell.number)
}

function mergeInto(text: Y.Text, base: string, outside: string): void {
  for (const edit of mergeText(base, outside, text.toString())) {
    if (edit.remove > 0) text.delete(edit.at, edit.remove)
    if (edit.insert !== '') text.insert(edit.at, edit.insert)
  }
}

/** The page follows the outside order; cells that only the live document has keep their place after the same neighbour. */
function applyOrder(doc: Y.Doc, outside: readonly LiveCell[]): void {
  const cells = readContent(doc).cells
  const known = new Set(outside.map((cell) => cell.id))
  const order: CellId[] = outside.map((cell) => cell.id)
  cells.forEach((cell, index) => {
    if (known.has(cell.id)) return
    const neighbour = cells[index - 1]?.id
    order.splice(neighbour === undefined ? 0 : order.indexOf(neighbour) + 1, 0, cell.id)
  })
  const present = order.filter((id) => cells.some((cell) => cell.id === id))
  const keys = generateNKeysBetween(null, null, present.length)
  present.forEach((id, index) => {
    setField(doc, id, 'order', keys[index] ?? '')
  })
}

function sameOrder(a: LiveContent, b: LiveContent): boolean {
  return a.cells.length === b.cells.length && a.cells.every((cell, index) => cell.id === b.cells[index]?.id)
}

function setField(doc: Y.Doc, id: CellId, field: string, value: unknown): void {
  const map = cellsOf(doc).get(id)
  if (!(map instanceof Y.Map) || map.get(field) === value) return
  if (value === undefined) map.delete(field)
  else map.set(field, value)
}
