/** Fields of the title block that wait for the server, over reloads. */
import { describe, expect, it } from 'vitest'
import { type FieldStorage, WaitingFields } from '../../../client/notebook/waiting-fields.js'

function memory(): FieldStorage & { readonly entries: Map<string, string> } {
  const entries = new Map<string, string>()
  return {
    entries,
    getItem: (key) => entries.get(key) ?? null,
    setItem: (key, text) => void entries.set(key, text),
    removeItem: (key) => void entries.delete(key),
  }
}

const step = (from: string, to: string) => ({ field: 'checked' as const, from, to })

describe('WaitingFields', () => {
  it('WaitingFields keeps over a reload what was written last against what the server had', () => {
    const storage = memory()
    const before = new WaitingFields('n', storage)
    expect(before.put(step('A', 'B'))).toEqual(step('A', 'B'))
    expect(before.put(step('B', 'C'))).toEqual(step('A', 'C'))
    const after = new WaitingFields('n', storage)
    expect(after.all).toEqual([step('A', 'C')])
    expect(after.over({ checked: 'A', project: 'P' })).toEqual({ checked: 'C', project: 'P' })
    expect(new WaitingFields('other', storage).all).toEqual([])
  })

  it('WaitingFields lets go of what was sent, and goes on from it with what was written meanwhile', () => {
    const storage = memory()
    const fields = new WaitingFields('n', storage)
    fields.put(step('A', 'B'))
    fields.put(step('B', 'C'))
    fields.sent(step('A', 'B'))
    expect(fields.all).toEqual([step('B', 'C')])
    fields.sent(step('B', 'C'))
    fields.sent(step('B', 'C'))
    expect([fields.all, storage.entries.size]).toEqual([[], 0])
  })

  it('WaitingFields has nothing to send when a field is back to what it was, or was given up', () => {
    const fields = new WaitingFields('n', memory())
    fields.put(step('A', 'B'))
    expect(fields.put(step('B', 'A'))).toBeNull()
    fields.put(step('A', 'B'))
    fields.remove('checked')
    expect(fields.all).toEqual([])
  })

  it('WaitingFields works without storage, and passes over what it cannot read', () => {
    const storage = memory()
    storage.setItem('hoverfolio unsaved fields n', '[{"field":"unheard of"}]')
    expect(new WaitingFields('n', storage).all).toEqual([])
    const full = new WaitingFields('n', {
      ...storage,
      setItem: () => {
        throw new Error('the storage is full')
      },
    })
    full.put(step('A', 'B'))
    expect(full.all).toEqual([step('A', 'B')])
    expect(new WaitingFields('n', undefined).put(step('A', 'B'))).toEqual(step('A', 'B'))
  })
})
