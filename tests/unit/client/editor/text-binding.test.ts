import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { TextBinding } from '../../../../client/editor/binding/text-binding.js'
import { fromServer, ownEdit } from '../../../../client/live/document.js'
import { limits } from '../../../../shared/contracts/index.js'
import { FakeModel } from './fake-model.js'

function person(source = '') {
  const doc = new Y.Doc()
  const text = doc.getText('cell')
  text.insert(0, source)
  return bound(doc)
}

function bound(doc: Y.Doc) {
  const text = doc.getText('cell')
  const undo = new Y.UndoManager([text], { trackedOrigins: new Set([ownEdit]), captureTimeout: 0 })
  const model = new FakeModel()
  const refusals: string[] = []
  const binding = new TextBinding(model, text, undo, (sentence) => refusals.push(sentence))
  return { doc, text, undo, model, binding, refusals }
}

/** Two people with the same document; `exchange` delivers everything both ways. */
function twoPeople(source: string) {
  const a = person(source)
  const doc = new Y.Doc()
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(a.doc), fromServer)
  const b = bound(doc)
  const exchange = () => {
    const toB = Y.encodeStateAsUpdate(a.doc, Y.encodeStateVector(b.doc))
    const toA = Y.encodeStateAsUpdate(b.doc, Y.encodeStateVector(a.doc))
    Y.applyUpdate(b.doc, toB, fromServer)
    Y.applyUpdate(a.doc, toA, fromServer)
  }
  return { a, b, exchange }
}

describe('TextBinding', () => {
  it('new TextBinding(...) fills the buffer from the document', () => {
    expect(person('const a = 1').model.value()).toBe('const a = 1')
  })

  it('typing reaches the document, several carets at once in the right places', () => {
    const { model, text } = person('abcdef')
    model.type({ at: 1, removed: 1, inserted: 'XY' }, { at: 4, removed: 0, inserted: '!' })
    expect(text.toString()).toBe('aXYcd!ef')
    expect(model.value()).toBe('aXYcd!ef')
  })

  it("another person's edit comes in as the smallest edit and leaves caret and selection where they were", () => {
    const { a, b, exchange } = twoPeople('const range = 85')
    a.model.select([{ anchor: 6, caret: 11 }])
    b.model.type({ at: 0, removed: 0, inserted: '// how far\n' })
    exchange()
    expect(a.model.applied.at(-1)).toEqual([{ at: 0, removed: 0, inserted: '// how far\n' }])
    expect(a.model.selections()).toEqual([{ anchor: 17, caret: 22 }])
  })

  it('a whole text pasted over itself changes only what differs, so that the other keeps their place', () => {
    const { a, b, exchange } = twoPeople('const first = 1\nconst last = 2')
    a.model.select([{ anchor: 30, caret: 30 }])
    b.model.type({ at: 0, removed: 30, inserted: 'const first = 1111\nconst last = 2' })
    exchange()
    expect(a.model.selections()).toEqual([{ anchor: 33, caret: 33 }])
    a.model.type({ at: 33, removed: 0, inserted: '3' })
    exchange()
    expect(b.text.toString()).toBe('const first = 1111\nconst last = 23')
  })

  it('text that another person inserts at the caret comes after it', () => {
    const { a, b, exchange } = twoPeople('ab')
    a.model.select([{ anchor: 1, caret: 1 }])
    b.model.type({ at: 1, removed: 0, inserted: 'XYZ' })
    exchange()
    expect(a.model.selections()).toEqual([{ anchor: 1, caret: 1 }])
  })

  it('undo() takes back only what this person typed and puts the caret there', () => {
    const { a, b, exchange } = twoPeople('one two')
    a.model.type({ at: 3, removed: 0, inserted: ' and a half' })
    exchange()
    b.model.type({ at: 0, removed: 0, inserted: '> ' })
    exchange()
    a.undo.undo()
    exchange()
    expect(a.model.value()).toBe('> one two')
    expect(b.model.value()).toBe('> one two')
    expect(a.model.selections()).toEqual([{ anchor: 5, caret: 5 }])
    a.undo.redo()
    expect(a.model.value()).toBe('> one and a half two')
    expect(a.model.selections()).toEqual([{ anchor: 16, caret: 16 }])
  })

  it('a text beyond the limit is refused with a sentence and the buffer goes back', () => {
    const { model, text, refusals } = person('short')
    model.type({ at: 0, removed: 0, inserted: 'x'.repeat(limits.sourceCharacters) })
    expect(model.value()).toBe('short')
    expect(text.toString()).toBe('short')
    expect(refusals[0]).toContain(`at most ${limits.sourceCharacters} are accepted`)
  })

  it('carriage returns leave the document, so that places agree from then on', () => {
    const { model, text } = person('a\r\nb\rc')
    expect(model.value()).toBe('a\nb\nc')
    expect(text.toString()).toBe('a\nb\nc')
    model.type({ at: 2, removed: 1, inserted: 'B' })
    expect(text.toString()).toBe('a\nB\nc')
  })

  it('dispose() ends the binding in both directions', () => {
    const { model, text, binding } = person('a')
    binding.dispose()
    model.type({ at: 1, removed: 0, inserted: 'b' })
    text.insert(0, 'c')
    expect(model.value()).toBe('ab')
    expect(text.toString()).toBe('ca')
  })
})
