/**
 * Two people can divide a cell at the same character at the same instant: both cut the same text off, and each puts it into a new cell of
 * their own. Their `into` names the same character, which nobody can cut off again once it is gone, so the twins are known for certain. The
 * one with the smaller id stays; the other is taken as joined into it, and words typed there are carried over like other late ones.
 */
import * as Y from 'yjs'
import { cellsOf } from './document.js'

export function hasTwins(doc: Y.Doc): boolean {
  return twinsOf(doc).length > 0
}

/** To be called within the server's own edit, before late words are carried over. */
export function joinTwins(doc: Y.Doc): void {
  for (const { cell, keeper, text } of twinsOf(doc)) {
    cell.set('into', { cell: keeper, text })
    cell.set('removed', true)
  }
}

interface Twin {
  readonly cell: Y.Map<unknown>
  readonly keeper: string
  /** What both were given. */
  readonly text: string
}

function twinsOf(doc: Y.Doc): readonly Twin[] {
  const keepers = new Map<string, string>()
  const twins: Twin[] = []
  for (const [id, cell] of [...cellsOf(doc)].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const cut = cell instanceof Y.Map && cell.get('removed') !== true ? readCut(cell.get('into')) : undefined
    if (!(cell instanceof Y.Map) || cut === undefined) continue
    const keeper = keepers.get(cut.key)
    if (keeper === undefined) keepers.set(cut.key, id)
    else twins.push({ cell: cell as Y.Map<unknown>, keeper, text: cut.text })
  }
  return twins
}

function readCut(into: unknown): { readonly key: string; readonly text: string } | undefined {
  if (typeof into !== 'object' || into === null || !('cell' in into) || !('text' in into) || !('cut' in into))
    return undefined
  const { cell, text, cut } = into
  if (typeof cell !== 'string' || typeof text !== 'string' || typeof cut !== 'string') return undefined
  return { key: JSON.stringify([cell, cut, text]), text }
}
