/**
 * The live document: a Y.Doc that holds only the title and the cells.
 *
 *     title   Y.Text
 *     cells   Y.Map: cell id -> Y.Map { kind, source: Y.Text, order: fractional key, removed: boolean, number?, into? }
 *
 * `number` is the one in the margin (`shared/contracts/cell-number.ts`). `into` is there when the text of a cell went into another
 * one (late-words.ts).
 *
 * Whoever may send updates may put anything in it, so reading takes what has this shape and passes over the rest.
 */
import * as Y from 'yjs'
import { CellId, CellKind, longestCellNumber } from '../../shared/contracts/index.js'

export interface LiveCell {
  readonly id: CellId
  readonly kind: CellKind
  readonly source: string
  readonly order: string
  readonly number?: string
}

export interface LiveContent {
  readonly title: string
  /** In page order, removed ones left out. */
  readonly cells: readonly LiveCell[]
  /** What was passed over, in words, for the operator. */
  readonly ignored: readonly string[]
}

/** Both roots are claimed before any update arrives, so that an update cannot give them another type. */
export function emptyDocument(): Y.Doc {
  const doc = new Y.Doc()
  titleOf(doc)
  cellsOf(doc)
  return doc
}

export const titleOf = (doc: Y.Doc): Y.Text => doc.getText('title')
export const cellsOf = (doc: Y.Doc): Y.Map<unknown> => doc.getMap('cells')

export function documentFrom(updates: readonly Uint8Array[]): Y.Doc {
  const doc = emptyDocument()
  doc.transact(() => {
    for (const update of updates) Y.applyUpdate(doc, update)
  })
  return doc
}

export function readContent(doc: Y.Doc): LiveContent {
  const ignored: string[] = []
  for (const name of doc.share.keys())
    if (name !== 'title' && name !== 'cells') ignored.push(`the root ${JSON.stringify(name.slice(0, 40))}`)
  const cells: LiveCell[] = []
  for (const [key, value] of cellsOf(doc)) {
    const cell = readCell(key, value)
    if (cell === undefined) ignored.push(`the cell ${JSON.stringify(key.slice(0, 40))}`)
    else if (!cell.removed) cells.push(shown(cell))
  }
  cells.sort((a, b) => compareText(a.order, b.order) || compareText(a.id, b.id))
  return { title: titleOf(doc).toString(), cells, ignored }
}

function shown({ removed: _removed, ...cell }: LiveCell & { readonly removed: boolean }): LiveCell {
  return cell
}

function readCell(key: string, value: unknown): (LiveCell & { readonly removed: boolean }) | undefined {
  const id = CellId.safeParse(key)
  if (!id.success || !(value instanceof Y.Map)) return undefined
  const kind = CellKind.safeParse(value.get('kind'))
  const source = value.get('source')
  const order = value.get('order')
  if (!kind.success || !(source instanceof Y.Text)) return undefined
  return {
    id: id.data,
    kind: kind.data,
    source: source.toString(),
    order: typeof order === 'string' ? order : '',
    ...numberOf(value.get('number')),
    removed: value.get('removed') === true,
  }
}

function numberOf(value: unknown): Pick<LiveCell, 'number'> {
  return typeof value === 'string' && value !== '' && value.length <= longestCellNumber ? { number: value } : {}
}

/** By code unit, as fractional keys are made to be compared. */
const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
