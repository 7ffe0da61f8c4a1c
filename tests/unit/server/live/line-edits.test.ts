import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { carryLines } from '../../../../server/live/line-edits.js'
import { seededChance } from '../../../lab/index.js'

function carried(base: string, now: string, target: string): string {
  const text = new Y.Doc().getText()
  text.insert(0, target)
  carryLines(base, now, text)
  return text.toString()
}

describe('carryLines', () => {
  it('carryLines(base, now, target) makes the same change where the lines stand in the target', () => {
    expect(carried('b', 'b\nc', 'a\n\nb')).toBe('a\n\nb\nc')
    expect(carried('b\nc', 'x\nb\nc', 'a\nb\nc\nd')).toBe('x\na\nb\nc\nd')
    expect(carried('a\nb\nc', 'a\nx\nb\nc', 'a\nb\nc\nd')).toBe('a\nx\nb\nc\nd')
    expect(carried('a\nb', 'a', 'a\nb')).toBe('a')
    expect(carried('a\nb', 'b', 'a\nb')).toBe('b')
    expect(carried('a', 'x', 'a')).toBe('x')
  })

  it('carryLines(base, now, target) keeps both where the target has changed the same line', () => {
    expect(carried('const b = 2', 'const b = 3', 'const a = 1\n\nconst b = 2 * 2')).toContain('const b = 3')
    expect(carried('const b = 2', 'const b = 3', 'const a = 1\n\nconst b = 2 * 2')).toContain('const b = 2 * 2')
  })

  it.each([1, 2, 3, 4, 5])(
    'carryLines(base, now, target) loses no new line and no line of others (seed %i)',
    (seed) => {
      const chance = seededChance(seed)
      for (let round = 0; round < 60; round += 1) {
        const base = Array.from({ length: chance.whole(5) }, () => chance.pick(['a', 'b', 'c', '']))
        const grow = (lines: readonly string[], mark: string) => {
          const grown = [...lines]
          for (let count = chance.whole(3); count > 0; count -= 1)
            grown.splice(chance.whole(grown.length + 1), 0, `${mark}${count}`)
          return grown
        }
        const [now, target] = [grow(base, 'mine'), grow(base, 'theirs')]
        const lines = carried(base.join('\n'), now.join('\n'), target.join('\n')).split('\n')
        expect(lines).toEqual(expect.arrayContaining([...now, ...target].filter((line) => /mine|theirs/.test(line))))
      }
    },
  )
})
