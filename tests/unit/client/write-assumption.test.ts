import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { addCell, removeCell } from '../../../client/live/cell-operations.js'
import { ownEdit, sourceOf } from '../../../client/live/document.js'
import { undoFor } from '../../../client/live/undo.js'
import { writeAssumption } from '../../../client/register/write-assumption.js'
import { CellId, limits } from '../../../shared/contracts/index.js'

const cell = CellId.parse('needs')
const source = "const payload = assumption('payload', 400 * u.kg, { source: 'brief' }) // kept"

function notebook(text = source) {
  const doc = new Y.Doc()
  doc.transact(() => addCell(doc, 'sizing', null, cell, text), ownEdit)
  const said: (string | null)[] = []
  const undo = undoFor(doc, { onTaken: (_, name) => said.push(name), onKept() {}, writeField() {} })
  return { doc, undo, said, live: () => ({ doc, undo }), text: () => sourceOf(doc, cell)?.toString() }
}

describe('writeAssumption(live, cell, name, change)', () => {
  it('writes into the source and is one step of undo, under its name', async () => {
    const { live, undo, said, text } = notebook()
    expect(await writeAssumption(live, cell, 'payload', { value: 440, source: 'letter' })).toBeNull()
    expect(text()).toBe("const payload = assumption('payload', 440 * u.kg, { source: 'letter' }) // kept")
    expect(undo.undoStack).toHaveLength(1)
    undo.undo()
    expect(text()).toBe(source)
    expect(said).toEqual(['the value and source of payload'])
  })

  it('keeps what another person writes in the same cell', async () => {
    const { live, doc, text } = notebook()
    sourceOf(doc, cell)?.insert(0, '// theirs\n')
    expect(await writeAssumption(live, cell, 'payload', { value: 440 })).toBeNull()
    expect(text()).toBe(`// theirs\n${source.replace('400', '440')}`)
  })

  it('writes hostile text as text of the source', async () => {
    const { live, text } = notebook()
    const hostile = `'}); alert("x") //\u202e\n</script>`
    expect(await writeAssumption(live, cell, 'payload', { source: hostile })).toBeNull()
    const written = /source: (.*) \}\) \/\/ kept$/s.exec(text() ?? '')?.[1] ?? ''
    expect(new Function(`return ${written}`)()).toBe(hostile)
  })

  it('says why a change cannot be made, and changes nothing', async () => {
    expect(await writeAssumption(() => undefined, cell, 'payload', { value: 1 })).toContain('not connected yet')
    const derived = notebook("const payload = assumption('payload', seats * 90)")
    expect(await writeAssumption(derived.live, cell, 'payload', { value: 1 })).toContain('is worked out from seats')
    expect(derived.undo.undoStack).toHaveLength(0)
    const long = notebook()
    const refusal = await writeAssumption(long.live, cell, 'payload', { note: 'x'.repeat(limits.sourceCharacters) })
    expect(refusal).toContain('at most')
    expect(long.text()).toBe(source)
    removeCell(long.doc, cell)
    expect(await writeAssumption(long.live, cell, 'payload', { value: 1 })).toContain('was removed meanwhile')
  })
})
