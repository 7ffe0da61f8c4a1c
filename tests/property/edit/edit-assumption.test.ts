/** Any assumption, edited: it computes to what was asked for, and nothing else of the cell has moved. */
import { parse } from 'acorn'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type AssumptionChange, type DistributionChange, editAssumption } from '../../../kernel/cells/edit/index.js'
import type { DistributionOption } from '../../../kernel/library/evidence/distribution.js'
import { u } from '../../../kernel/library/units.js'
import { check } from '../../unit/cells/check/notebook.js'

interface Stated {
  readonly value: number
  readonly range?: readonly [number, number]
  readonly source?: string
  readonly owner?: string
  readonly distribution?: DistributionOption
}

/** What the cell states, by running it. */
function read(source: string): Stated {
  const stated: Stated[] = []
  const assumption = (name: string, value: number, options: object = {}) => {
    if (name === 'x') stated.push({ value, ...options })
    return value
  }
  new Function('u', 'assumption', source)(u, assumption)
  if (stated.length !== 1) throw new Error(`stated ${stated.length} times: ${source}`)
  return stated[0] as Stated
}

const number = fc.oneof(
  fc.integer({ min: -1000, max: 1000 }).map(String),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }).map(String),
  fc.constantFrom('1e-3', '2.5e6', '.5', '1_000', '0'),
)
const chain = fc.constantFrom<readonly [before: string, after: string]>(
  ['', ''],
  ['', ' * u.kg'],
  ['', ' * u.Wh / u.kg'],
  ['', ' / u.s ** 2'],
  ['u.km * ', ''],
  ['(', ' * u.kN) / (u.m * u.m)'],
  ['', '/* weighed */ * u.lb'],
  ['-(', ' * u.K)'],
)
const gap = fc.constantFrom('', ' ', '\n  ', ' // so it is\n  ', " /* assumption('x', 1) */ ")
const options = fc.constantFrom(
  '',
  '{}',
  "{ unit: 'kg' }",
  "{ source: 'a // letter', note: \"it's\", }",
  "{\n    source: 'table', // of masses\n    range: [-1e9, 1e9],\n  }",
  "{ 'owner': `masses`, ...{ note: 'n' } }",
  '{ distribution: { normal: 3 } }',
)
const around = fc.constantFrom(
  '',
  '// heading\n',
  'const text = `$' + "{1} assumption('x', 3)`\n",
  'const half = 4 / 2 / 1\n',
)

const statement = fc
  .record({ number, chain, gap, gapTwo: gap, options, before: around, after: around, comma: fc.boolean() })
  .map(({ number, chain: [left, right], gap, gapTwo, options, before, after, comma }) => {
    const lead = `${before}const x = assumption(${gap}'x',${gapTwo}${left}`
    const tail = `${right}${options === '' ? '' : `, ${options}`}${comma ? ',' : ''})\n${after.replaceAll('const text', 'const words').replaceAll('half', 'other')}`
    return { source: `${lead}${number}${tail}`, lead, tail }
  })

const wanted = fc.oneof(
  fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((value) => value === 0 || Math.abs(value) > 1e-9),
  fc.integer({ min: -100_000, max: 100_000 }),
)
const words = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 })

function edit(source: string, change: AssumptionChange): string {
  const edited = editAssumption(source, 'x', change)
  if (!edited.ok) throw new Error(`${edited.message}\n${source}`)
  parse(edited.source, { ecmaVersion: 2023 })
  return edited.source
}

const close = (actual: number | undefined, value: number) =>
  expect(Math.abs((actual ?? Number.NaN) - value)).toBeLessThanOrEqual(1e-15 * Math.abs(value))

describe('editAssumption', () => {
  it('editAssumption() gives any value by its number alone', () =>
    fc.assert(
      fc.property(statement, wanted, ({ source, lead, tail }, value) => {
        const after = edit(source, { value })
        close(read(after).value, value)
        expect(after.startsWith(lead)).toBe(true)
        expect(after.endsWith(tail)).toBe(true)
        expect(after.slice(lead.length, after.length - tail.length)).toMatch(/^\(?-?[\d.e-]+\)?$/)
        // Back to the number that was there, and the source is as it was up to how that number was written.
        const { value: before, ...options } = read(source)
        expect(read(edit(after, { value: before }))).toEqual({ value: expect.any(Number), ...options })
      }),
    ))

  it('editAssumption() gives any range, source, owner and distribution, and leaves the rest', () =>
    fc.assert(
      fc.property(statement, wanted, words, fc.boolean(), ({ source }, size, text, drop) => {
        const range = [-Math.abs(size) - 1, Math.abs(size) + 1] as const
        const before = read(source)
        const ranged = read(edit(source, { range }))
        close(ranged.range?.[0], range[0])
        close(ranged.range?.[1], range[1])
        expect({ ...ranged, range: before.range }).toEqual({ ...before, range: before.range })
        const sourced = edit(source, { source: text, owner: drop ? null : text })
        const { owner: _, ...rest } = before
        expect(read(sourced)).toEqual({ ...rest, source: text, ...(drop ? {} : { owner: text }) })
        const spread = read(edit(source, { distribution: { normal: Math.abs(size) + 1 } })).distribution
        if (spread === undefined || !('normal' in spread)) throw new Error('no distribution came')
        close(spread.normal, Math.abs(size) + 1)
      }),
    ))

  it('editAssumption() gives any kind of distribution and any unit, and takes them out again', () =>
    fc.assert(
      fc.property(
        statement,
        wanted,
        fc.constantFrom('normal', 'uniform', 'triangular', 'lognormal'),
        ({ source }, size, kind) => {
          const wide = Math.abs(size) + 1
          const form = kind === 'normal' ? wide : kind === 'lognormal' ? 1 + 1 / wide : ([-wide, wide] as const)
          const { distribution: _before, ...rest } = read(source)
          const spread = edit(source, { distribution: { [kind]: form } as DistributionChange })
          const { distribution, ...kept } = read(spread)
          expect(kept).toEqual(rest)
          expect(Object.keys(distribution ?? {})).toEqual([kind])
          const stated = [Object.values(distribution ?? {})[0]].flat() as number[]
          for (const [at, number] of [form].flat().entries()) close(stated[at], number as number)
          const out = edit(spread, { distribution: null })
          expect(read(out)).toEqual(rest)
          const inUnit = edit(out, { unit: 'Wh/kg' })
          expect(read(inUnit)).toEqual({ ...rest, unit: 'Wh/kg' })
          const { unit: _, ...without } = rest as Stated & { unit?: string }
          expect(read(edit(inUnit, { unit: null }))).toEqual(without)
        },
      ),
    ))

  it('editAssumption() leaves a cell that the checker accepts', { timeout: 60_000 }, async () => {
    const changes: readonly AssumptionChange[] = [
      { value: 2.5 * 3600 },
      { range: [3600, 7200] },
      { distribution: { triangular: [3600, 10_800] } },
      { source: 'a "letter"', note: "it's\nhere", owner: 'Ada', unit: 'Wh/kg' },
    ]
    for (const options of ['', ", { unit: 'Wh/kg' }", ",\n  {\n    note: 'n', // of it\n  },\n"]) {
      let cell = `const x = assumption('x', 2 * u.Wh / u.kg${options})\nconst energy = result('energy', x * (3 * u.kg), { unit: 'Wh' })`
      for (const change of changes) {
        cell = edit(cell, change)
        expect((await check({ cell })).findings, cell).toEqual([])
      }
    }
  })
})
