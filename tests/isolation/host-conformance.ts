/** What every evaluation host must do, run against each of them. */
import { describe, expect, it } from 'vitest'
import type { EvaluationHost, Program } from '../../kernel/cells/program/index.js'
import type { CellResult } from '../../shared/contracts/index.js'
import { cellId, fingerprintOf, type HandWrittenCell, programOf } from './programs.js'

export interface Subject {
  readonly host: EvaluationHost
  readonly kernelHash: string
}

const chain: readonly HandWrittenCell[] = [
  {
    id: 'payload',
    body: "const payload = assumption('payload', 400 * u.kg, { unit: 'kg', range: [100, 600] })",
    declares: ['payload'],
    assumptions: ['payload'],
  },
  { id: 'other', body: 'const other = 3', declares: ['other'] },
  {
    id: 'gross',
    body: "const gross = result('gross', 4 * payload, { unit: 'kg', symbol: 'm_g' })",
    declares: ['gross'],
    reads: { payload: 'payload' },
  },
]

export function describeConformance(name: string, subject: () => Subject): void {
  const compute = async (
    cells: readonly HandWrittenCell[],
    options: Parameters<EvaluationHost['evaluate']>[3] = {},
  ) => {
    const { host, kernelHash } = subject()
    return host.evaluate(programOf(kernelHash, cells), {}, 'all', options)
  }
  const only = async (body: string, declares: readonly string[] = [], options = {}) => {
    const { results } = await compute([{ id: 'only', body, declares }], options)
    return results[0] as CellResult
  }

  describe(`${name}: values`, () => {
    it('evaluate gives values in evaluation order with units, symbols and what was stated', async () => {
      const { results, ran } = await compute(chain)
      expect(results.map(({ cell }) => cell)).toEqual(['payload', 'other', 'gross'])
      expect(ran).toEqual(['payload', 'other', 'gross'])
      expect(results[2]?.values).toEqual([
        {
          name: 'gross',
          value: { kind: 'number', si: 1600 },
          dimension: null,
          unit: 'kg',
          symbol: 'm_g',
          stated: true,
        },
      ])
      expect(results[0]?.assumptions).toEqual([{ name: 'payload', value: 400, unit: 'kg', low: 100, high: 600 }])
    })

    it('evaluate shows every kind of value, cut to what a reader can use', async () => {
      const body = `const text = 'a', truth = true, none = null, f = (x) => x, bad = 0 / 0;
        const list = Array.from({ length: 1000 }, (_, i) => i), record = { a: 1, deep: { deep: { deep: { deep: { deep: 1 } } } } };`
      const { values } = await only(body, ['text', 'truth', 'none', 'f', 'bad', 'list', 'record'])
      const kinds = values.map(({ value }) => value.kind)
      expect(kinds).toEqual(['text', 'truth', 'nothing', 'function', 'number', 'list', 'record'])
      expect(values[4]?.value).toEqual({ kind: 'number', si: 'NaN' })
      expect(values[5]?.value).toMatchObject({ length: 1000 })
      expect(values[5]?.value.kind === 'list' && values[5].value.items.length).toBe(100)
      expect(JSON.stringify(values[6]?.value)).toContain('"more":1')
    })

    it('evaluate collects figures, and names what is wrong with one that cannot be drawn', async () => {
      const axis = "{ label: 'a', dimension: '1' }"
      const good = `{ figure: 'plot', caption: 'c', x: ${axis}, y: ${axis}, marks: [{ mark: 'line', x: [1, 2], y: new Float64Array([1, 2]) }] }`
      const result = await only(`const drawn = ${good}; const two = [drawn, drawn]`, ['drawn', 'two'])
      expect(result.figures).toHaveLength(3)
      expect(result.figures[0]?.marks[0]).toEqual({ mark: 'line', x: [1, 2], y: [1, 2] })
      const failed = await only(`const drawn = { ...${good}, marks: [{ mark: 'line', x: [0 / 0], y: [1] }] }`, [
        'drawn',
      ])
      expect(failed.error?.code).toBe('FIGURE_INVALID')
      expect(failed.error?.message).toContain('marks.0.x.0')
    })

    it('evaluate gives each reader its own copy of a typed array, and frozen records', async () => {
      const { results } = await compute([
        {
          id: 'a',
          body: 'const t = new Float64Array([1, 2]); const r = { t, list: [1] }; const spoil = () => { t[0] = 9 }',
          declares: ['t', 'r', 'spoil'],
        },
        {
          id: 'b',
          body: 't[0] = 5; r.t[1] = 6; spoil(); const b = t[0]',
          declares: ['b'],
          reads: { t: 'a', r: 'a', spoil: 'a' },
        },
        {
          id: 'c',
          body: 'const c = [t[0], t[1], r.t[0], r.t[1]]; r.list.push(1)',
          declares: ['c'],
          reads: { t: 'a', r: 'a', b: 'b' },
        },
        {
          id: 'd',
          body: 'const d = [t[0], t[1], r.t[0], r.t[1]].join()',
          declares: ['d'],
          reads: { t: 'a', r: 'a', b: 'b' },
        },
      ])
      expect(results[2]?.error?.message).toContain('not extensible')
      expect(results[3]?.values[0]?.value).toEqual({ kind: 'text', text: '1,2,1,2' })
    })

    it('evaluate shows a design that does not close as why, and fails the cell that reads its gross mass', async () => {
      const { results } = await compute([
        {
          id: 'a',
          body: 'const sized = sizing.close({ from: 500, requiredMass: (m) => 400 + 1.1 * m }); const beside = { sized, t: new Float64Array(1) }',
          declares: ['sized', 'beside'],
        },
        { id: 'b', body: 'const b = 2 * sized.grossMass', declares: ['b'], reads: { sized: 'a' } },
        // A record with a typed array is copied for its reader.
        { id: 'c', body: 'const { grossMass } = beside.sized', declares: ['grossMass'], reads: { beside: 'a' } },
        { id: 'd', body: 'const d = sized.closed ? 1 : sized.runsAway', declares: ['d'], reads: { sized: 'a' } },
      ])
      const shown = results[0]?.values[0]?.value
      expect(shown?.kind === 'record' && shown.entries.map(([key]) => key)).toEqual([
        ...['closed', 'reason', 'runsAway', 'shortfall', 'atGrossMass', 'deficits', 'iterations', 'folds'],
      ])
      for (const [reader, id] of [
        [results[1], 'b'],
        [results[2], 'c'],
      ] as const)
        expect(reader?.error).toMatchObject({
          code: 'DOES_NOT_CLOSE',
          message: expect.stringContaining('sizing.close: no gross mass satisfies the build-up'),
          details: { runsAway: 'total' },
          place: { cell: id },
        })
      expect(results[3]?.values[0]?.value).toEqual({ kind: 'text', text: 'total' })
    })

    it.each([
      ['a Map', 'const x = new Map()'],
      ['class Rotor', 'class Rotor {} const x = new Rotor()'],
      ['a symbol', 'const x = Symbol()'],
      ['class Promise', 'const x = (async () => {})()'],
      ['get or set', 'const x = { get a() { return 1 } }'],
      ['class', 'const x = [Object.create({ a: 1 })]'],
    ])('evaluate refuses %s as a name of a cell and says what is accepted', async (words, body) => {
      const { error } = await only(body, ['x'])
      expect(error?.code).toBe('NOT_SHAREABLE')
      expect(error?.message).toContain('"x')
      expect(error?.message).toContain(words)
      expect(error?.message).toContain('Accepted are numbers')
    })

    it('evaluate takes circular and very deep records', async () => {
      const body =
        'const ring = { a: 1 }; ring.self = ring; let deep = {}; for (let i = 0; i < 200000; i++) deep = { deep };'
      expect((await only(body, ['ring', 'deep'])).outcome).toBe('computed')
    })

    it('evaluate lets cells define errors and methods in the usual ways', async () => {
      const body = `class Own extends Error { constructor(m) { super(m); this.name = 'Own' } }
        const o = {}; o.toString = () => 'o'; o.constructor = 1; function F() {} F.prototype.toString = () => 'f'; const text = String(o) + String(new F());
        throw new Own('mine ' + text)`
      expect((await only(body)).error?.message).toBe('Own: mine of')
    })
  })

  describe(`${name}: errors`, () => {
    it('evaluate places an error in the cell that threw and names the calling cell', async () => {
      const { results } = await compute([
        { id: 'a', body: '\nconst f = (x) => {\n  throw new TypeError("bad " + x) }', declares: ['f'] },
        { id: 'b', body: '\n\n  f(1)', reads: { f: 'a' } },
        { id: 'c', body: 'const c = 1', declares: ['c'], reads: {} },
      ])
      expect(results[1]?.error).toEqual({
        code: 'THROWN',
        message: 'TypeError: bad 1',
        place: { cell: 'a', line: 4, column: 9 },
        calledFrom: [{ cell: 'b', line: 4, column: 3 }],
      })
      expect(results[2]?.outcome).toBe('computed')
    })

    it("evaluate passes the kernel's typed errors on with code and details", async () => {
      const { error } = await only('rotor.hover({ thrust: -1, diskArea: 1, density: 1, figureOfMerit: 0.7 })')
      expect(error?.code).toBe('INVALID_INPUT')
      expect(error?.details).toMatchObject({ argument: expect.any(String) })
      expect(error?.place).toMatchObject({ cell: 'only', line: 2 })
    })

    it.each([
      ['a text', "throw 'plain'", '"plain"'],
      ['undefined', 'throw undefined', 'undefined'],
      [
        'a record with traps',
        'throw { get message() { throw 1 }, toString() { throw 2 }, get stack() { throw 3 } }',
        'not an Error',
      ],
      [
        'an error with traps',
        "const e = new Error('x'); Object.defineProperty(e, 'message', { get() { throw e } }); throw e",
        'fails by itself',
      ],
    ])('evaluate describes %s that was thrown', async (_what, body, words) => {
      const { error } = await only(body)
      expect(error?.code).toBe('THROWN')
      expect(error?.message).toContain(words)
    })

    it('evaluate holds back what reads a failed cell, naming the first that failed', async () => {
      const { results } = await compute([
        { id: 'a', body: "throw new Error('no')", declares: ['x'] },
        { id: 'b', body: 'const y = x', declares: ['y'], reads: { x: 'a' } },
        { id: 'c', body: 'const z = y', declares: ['z'], reads: { y: 'b' } },
        { id: 'd', body: 'const d = 1', declares: ['d'] },
      ])
      expect(results.map(({ outcome, heldBackBy }) => [outcome, heldBackBy])).toEqual([
        ['failed', undefined],
        ['held back', 'a'],
        ['held back', 'a'],
        ['computed', undefined],
      ])
    })

    it('evaluate reports cells that cannot run and those they hold back', async () => {
      const { host, kernelHash } = subject()
      const fingerprint = fingerprintOf('f')
      const error = { code: 'SYNTAX', message: 'It cannot be read.' }
      const program: Program = {
        ...programOf(kernelHash, [{ id: 'a', body: 'const a = 1', declares: ['a'] }]),
        failed: [{ id: cellId('bad'), fingerprint, error }],
        heldBack: [{ id: cellId('held'), fingerprint, by: cellId('bad') }],
      }
      const { results } = await host.evaluate(program, {}, [cellId('held')])
      expect(results.map(({ cell, outcome }) => [cell, outcome])).toEqual([
        ['bad', 'failed'],
        ['held', 'held back'],
      ])
      expect((await host.evaluate(program, {}, 'all')).results).toHaveLength(3)
    })

    it('evaluate turns endless recursion into a sentence', async () => {
      expect((await only('const f = (x) => 1 + f(x); f(1)')).error?.code).toBe('STACK_OVERFLOW')
    })

    it('evaluate refuses code that loads code, and takes the word in a text', async () => {
      expect((await only("import('node:fs')")).error?.code).toBe('CODE_REFUSED')
      expect((await only("const x = 'import (duty)'", ['x'])).outcome).toBe('computed')
    })

    it('evaluate refuses another kernel and a trial value that is no number', async () => {
      const { host, kernelHash } = subject()
      await expect(host.evaluate(programOf(fingerprintOf('x'), []), {}, 'all')).rejects.toThrow(/kernel/)
      await expect(host.evaluate(programOf(kernelHash, []), { a: Number.NaN }, 'all')).rejects.toThrow(/finite/)
    })
  })

  describe(`${name}: what is too much`, () => {
    it.each([
      ['a long text', "const x = 'ab'.repeat(100000)", 'OUTPUT_TOO_LARGE'],
      [
        'many long texts',
        "const x = Array.from({ length: 100 }, () => Array.from({ length: 100 }, () => 'a'.repeat(500)))",
        'OUTPUT_TOO_LARGE',
      ],
      ['too many items', 'const x = Array.from({ length: 5000000 }, () => 1)', 'OUTPUT_TOO_LARGE'],
      [
        'too many figures',
        "const x = Array.from({ length: 90 }, () => [{ figure: 'plot' }, { figure: 'plot' }])",
        'OUTPUT_TOO_LARGE',
      ],
    ])('evaluate refuses %s with a sentence', async (_what, body, code) => {
      const { error } = await only(body, ['x'])
      expect(error?.code).toBe(code)
    })

    it('evaluate keeps a bounded log', async () => {
      const { log } = await only("for (let i = 0; i < 5000; i++) console.log('line\\nend', i, { a: [1, 2] }); ")
      expect(log).toHaveLength(1000)
      expect(log[0]).toBe('line\nend 0 { a: [1, 2] }')
      expect(log.at(-1)).toContain('more lines')
    })

    it.each([
      ['an endless loop', 'for (;;) {}', /TIME_LIMIT/],
      ['a regular expression that backtracks', "/^(a+)+$/.test('a'.repeat(60) + 'b')", /TIME_LIMIT/],
      [
        'an endless chain of microtasks',
        'const again = async () => { for (;;) await null }; again()',
        /TIME_LIMIT|computed/,
      ],
      [
        'lists without end',
        'const s = []; for (;;) s.push(new Array(100000).fill(1.5))',
        /MEMORY_LIMIT|TIME_LIMIT|EVALUATOR_LOST/,
      ],
      [
        'buffers without end',
        'const s = []; for (;;) s.push(new Float64Array(1e6).fill(1.5))',
        /MEMORY_LIMIT|TIME_LIMIT|EVALUATOR_LOST/,
      ],
      ['text without end', "let s = 'a'; for (;;) s += s + s", /THROWN|MEMORY_LIMIT/],
      ['a buffer too large', 'new ArrayBuffer(1e15)', /MEMORY_LIMIT|THROWN/],
    ])('evaluate ends %s and goes on with the other cells', async (_what, body, code) => {
      const begun: string[] = []
      const { results } = await compute(
        [
          { id: 'before', body: `const p = ${Math.random()}`, declares: ['p'] },
          { id: 'culprit', body, declares: [], reads: { p: 'before' } },
          { id: 'after', body: `const q = ${Math.random()}`, declares: ['q'] },
        ],
        { timeLimit: 3000, onBegin: (cell) => begun.push(cell) },
      )
      expect(results[0]?.outcome).toBe('computed')
      expect(results[1]?.error?.code ?? results[1]?.outcome).toMatch(code)
      expect(results[2]?.outcome).toBe('computed')
      expect(begun).toEqual(['before', 'culprit', 'after'])
    })
  })

  describe(`${name}: memory and trial values`, () => {
    it('evaluate runs again only what an edit or a trial value reaches', async () => {
      const { host, kernelHash } = subject()
      const mark = `// ${Math.random()}\n`
      const marked = chain.map((cell) => ({ ...cell, body: mark + cell.body }))
      const program = programOf(kernelHash, marked)
      expect((await host.evaluate(program, {}, 'all')).ran).toEqual(['payload', 'other', 'gross'])
      expect((await host.evaluate(program, {}, 'all')).ran).toEqual([])
      const trial = await host.evaluate(program, { payload: 500 }, 'all')
      expect(trial.ran).toEqual(['payload', 'gross'])
      expect(trial.results[0]?.assumptions[0]).toMatchObject({ value: 400, trial: 500 })
      expect(trial.results[2]?.values[0]?.value).toEqual({ kind: 'number', si: 2000 })
      expect((await host.evaluate(program, { payload: 500, unheardOf: 1 }, 'all')).ran).toEqual([])
      const edited = programOf(kernelHash, [
        marked[0],
        marked[1],
        { ...marked[2], body: `${mark}const gross = payload` },
      ] as HandWrittenCell[])
      expect((await host.evaluate(edited, {}, 'all')).ran).toEqual(['gross'])
      expect((await host.evaluate(program, {}, [cellId('other')])).results.map(({ cell }) => cell)).toEqual(['other'])
    })

    it('evaluateBatch gives one evaluation per set of trial values', async () => {
      const { host, kernelHash } = subject()
      const trials = [100, 200, 300].map((payload) => ({ payload }))
      const evaluations = await host.evaluateBatch(programOf(kernelHash, chain), trials, [cellId('gross')])
      expect(evaluations.map(({ results }) => results.at(-1)?.values[0]?.value)).toEqual([
        { kind: 'number', si: 400 },
        { kind: 'number', si: 800 },
        { kind: 'number', si: 1200 },
      ])
    })
  })

  describe(`${name}: stop`, () => {
    it('evaluate stops at once, keeps what is finished and marks the rest', async () => {
      const stop = new AbortController()
      const finished: string[] = []
      let stoppedAt = 0
      const { results } = await compute(
        [
          { id: 'a', body: `const a = ${Math.random()}`, declares: ['a'] },
          { id: 'b', body: 'for (;;) {}' },
          { id: 'c', body: 'const c = 1', declares: ['c'] },
        ],
        {
          signal: stop.signal,
          timeLimit: 60_000,
          onResult: ({ cell }) => finished.push(cell),
          onBegin: (cell) => {
            if (cell !== 'b') return
            stoppedAt = performance.now()
            stop.abort()
          },
        },
      )
      expect(performance.now() - stoppedAt).toBeLessThan(5000)
      expect(results.map(({ outcome, error }) => error?.code ?? outcome)).toEqual(['computed', 'STOPPED', 'STOPPED'])
      expect(finished).toEqual(['a', 'b', 'c'])
      expect((await only('const x = 1', ['x'])).outcome).toBe('computed')
    })

    it('evaluate that waits behind another call stops without waiting, and evaluateBatch gives what it has', async () => {
      const { host, kernelHash } = subject()
      const stop = new AbortController()
      const first = compute([{ id: 'slow', body: 'for (;;) {}' }], { timeLimit: 2500 })
      const order: string[] = []
      const waiting = compute([{ id: 'w', body: '' }], { signal: stop.signal }).then((value) => {
        order.push('waiting')
        return value
      })
      const slow = first.then(() => order.push('slow'))
      stop.abort()
      expect((await waiting).results[0]?.error?.code).toBe('STOPPED')
      await slow
      expect(order).toEqual(['waiting', 'slow'])
      const gone = new AbortController()
      gone.abort()
      expect(await host.evaluateBatch(programOf(kernelHash, chain), [{}, {}], 'all', { signal: gone.signal })).toEqual(
        [],
      )
    })
  })
}
