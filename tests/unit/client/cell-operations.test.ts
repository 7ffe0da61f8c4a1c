import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import {
  addCell,
  changeKind,
  duplicateCell,
  joinedInto,
  joinWithNext,
  moveCell,
  moveCellTo,
  removeCell,
  renumber,
  splitCell,
} from '../../../client/live/cell-operations.js'
import { cellsOf, ownEdit, snapshotOf, sourceOf } from '../../../client/live/document.js'
import { carryOver } from '../../../client/live/rebase.js'
import { undoFor } from '../../../client/live/undo.js'
import { CellId, marginNumbers } from '../../../shared/contracts/index.js'

const id = (text: string) => CellId.parse(text)

/** A notebook as its file has it: cells without numbers of their own. */
function page(...sources: readonly (readonly [id: string, source: string, kind?: 'rationale' | 'sizing'])[]): Y.Doc {
  const doc = new Y.Doc()
  sources.forEach(([name, source, kind = 'sizing'], index) => {
    const cell = new Y.Map<unknown>()
    cell.set('kind', kind)
    cell.set('source', new Y.Text(source))
    cell.set('order', `a${index}`)
    cell.set('removed', false)
    cellsOf(doc).set(name, cell)
  })
  return doc
}

const three = () => page(['a', 'const a = 1'], ['b', 'const b = 2'], ['c', 'const c = 3'])

/** `1 const a = 1 | 2 const b = 2`: what a reader sees. */
function seen(doc: Y.Doc): string {
  const { cells } = snapshotOf(doc)
  const numbers = marginNumbers(cells)
  return cells.map((cell) => `${numbers.get(cell.id)} ${cell.source}`).join(' | ')
}

const offline = (doc: Y.Doc) => {
  const other = new Y.Doc()
  Y.applyUpdate(other, Y.encodeStateAsUpdate(doc))
  return other
}
const meet = (a: Y.Doc, b: Y.Doc) => {
  Y.applyUpdate(a, Y.encodeStateAsUpdate(b, Y.encodeStateVector(a)))
  Y.applyUpdate(b, Y.encodeStateAsUpdate(a, Y.encodeStateVector(b)))
}
const type = (doc: Y.Doc, cell: string, at: number, text: string) =>
  doc.transact(() => sourceOf(doc, id(cell))?.insert(at, text), ownEdit)

describe('numbers of cells', () => {
  it('addCell(doc, ...) between two cells gives letters, and the others keep their numbers', () => {
    const doc = three()
    addCell(doc, 'sizing', id('a'), id('x'), 'x')
    addCell(doc, 'sizing', id('a'), id('y'), 'y')
    addCell(doc, 'sizing', id('c'), id('z'), 'z')
    expect(seen(doc)).toBe('1 const a = 1 | 1b y | 1a x | 2 const b = 2 | 3 const c = 3 | 4 z')
  })

  it('moveCell(doc, ...) and moveCellTo(doc, ...) carry the number along', () => {
    const doc = three()
    expect(moveCellTo(doc, id('c'), 0)).toBe(true)
    expect(moveCell(doc, id('a'), 1)).toBe(true)
    expect(seen(doc)).toBe('3 const c = 3 | 2 const b = 2 | 1 const a = 1')
    expect([moveCellTo(doc, id('c'), 0), moveCellTo(doc, id('c'), 3), moveCellTo(doc, id('none'), 0)]).toEqual([
      false,
      false,
      false,
    ])
  })

  it('removeCell(doc, id) leaves a gap, and the number is not given to the next one', () => {
    const doc = three()
    removeCell(doc, id('c'))
    addCell(doc, 'sizing', id('b'), id('x'), 'x')
    expect(seen(doc)).toBe('1 const a = 1 | 2 const b = 2 | 4 x')
  })

  it('renumber(doc) counts from 1 in page order, as one step, and says when there is nothing to do', () => {
    const doc = three()
    moveCellTo(doc, id('c'), 0)
    removeCell(doc, id('b'))
    const undo = undoFor(doc)
    expect(undo.step('renumbering', () => renumber(doc))).toBe(true)
    expect(seen(doc)).toBe('1 const c = 3 | 2 const a = 1')
    expect(renumber(doc)).toBe(false)
    undo.undo()
    expect(seen(doc)).toBe('3 const c = 3 | 1 const a = 1')
  })

  it('undoing an insert leaves every other cell its number', () => {
    const doc = three()
    const undo = undoFor(doc)
    undo.step('adding a cell', () => addCell(doc, 'sizing', id('a'), id('x')))
    const other = offline(doc)
    addCell(other, 'sizing', id('b'), id('y'), 'y')
    meet(doc, other)
    undo.undo()
    expect(seen(doc)).toBe('1 const a = 1 | 2 const b = 2 | 2a y | 3 const c = 3')
  })

  it('two inserts at one place get two numbers, the same for everyone', () => {
    const doc = three()
    const other = offline(doc)
    addCell(doc, 'sizing', id('a'), id('x'), 'x')
    addCell(other, 'sizing', id('a'), id('y'), 'y')
    meet(doc, other)
    expect(seen(doc)).toBe(seen(other))
    expect(seen(doc)).toContain('1a x')
    expect(seen(doc)).toContain('1b y')
  })
})

describe('splitting and joining', () => {
  it('splitCell(doc, ...) keeps the upper text where it is and undo takes it back in one step', () => {
    const doc = page(['a', 'const a = 1\n\nconst b = 2'], ['c', 'const c = 3'])
    const undo = undoFor(doc)
    const upper = sourceOf(doc, id('a'))
    const lower = undo.step('splitting', () => splitCell(doc, id('a'), 11, 13))
    expect(seen(doc)).toBe('1 const a = 1 | 1a const b = 2 | 2 const c = 3')
    expect(sourceOf(doc, id('a'))).toBe(upper)
    undo.undo()
    expect(seen(doc)).toBe('1 const a = 1\n\nconst b = 2 | 2 const c = 3')
    undo.redo()
    expect(seen(doc)).toBe('1 const a = 1 | 1a const b = 2 | 2 const c = 3')
    expect(lower).not.toBeNull()
    expect(splitCell(doc, id('none'), 0, 0)).toBeNull()
  })

  it('splitCell(doc, ...) loses nothing of what others type above and below meanwhile', () => {
    const doc = page(['a', 'one\ntwo\nthree'])
    const other = offline(doc)
    splitCell(doc, id('a'), 3, 4)
    type(other, 'a', 0, 'ABOVE ')
    type(other, 'a', sourceOf(other, id('a'))?.length ?? 0, ' BELOW')
    meet(doc, other)
    expect(seen(doc)).toBe(seen(other))
    expect(seen(doc)).toContain('ABOVE one')
    expect(seen(doc)).toContain('BELOW')
    expect(seen(doc)).toContain('two\nthree')
  })

  it('joinWithNext(doc, id) appends the next text after an empty line, and undo parts them in one step', () => {
    const doc = three()
    const undo = undoFor(doc)
    expect(undo.step('joining', () => joinWithNext(doc, id('a')))).toEqual({ at: 13, removed: 'b' })
    expect(seen(doc)).toBe('1 const a = 1\n\nconst b = 2 | 3 const c = 3')
    expect(joinedInto(doc, id('b'))).toEqual({ cell: 'a', length: 11 })
    undo.undo()
    expect(seen(doc)).toBe('1 const a = 1 | 2 const b = 2 | 3 const c = 3')
    expect(joinedInto(doc, id('b'))).toBeNull()
  })

  it('joinWithNext(doc, id) does not pile up empty lines, and joins an empty cell without any', () => {
    const doc = page(['a', 'a\n'], ['b', 'b'], ['c', ''])
    joinWithNext(doc, id('a'))
    joinWithNext(doc, id('a'))
    expect(seen(doc)).toBe('1 a\n\nb')
  })

  it('joinWithNext(doc, id) refuses the last cell, another kind and an unknown cell', () => {
    const doc = page(['a', 'a'], ['b', 'b', 'rationale'])
    expect([joinWithNext(doc, id('a')), joinWithNext(doc, id('b')), joinWithNext(doc, id('none'))]).toEqual([
      null,
      null,
      null,
    ])
  })

  it('what others type in the upper cell while it is joined stays', () => {
    const doc = three()
    const other = offline(doc)
    joinWithNext(doc, id('a'))
    type(other, 'a', 11, ' + 1')
    meet(doc, other)
    expect(seen(doc)).toBe(seen(other))
    expect(snapshotOf(doc).cells[0]?.source).toContain('const b = 2')
    expect(snapshotOf(doc).cells[0]?.source).toContain('+ 1')
  })
})

describe('kinds and copies', () => {
  it('changeKind(doc, id, kind) keeps the text, in one step', () => {
    const doc = three()
    const undo = undoFor(doc)
    undo.step('changing', () => changeKind(doc, id('a'), 'rationale'))
    expect(snapshotOf(doc).cells[0]).toMatchObject({ kind: 'rationale', source: 'const a = 1' })
    undo.undo()
    expect(snapshotOf(doc).cells[0]).toMatchObject({ kind: 'sizing' })
  })

  it('duplicateCell(doc, id) puts a copy below with a number of its own', () => {
    const doc = three()
    expect(duplicateCell(doc, id('a'))).not.toBeNull()
    expect(seen(doc)).toBe('1 const a = 1 | 1a const a = 1 | 2 const b = 2 | 3 const c = 3')
    expect(duplicateCell(doc, id('none'))).toBeNull()
  })
})

describe('undo of cells', () => {
  it('undo() of adding a cell keeps it when someone else has written in it', () => {
    const doc = three()
    const kept: string[] = []
    const undo = undoFor(doc, { onTaken() {}, writeField() {}, onKept: (cell) => void kept.push(cell) })
    const added = undo.step(
      'adding a cell',
      () => addCell(doc, 'sizing', id('a')),
      (cell) => ({ id: cell, text: '' }),
    )
    const other = offline(doc)
    type(other, added, 0, 'const theirs = 1')
    meet(doc, other)
    undo.undo()
    expect(seen(doc)).toContain('const theirs = 1')
    expect(kept).toEqual([added])
  })

  it('undo() of adding a cell takes it away again when nobody else wrote in it, and redo() brings it back', () => {
    const doc = three()
    const undo = undoFor(doc)
    undo.step(
      'adding a cell',
      () => addCell(doc, 'sizing', id('a')),
      (cell) => ({ id: cell, text: '' }),
    )
    undo.undo()
    expect(seen(doc)).toBe('1 const a = 1 | 2 const b = 2 | 3 const c = 3')
    undo.redo()
    expect(snapshotOf(doc).cells).toHaveLength(4)
  })

  it('undo() of removing a cell brings back what others typed in it meanwhile', () => {
    const doc = three()
    const undo = undoFor(doc)
    const other = offline(doc)
    undo.step('removing', () => removeCell(doc, id('b')))
    type(other, 'b', 11, ' * 2')
    meet(doc, other)
    expect(snapshotOf(doc).cells).toHaveLength(2)
    undo.undo()
    expect(seen(doc)).toContain('const b = 2 * 2')
  })

  it('step(name, ...) makes each step its own, however quickly they follow, and onTaken says its name both ways', () => {
    const doc = three()
    const taken: string[] = []
    const undo = undoFor(doc, {
      onKept() {},
      writeField() {},
      onTaken: (way, name) => void taken.push(`${way} ${name}`),
    })
    undo.step('moving cell 3', () => moveCellTo(doc, id('c'), 0))
    undo.step('moving cell 1', () => moveCellTo(doc, id('a'), 0))
    type(doc, 'a', 0, 'x')
    undo.undo()
    undo.undo()
    expect(seen(doc)).toBe('3 const c = 3 | 1 const a = 1 | 2 const b = 2')
    undo.redo()
    undo.undo()
    undo.undo()
    undo.undo()
    expect(taken).toEqual([
      'undo typing',
      'undo moving cell 1',
      'redo moving cell 1',
      'undo moving cell 1',
      'undo moving cell 3',
      'undo null',
    ])
  })

  it('wroteField(step) takes its turn among the steps of the document', () => {
    const doc = three()
    const written: unknown[] = []
    const undo = undoFor(doc, { onTaken() {}, onKept() {}, writeField: (step) => void written.push(step) })
    type(doc, 'a', 0, 'x')
    undo.wroteField({ field: 'checked', from: '', to: 'R. Marsh' })
    type(doc, 'a', 0, 'y')
    undo.undo()
    expect(snapshotOf(doc).cells[0]?.source).toBe('xconst a = 1')
    undo.undo()
    expect(written).toEqual([{ field: 'checked', from: 'R. Marsh', to: '' }])
    undo.undo()
    expect(snapshotOf(doc).cells[0]?.source).toBe('const a = 1')
    expect([undo.canUndo(), undo.canRedo()]).toEqual([false, true])
    undo.redo()
    undo.redo()
    expect(written).toHaveLength(2)
    expect(written[1]).toEqual({ field: 'checked', from: '', to: 'R. Marsh' })
    undo.redo()
    expect(snapshotOf(doc).cells[0]?.source).toBe('yxconst a = 1')
    expect(undo.canRedo()).toBe(false)
  })

  it('a new edit makes undone fields impossible to redo, and a written field undone edits', () => {
    const doc = three()
    const undo = undoFor(doc)
    undo.wroteField({ field: 'date', from: '', to: 'May' })
    undo.undo()
    expect(undo.canRedo()).toBe(true)
    type(doc, 'a', 0, 'x')
    expect(undo.canRedo()).toBe(false)
    undo.undo()
    undo.wroteField({ field: 'date', from: '', to: 'June' })
    expect(undo.canRedo()).toBe(false)
  })
})

describe('carrying work into a new life of the document', () => {
  it('carryOver(confirmed, mine, target) brings kinds, numbers and places along', () => {
    const confirmed = three()
    const mine = offline(confirmed)
    moveCellTo(mine, id('c'), 0)
    changeKind(mine, id('b'), 'rationale')
    addCell(mine, 'sizing', id('a'), id('x'), 'x')
    const target = three()
    carryOver(snapshotOf(confirmed), snapshotOf(mine), target)
    expect(snapshotOf(target).cells.map(({ id, kind }) => `${id} ${kind}`)).toEqual([
      'c sizing',
      'a sizing',
      'x sizing',
      'b rationale',
    ])
    expect(seen(target)).toBe(seen(mine))
  })
})
