import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lineChanges } from '../../../../kernel/cells/revision/compare/compare-text.js'
import { longestRising } from '../../../../kernel/cells/revision/compare/longest-rising.js'
import { compareSides } from '../../../../kernel/cells/revision/index.js'
import type { CellResult, Figure, RevisionContent } from '../../../../shared/contracts/index.js'
import { number, resultOf } from '../../rendering/support.js'

type Cells = readonly (readonly [id: string, source: string])[]

const contentOf = (
  cells: Cells,
  results: readonly CellResult[] = [],
  more: Partial<RevisionContent> = {},
): RevisionContent => ({
  text: {
    title: 'T',
    titleBlock: {},
    cells: cells.map(([id, source], index) => ({
      id: id as never,
      kind: 'sizing',
      number: String(index + 1),
      source: source.split('\n'),
    })),
  },
  results: [...results],
  kernelHash: 'k',
  methods: [],
  unsettled: [],
  ...more,
})

const compare = (from: RevisionContent, to: RevisionContent) =>
  compareSides({ label: 'A', content: from }, { label: 'B', content: to })

describe('compareSides of text', () => {
  const before = contentOf([
    ['a', '// First\nconst a = 1'],
    ['b', 'const b = 2'],
    ['c', 'const c = 3'],
  ])

  test('compareSides() of the same content finds nothing', () => {
    const same = compare(before, before)
    expect(same).toMatchObject({
      from: 'A',
      to: 'B',
      cells: [],
      fields: [],
      numbers: [],
      same: { cells: 3 },
      kernelChanged: false,
    })
  })

  test('compareSides() tells cells added, removed, changed and moved, in the order in which they are read', () => {
    const after = contentOf([
      ['c', 'const c = 3'],
      ['a', '// First\nconst a = 10'],
      ['d', '// Fresh\nconst d = 4'],
    ])
    const { cells } = compare(before, after)
    expect(cells.map(({ cell, change, moved, from, to }) => [cell, change, moved, from, to])).toEqual([
      ['c', 'moved', true, '3', '1'],
      ['a', 'changed', false, '1', '2'],
      ['b', 'removed', false, '2', undefined],
      ['d', 'added', false, undefined, '3'],
    ])
    expect(cells[1]?.heading).toBe('First')
    expect(cells[1]?.lines).toEqual([
      { kind: 'kept', text: '// First' },
      { kind: 'removed', text: 'const a = 1' },
      { kind: 'added', text: 'const a = 10' },
    ])
  })

  test('compareSides() tells fields of the title block', () => {
    const after = { ...before, text: { ...before.text, title: 'U', titleBlock: { basis: 'ISO 2533' } } }
    expect(compare(before, after).fields).toEqual([
      { field: 'title', from: 'T', to: 'U' },
      { field: 'basis', from: '', to: 'ISO 2533' },
    ])
  })

  test('lineChanges() leaves out long runs of equal lines, and those shown are the lines themselves', () => {
    const from = Array.from({ length: 30 }, (_, index) => `line ${index}`)
    const to = from.with(15, 'other')
    expect(lineChanges(from, to)).toEqual([
      { kind: 'left out', lines: 13 },
      { kind: 'kept', text: 'line 13' },
      { kind: 'kept', text: 'line 14' },
      { kind: 'removed', text: 'line 15' },
      { kind: 'added', text: 'other' },
      { kind: 'kept', text: 'line 16' },
      { kind: 'kept', text: 'line 17' },
      { kind: 'left out', lines: 12 },
    ])
  })

  test('lineChanges() of any two texts gives both back', () => {
    const lines = fc.array(fc.constantFrom('a', 'b', 'c', ''), { maxLength: 12 })
    fc.assert(
      fc.property(lines, lines, (from, to) => {
        const changes = lineChanges(from, to)
        const count = (kinds: readonly string[]) =>
          changes.reduce(
            (total, each) => total + (each.kind === 'left out' ? each.lines : kinds.includes(each.kind) ? 1 : 0),
            0,
          )
        if (changes.length === 0) expect(from).toEqual(to)
        else expect([count(['kept', 'removed']), count(['kept', 'added'])]).toEqual([from.length, to.length])
      }),
    )
  })

  test('longestRising() finds a rising run that no other exceeds', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 99 }), { maxLength: 10 }), (numbers) => {
        const best = longestRising(numbers)
        expect([...best].sort((a, b) => a - b)).toEqual(best)
        let longest = 0
        for (let set = 0; set < 2 ** numbers.length; set += 1) {
          const chosen = numbers.filter((_, place) => (set & (1 << place)) !== 0)
          if (chosen.every((each, place) => place === 0 || each > (chosen[place - 1] ?? 0)))
            longest = Math.max(longest, chosen.length)
        }
        expect(best.length).toBe(longest)
      }),
      { numRuns: 60 },
    )
  })
})

describe('compareSides of results', () => {
  const cells: Cells = [['a', 'x']]
  const side = (more: Partial<CellResult>) => contentOf(cells, [resultOf('a', more)])

  test('compareSides() gives numbers by name with change and per cent, stated ones first', () => {
    const record = (power: number) => ({
      kind: 'record' as const,
      entries: [['power', { kind: 'number' as const, si: power }]] as never,
      more: 0,
    })
    const from = side({
      values: [
        number('x', 4, 'kg'),
        number('mass', 100, 'kg', { stated: true }),
        { name: 'hover', value: record(5), dimension: null, columns: { power: 'kg m^2 s^-3' } },
        number('zero', 0, '1'),
        number('same', 1, '1'),
      ],
    })
    const to = side({
      values: [
        number('x', 5, 'kg'),
        number('mass', 90, 'kg', { stated: true }),
        { name: 'hover', value: record(6), dimension: null, columns: { power: 'kg m^2 s^-3' } },
        number('zero', 1, '1'),
        number('same', 1, '1'),
        number('fresh', 1, '1'),
      ],
    })
    const { numbers, same } = compare(from, to)
    expect(numbers.map(({ name, change, percent }) => [name, change, percent])).toEqual([
      ['mass', -10, -10],
      ['x', 1, 25],
      ['hover.power', 1, 20],
      ['zero', 1, undefined],
      ['fresh', undefined, undefined],
    ])
    expect(numbers[2]?.dimension).toBe('kg m^2 s^-3')
    expect(same.numbers).toBe(1)
  })

  test('compareSides() tells which part of an assumption differs', () => {
    const from = side({
      values: [number('e', 235, 'm^2 s^-2')],
      assumptions: [{ name: 'e', value: 235, low: 200, high: 265, source: 'letter' }],
    })
    const to = side({
      values: [number('e', 240, 'm^2 s^-2')],
      assumptions: [
        { name: 'e', value: 240, low: 200, high: 270, source: 'letter' },
        { name: 'f', value: 1 },
      ],
    })
    const { assumptions, numbers } = compare(from, to)
    expect(assumptions.map(({ name, differs }) => [name, differs])).toEqual([
      ['e', ['value', 'range']],
      ['f', []],
    ])
    expect(assumptions[0]?.dimension).toBe('m^2 s^-2')
    expect(numbers).toEqual([])
  })

  test('compareSides() tells margins, advisories that came and went, and figures', () => {
    const requirement = (margin: number) => ({ name: 'pad', actual: 14 - margin, atMost: 14, margin, met: margin >= 0 })
    const advisory = (code: string, message: string) => ({ code, method: 'rotor.hover', message })
    const figure = (y: number): Figure =>
      ({
        figure: 'plot',
        caption: 'A line',
        x: { label: 'x', dimension: '1' },
        y: { label: 'y', dimension: '1' },
        marks: [{ mark: 'line', x: [0, 1], y: [0, y] }],
      }) as unknown as Figure
    const from = side({
      requirements: [requirement(1)],
      advisories: [advisory('LOW', 'at 3')],
      figures: [figure(1), figure(5)],
    })
    const to = side({
      requirements: [requirement(-1)],
      advisories: [advisory('LOW', 'at 4'), advisory('HIGH', '')],
      figures: [figure(2), figure(5)],
    })
    const compared = compare(from, to)
    expect(compared.requirements.map((each) => [each.from?.met, each.to?.met])).toEqual([[true, false]])
    expect(compared.advisories.map(({ change, advisory: { code } }) => [change, code])).toEqual([['new', 'HIGH']])
    expect(compared.figures.map(({ place, change, number: cell }) => [cell, place, change])).toEqual([
      ['1', 1, 'changed'],
    ])
    expect(compared.same.figures).toBe(1)
    expect(compare(to, from).advisories.map(({ change }) => change)).toEqual(['gone'])
  })

  test('compareSides() tells another kernel and other methods', () => {
    const from = contentOf(cells, [], { methods: ['rotor.hover', 'u'] })
    const to = contentOf(cells, [], { methods: ['rotor.bladeElement', 'u'], kernelHash: 'l' })
    expect(compare(from, to)).toMatchObject({
      kernelChanged: true,
      methods: { added: ['rotor.bladeElement'], removed: ['rotor.hover'] },
    })
  })
})
