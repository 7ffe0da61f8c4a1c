/** Traces of cells in real isolation: what moves a number outside is in them. */
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { traceNumber } from '../../kernel/cells/evidence/index.js'
import { createPipeline, type Reading } from '../../kernel/cells/index.js'
import type { NumbersHost } from '../../kernel/cells/program/index.js'
import { preloaded } from '../../kernel/library/index.js'
import type { AssumptionRecord, Point, Trace, TraceStep } from '../../shared/contracts/index.js'
import { cellsOf, erase } from '../unit/cells/analyse/support.js'
import { plainHost } from '../unit/cells/pipeline/plain-host.js'
import { type NodeBench, prepareNodeBench } from './node-bench.js'
import { cellId } from './programs.js'

let bench: NodeBench
let host: NumbersHost
beforeAll(async () => {
  bench = await prepareNodeBench()
  host = bench.openNumbers()
}, 60_000)
afterAll(() => host.close())

function read(texts: Readonly<Record<string, string>>): Promise<Reading> {
  const kernel = { hash: bench.kernelHash, names: Object.keys(preloaded) }
  return createPipeline({ erase, host: plainHost(), kernel }).read(cellsOf(texts))
}

/** The records that a sheet would have of these assumptions, and the trace. */
async function trace(
  texts: Readonly<Record<string, string>>,
  [name, cell]: readonly [name: string, cell: string],
  trials: Point = {},
): Promise<Trace & { step(name: string): TraceStep | undefined }> {
  const reading = await read(texts)
  const assumptions = Object.values(texts).flatMap((text) =>
    [...text.matchAll(/assumption\('(\w+)', (-?[\d.]+)(?:, \{ range: \[([\d.-]+), ([\d.-]+)\] \})?\)/g)].map(
      ([, one = '', value, low, high]): AssumptionRecord => ({
        name: one,
        value: Number(value),
        ...(low === undefined ? {} : { low: Number(low), high: Number(high) }),
      }),
    ),
  )
  const told: Trace[] = []
  const onTrace = (one: Trace) => told.push(one)
  const target = { name, cell: cellId(cell) }
  const found = await traceNumber({ read: reading, target, assumptions, trials, onTrace }, host)
  // What the text says is there before anything was tried, and nothing is said to be idle without a trial.
  expect(told[0]?.steps.filter(({ acts }) => acts === 'inactive' || acts === 'hardly')).toEqual([])
  return { ...found, step: (one) => found.steps.find((step) => step.name === one) }
}

const models = {
  needs: [
    '// What is asked for',
    "const payload = assumption('payload', 400, { range: [300, 500] })",
    "const useNew = assumption('useNew', 0)",
    "const oldShare = assumption('oldShare', 0.5)",
    "const newShare: number = assumption('newShare', 0.3)",
    "const floor = assumption('floor', 100, { range: [50, 300] })",
    "const hue = assumption('hue', 3)",
  ].join('\n'),
  masses: [
    'interface Part { mass: number }',
    'const optionOld: Part = { mass: payload * oldShare }',
    'const optionNew: Part = { mass: payload * newShare }',
    'const oldMass = optionOld.mass',
    'const newMass = optionNew.mass',
    'const chosen = useNew > 0.5 ? newMass : oldMass',
    'const least = Math.max(chosen, floor)',
    'const density = air.standard(0 * u.m, 0 * u.K).density',
    'const gross = 2 * least + 0 * hue + density',
  ].join('\n'),
}

describe('traceNumber(options, host)', () => {
  it('traceNumber finds what moves a number, what does not, and what would wake it', async () => {
    const found = await trace(models, ['gross', 'masses'])
    const acts = Object.fromEntries(found.steps.map((step) => [step.name, step.acts]))
    expect(acts).toEqual({
      payload: 'moves',
      useNew: 'moves',
      oldShare: 'moves',
      newShare: 'inactive',
      floor: 'inactive',
      hue: 'inactive',
      optionOld: 'moves',
      optionNew: 'inactive',
      oldMass: 'moves',
      newMass: 'inactive',
      chosen: 'moves',
      least: 'moves',
      density: 'moves',
      gross: 'moves',
    })
    expect(found.step('newShare')?.wakes).toEqual([{ by: 'useNew', from: 1, fails: false }])
    expect(found.step('newMass')?.wakes).toEqual([{ by: 'useNew', from: 1, fails: false }])
    expect(found.step('floor')?.wakes).toMatchObject([{ by: 'floor', fails: false }])
    expect(found.step('floor')?.wakes[0]?.from).toBeCloseTo(200, 2)
    expect(found.step('hue')?.wakes).toEqual([])
    expect(found.step('density')?.methods).toEqual(['air.standard'])
    expect(found.step('newMass')).toMatchObject({
      cell: 'masses',
      line: 5,
      value: 120,
      kind: 'number',
      reads: ['optionNew'],
    })
    expect(found.step('optionNew')).toMatchObject({ line: 3, kind: 'other', reads: ['payload', 'newShare'] })
    expect(found.steps.at(-1)?.name).toBe('gross')
  })
})

describe('traceNumber(options, host) of a margin', () => {
  it('traceNumber of a margin has what its own requirement reads, and nothing of the others beside it', async () => {
    const texts = {
      needs: "const a = assumption('a', 2.5)\nconst b = assumption('b', 3.5)\nconst most = assumption('most', 40)",
      sums: [
        'const sum = 2 * a + 0 * b',
        "requirement('sum', { actual: sum, atMost: most })",
        "requirement('other', { actual: b, atMost: 9 })",
      ].join('\n'),
    }
    const found = await trace(texts, ['margin of sum', 'sums'])
    expect(found.base).toBe(35)
    expect(found.steps.map(({ name, acts }) => [name, acts])).toEqual([
      ['a', 'moves'],
      ['b', 'inactive'],
      ['sum', 'moves'],
      ['most', 'moves'],
      ['margin of sum', 'moves'],
    ])
    expect(found.steps.at(-1)).toMatchObject({ line: 2, kind: 'number', value: 35, reads: ['sum', 'most'] })
    const bound = await trace(texts, ['margin of other', 'sums'])
    expect(bound.steps.map(({ name }) => name)).toEqual(['b', 'margin of other'])
  })

  it.each([
    [
      'named by a value',
      "for (const name of ['x', 'y']) requirement(name, { actual: name === 'x' ? a : b, atMost: 9 })",
    ],
    ['under another name', "const need = requirement\nneed('x', { actual: a, atMost: 9 + 0 * b })"],
  ])('traceNumber has every assumption of the margin of a requirement %s', async (_, text) => {
    const needs = "const a = assumption('a', 2.5)\nconst b = assumption('b', 3.5)"
    const found = await trace({ needs, sums: text }, ['margin of x', 'sums'])
    expect(found.base).toBe(6.5)
    expect(found.step('a')?.acts).toBe('moves')
  })
})

describe('traceNumber(options, host) of odd texts', () => {
  it.each([
    [
      'changed by a function',
      'const y0: number[] = []\nconst add = (v: number) => y0.push(v)\nadd(2 * a)\nconst y = y0[0]! + b',
    ],
    ['summed in a loop', 'let y = 0\nfor (const part of [a, 3 * b]) y += part'],
    ['taken apart', 'const [first, { second }] = [a, { second: b }] as const\nconst y = first - second'],
    [
      'changed under another name',
      'const list = [b]\nconst alias = [list][0]!\nconst count = alias.push(a)\nconst y = list[count - 1]! + list[0]!',
    ],
    ['read in a condition', 'const y = b > 1 && a < 100 ? a * b : 0'],
    [
      'a field of a class',
      'class Pair { readonly one = a; get both() { return this.one + b } }\nconst y = new Pair().both',
    ],
  ])('traceNumber has every assumption of a number %s', async (_, text) => {
    const found = await trace(
      {
        needs: "const a = assumption('a', 2.5)\nconst b = assumption('b', 3.5)\nconst c = assumption('c', 4.5)",
        sums: `${text}\nconst beside = c * 2\nresult('shown', y + 0 * c)`,
      },
      ['y', 'sums'],
    )
    const acts = new Map(found.steps.map((step) => [step.name, step.acts]))
    expect([acts.get('a'), acts.get('b'), acts.get('c')]).toEqual(['moves', 'moves', undefined])
  })

  it('traceNumber knows a number that is only stated, and one that is an assumption', async () => {
    const texts = { all: "const a = assumption('a', 2.5)\n\nresult('shown', 2 * a)" }
    const shown = await trace(texts, ['shown', 'all'])
    expect(shown.steps).toMatchObject([
      { name: 'a' },
      { name: 'shown', line: 3, reads: ['a'], value: 5, acts: 'moves' },
    ])
    const alone = await trace(texts, ['a', 'all'])
    expect(alone.steps).toMatchObject([{ name: 'a', kind: 'assumption', value: 2.5, reads: [] }])
  })

  it('traceNumber of random programs has what moves the number outside as moving it, and nothing else', async () => {
    const operand = fc.constantFrom('a', 'b', 'c', 'd', 'p', 'q', '2', 'f(b)', 'Math.max(b, c)', '(s > 0.5 ? d : a)')
    const form = fc.constantFrom(
      'const N = L + R',
      'let N = L; N *= R',
      'const N = [L, R].map((x) => x - 1)[1]!',
      'const { N } = { N: Math.min(L, 3 * R) }',
      'let N = 0; for (const x of [L, R]) if (x > 0) N += x',
      'const N = L > R ? L : 1',
    )
    const line = fc.tuple(form, operand, operand)
    const numbers = { a: 1.5, b: 2.25, c: -3.125, d: 40.5, s: 0 }
    await fc.assert(
      fc.asyncProperty(fc.array(line, { minLength: 3, maxLength: 7 }), async (lines) => {
        const sums = lines.map(([made, left, right], at) => {
          const earlier = (name: string) => (name === 'p' ? `n${Math.max(at - 1, 0)}` : name === 'q' ? 'n0' : name)
          const [one, other] = [left, right].map((name) => (at === 0 && /^[pq]$/.test(name) ? 'a' : earlier(name)))
          return made
            .replaceAll('N', `n${at}`)
            .replaceAll('L', one ?? '1')
            .replaceAll('R', other ?? '1')
        })
        const needs = [
          ...Object.entries(numbers).map(([name, value]) => `const ${name} = assumption('${name}', ${value})`),
          'const f = (x: number) => (x > 2 ? x * d : c)',
        ]
        const texts = { needs: needs.join('\n'), sums: sums.join('\n') }
        const target = `n${lines.length - 1}`
        const found = await trace(texts, [target, 'sums'])
        const moving = await movedOutside(texts, target, numbers)
        const told = found.steps.filter(({ kind, acts }) => kind === 'assumption' && acts === 'moves')
        expect(told.map(({ name }) => name).sort()).toEqual(moving)
      }),
      { numRuns: 25 },
    )
  })
})

/** Assumptions of which 1 % or 10 % more or less, or the other position of a switch, gives another number in the whole program. */
async function movedOutside(
  texts: Readonly<Record<string, string>>,
  target: string,
  numbers: Readonly<Record<string, number>>,
): Promise<readonly string[]> {
  const { program } = await read(texts)
  const changes = Object.entries(numbers).flatMap(([name, value]) =>
    (value === 0 ? [1, 0.01, 0.1] : [0.9, 0.99, 1.01, 1.1].map((share) => share * value)).map((at) => ({ name, at })),
  )
  const points = [{}, ...changes.map(({ name, at }) => ({ [name]: at }))]
  const wanted = { names: [{ name: target, cell: cellId('sums') }], requirements: [] }
  const [base, ...outcomes] = (await host.evaluateNumbers(program, points, wanted)).map(
    (outcome) => outcome.numbers[target] ?? Number.NaN,
  )
  const moved = changes.filter((_, at) => Math.abs((outcomes[at] ?? 0) - (base ?? 0)) > 1e-9 * Math.abs(base ?? 0))
  return [...new Set(moved.map(({ name }) => name))].sort()
}

describe('values between cells', () => {
  it.each([
    ['a list', 'const shared: number[] = [1]', 'shared.push(x)', 'shared.length'],
    ['a record in a list', 'const shared = [{ mass: 1 }]', 'shared[0]!.mass = x', 'shared[0]!.mass'],
    [
      'a list that a function carries',
      'const shared = Object.assign(() => 1, { list: [1] })',
      'shared.list.push(x)',
      'shared.list.length',
    ],
    ['a list of a class', 'class shared { static list = [1] }', 'shared.list.push(x)', 'shared.list.length'],
    [
      'a prototype',
      'class shared { static make() { return new shared() } }',
      'Object.assign(shared.prototype, { mass: x })',
      '(shared.make() as any).mass ?? 1',
    ],
  ])(
    'a cell that changes %s of another cell fails, so that the others may do without it',
    async (_, declared, change, answer) => {
      const { program } = await read({
        owner: declared,
        changer: `const x = assumption('x', 5)\nconst changed = (${change}, x)`,
        reader: `const y = ${answer}`,
      })
      const names = [
        { name: 'changed', cell: cellId('changer') },
        { name: 'y', cell: cellId('reader') },
      ]
      const [outcome] = await host.evaluateNumbers(program, [{}], { names, requirements: [] })
      expect(outcome).toMatchObject({ ok: false, cell: 'changer', numbers: { y: 1 } })
    },
  )
})
