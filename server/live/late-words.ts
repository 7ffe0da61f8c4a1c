/**
 * Words typed into a cell at the moment its text went into another one (joined by someone else, or a division undone): the cell is
 * removed, so they would be out of sight. Its `into` names the cell that has the text now and what the text was then; what differs
 * from it came late, and is carried over. The server alone does this: were it every browser, the words would come once for each.
 */
import * as Y from 'yjs'
import { CellId } from '../../shared/contracts/index.js'
import { cellsOf } from './document.js'
import { carryLines } from './line-edits.js'
import { hasTwins, joinTwins } from './twin-cells.js'

interface Late {
  readonly cell: Y.Map<unknown>
  readonly target: Y.Text
  readonly targetId: CellId
  readonly base: string
  readonly now: string
}

/** Whether anything waits to be carried over. */
export function hasLateWords(doc: Y.Doc): boolean {
  return hasTwins(doc) || lateWords(doc).length > 0 || joinedInACircle(doc) !== undefined
}

/** Carries late words over; to be called within the server's own edit. */
export function carryLateWords(doc: Y.Doc): void {
  joinTwins(doc)
  for (let cell = joinedInACircle(doc); cell !== undefined; cell = joinedInACircle(doc)) cell.set('removed', false)
  for (const { cell, target, targetId, base, now } of lateWords(doc)) {
    if (base === '') target.insert(target.length, target.length === 0 ? now : `\n${now}`)
    else carryLines(base, now, target)
    cell.set('into', { cell: targetId, text: now })
  }
}

function lateWords(doc: Y.Doc): readonly Late[] {
  const late: Late[] = []
  for (const cell of cellsOf(doc).values()) {
    const into = cell instanceof Y.Map ? readInto(cell) : undefined
    const source = cell instanceof Y.Map ? cell.get('source') : undefined
    if (!(cell instanceof Y.Map) || into === undefined || !(source instanceof Y.Text)) continue
    const now = source.toString()
    const target = now === into.text ? undefined : shownTarget(doc, into.cell)
    if (target !== undefined) late.push({ cell: cell as Y.Map<unknown>, ...target, base: into.text, now })
  }
  return late
}

/** `into` of a removed cell; of a cell that is shown it means nothing. */
function readInto(cell: Y.Map<unknown>): { readonly cell: CellId; readonly text: string } | undefined {
  const into = cell.get('removed') === true ? cell.get('into') : undefined
  if (typeof into !== 'object' || into === null || !('cell' in into) || !('text' in into)) return undefined
  const id = CellId.safeParse(into.cell)
  return id.success && typeof into.text === 'string' ? { cell: id.data, text: into.text } : undefined
}

/**
 * Two people can join two cells at once, each into the other's: then both are removed, and each holds the text of both. The one with the
 * smaller id is shown again.
 */
function joinedInACircle(doc: Y.Doc): Y.Map<unknown> | undefined {
  for (const [first, cell] of [...cellsOf(doc)].sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (!(cell instanceof Y.Map)) continue
    const seen = new Set<string>([first])
    let id = readInto(cell)?.cell
    while (id !== undefined && !seen.has(id)) {
      seen.add(id)
      const next = cellsOf(doc).get(id)
      id = next instanceof Y.Map ? readInto(next)?.cell : undefined
    }
    if (id === first) return cell as Y.Map<unknown>
  }
  return undefined
}

/** The text went on if its new cell was joined with another in turn; nowhere if that one was plainly removed. */
function shownTarget(doc: Y.Doc, first: CellId): { readonly target: Y.Text; readonly targetId: CellId } | undefined {
  const seen = new Set<CellId>()
  let id: CellId | undefined = first
  while (id !== undefined && !seen.has(id)) {
    seen.add(id)
    const cell = cellsOf(doc).get(id)
    if (!(cell instanceof Y.Map)) return undefined
    const source = cell.get('source')
    if (cell.get('removed') !== true) return source instanceof Y.Text ? { target: source, targetId: id } : undefined
    id = readInto(cell)?.cell
  }
  return undefined
}
