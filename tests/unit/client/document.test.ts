import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { addCell, moveCell, removeCell } from '../../../client/live/cell-operations.js'
import { cellsOf, rewrite, snapshotOf, sourceOf, titleOf, tooLong } from '../../../client/live/document.js'
import { undoFor } from '../../../client/live/undo.js'
import { CellId } from '../../../shared/contracts/index.js'

const id = (text: string) => CellId.parse(text)
const ids = (doc: Y.Doc) => snapshotOf(doc).cells.map((cell) => cell.id)

function threeCells(): Y.Doc {
  const doc = new Y.Doc()
  addCell(doc, 'sizing', null, id('a'), 'const a = 1')
  addCell(doc, 'sizing', id('a'), id('b'), 'const b = 2')
  addCell(doc, 'rationale', id('b'), id('c'), 'words')
  return doc
}

describe('the live document', () => {
  it('addCell(doc, kind, after) puts the cell after the named one, first when none is named', () => {
    const doc = threeCells()
    addCell(doc, 'sizing', id('a'), id('x'))
    addCell(doc, 'sizing', null, id('y'))
    expect(ids(doc)).toEqual(['y', 'a', 'x', 'b', 'c'])
  })

  it('addCell(doc, ...) numbers the page anew when the keys there leave no room', () => {
    const doc = threeCells()
    for (const cell of cellsOf(doc).values()) if (cell instanceof Y.Map) cell.set('order', '')
    addCell(doc, 'sizing', id('a'), id('x'))
    expect(ids(doc)).toEqual(['a', 'x', 'b', 'c'])
  })

  it('moveCell(doc, id, by) moves by one place and says false at the ends and for unknown cells', () => {
    const doc = threeCells()
    expect(moveCell(doc, id('c'), -1)).toBe(true)
    expect(ids(doc)).toEqual(['a', 'c', 'b'])
    expect(moveCell(doc, id('a'), -1)).toBe(false)
    expect(moveCell(doc, id('b'), 1)).toBe(false)
    expect(moveCell(doc, id('nobody'), 1)).toBe(false)
  })

  it('removeCell(doc, id) hides the cell and keeps what another person types in it', () => {
    const doc = threeCells()
    removeCell(doc, id('b'))
    expect(ids(doc)).toEqual(['a', 'c'])
    expect(sourceOf(doc, id('b'))).toBeUndefined()
  })

  it('snapshotOf(doc) passes over whatever is not a cell', () => {
    const doc = threeCells()
    cellsOf(doc).set('not an id!', new Y.Map())
    cellsOf(doc).set('text', 'hello')
    cellsOf(doc).set('strange', new Y.Map([['kind', 'other']]))
    expect(ids(doc)).toEqual(['a', 'b', 'c'])
  })

  it('rewrite(text, after) leaves what another person types elsewhere in the text alone', () => {
    const doc = threeCells()
    const other = new Y.Doc()
    Y.applyUpdate(other, Y.encodeStateAsUpdate(doc))
    const mine = sourceOf(doc, id('a'))
    const theirs = sourceOf(other, id('a'))
    if (mine === undefined || theirs === undefined) throw new Error('the cells must be there')
    rewrite(mine, 'const alpha = 1')
    rewrite(theirs, 'const a = 12')
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(other))
    expect(mine.toString()).toBe('const alpha = 12')
  })

  it('tooLong(text) says how long it is and what is accepted', () => {
    expect(tooLong('short', 5)).toBeNull()
    expect(tooLong('longer', 5)).toContain('6 characters; at most 5')
  })

  it('undoFor(doc) takes back own edits over title and cells, and never those of others', () => {
    const doc = threeCells()
    const undo = undoFor(doc)
    rewrite(titleOf(doc), 'Skerry')
    undo.stopCapturing()
    removeCell(doc, id('a'))
    const other = new Y.Doc()
    Y.applyUpdate(other, Y.encodeStateAsUpdate(doc))
    titleOf(other).insert(0, 'The ')
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(other))
    undo.undo()
    expect(ids(doc)).toEqual(['a', 'b', 'c'])
    undo.undo()
    expect(snapshotOf(doc).title).toBe('The ')
    undo.redo()
    expect(snapshotOf(doc).title).toBe('The Skerry')
  })
})
