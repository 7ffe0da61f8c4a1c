import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readHeading, readTokens, renderCode, tokenLines } from '../../../shared/rendering/index.js'
import { cellId, newDocument } from './support.js'

const kinds = (source: string) =>
  readTokens(source)
    .filter((token) => token.kind !== 'plain')
    .map((token) => `${token.kind} ${token.text}`)

describe('readTokens', () => {
  it('readTokens(source) tells comments, texts, numbers and key words apart', () => {
    expect(kinds("const a = 1.5e3 * u.m // 'not a text'\n/* two\nlines */ let b = 'x\\'y' + `t of $1`")).toEqual([
      'keyword const',
      'number 1.5e3',
      "comment // 'not a text'",
      'comment /* two\nlines */',
      'keyword let',
      "text 'x\\'y'",
      'text `t of $1`',
    ])
  })

  it('readTokens(source) leaves digits in names and members named like key words alone', () => {
    expect(kinds('rotor2.default + x1e5 + a.if')).toEqual([])
    expect(kinds('0xFF + .5 + 1_000 + 10n')).toEqual(['number 0xFF', 'number .5', 'number 1_000', 'number 10n'])
  })

  it('readTokens(source) ends an open text at its line and an open comment at the end', () => {
    expect(kinds("const a = 'open\nconst b = 1")).toEqual(['keyword const', "text 'open", 'keyword const', 'number 1'])
    expect(kinds('/* open')).toEqual(['comment /* open'])
  })

  it('readTokens(source) joined is the source, for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (source) => {
        expect(
          readTokens(source)
            .map((token) => token.text)
            .join(''),
        ).toBe(source)
      }),
      { seed: 20260504, numRuns: 300 },
    )
  })

  it('tokenLines(source) has one entry per line', () => {
    expect(tokenLines('a\n\n/* x\ny */').length).toBe(4)
    expect(tokenLines('').length).toBe(1)
  })
})

describe('readHeading', () => {
  it.each([
    [
      '// Hover power\n// With a remark\n\nconst a = 1\nconst b = 2',
      'Hover power',
      'With a remark',
      '2 lines of TypeScript',
    ],
    ['\n\n  //   Padded   \nconst a = 1', 'Padded', '', '1 line of TypeScript'],
    ['const a = 1 // not a heading', '', '', '1 line of TypeScript'],
    ['/* block */\nconst a = 1', '', '', '2 lines of TypeScript'],
    ['', '', '', '0 lines of TypeScript'],
  ])('readHeading(%j) takes the comment lines that open the source', (source, title, remark, lines) => {
    expect(readHeading(source)).toEqual({ title, remark, lines })
  })
})

describe('renderCode', () => {
  it('renderCode(document, cell) keeps text and marks of thousands of lines, and spares them the colours', () => {
    const source = Array.from({ length: 1001 }, (_, index) => `const x${index} = ${index}`).join('\n')
    const at = { cell: cellId('a'), line: 900, column: 1, length: 1, kind: 'syntax', message: '' } as const
    const findings = (['warning', 'error', 'warning'] as const).map((severity) => ({ ...at, severity }))
    const made = renderCode(newDocument(), { id: 'a', source, findings })
    expect(made.textContent).toBe(source)
    expect(made.querySelectorAll('.line')).toHaveLength(1001)
    expect(made.querySelectorAll('.line > span')).toHaveLength(0)
    expect(made.querySelector('#cell-a-line-900')?.getAttribute('data-severity')).toBe('error')
    expect(made.querySelectorAll('[data-severity]')).toHaveLength(1)
  })

  it('renderCode(document, cell) marks the lines that findings name and keeps the text whole', () => {
    const source = '// Heading\nconst a = 1 < 2\n\nconst b = "<b>"'
    const finding = { cell: cellId('a'), line: 2, column: 1, kind: 'type', severity: 'error', message: 'no' } as const
    const made = renderCode(newDocument(), { id: 'a', source, findings: [finding] })
    expect(made.textContent).toBe(source)
    expect(made.querySelector('#cell-a-line-2')?.getAttribute('data-severity')).toBe('error')
    expect(made.querySelectorAll('[data-severity]').length).toBe(1)
    expect(made.querySelectorAll('.line').length).toBe(4)
    expect(made.querySelector('b')).toBeNull()
  })
})
