import { describe, expect, it } from 'vitest'
import { OpenLines } from '../../../client/sheet/open-lines.js'

function memory(held: Record<string, string> = {}) {
  return {
    held,
    getItem: (key: string) => held[key] ?? null,
    setItem: (key: string, value: string) => {
      held[key] = value
    },
    removeItem: (key: string) => {
      delete held[key]
    },
  }
}

describe('OpenLines', () => {
  it('note(cell, open) is remembered for the next visit to the same notebook', () => {
    const kept = memory()
    const lines = new OpenLines('skerry', kept)
    lines.note('hover', true)
    lines.note('cruise', true)
    lines.note('hover', false)
    expect(['hover', 'cruise'].map((cell) => new OpenLines('skerry', kept).isOpen(cell))).toEqual([false, true])
    expect(new OpenLines('tern', kept).isOpen('cruise')).toBe(false)
    lines.note('cruise', false)
    expect(kept.held).toEqual({})
  })

  it('note(cell, open) works without a storage, and with one that refuses', () => {
    const refuse = () => {
      throw new Error('forbidden')
    }
    for (const storage of [undefined, { getItem: refuse, setItem: refuse, removeItem: refuse }]) {
      const lines = new OpenLines('skerry', storage)
      lines.note('hover', true)
      expect(lines.isOpen('hover')).toBe(true)
    }
  })
})
