/** Parts of programs in real isolation: they must give what the whole cells give, at any point. */
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openEvaluator, runDrivers, sliceProgram } from '../../kernel/cells/evidence/index.js'
import { createPipeline, type Reading } from '../../kernel/cells/index.js'
import type { NumbersHost, WantedNumbers } from '../../kernel/cells/program/index.js'
import { preloaded } from '../../kernel/library/index.js'
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

const wantedOf = (name: string, cell: string, requirements: readonly string[] = []): WantedNumbers => ({
  names: [{ name, cell: cellId(cell) }],
  requirements: requirements.map(cellId),
})
const linesOf = (code: string | undefined) => (code ?? '').split('\n').filter((line) => /assumption|=|\(/.test(line))

const aircraft = {
  needs: [
    "const payload = assumption('payload', 400 * u.kg)",
    "const range = assumption('range', 85 * u.km)",
    "const hue = assumption('hue', 3)",
  ].join('\n'),
  masses: [
    'const parts: number[] = []',
    'const add = (mass: number) => parts.push(mass)',
    'add(payload)',
    'let empty = 900 * u.kg',
    'empty += 2 * payload',
    'const colour = hue * 2',
    'const gross = empty + parts.reduce((sum, part) => sum + part, 0)',
    "result('shade', colour)",
    "requirement('Heaviest', { actual: gross, atMost: 3000 * u.kg })",
    "requirement('Farthest', { actual: range, atMost: 100 * u.km })",
  ].join('\n'),
}

describe('sliceProgram(read, wanted) of a margin', () => {
  it('sliceProgram keeps the one requirement, and drivers of its margin are plain differences', async () => {
    const reading = await read(aircraft)
    const wanted = wantedOf('margin of Farthest', 'masses')
    const kept = linesOf(sliceProgram(reading, wanted).cells.at(-1)?.code).join('\n')
    expect(kept).toContain('requirement("Farthest"')
    expect(kept).not.toContain('Heaviest')
    const opened = await openEvaluator(reading, wanted, host)
    expect([opened.sliced, opened.assumptions]).toEqual([true, ['range']])
    const range = { name: 'range', value: 85_000 }
    const found = await runDrivers({ target: 'margin of Farthest', assumptions: [range] }, opened)
    // 100 km - range, 10 % either way.
    expect(found).toMatchObject({ base: 15_000, drivers: [{ low: { change: 8_500 }, high: { change: -8_500 } }] })
  })
})

describe('sliceProgram(read, wanted)', () => {
  it('sliceProgram keeps what the number needs, what changes that, and nothing beside it', async () => {
    const { cells } = sliceProgram(await read(aircraft), wantedOf('gross', 'masses'))
    const [needs, masses] = cells
    expect(linesOf(needs?.code).join('\n')).toContain('"payload"')
    expect(linesOf(needs?.code).join('\n')).not.toMatch(/"range"|"hue"/)
    for (const kept of ['add(payload)', 'empty +=', 'parts.push']) expect(masses?.code).toContain(kept)
    for (const left of ['colour', 'requirement', 'result(']) expect(masses?.code).not.toContain(left)
    expect(cells.flatMap(({ assumptions }) => assumptions)).toEqual(['payload'])
  })

  it('sliceProgram keeps lines where they are, so that errors name the right one', async () => {
    const reading = await read(aircraft)
    const whole = reading.program.cells.find(({ id }) => id === 'masses')?.code.split('\n') ?? []
    const part = sliceProgram(reading, wantedOf('gross', 'masses')).cells.at(-1)?.code.split('\n') ?? []
    const line = (lines: readonly string[]) => lines.findIndex((text) => text.includes('const gross'))
    expect(line(part)).toBeGreaterThan(0)
    expect(line(part)).toBe(line(whole))
  })

  it('sliceProgram wants the assumptions of requirements too, and of a stated result', async () => {
    const reading = await read(aircraft)
    const upstream = (wanted: WantedNumbers) =>
      sliceProgram(reading, wanted).cells.flatMap(({ assumptions }) => assumptions)
    expect(upstream(wantedOf('gross', 'masses', ['masses']))).toEqual(['payload', 'range'])
    expect(upstream(wantedOf('shade', 'masses'))).toEqual(['hue'])
  })
})

describe('openEvaluator(read, wanted, host)', () => {
  it('evaluateMany gives the number at each point, by the part that counts', async () => {
    const evaluator = await openEvaluator(await read(aircraft), wantedOf('gross', 'masses', ['masses']), host)
    expect([evaluator.sliced, evaluator.assumptions]).toEqual([true, ['payload', 'range']])
    const outcomes = await evaluator.evaluateMany([{}, { payload: 500 }, { range: 2e5 }])
    expect(outcomes.map(({ numbers }) => numbers.gross)).toEqual([2100, 2400, 2100])
    expect(outcomes.map(({ requirements }) => requirements.Farthest?.margin)).toEqual([15_000, 15_000, -100_000])
  })

  it('openEvaluator falls back to whole cells where a part says something else at a probe', async () => {
    // The list is changed under another name, in a declaration that nothing reads: the text does not tell.
    const reading = await read({
      a: "const x = assumption('x', 1)\nconst log: number[] = []\nconst note = [log][0]\nconst count = note.push(x)\nconst y = log.length + x",
    })
    const evaluator = await openEvaluator(reading, wantedOf('y', 'a'), host)
    expect(evaluator.sliced).toBe(false)
    expect((await evaluator.evaluateMany([{ x: 3 }]))[0]?.numbers).toEqual({ y: 4 })
  })

  it('evaluateMany of a part is evaluateMany of the whole, for any points of random programs', async () => {
    const operand = fc.constantFrom('a', 'b', 'c', '2', 'a * b', 'Math.max(b, c)', '(a > 1 ? b : c)')
    const line = fc
      .tuple(
        fc.constantFrom('const N = L + R', 'let N = L; N *= R', 'const N = [L, R].map((x) => x - 1)[1]'),
        operand,
        operand,
      )
      .map(
        ([form, left, right]) =>
          (name: string) =>
            form.replaceAll('N', name).replace('L', left).replace('R', right),
      )
    await fc.assert(
      fc.asyncProperty(
        fc.array(line, { minLength: 3, maxLength: 6 }),
        fc.array(fc.record({ a: fc.integer({ min: -5, max: 5 }), c: fc.double({ min: -5, max: 5, noNaN: true }) }), {
          minLength: 1,
          maxLength: 4,
        }),
        async (lines, points) => {
          const needs = "const a = assumption('a', 1)\nconst b = assumption('b', 2)\nconst c = assumption('c', 3)"
          const reading = await read({ needs, sums: lines.map((made, at) => made(`n${at}`)).join('\n') })
          const wanted = wantedOf(`n${lines.length - 1}`, 'sums')
          const part = await host.evaluateNumbers(sliceProgram(reading, wanted), points, wanted)
          expect(part).toEqual(await host.evaluateNumbers(reading.program, points, wanted))
        },
      ),
      { numRuns: 40 },
    )
  })
})

describe('runDrivers(request, tools)', () => {
  it('runDrivers asks cells in isolation and finds what a hand finds', async () => {
    const { evaluateMany } = await openEvaluator(await read(aircraft), wantedOf('gross', 'masses'), host)
    const drivers = await runDrivers(
      { target: 'gross', assumptions: [{ name: 'payload', value: 400, low: 350, high: 500 }] },
      { evaluateMany },
    )
    // gross = 900 + 3 payload
    expect(drivers).toMatchObject({ base: 2100, drivers: [{ low: { change: -150 }, high: { change: 300 } }] })
    expect(drivers.drivers[0]?.elasticity).toBeCloseTo((3 * 400) / 2100, 9)
  })
})
