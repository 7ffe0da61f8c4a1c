/**
 * What can be done to the cells of the page, each as one own edit of the live document. Texts are never moved from one cell to
 * another as a whole: the upper cell keeps its `Y.Text`, so that what others type there meanwhile stays.
 */
import * as Y from 'yjs'
import { CellId, type CellKind, marginNumbers, numberForPlace } from '../../shared/contracts/index.js'
import { cellsOf, type LiveCell, ownEdit, ownGroundwork, snapshotOf, sourceOf } from './document.js'
import { freshKeys, keyAt } from './order-keys.js'

/** Puts a new cell after `after` (first when `null`) and returns its id. */
export function addCell(
  doc: Y.Doc,
  kind: CellKind,
  after: CellId | null,
  id: CellId = newCellId(),
  source = '',
): CellId {
  const index = after === null ? 0 : snapshotOf(doc).cells.findIndex((cell) => cell.id === after) + 1
  prepareCell(doc, id, kind, index, source)
  doc.transact(() => setInCell(doc, id, 'removed', false), ownEdit)
  return id
}

/** A copy of the cell below it; its id, or `null` when there is no such cell. */
export function duplicateCell(doc: Y.Doc, id: CellId): CellId | null {
  const cell = cellOf(doc, id)
  return cell === undefined ? null : addCell(doc, cell.kind, id, newCellId(), cell.source)
}

/** Moves a cell one place up (-1) or down (1); false at the end of the page. */
export function moveCell(doc: Y.Doc, id: CellId, by: -1 | 1): boolean {
  const from = snapshotOf(doc).cells.findIndex((cell) => cell.id === id)
  return from >= 0 && moveCellTo(doc, id, from + by)
}

/** Moves a cell to place `to` of the page; false when it is there already or there is no such place. */
export function moveCellTo(doc: Y.Doc, id: CellId, to: number): boolean {
  const cells = snapshotOf(doc).cells
  const from = cells.findIndex((cell) => cell.id === id)
  if (from < 0 || to < 0 || to >= cells.length || to === from) return false
  settleNumbers(doc)
  const others = cells.filter((cell) => cell.id !== id)
  doc.transact(() => setInCell(doc, id, 'order', orderFor(doc, others, to)), ownEdit)
  return true
}

/** Marks a cell as removed; its text stays, so that undo and another person's typing lose nothing. */
export function removeCell(doc: Y.Doc, id: CellId): void {
  settleNumbers(doc)
  doc.transact(() => {
    setInCell(doc, id, 'removed', true)
    // Its text goes nowhere: were it once divided off another cell, the server would carry it back there.
    setInCell(doc, id, 'into', undefined)
  }, ownEdit)
}

export function changeKind(doc: Y.Doc, id: CellId, kind: CellKind): void {
  doc.transact(() => setInCell(doc, id, 'kind', kind), ownEdit)
}

/**
 * Divides a cell: its text up to `upperEnd` stays, that from `lowerStart` on goes into a new cell below, what lies between goes. The new
 * cell remembers whose text it is: if this is undone while someone else types in it, the server carries their words back, and if someone
 * else divides at the same character meanwhile, it makes one cell of the two (`server/live/twin-cells.ts`).
 */
export function splitCell(doc: Y.Doc, id: CellId, upperEnd: number, lowerStart: number): CellId | null {
  const cells = snapshotOf(doc).cells
  const index = cells.findIndex((cell) => cell.id === id)
  const upper = sourceOf(doc, id)
  const cell = cells[index]
  if (cell === undefined || upper === undefined) return null
  const tail = cell.source.slice(lowerStart)
  const lower = newCellId()
  prepareCell(doc, lower, cell.kind, index + 1, tail, { cell: id, text: tail, cut: characterAt(upper, lowerStart) })
  doc.transact(() => {
    upper.delete(upperEnd, upper.length - upperEnd)
    setInCell(doc, lower, 'removed', false)
  }, ownEdit)
  return lower
}

/** Names the character for good: whoever divides before it at the same instant names the same one, and nobody can once it is cut off. */
function characterAt(text: Y.Text, index: number): string {
  const { item } = Y.createRelativePositionFromTypeIndex(text, index)
  return item === null ? '' : `${item.client}:${item.clock}`
}

/** An empty line parts what was two cells, so that neither a heading nor a paragraph runs into the other. */
const seam = '\n\n'

/** Where the text of the next cell begins in the joined one. */
export interface Joined {
  readonly at: number
  readonly removed: CellId
}

/** Appends the next cell's text to a cell and removes that one; `null` when no next cell of the same kind is there. */
export function joinWithNext(doc: Y.Doc, id: CellId): Joined | null {
  const cells = snapshotOf(doc).cells
  const index = cells.findIndex((cell) => cell.id === id)
  const cell = cells[index]
  const next = cells[index + 1]
  const upper = sourceOf(doc, id)
  if (cell === undefined || next === undefined || next.kind !== cell.kind || upper === undefined) return null
  settleNumbers(doc)
  const between = joinSeam(cell.source, next.source)
  const at = upper.length + between.length
  doc.transact(() => {
    upper.insert(upper.length, between + next.source)
    setInCell(doc, next.id, 'into', { cell: id, text: next.source })
    setInCell(doc, next.id, 'removed', true)
  }, ownEdit)
  return { at, removed: next.id }
}

export function joinSeam(upper: string, lower: string): string {
  if (upper === '' || lower === '') return ''
  const ends = /\n*$/.exec(upper)?.[0].length ?? 0
  return seam.slice(Math.min(ends, seam.length))
}

/** Where the text of a removed cell went, and how long that text was then. */
export function joinedInto(doc: Y.Doc, id: CellId): { readonly cell: CellId; readonly length: number } | null {
  const cell = cellsOf(doc).get(id)
  const into: unknown = cell instanceof Y.Map && cell.get('removed') === true ? cell.get('into') : undefined
  if (typeof into !== 'object' || into === null || !('cell' in into) || !('text' in into)) return null
  const target = CellId.safeParse(into.cell)
  return target.success && typeof into.text === 'string' ? { cell: target.data, length: into.text.length } : null
}

/** Numbers the page anew from 1; numbers of removed cells are free again. False when it is in order already. */
export function renumber(doc: Y.Doc): boolean {
  const { cells, retired } = snapshotOf(doc)
  const numbers = marginNumbers(cells)
  if (retired.length === 0 && cells.every((cell, index) => numbers.get(cell.id) === String(index + 1))) return false
  const shown = new Set<string>(cells.map((cell) => cell.id))
  doc.transact(() => {
    cells.forEach((cell, index) => {
      setInCell(doc, cell.id, 'number', String(index + 1))
    })
    for (const [key, cell] of cellsOf(doc)) if (!shown.has(key) && cell instanceof Y.Map) cell.delete('number')
  }, ownEdit)
  return true
}

/**
 * Makes the numbers that are shown the cells' own, before anything changes the order of the page. It is no part of the edit: undoing
 * that does not make the others lose their numbers.
 */
function settleNumbers(doc: Y.Doc): void {
  const { cells } = snapshotOf(doc)
  const numbers = marginNumbers(cells)
  doc.transact(() => {
    for (const { id, number } of cells) if (number !== numbers.get(id)) setInCell(doc, id, 'number', numbers.get(id))
  }, ownGroundwork)
}

/**
 * Puts a cell into the document that is not shown yet. Showing it is the edit: undoing that hides the cell again and never deletes what
 * someone else has typed in it.
 */
function prepareCell(
  doc: Y.Doc,
  id: CellId,
  kind: CellKind,
  index: number,
  source: string,
  into?: { readonly cell: CellId; readonly text: string; readonly cut: string },
): void {
  settleNumbers(doc)
  const { cells, retired } = snapshotOf(doc)
  const numbers = marginNumbers(cells)
  doc.transact(() => {
    const cell = new Y.Map<unknown>()
    cell.set('kind', kind)
    cell.set('source', new Y.Text(source))
    cell.set('order', orderFor(doc, cells, index))
    cell.set('removed', true)
    cell.set(
      'number',
      numberForPlace(
        cells.map((other) => numbers.get(other.id) ?? ''),
        index,
        retired,
      ),
    )
    if (into !== undefined) cell.set('into', into)
    cellsOf(doc).set(id, cell)
  }, ownGroundwork)
}

/** A key for place `index` among `cells`; orders the page anew when the keys there leave no room. */
function orderFor(doc: Y.Doc, cells: readonly LiveCell[], index: number): string {
  const keys = cells.map((cell) => cell.order)
  const key = keyAt(keys, index)
  if (key !== null) return key
  const fresh = freshKeys(cells.length + 1)
  cells.forEach((cell, position) => {
    setInCell(doc, cell.id, 'order', fresh[position < index ? position : position + 1])
  })
  return fresh[index] ?? ''
}

const cellOf = (doc: Y.Doc, id: CellId) => snapshotOf(doc).cells.find((cell) => cell.id === id)

/** Sets (or, for `undefined`, takes away) what is kept of a cell; does nothing for a cell that is not there. */
export function setInCell(doc: Y.Doc, id: CellId, key: string, value: unknown): void {
  const cell = cellsOf(doc).get(id)
  if (!(cell instanceof Y.Map)) return
  if (value !== undefined) cell.set(key, value)
  else if (cell.has(key)) cell.delete(key)
}

export function newCellId(): CellId {
  return CellId.parse(crypto.randomUUID().replaceAll('-', '').slice(0, 16))
}
