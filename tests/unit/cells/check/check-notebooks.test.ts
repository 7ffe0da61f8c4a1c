import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import typescript from 'typescript'
import { describe, expect, test } from 'vitest'
import { createChecker } from '../../../../kernel/cells/check/index.js'
import { correct } from './dimension-cases.js'
import { check, checker, declarations, graphOf } from './notebook.js'
import { planted } from './planted.js'

interface StoredCell {
  readonly id: string
  readonly kind: string
  readonly source: readonly string[]
}

const root = new URL('../../../../', import.meta.url)
const worked: Readonly<Record<string, string>> = Object.fromEntries(
  (JSON.parse(readFileSync(new URL('notebooks/worked-sizing.json', root), 'utf8')) as { cells: StoredCell[] }).cells
    .filter((cell) => cell.kind === 'sizing')
    .map((cell) => [cell.id, cell.source.join('\n')]),
)

/** Dimensions of the worked problem's results, from the units its reference table gives them in. */
const results = {
  grossMass: 'kg',
  density: 'kg m^-3',
  diskLoading: 'kg m^-1 s^-2',
  hoverPower: 'kg m^2 s^-3',
  cruisePower: 'kg m^2 s^-3',
  liftToDrag: '1',
  stallSpeed: 'm s^-1',
  reserveSpeed: 'm s^-1',
  reservePower: 'kg m^2 s^-3',
  energy: 'kg m^2 s^-2',
  batteryMass: 'kg',
  motorMass: 'kg',
}

function shuffled<T>(items: readonly T[], seed: number): readonly T[] {
  return fc.sample(fc.shuffledSubarray([...items], { minLength: items.length }), { seed, numRuns: 1 })[0] ?? items
}

describe('check(worked problem)', () => {
  test('gives every result its dimension, in any order of cells', async () => {
    for (const seed of [1, 2, 3]) {
      const report = await check(Object.fromEntries(shuffled(Object.entries(worked), seed)))
      expect(report.findings).toEqual([])
      expect(Object.fromEntries(report.names.map(({ name, dimension }) => [name, dimension]))).toMatchObject(results)
    }
  })

  /** One slip in one cell of the notebook; said once, in that cell. */
  const slips: readonly (readonly [cell: string, right: string, wrong: string, count?: number])[] = [
    ['needs', '85 * u.km', '85 * u.kg'],
    ['needs', "unit: 'min'", "unit: 'mi'"],
    ['layout', '1.1 * u.m', '1.1 * u.kg'],
    ['technology', '(200 * u.Wh) / u.kg', '200 * u.Wh'],
    ['hover', 'mass * u.g0', 'mass'],
    ['hover', 'rotorRadius ** 2', 'rotorRadius'],
    ['cruise', '/ wingArea,', ','],
    ['cruise', 'stallMargin * stallSpeedAt(mass)', 'stallSpeedAt(mass) ** 2'],
    ['build-up', 'distance / cruiseSpeed', 'distance * cruiseSpeed', 2],
    ['build-up', 'systemsFixed + ', 'systemsFixed * u.g0 + '],
    ['build-up', ' * hoverTime', ''],
    ['closure', 'from: payload', 'from: range'],
    ['closure', "unit: 'km'", "unit: 'kg'"],
    ['answers', "hover.power, { unit: 'kW'", "hover.power, { unit: 'kWh'"],
    ['answers', 'energyAt(grossMass, range)', 'energyAt(range, grossMass)', 2],
    ['mass-figure', 'buildUp(grossMass, range)', '{ payload, range }'],
  ]
  test.each(slips.map(([cell, right, wrong, count]) => ({ cell, right, wrong, count: count ?? 1 })))(
    'in "$cell", with $right written as $wrong, says so',
    async ({ cell, right, wrong, count }) => {
      const source = worked[cell] ?? ''
      expect(source).toContain(right)
      const report = await check({ ...worked, [cell]: source.replace(right, () => wrong) })
      const wrongUnits = report.findings.filter((finding) => finding.kind === 'dimension')
      expect(wrongUnits).toHaveLength(count)
      expect(wrongUnits[0]?.cell).toBe(cell)
      expect(report.findings.filter((finding) => finding.kind === 'type')).toEqual([])
    },
  )
})

describe('check(graph) across cells', () => {
  const cells = {
    one: 'const range = 85 * u.km',
    two: 'const time = range / speed',
    three: 'const speed = 58 * u.mps',
    four: 'const wrong = time + range',
  }

  test('follows names whatever the order on the page', async () => {
    for (let seed = 1; seed <= 8; seed += 1) {
      const report = await check(Object.fromEntries(shuffled(Object.entries(cells), seed)))
      expect(report.findings).toHaveLength(1)
      expect(report.findings[0]).toMatchObject({ cell: 'four', line: 1, column: 15, kind: 'dimension' })
      expect(report.names.find(({ name }) => name === 'time')?.dimension).toBe('s')
    }
  })

  test('lets a cell own a kernel name', async () => {
    const report = await check({ one: 'const drag = 300 * u.N', two: 'const power = drag * (58 * u.mps)' })
    expect(report.findings).toEqual([])
    expect(report.names.map(({ dimension }) => dimension)).toEqual(['kg m s^-2', 'kg m^2 s^-3'])
  })

  test('lets a cell own the name of a kernel type', async () => {
    const report = await check({ one: 'type Mass = { value: number }\nconst a: Mass = { value: 2 }' })
    expect(report.findings).toEqual([])
  })

  test('leaves names with two owners, unreadable cells and cycles to the reader of cells', async () => {
    const report = await check({
      one: 'const a = 3 * u.kg',
      two: 'const a = 3 * u.m',
      three: 'const b = a + 1 * u.s',
      four: 'const c = = 4',
      five: 'const d = e\nconst f = nowhere',
      six: 'const e = d',
    })
    expect(report.findings).toEqual([])
    expect(report.names.every(({ dimension }) => dimension === null)).toBe(true)
    expect(report.names.some(({ cell }) => cell === 'four')).toBe(false)
  })

  // Eight fresh checkers, each of which reads TypeScript's own library first.
  test('gives the same answer after edits as a fresh checker does', { timeout: 90_000 }, async () => {
    const kept = createChecker(typescript, declarations)
    const sources: Record<string, string> = { ...cells }
    for (const [cell, source] of [
      ['three', 'const speed = 58 * u.kg'],
      ['one', "const range = 'far'"],
      ['two', 'type Far = string\nconst time = range.length'],
      ['four', 'const wrong: Far = 3'],
      ['two', 'const time = range / speed'],
      ['one', 'const range = 85 * u.km'],
      ['three', 'const speed = 58 *'],
      ['three', 'const speed = 58 * u.mps'],
    ] as const) {
      sources[cell] = source
      const graph = await graphOf(sources)
      expect(kept.check(graph)).toEqual(createChecker(typescript, declarations).check(graph))
    }
  })
})

describe('check(graph) never throws', () => {
  test('for long chains of names, long sums and deep nesting', async () => {
    const chain = ['const a0 = 1 * u.m', ...Array.from({ length: 3000 }, (_, i) => `const a${i + 1} = a${i} + 1 * u.m`)]
    const names = (await check({ chain: chain.join('\n') })).names
    expect(names.at(-1)?.dimension).toBe('m')
    const sum = checker.check(deepGraph(`const a = ${'1 * u.m + '.repeat(2000)}2 * u.m`))
    expect(sum.names[0]?.dimension).toBe('m')
    for (const depth of [300, 3000, 20_000])
      expect(() => checker.check(deepGraph(`const d = ${'('.repeat(depth)}1${')'.repeat(depth)}`))).not.toThrow()
  }, 60_000)

  test('for functions that call themselves or double their calls', async () => {
    const doubling = Array.from({ length: 40 }, (_, i) => `const f${i + 1} = (x) => f${i}(x) + f${i}(x)`).join('\n')
    const report = await check({ calls: `const f0 = (x) => x\n${doubling}\nconst y = f40(1 * u.m)` })
    expect(report.findings).toEqual([])
    expect(report.names.at(-1)?.dimension).toBe('m')
    expect((await check({ self: 'const f = (x) => f(f(x))\nconst y = f(1 * u.m)' })).findings).toEqual([])
  })

  test('for cells with characters and lines changed at random', async () => {
    const sources = [
      ...correct.map(([source]) => source),
      ...planted.map(([source]) => source),
      ...Object.values(worked),
    ]
    const words = [
      '(',
      ')',
      '{',
      '}',
      '=>',
      ' * ',
      '...',
      '?.',
      ' as ',
      'let ',
      '[',
      ']',
      ',',
      '`',
      'u.',
      ';',
      '\n',
      '=',
      ' in ',
      'async ',
      '#',
    ]
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...sources),
        fc.array(fc.tuple(fc.nat(400), fc.nat(4), fc.constantFrom(...words)), { minLength: 1, maxLength: 4 }),
        async (source, edits) => {
          let text = source
          for (const [at, drop, word] of edits) {
            const place = at % (text.length + 1)
            text = text.slice(0, place) + word + text.slice(place + drop)
          }
          expect(() => checker.check(deepGraph(text))).not.toThrow()
        },
      ),
      { seed: 20_260, numRuns: 150 },
    )
  }, 180_000)
})

/** A graph made without reading the cell, so that text which the reader of cells would refuse reaches the checker. */
function deepGraph(source: string): Parameters<typeof checker.check>[0] {
  const id = 'only' as Parameters<typeof checker.check>[0]['cells'][number]['id']
  const declares = [{ name: 'a', form: 'const', line: 1, column: 1, reads: [] } as const]
  return {
    cells: [{ id, source, code: source, declares, reads: [], assumptions: [] }],
    owner: new Map([['a', id]]),
    upstream: new Map(),
    shadowed: [],
    findings: [],
    failed: new Map(),
  }
}
