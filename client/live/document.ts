/**
 * The live document: title text and cells, and nothing else. Cells are a map by id (kind, source, fractional order, removed,
 * number), so that moving or removing a cell never loses what another person types in it. Reading tolerates any content.
 */
import * as Y from 'yjs'
import { CellId, type CellKind, limits, longestCellNumber } from '../../shared/contracts/index.js'
import { differenceOf } from './text-difference.js'

/** Origin of this person's own edits: the undo manager follows it, the connection sends it. */
export const ownEdit = Symbol('own edit')
/** Origin of what goes with an own edit and is not to be taken back with it: numbers made the cells' own, a cell not shown yet. */
export const ownGroundwork = Symbol('own groundwork')
/** Origin of everything that came from the server. */
export const fromServer = Symbol('from the server')

export interface LiveCell {
  readonly id: CellId
  readonly kind: CellKind
  readonly source: string
  readonly order: string
  /** Its own number in the margin; by its place when absent. */
  readonly number?: string
}

export interface DocumentSnapshot {
  readonly title: string
  /** In page order, removed cells left out. */
  readonly cells: readonly LiveCell[]
  /** Numbers of removed cells that held text: they are not given to others. */
  readonly retired: readonly string[]
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
  const retired: string[] = []
  for (const [key, value] of cellsOf(doc)) {
    const cell = readCell(key, value)
    if (cell === undefined) continue
    if (!(value instanceof Y.Map && value.get('removed') === true)) cells.push(cell)
    else if (cell.number !== undefined && cell.source !== '') retired.push(cell.number)
  }
  cells.sort((a, b) => compareText(a.order, b.order) || compareText(a.id, b.id))
  return { title: titleOf(doc).toString(), cells, retired: retired.sort() }
}

function readCell(key: string, value: unknown): LiveCell | undefined {
  const id = CellId.safeParse(key)
  if (!id.success || !(value instanceof Y.Map)) return undefined
  const kind = value.get('kind')
  const source = value.get('source')
  const order = value.get('order')
  if ((kind !== 'rationale' && kind !== 'sizing') || !(source instanceof Y.Text)) return undefined
  const number = value.get('number')
  return {
    id: id.data,
    kind,
    source: source.toString(),
    order: typeof order === 'string' ? order : '',
    ...(typeof number === 'string' && number !== '' && number.length <= longestCellNumber ? { number } : {}),
  }
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
