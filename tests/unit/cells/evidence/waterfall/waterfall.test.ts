/** The waterfall through the pipeline: what becomes a step, what is taken together, and that the steps sum. */
import { describe, expect, test } from 'vitest'
import { waterfallOf } from '../../../../../kernel/cells/evidence/waterfall/index.js'
import { createPipeline } from '../../../../../kernel/cells/index.js'
import type { Waterfall } from '../../../../../shared/contracts/index.js'
import { cellsOf, erase } from '../../analyse/support.js'
import { plainHost } from '../../pipeline/plain-host.js'
import { withAssumptions } from './recording-host.js'

const pipeline = createPipeline({
  erase,
  host: withAssumptions(plainHost()),
  kernel: { hash: 'kernel-1', names: ['u', 'assumption'] },
})

type Sources = Readonly<Record<string, string>>
const explain = (from: Sources, to: Sources, name = 'mass', kept = {}) =>
  waterfallOf(pipeline, { from: cellsOf(from), to: cellsOf(to), name, kept })

const words = ({ steps }: Waterfall) =>
  steps.map(({ parts }) =>
    parts.map((part) => (part.kind === 'cell' ? `${part.change} ${part.cell}` : part.name)).join(' + '),
  )
const sum = (rows: readonly { effect: number }[]) => rows.reduce((total, { effect }) => total + effect, 0)

const needs =
  "const range = assumption('range', 80 * u.km, { source: 'letter' })\nconst payload = assumption('payload', 400)"
const before: Sources = { needs, law: 'const mass: number = payload + range / 1000', other: 'const idle = 1' }

describe('waterfallOf', () => {
  test('waterfallOf() makes a step of every assumption that changed, though they stand in one cell', async () => {
    const after = { ...before, needs: needs.replace('80', '100').replace('400', '300') }
    const waterfall = await explain(before, after)
    expect(words(waterfall)).toEqual(['range', 'payload'])
    expect(waterfall).toMatchObject({ from: 480, to: 400, shares: { kind: 'exact', values: [20, -100] } })
    expect(waterfall.kernel).toBeUndefined()
    expect(sum(waterfall.forward)).toBe(-80)
    expect(waterfall.reverse.map(({ steps }) => steps)).toEqual([[1], [0]])
  })

  test('waterfallOf() makes no step of what has no effect: comments, sources of assumptions, cells aside', async () => {
    const after = {
      needs: `// From the board\n${needs.replace("'letter'", "'minutes of May'").replace('80', '90')}`,
      law: '// The law\nconst mass =  payload +  range/1000',
      other: 'const idle = 2',
    }
    const waterfall = await explain(before, after)
    expect(words(waterfall)).toEqual(['range'])
    expect(waterfall.without).toEqual([{ kind: 'cell', cell: 'other', change: 'changed' }])
  })

  test('waterfallOf() adopts an assumption apart from the law in the same cell', async () => {
    const one = (value: number, law: string) => ({ all: `const x = assumption('x', ${value})\nconst mass = ${law}` })
    const waterfall = await explain(one(2, 'x + 1'), one(3, 'x * x'))
    expect(words(waterfall)).toEqual(['x', 'changed all'])
    expect(waterfall).toMatchObject({ from: 3, to: 9, shares: { values: [3, 3] } })
    expect(waterfall.forward.map(({ effect }) => effect)).toEqual([1, 5])
    expect(waterfall.reverse.map(({ effect }) => effect)).toEqual([1, 5])
  })

  test('waterfallOf() leaves an assumption worked out from others to those others', async () => {
    const at = (base: string, value: string) => ({
      base: `const base = ${base}`,
      all: `const x = assumption('x', ${value})\nconst mass = x`,
    })
    expect(words(await explain(at('2', 'base * 2'), at('3', 'base * 2')))).toEqual(['changed base'])
    expect(words(await explain(at('2', 'base * 2'), at('3', 'base * 4')))).toEqual(['changed base', 'changed all'])
  })

  test('waterfallOf() takes together who reads a new name and who declares it, and a name that moves', async () => {
    const after = { ...before, tare: 'const tare = 5', law: 'const mass: number = payload + range / 1000 + tare' }
    const added = await explain(before, after)
    expect(words(added)).toEqual(['changed law + added tare'])
    expect(added.steps[0]?.together).toBe('tare is new')
    const gone = await explain(after, before)
    expect(words(gone)).toEqual(['changed law + removed tare'])
    expect(gone.steps[0]?.together).toBe('tare is gone')
    const moved = await explain(
      { a: 'const tare = 5\nconst idle = 1', law: 'const mass = tare' },
      { a: 'const idle = 1', b: 'const tare = 6', law: 'const mass = tare' },
    )
    expect(words(moved)).toEqual(['changed a + added b'])
    expect(moved.forward).toEqual([{ steps: [0], effect: 1, failures: [] }])
  })

  test('waterfallOf() takes together what fails while it runs, and says what failed', async () => {
    const law = 'const mass = (() => { if (span < 10) throw new Error("the span is too short"); return span * 2 })()'
    const waterfall = await explain(
      { span: "const span = assumption('span', 8)", law: 'const mass = span', factor: 'const idle = 1' },
      { span: "const span = assumption('span', 12)", law, factor: 'const idle = 2' },
    )
    expect(words(waterfall)).toEqual(['span + changed law'])
    expect(waterfall.steps[0]?.together).toBe('without the other: cell "law" fails: the span is too short')
  })

  test('waterfallOf() gives the kernel the part that the same text makes under another one', async () => {
    const after = { ...before, needs: needs.replace('80', '100') }
    const waterfall = await explain(before, after, 'mass', { from: 470, to: 500 })
    expect(waterfall).toMatchObject({ from: 470, to: 500, kernel: 10 })
    expect(sum(waterfall.forward) + (waterfall.kernel ?? 0)).toBe(30)
  })

  test('waterfallOf() throws a sentence when the result is not there on one side', async () => {
    await expect(explain(before, { law: 'const weight = 1' })).rejects.toThrow('no cell alone declares "mass".')
    await expect(explain(before, { ...before, law: 'const mass = nobody' })).rejects.toThrow(
      /No cell declares "nobody"/,
    )
    await expect(explain({ law: 'const mass = "text"' }, before)).rejects.toThrow('"mass" is no number.')
  })

  test('waterfallOf() stops at a signal', async () => {
    const controller = new AbortController()
    controller.abort()
    const cells = cellsOf(before)
    const question = { from: cells, to: cells, name: 'mass', signal: controller.signal }
    await expect(waterfallOf(pipeline, question)).rejects.toThrow('it was stopped.')
  })
})
