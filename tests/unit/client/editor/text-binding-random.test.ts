/** Seeded random sessions of two people in one cell: converged, buffers equal to the document, carets with their character. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { TextBinding } from '../../../../client/editor/binding/text-binding.js'
import { fromServer, ownEdit } from '../../../../client/live/document.js'
import { FakeModel } from './fake-model.js'

const seed = 20_260_731
const step = fc.record({
  who: fc.integer({ min: 0, max: 1 }),
  what: fc.constantFrom('type', 'type', 'type', 'twice', 'undo', 'redo', 'exchange', 'deliver', 'caret'),
  place: fc.double({ min: 0, max: 1, noNaN: true }),
  removed: fc.integer({ min: 0, max: 4 }),
  inserted: fc.stringMatching(/^[a-z \n]{0,5}$/),
})

class Person {
  readonly doc = new Y.Doc()
  readonly text = this.doc.getText('cell')
  readonly undo = new Y.UndoManager([this.text], { trackedOrigins: new Set([ownEdit]), captureTimeout: 0 })
  readonly model = new FakeModel()
  readonly binding = new TextBinding(this.model, this.text, this.undo, () => undefined)
  readonly arriving: Uint8Array[] = []

  constructor(clientID: number) {
    this.doc.clientID = clientID
  }

  receive(one: boolean): void {
    for (const update of this.arriving.splice(0, one ? 1 : this.arriving.length))
      this.#followed(() => Y.applyUpdate(this.doc, update, fromServer))
  }

  /**
   * The caret stays with the character left of it. Where that very character was replaced it may stand before or after what
   * replaced it; ours stands after, as when a word that one has just typed is renamed by someone else.
   */
  #followed(change: () => void): void {
    const caret = this.model.selections()[0]?.caret ?? 0
    const before = Y.createRelativePositionFromTypeIndex(this.text, caret, -1)
    const applied = this.model.applied.length
    change()
    const edits = this.model.applied.slice(applied).flat()
    const replaced = edits.some((edit) => edit.inserted !== '' && edit.removed > 0 && edit.at + edit.removed === caret)
    expect(this.model.value()).toBe(this.text.toString())
    if (replaced) return
    const expected = Y.createAbsolutePositionFromRelativePosition(before, this.doc)?.index
    expect(this.model.selections()[0]?.caret).toBe(expected)
  }
}

describe('TextBinding in random sessions', () => {
  it(`converges and keeps carets whatever two people do at once (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const people = [new Person(1), new Person(2)] as const
        for (const [index, person] of people.entries())
          person.doc.on('update', (update: Uint8Array, origin: unknown) => {
            if (origin !== fromServer) people[1 - index]?.arriving.push(update)
          })
        for (const { who, what, place, removed, inserted } of steps) {
          const person = people[who] as Person
          const length = person.model.value().length
          const at = Math.floor(place * (length + 1))
          const edit = { at, removed: Math.min(removed, length - at), inserted }
          if (what === 'type') person.model.type(edit)
          else if (what === 'twice') {
            const second = Math.min(length, edit.at + edit.removed + 1)
            if (second > edit.at + edit.removed) person.model.type(edit, { at: second, removed: 0, inserted })
          } else if (what === 'undo') person.undo.undo()
          else if (what === 'redo') person.undo.redo()
          else if (what === 'caret') person.model.select([{ anchor: at, caret: at }])
          else person.receive(what === 'deliver')
          expect(person.model.value()).toBe(person.text.toString())
        }
        for (let round = 0; round < 3; round++) for (const person of people) person.receive(false)
        expect(people[0].model.value()).toBe(people[1].model.value())
      }),
      { seed, numRuns: 300 },
    )
  })
})
