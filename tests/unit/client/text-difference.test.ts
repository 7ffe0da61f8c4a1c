import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyDifference, differenceOf, mapOffset } from '../../../client/live/text-difference.js'

describe('differenceOf', () => {
  it('differenceOf(a, a) is null', () => {
    expect(differenceOf('same', 'same')).toBeNull()
  })

  it('differenceOf(before, after) replaces only what changed', () => {
    expect(differenceOf('payload = 400 kg', 'payload = 420 kg')).toEqual({ at: 11, removed: 1, inserted: '2' })
  })

  it('differenceOf(before, after, caret) places a repeated letter where it was typed', () => {
    expect(differenceOf('aaa', 'aaaa', 2)).toEqual({ at: 1, removed: 0, inserted: 'a' })
    expect(differenceOf('aaa', 'aaaa', 4)).toEqual({ at: 3, removed: 0, inserted: 'a' })
    expect(differenceOf('aaa', 'aa', 1)).toEqual({ at: 1, removed: 1, inserted: '' })
  })

  it('differenceOf(before, after) never cuts a surrogate pair', () => {
    // Both rotors share their first unit; only the second differs.
    const difference = differenceOf('a\u{1F681}b', 'a\u{1F680}b')
    expect(difference).toEqual({ at: 1, removed: 2, inserted: '\u{1F680}' })
    // Different first unit, same second unit.
    expect(differenceOf('\u{1F400}', '\u{1D400}')?.removed).toBe(2)
  })

  it('applyDifference(before, differenceOf(before, after, caret)) gives after', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', '\n', '\u{1F681}', '\u{1F680}'), maxLength: 12 })
    fc.assert(
      fc.property(text, text, fc.nat(30), (before, after, caret) => {
        const difference = differenceOf(before, after, Math.min(caret, after.length))
        expect(difference === null ? before : applyDifference(before, difference)).toBe(after)
      }),
    )
  })
})

describe('mapOffset', () => {
  it('mapOffset(offset, difference) moves a caret behind the change and leaves one before it', () => {
    const difference = { at: 3, removed: 2, inserted: 'wxyz' }
    expect(mapOffset(2, difference)).toBe(2)
    expect(mapOffset(3, difference)).toBe(3)
    expect(mapOffset(4, difference)).toBe(4)
    expect(mapOffset(9, difference)).toBe(11)
  })

  it('mapOffset(offset, difference) keeps a caret in removed text inside the new text', () => {
    expect(mapOffset(7, { at: 2, removed: 10, inserted: 'ab' })).toBe(4)
  })
})
