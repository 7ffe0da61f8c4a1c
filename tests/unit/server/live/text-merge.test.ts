import { describe, expect, it } from 'vitest'
import { mergeText } from '../../../../server/live/text-merge.js'
import { seededChance } from '../../../lab/index.js'

function merged(base: string, outside: string, live: string): string {
  let text = live
  for (const { at, remove, insert } of mergeText(base, outside, live))
    text = text.slice(0, at) + insert + text.slice(at + remove)
  return text
}

describe('mergeText', () => {
  it.each([
    ['the outside change alone', 'a b c', 'a B c', 'a b c', 'a B c'],
    ['a live change alone', 'a b c', 'a b c', 'a b C', 'a b C'],
    ['both, apart', 'one\ntwo\nthree', 'ONE\ntwo\nthree', 'one\ntwo\nTHREE', 'ONE\ntwo\nTHREE'],
    [
      'both in one line',
      'const mass = 1',
      'const mass = 1 * u.kg',
      'const grossMass = 1',
      'const grossMass = 1 * u.kg',
    ],
    ['a line added outside to an emptied text', 'x', 'x\ny', '', '\ny'],
    ['a deletion of what is gone already', 'x\ny\nz', 'x\nz', 'x\nz', 'x\nz'],
    ['the same change on both sides', 'a', 'ab', 'ab', 'ab'],
    ['from nothing', '', 'new', '', 'new'],
  ])('mergeText takes %s', (_, base, outside, live, expected) => {
    expect(merged(base, outside, live)).toBe(expected)
  })

  it('mergeText gives the outside text when nothing changed here, for random edits (seed 11)', () => {
    const chance = seededChance(11)
    for (let round = 0; round < 300; round += 1) {
      const base = randomText(chance)
      const outside = randomEdit(chance, base)
      expect(merged(base, outside, base)).toBe(outside)
      expect(merged(base, base, outside)).toBe(outside)
      expect(merged(base, outside, outside)).toBe(outside)
    }
  })

  it('mergeText keeps every live insertion and every outside insertion, for random edits (seed 12)', () => {
    const chance = seededChance(12)
    for (let round = 0; round < 300; round += 1) {
      const base = randomText(chance)
      const place = chance.whole(base.length + 1)
      const other = chance.whole(base.length + 1)
      const live = `${base.slice(0, place)}LIVE${base.slice(place)}`
      const outside = `${base.slice(0, other)}OUTSIDE${base.slice(other)}`
      const text = merged(base, outside, live)
      expect(text.replace('LIVE', '').replace('OUTSIDE', '')).toBe(base)
    }
  })
})

type Chance = ReturnType<typeof seededChance>
const words = ['mass', ' ', '\n', 'wing', '=', '1', 'é', '\n\n', 'rotor', '🚁']
const randomText = (chance: Chance) => Array.from({ length: chance.whole(40) }, () => chance.pick(words)).join('')

function randomEdit(chance: Chance, text: string): string {
  const from = chance.whole(text.length + 1)
  const to = Math.min(text.length, from + chance.whole(8))
  return text.slice(0, from) + randomText(chance).slice(0, 12) + text.slice(to)
}
