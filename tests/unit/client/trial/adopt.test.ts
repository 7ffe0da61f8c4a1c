import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { addCell, removeCell } from '../../../../client/live/cell-operations.js'
import { ownEdit, sourceOf } from '../../../../client/live/document.js'
import { undoFor } from '../../../../client/live/undo.js'
import { adoptTrials } from '../../../../client/trial/adopt.js'
import { forgetfulTrials } from '../../../../client/trial/trial-memory.js'
import { TrialValues } from '../../../../client/trial/trial-values.js'
import { CellId } from '../../../../shared/contracts/index.js'
import type { AssumptionRow } from '../../../../shared/rendering/page.js'

const needs = CellId.parse('needs')
const more = CellId.parse('more')
const sources = {
  needs:
    "const payload = assumption('payload', 400 * u.kg) // kept\nconst energy = assumption('energy', 235 * u.Wh / u.kg)",
  more: "const seats = assumption('seats', people * 2)\nconst share = assumption('share', 0.25)",
}
const said: Record<string, number> = { payload: 400, energy: 235 * 3600, seats: 8, share: 0.25 }

function bench() {
  const doc = new Y.Doc()
  doc.transact(() => {
    addCell(doc, 'sizing', null, needs, sources.needs)
    addCell(doc, 'sizing', needs, more, sources.more)
  }, ownEdit)
  const names: (string | null)[] = []
  const undo = undoFor(doc, { onTaken: (_, name) => names.push(name), onKept() {}, writeField() {} })
  const document = { ...said }
  const values = new TrialValues(forgetfulTrials, { said: (name) => document[name], onChange() {} })
  values.know(Object.keys(said), true)
  const rows = () =>
    Object.entries(document).map(
      ([name, value], order): AssumptionRow => ({
        name,
        cell: name === 'payload' || name === 'energy' ? needs : more,
        number: '1',
        order,
        state: 'current',
        record: { name, value },
        dimension: name === 'payload' ? 'kg' : null,
        usedIn: [],
      }),
    )
  return {
    doc,
    undo,
    names,
    values,
    document,
    adopt: (...which: readonly string[]) => adoptTrials(values, which, rows(), () => ({ doc, undo })),
    text: (cell: CellId) => sourceOf(doc, cell)?.toString(),
  }
}

describe('adoptTrials(values, names, rows, live)', () => {
  it('writes all values as one step, with the formatting kept, and undo takes it back', async () => {
    const { values, adopt, text, undo, names } = bench()
    values.tryPoint({ payload: 420, energy: 250 * 3600, share: 0.2 })
    expect(await adopt('payload', 'energy', 'share')).toEqual({ adopted: ['payload', 'energy', 'share'], refusals: [] })
    expect(text(needs)).toBe(sources.needs.replace('400', '420').replace('235', '250'))
    expect(text(more)).toBe(sources.more.replace('0.25', '0.2'))
    expect(undo.undoStack).toHaveLength(1)
    undo.undo()
    expect([text(needs), text(more)]).toEqual([sources.needs, sources.more])
    expect(names).toEqual(['3 trial values'])
  })

  it('leaves on trial what is adopted, until the document says the same', async () => {
    const { values, adopt, document, names, undo } = bench()
    values.set('payload', 420)
    await adopt('payload')
    expect(values.point()).toEqual({ payload: 420 })
    document.payload = 420
    values.settle()
    expect(values.point()).toEqual({})
    undo.undo()
    expect(names).toEqual(['the trial value of payload'])
  })

  it('adopts what can be, and says of the rest why not; its trial goes on', async () => {
    const { values, adopt, text } = bench()
    values.tryPoint({ seats: 10, share: 0.2 })
    const { adopted, refusals } = await adopt('seats', 'share', 'nobody')
    expect(adopted).toEqual(['share'])
    expect(refusals).toEqual([expect.stringContaining('is worked out from people')])
    expect(text(more)).toBe(sources.more.replace('0.25', '0.2'))
    expect(values.point()).toEqual({ seats: 10, share: 0.2 })
  })

  it('asks once more where somebody has changed the assumption meanwhile', async () => {
    const { values, adopt, text, document } = bench()
    values.set('payload', 420)
    document.payload = 410
    expect((await adopt('payload')).refusals).toEqual([
      expect.stringMatching(
        /"payload" was changed meanwhile: the document says 410.kg, and said 400.kg .* Adopt again to write 420.kg\./,
      ),
    ])
    expect(text(needs)).toBe(sources.needs)
    expect((await adopt('payload')).adopted).toEqual(['payload'])
  })

  it('says that an assumption or its cell was removed meanwhile, and loses nothing', async () => {
    const { values, adopt, document, doc } = bench()
    values.tryPoint({ payload: 420, share: 0.2 })
    removeCell(doc, more)
    expect((await adopt('share')).refusals).toEqual(['The cell that states "share" was removed meanwhile.'])
    delete document.payload
    expect((await adopt('payload')).refusals).toEqual([expect.stringContaining('states "payload" at present')])
    expect(values.point()).toEqual({ payload: 420, share: 0.2 })
  })
})
