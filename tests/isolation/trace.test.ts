/** Traces of cells in real isolation: what moves a number outside is in them. */
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
  const found = await traceNumber({ read: reading, target: { name, cell: cellId(cell) }, assumptions, trials }, host)
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
