import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mergeLines } from '../../../client/live/line-merge.js'

const text = (...lines: string[]) => lines.join('\n')

describe('mergeLines', () => {
  it('mergeLines(base, mine, theirs) keeps changes of different lines from both', () => {
    expect(mergeLines(text('a', 'b', 'c'), text('A', 'b', 'c'), text('a', 'b', 'C'))).toBe(text('A', 'b', 'C'))
  })

  it('mergeLines(base, mine, theirs) does not make a change twice that they already have', () => {
    const base = text('a', 'b')
    const mine = text('a', 'new', 'b')
    expect(mergeLines(base, mine, text('a', 'new', 'b', 'more'))).toBe(text('a', 'new', 'b', 'more'))
    expect(mergeLines(base, mine, mine)).toBe(mine)
  })

  it('mergeLines(base, mine, theirs) keeps both versions of a line that both changed, theirs first', () => {
    expect(mergeLines(text('a', 'b', 'c'), text('a', 'mine', 'c'), text('a', 'theirs', 'c'))).toBe(
      text('a', 'theirs', 'mine', 'c'),
    )
  })

  it('mergeLines(base, mine, theirs) with one side unchanged gives the other side', () => {
    const any = fc.array(fc.constantFrom('a', 'b', 'c', ''), { maxLength: 6 }).map((lines) => lines.join('\n'))
    fc.assert(
      fc.property(any, any, (base, changed) => {
        expect(mergeLines(base, changed, base)).toBe(changed)
        expect(mergeLines(base, base, changed)).toBe(changed)
        expect(mergeLines(base, changed, changed)).toBe(changed)
      }),
    )
  })

  it('mergeLines(base, mine, theirs) loses no line that either side wrote', () => {
    const lines = (letters: readonly string[]) =>
      fc.array(fc.constantFrom(...letters), { maxLength: 6 }).map((all) => all.join('\n'))
    fc.assert(
      fc.property(
        lines(['a', 'b', 'c']),
        lines(['a', 'b', 'c', 'm1', 'm2']),
        lines(['a', 'b', 'c', 't1', 't2']),
        (base, mine, theirs) => {
          const merged = new Set(mergeLines(base, mine, theirs).split('\n'))
          for (const line of mine.split('\n')) if (line.startsWith('m')) expect(merged).toContain(line)
          for (const line of theirs.split('\n')) if (line.startsWith('t')) expect(merged).toContain(line)
        },
      ),
    )
  })
})
