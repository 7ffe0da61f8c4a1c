/**
 * The live document: title text and cells, and nothing else. Cells are a map by id (kind, source, fractional order, removed),
 * so that moving or removing a cell never loses what another person types in it. Reading tolerates any content.
 */
import * as Y from 'yjs'
import { CellId, type CellKind, limits } from '../../shared/contracts/index.js'
import { freshKeys, keyAt } from './order-keys.js'
import { differenceOf } from './text-difference.js'

/** Origin of this person's own edits: the undo manager follows it, the connection sends it. */
export const ownEdit = Symbol('own edit')
/** Origin of everything that came from the server. */
export const fromServer = Symbol('from the server')

export interface LiveCell {
  readonly id: CellId
  readonly kind: CellKind
  readonly source: string
  readonly order: string
}

export interface DocumentSnapshot {
  readonly title: string
  /** In page order, removed cells left out. */
  readonly cells: readonly LiveCell[]
}

export const titleOf = (doc: Y.Doc): Y.Text => doc.getText('title')
export const cellsOf = (doc: Y.Doc): Y.Map<unknown> => doc.getMap('cells')

/** The text of one cell, absent when it was removed or never was. */
export function sourceOf(doc: Y.Doc, id: CellId): Y.Text | undefined {
  const cell = cellsOf(doc).get(id)
  const source = cell instanceof Y.Map && cell.get('removed') !== true ? cell.get('source') : undefined
  return source instanceof Y.Text ? source : undefined
}

/** Plain data of the document as it stands. */
export function snapshotOf(doc: Y.Doc): DocumentSnapshot {
  const cells: LiveCell[] = []
  for (const [key, value] of cellsOf(doc)) {
    const cell = readCell(key, value)
    if (cell !== undefined) cells.push(cell)
  }
  cells.sort((a, b) => compareText(a.order, b.order) || compareText(a.id, b.id))
  return { title: titleOf(doc).toString(), cells }
}

function readCell(key: string, value: unknown): LiveCell | undefined {
  const id = CellId.safeParse(key)
  if (!id.success || !(value instanceof Y.Map) || value.get('removed') === true) return undefined
  const kind = value.get('kind')
  const source = value.get('source')
  const order = value.get('order')
  if ((kind !== 'rationale' && kind !== 'sizing') || !(source instanceof Y.Text)) return undefined
  return { id: id.data, kind, source: source.toString(), order: typeof order === 'string' ? order : '' }
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

/** Replaces a text by the smallest difference, so that another person's typing in it survives. `caret` as in `differenceOf`. */
export function rewrite(text: Y.Text, after: string, caret?: number): void {
  const difference = differenceOf(text.toString(), after, caret)
  if (difference === null) return
  text.doc?.transact(() => {
    if (difference.removed > 0) text.delete(difference.at, difference.removed)
    if (difference.inserted !== '') text.insert(difference.at, difference.inserted)
  }, ownEdit)
}

/** Why a text is not taken, or `null`. */
export function tooLong(text: string, most: number = limits.sourceCharacters): string | null {
  if (text.length <= most) return null
  return `That would be ${text.length} characters; at most ${most} are accepted here, so the last change was not taken.`
}

/** Puts a new empty cell after `after` (first when `null`) and returns its id. */
export function addCell(
  doc: Y.Doc,
  kind: CellKind,
  after: CellId | null,
  id: CellId = newCellId(),
  source = '',
): CellId {
  const cells = snapshotOf(doc).cells
  const index = after === null ? 0 : cells.findIndex((cell) => cell.id === after) + 1
  doc.transact(() => {
    const cell = new Y.Map<unknown>()
    cell.set('kind', kind)
    cell.set('source', new Y.Text(source))
    cell.set('order', orderFor(doc, cells, index))
    cell.set('removed', false)
    cellsOf(doc).set(id, cell)
  }, ownEdit)
  return id
}

/** Moves a cell one place up (-1) or down (1); false at the end of the page. */
export function moveCell(doc: Y.Doc, id: CellId, by: -1 | 1): boolean {
  const cells = snapshotOf(doc).cells
  const from = cells.findIndex((cell) => cell.id === id)
  const to = from + by
  if (from < 0 || to < 0 || to >= cells.length) return false
  const others = cells.filter((cell) => cell.id !== id)
  doc.transact(() => setInCell(doc, id, 'order', orderFor(doc, others, to)), ownEdit)
  return true
}

/** Marks a cell as removed; its text stays, so that undo and another person's typing lose nothing. */
export function removeCell(doc: Y.Doc, id: CellId): void {
  doc.transact(() => setInCell(doc, id, 'removed', true), ownEdit)
}

/** A key for place `index` among `cells`; numbers the page anew when the keys there leave no room. */
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

function setInCell(doc: Y.Doc, id: CellId, key: string, value: unknown): void {
  const cell = cellsOf(doc).get(id)
  if (cell instanceof Y.Map) cell.set(key, value)
}

export function newCellId(): CellId {
  return CellId.parse(crypto.randomUUID().replaceAll('-', '').slice(0, 16))
}
