import { describe, expect, it } from 'vitest'
import { divide } from '../../../client/live/divide.js'
import { gapAt, placeForGap } from '../../../client/sheet/drop-place.js'

function parts(source: string, kind: 'rationale' | 'sizing', line: number, column = 1) {
  const division = divide(source, kind, { line, column })
  if (!division.ok) return division.message
  return {
    upper: source.slice(0, division.upperEnd),
    lower: source.slice(division.lowerStart),
    caret: division.caret,
  }
}

describe('divide', () => {
  it('divide(source, kind, caret) divides before the line of the caret, which stays on its character', () => {
    expect(parts('const a = 1\nconst b = 2\nconst c = 3', 'sizing', 2, 7)).toEqual({
      upper: 'const a = 1',
      lower: 'const b = 2\nconst c = 3',
      caret: { part: 'lower', line: 1, column: 7 },
    })
  })

  it('divide(source, kind, caret) divides behind the line when the caret is at its end', () => {
    expect(parts('const a = 1\nconst b = 2', 'sizing', 1, 12)).toEqual({
      upper: 'const a = 1',
      lower: 'const b = 2',
      caret: { part: 'upper', line: 1, column: 12 },
    })
  })

  it('divide(source, kind, caret) leaves out blank lines between the halves', () => {
    expect(parts('one\n\n\ntwo', 'rationale', 3)).toEqual({
      upper: 'one',
      lower: 'two',
      caret: { part: 'lower', line: 1, column: 1 },
    })
    expect(parts('one\n\n\ntwo', 'rationale', 4)).toMatchObject({ upper: 'one', lower: 'two' })
  })

  it.each([
    ['above all text', 'const a = 1\nconst b = 2', 'sizing', 1, 'both cells would need some text'],
    ['below all text', 'const a = 1\n\n', 'sizing', 3, 'both cells would need some text'],
    ['in a bracket', 'const a = [\n  1,\n  2,\n]\nconst b = 1', 'sizing', 3, 'line 1 opens a bracket'],
    ['in a text of several lines', 'const a = `one\ntwo`\nconst b = 1', 'sizing', 2, 'line 1 opens a text'],
    ['in a comment', 'const x = 1\n/* one\ntwo */\nconst b = 1', 'sizing', 3, 'line 2 opens a comment'],
    ['in a formula', 'Words\n\n$$\nx = 1\n$$', 'rationale', 4, 'line 3 opens a formula'],
    ['in a block of code', '```\na\n$$\nb\n```\nend', 'rationale', 4, 'line 1 opens a block of code'],
  ] as const)('divide(source, kind, caret) refuses %s', (_, source, kind, line, words) => {
    expect(parts(source, kind, line)).toContain(words)
  })

  it('divide(source, kind, caret) is not misled by brackets in texts and comments, or by formulas that are closed', () => {
    expect(parts("const a = '(' // {\nconst b = 2", 'sizing', 2)).toMatchObject({ lower: 'const b = 2' })
    expect(parts('$$ x = 1 $$\n\n$$\ny\n$$\nend', 'rationale', 6)).toMatchObject({ lower: 'end' })
  })
})

describe('where a dragged cell lands', () => {
  const rows = [
    { top: 0, bottom: 100 },
    { top: 100, bottom: 120 },
    { top: 120, bottom: 400 },
  ]

  it('gapAt(rows, y) is the gap nearest to the pointer', () => {
    expect([-50, 49, 51, 109, 111, 250, 270, 999].map((y) => gapAt(rows, y))).toEqual([0, 0, 1, 1, 2, 2, 3, 3])
  })

  it('placeForGap(from, gap) is the place among the cells once the dragged one has left its own', () => {
    expect([0, 1, 2, 3].map((gap) => placeForGap(1, gap))).toEqual([0, 1, 1, 2])
  })
})
