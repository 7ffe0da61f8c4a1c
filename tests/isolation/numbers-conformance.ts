/** What every numbers host must do, run against each of them. */
import { describe, expect, it } from 'vitest'
import type { NumbersHost, NumbersOptions, Overrides } from '../../kernel/cells/program/index.js'
import { cellId, type HandWrittenCell, programOf } from './programs.js'

export interface NumbersSubject {
  readonly host: NumbersHost
  readonly kernelHash: string
}

const named = (name: string, cell: string) => ({ name, cell: cellId(cell) })

export function describeNumbersConformance(name: string, subject: () => NumbersSubject): void {
  const evaluate = (
    cells: readonly HandWrittenCell[],
    points: readonly Overrides[],
    wanted: { names: readonly (readonly [string, string])[]; requirements?: readonly string[] },
    options: NumbersOptions = {},
  ) => {
    const { host, kernelHash } = subject()
    const names = wanted.names.map(([one, cell]) => named(one, cell))
    const requirements = (wanted.requirements ?? []).map(cellId)
    return host.evaluateNumbers(programOf(kernelHash, cells), points, { names, requirements }, options)
  }

  const chain: readonly HandWrittenCell[] = [
    {
      id: 'payload',
      body: "const payload = assumption('payload', 400 * u.kg, { unit: 'kg' })",
      declares: ['payload'],
      assumptions: ['payload'],
    },
    { id: 'endless', body: 'for (;;) {}', reads: { payload: 'payload' } },
    {
      id: 'gross',
      body: `const gross = 4 * payload
        result('battery', payload / 2, { unit: 'kg' })
        requirement('mass', { actual: gross, atMost: 2000 })
        requirement('mass', { actual: gross, atLeast: 1000 })`,
      declares: ['gross'],
      reads: { payload: 'payload' },
    },
    {
      id: 'after',
      body: "const after = gross + 1; if (payload > 900) throw new Error('too heavy')",
      declares: ['after'],
      reads: { gross: 'gross', payload: 'payload' },
    },
  ]

  describe(`${name}: numbers`, () => {
    it('evaluateNumbers gives names, stated numbers and requirements at each point, and runs nothing else', async () => {
      const outcomes = await evaluate(
        chain,
        [{}, { payload: 500 }],
        {
          names: [
            ['gross', 'gross'],
            ['battery', 'gross'],
          ],
          requirements: ['gross'],
        },
        { timeLimit: 3000 },
      )
      expect(outcomes).toEqual([
        {
          ok: true,
          numbers: { gross: 1600, battery: 200 },
          requirements: { mass: { actual: 1600, margin: 400 }, 'mass (2)': { actual: 1600, margin: 600 } },
        },
        {
          ok: true,
          numbers: { gross: 2000, battery: 250 },
          requirements: { mass: { actual: 2000, margin: 0 }, 'mass (2)': { actual: 2000, margin: 1000 } },
        },
      ])
    })

    it('evaluateNumbers keeps order over many points and counts them as they come', async () => {
      const points = Array.from({ length: 100 }, (_, at) => ({ payload: at }))
      const counts: number[] = []
      const outcomes = await evaluate(
        chain,
        points,
        { names: [['gross', 'gross']] },
        { onProgress: (done) => counts.push(done) },
      )
      expect(outcomes.map(({ numbers }) => numbers.gross)).toEqual(points.map(({ payload }) => 4 * payload))
      expect(counts.at(-1)).toBe(100)
      expect(counts).toEqual([...counts].sort((a, b) => a - b))
    })

    it('evaluateNumbers says which cell failed, and gives what does not depend on it', async () => {
      const outcomes = await evaluate(chain, [{ payload: 1000 }, { payload: 1 }], {
        names: [
          ['after', 'after'],
          ['gross', 'gross'],
        ],
      })
      expect(outcomes).toEqual([
        {
          ok: false,
          cell: 'after',
          code: 'THROWN',
          message: 'too heavy',
          numbers: { gross: 4000 },
          requirements: {},
        },
        { ok: true, numbers: { after: 5, gross: 4 }, requirements: {} },
      ])
    })

    it('evaluateNumbers leaves out what is no number and keeps what is not finite', async () => {
      const body = "const text = 'a', list = [1], none = undefined, bad = 0 / 0, most = 1 / 0"
      const names = ['text', 'list', 'none', 'bad', 'most', 'unheardOf'].map((one) => [one, 'only'] as const)
      const outcomes = await evaluate([{ id: 'only', body, declares: names.map(([one]) => one).slice(0, 5) }], [{}], {
        names,
      })
      expect(outcomes).toEqual([
        { ok: true, numbers: { bad: Number.NaN, most: Number.POSITIVE_INFINITY }, requirements: {} },
      ])
    })

    it('evaluateNumbers fails at every point where a cell cannot run because of what it is', async () => {
      const loads = [{ id: 'only', body: "const a = 1; import('node:fs')", declares: ['a'] }]
      const outcomes = await evaluate(loads, [{}, {}], { names: [['a', 'only']] })
      expect(outcomes.map((one) => !one.ok && one.code)).toEqual(['CODE_REFUSED', 'CODE_REFUSED'])
    })

    it('evaluateNumbers refuses another kernel and a value that is no number', async () => {
      const { host } = subject()
      const nothing = { names: [], requirements: [] }
      await expect(host.evaluateNumbers(programOf('0'.repeat(64), []), [{}], nothing)).rejects.toThrow(/kernel/)
      await expect(evaluate(chain, [{ payload: Number.NaN }], { names: [] })).rejects.toThrow(/finite/)
    })

    it.each([
      ['an endless loop', 'for (;;) {}', /TIME_LIMIT/],
      ['lists without end', 'const s = []; for (;;) s.push(new Array(100000).fill(1.5))', /MEMORY|TIME|LOST/],
    ])('evaluateNumbers ends %s at one point and goes on with the others', async (_what, body, code) => {
      const cells: readonly HandWrittenCell[] = [
        {
          id: 'a',
          body: `const a = assumption('a', 1); if (a === 2) { ${body} }`,
          declares: ['a'],
          assumptions: ['a'],
        },
      ]
      const points = [1, 2, 3, 4, 5, 6].map((a) => ({ a }))
      const outcomes = await evaluate(cells, points, { names: [['a', 'a']] }, { timeLimit: 2000 })
      expect(outcomes.map((one) => one.ok)).toEqual([true, false, true, true, true, true])
      expect(!outcomes[1]?.ok && outcomes[1]?.code).toMatch(code)
      expect(outcomes[5]?.numbers).toEqual({ a: 6 })
    })

    it('evaluateNumbers stops within a moment, gives what it has, and can be asked again', async () => {
      const cells: readonly HandWrittenCell[] = [
        {
          id: 'a',
          body: "const a = assumption('a', 1); if (a >= 8) for (;;) {}",
          declares: ['a'],
          assumptions: ['a'],
        },
      ]
      const stop = new AbortController()
      let stoppedAt = 0
      const points = Array.from({ length: 40 }, (_, a) => ({ a }))
      const outcomes = await evaluate(
        cells,
        points,
        { names: [['a', 'a']] },
        {
          signal: stop.signal,
          onProgress: () => {
            stoppedAt = performance.now()
            stop.abort()
          },
        },
      )
      expect(performance.now() - stoppedAt).toBeLessThan(3000)
      expect(outcomes.length).toBeGreaterThanOrEqual(8)
      expect(outcomes.length).toBeLessThan(40)
      expect(outcomes.slice(0, 8).map(({ numbers }) => numbers.a)).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
      expect(await evaluate(cells, points, { names: [['a', 'a']] }, { signal: stop.signal })).toEqual([])
      expect(await evaluate(cells, [{ a: 3 }], { names: [['a', 'a']] })).toMatchObject([{ ok: true }])
    })
  })
}
