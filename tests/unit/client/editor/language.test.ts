import { describe, expect, it } from 'vitest'
import { documentationMarkdown } from '../../../../client/editor/language/documentation-markdown.js'
import type { CellEdit } from '../../../../client/editor/language/protocol.js'
import { cellId } from './ids.js'
import { askAt } from './language-samples.js'

const names = (cells: Readonly<Record<string, string>>) => askAt('proposals', cells).map((proposal) => proposal.name)

describe('proposals', () => {
  it('proposals after "rotor." are the methods of the kernel', () => {
    expect(names({ a: 'const p = rotor.|' })).toContain('hover')
  })

  it('proposals put names of cells first, then the kernel, then the language, and key words last', () => {
    const found = askAt('proposals', { a: 'const grossMass = 1500 * u.kg', b: 'const local = 2\nconst x = |' })
    const rank = (name: string) => found.find((proposal) => proposal.name === name)?.rank ?? -1
    expect(rank('grossMass')).toBeLessThanOrEqual(1)
    expect(rank('local')).toBeLessThanOrEqual(1)
    expect(rank('rotor')).toBe(2)
    expect(rank('Math')).toBe(3)
    expect(rank('function')).toBe(4)
    expect(found.map((proposal) => proposal.rank)).toEqual([...found.map((proposal) => proposal.rank)].sort())
  })

  it('proposals leave out what cells do not have', () => {
    const found = names({ a: 'const x = |' })
    for (const absent of ['Date', 'Promise', 'globalThis', 'Intl', 'eval', 'fetch', 'document'])
      expect(found).not.toContain(absent)
  })

  it('proposals inside an options record are its fields', () => {
    const found = names({ a: 'const hover = rotor.hover({ thrust: 1, | })' })
    expect(found).toContain('diskArea')
    expect(found).not.toContain('rotor')
  })

  it('proposal of a method carries equation, arguments with units, validity and source', () => {
    const found = askAt('proposal', { a: 'const p = rotor.|' }, { name: 'hover' })
    const markdown = found === null ? '' : documentationMarkdown(found)
    expect(markdown).toMatch(/\*\*Equation:\*\* `v_i = sqrt\(T\/\(2 rho A\)\)/)
    expect(markdown).toContain('`thrust` T [N]')
    expect(markdown).toContain('**Valid for:**')
    expect(markdown).toContain('**Source:** Leishman')
  })
})

describe('signature', () => {
  it('signature inside a call names the argument being written', () => {
    const help = askAt('signature', { a: 'const day = air.standard(600 * u.m, |)' })
    expect(help?.activeParameter).toBe(1)
    expect(help?.signatures[0]?.label).toContain('temperatureOffset')
    const [start, end] = help?.signatures[0]?.parameters[0]?.label ?? [0, 0]
    expect(help?.signatures[0]?.label.slice(start, end)).toContain('altitude')
  })

  it('signature outside any call is nothing', () => {
    expect(askAt('signature', { a: 'const x = 1|' })).toBeNull()
  })
})

describe('meaning and declaration', () => {
  const cells = { first: 'const range = 85 * u.km', second: '// uses it\nconst twice = 2 * ran|ge' }

  it('meaning of a name from another cell says which cell declares it', () => {
    expect(askAt('meaning', cells)).toMatchObject({ name: 'range', declaredIn: 'first', span: { start: 29, end: 34 } })
  })

  it('meaning of a name inside a function is not that of a cell, although it is spelled alike', () => {
    const meaning = askAt('meaning', { a: 'const x = 1\nfunction f(y: number) { const x = y; return x| }' })
    expect(meaning?.name).toBe('x')
    expect(meaning?.declaredIn).toBeUndefined()
  })

  it('meaning of a kernel method is the form that the call uses', () => {
    const call =
      'const h = rotor.ho|ver({ thrust: 1, radius: 1, density: 1, tipSpeed: 1, solidity: 1, inducedFactor: 1, profileDrag: 1 })'
    expect(askAt('meaning', { a: call })?.text).toContain('induced and profile power')
  })

  it('declaration leads to line and column in the other cell', () => {
    expect(askAt('declaration', cells)).toEqual({ cell: 'first', line: 1, column: 7 })
  })

  it('declaration of a kernel name is nowhere in the notebook', () => {
    expect(askAt('declaration', { a: 'const x = u.k|g' })).toBeNull()
  })

  it('declaredNames lists top-level names with the place after each, destructured ones too', () => {
    const source = 'const thrust = 1\nconst { power: p, more: [q] } = thing\nfunction f() { const inner = 1 }'
    const found = askAt('declaredNames', { a: source }, { cell: cellId('a') })
    expect(found.map(({ name }) => name)).toEqual(['thrust', 'p', 'q'])
    expect(source.slice(0, found[0]?.end)).toBe('const thrust')
  })
})

function applied(source: string, cell: string, edits: readonly CellEdit[]): string {
  return edits
    .filter((edit) => edit.cell === cell)
    .sort((a, b) => b.at - a.at)
    .reduce((text, edit) => text.slice(0, edit.at) + edit.inserted + text.slice(edit.at + edit.removed), source)
}

describe('renaming', () => {
  const cells = {
    a: "const ran|ge = assumption('range', 85 * u.km)",
    b: 'const trip = { range }\nconst total = range + trip.range',
  }

  it('renaming changes every cell, keeps the field of a short record, and the text of the assumption', () => {
    const renaming = askAt('renaming', cells, { newName: 'sector' })
    if (!renaming.ok) throw new Error(renaming.message)
    expect(applied(cells.a.replace('|', ''), 'a', renaming.edits)).toBe(
      "const sector = assumption('sector', 85 * u.km)",
    )
    expect(applied(cells.b, 'b', renaming.edits)).toBe(
      'const trip = { range: sector }\nconst total = sector + trip.range',
    )
  })

  it.each([
    ['total', /already declares "total"/],
    ['1st', /"1st" is not a name/],
    ['class', /"class" belongs to the language/],
    ['Math', /"Math" belongs to the language/],
    ['range', /is its name already/],
  ])('renaming to "%s" is refused with the reason', (newName, reason) => {
    const renaming = askAt('renaming', cells, { newName })
    expect(renaming.ok ? '' : renaming.message).toMatch(reason)
  })

  it('renameTarget of a kernel name is refused', () => {
    const target = askAt('renameTarget', { a: 'const p = rot|or.hover' })
    expect(target.ok ? '' : target.message).toMatch(/"rotor" belongs to the kernel/)
  })

  it('renameTarget where no name stands is refused', () => {
    expect(askAt('renameTarget', { a: 'const p = 1 |+ 2' }).ok).toBe(false)
  })
})

describe('answerLanguage', () => {
  it('answers about text that cannot be read without throwing', () => {
    for (const source of ['const = |', '{{{{|', '`${|', 'const x = |'.repeat(3)])
      for (const ask of ['proposals', 'signature', 'meaning', 'declaration', 'renameTarget'] as const)
        expect(() => askAt(ask, { a: source })).not.toThrow()
  })
})
