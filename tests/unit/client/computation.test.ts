import { describe, expect, it } from 'vitest'
import { Computation, type ComputationParts } from '../../../client/compute/computation.js'
import type { CheckReport, EvaluationOptions, Graph, Overrides, Wanted } from '../../../kernel/cells/program/index.js'
import type { CellId, CellResult } from '../../../shared/contracts/index.js'
import { failure, id, print, program, result, runnable } from './result-samples.js'

interface Call {
  readonly wanted: Wanted
  readonly options: EvaluationOptions
  finish(results: readonly CellResult[]): void
}

/** Reading gives one runnable cell per source; evaluation waits until the test finishes it. */
function bench(reads: Record<string, readonly string[]> = {}) {
  const calls: Call[] = []
  const shared: CellResult[] = []
  const tried: { overrides: Overrides; wanted: readonly CellId[] }[] = []
  const sources = new Map<CellId, string>()
  const troubles: string[] = []
  const timers: { at: number; call: () => void }[] = []
  let now = 0
  let names: CheckReport['names'] = []
  const longRuns: boolean[] = []
  const graph = (): Graph =>
    ({
      cells: [],
      owner: new Map(),
      upstream: new Map(),
      shadowed: [],
      findings: [],
      failed: new Set(),
    }) as unknown as Graph
  const parts: ComputationParts = {
    read: async (cells) => {
      if (cells.some((cell) => cell.source === 'unreadable')) throw new Error('the compiler is gone')
      for (const cell of cells) sources.set(cell.id, cell.source)
      return {
        graph: graph(),
        program: program(
          cells.map((cell) => ({
            ...runnable(cell.id, cell.source, reads[cell.id] ?? []),
            assumptions: [`of ${cell.id}`],
          })),
        ),
      }
    },
    evaluate: (_reading, _overrides, wanted, options) =>
      new Promise((resolve) => {
        const ids = wanted === 'all' ? [] : wanted
        const finish = (results: readonly CellResult[]) => resolve({ results, ran: ids })
        options.signal?.addEventListener('abort', () => finish(ids.map((cell) => failure(cell, 'x', 'STOPPED'))))
        calls.push({ wanted, options, finish })
      }),
    evaluateTrial: async (_reading, overrides, wanted) => {
      const ids = wanted === 'all' ? [] : wanted
      tried.push({ overrides, wanted: ids })
      return { results: ids.map((cell) => result(cell, sources.get(cell) ?? '', 9)), ran: ids }
    },
    check: async () => ({ findings: [], names }),
    share: (results) => shared.push(...results),
    after: (milliseconds, call) => {
      const entry = { at: now + milliseconds, call }
      timers.push(entry)
      return () => void timers.splice(timers.indexOf(entry), timers.includes(entry) ? 1 : 0)
    },
  }
  const computation = new Computation(parts, {
    onChange: () => undefined,
    onLongRun: (running) => longRuns.push(running),
    onTrouble: (sentence) => troubles.push(sentence),
  })
  const pass = async (milliseconds: number) => {
    now += milliseconds
    for (const timer of timers.splice(0)) {
      if (timer.at <= now) timer.call()
      else timers.push(timer)
    }
    await new Promise((resolve) => setTimeout(resolve, 0))
  }
  const edit = async (sources: Record<string, string>) => {
    computation.setCells(Object.entries(sources).map(([cell, source]) => ({ id: id(cell), source })))
    await pass(80)
  }
  return {
    computation,
    calls,
    shared,
    tried,
    troubles,
    longRuns,
    pass,
    edit,
    setNames: (given: CheckReport['names']) => (names = given),
  }
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0))
const stateOf = (computation: Computation, cell: string) => computation.standing(id(cell)).state

describe('Computation', () => {
  it('setCells(cells) computes after a pause in typing, once for many keystrokes', async () => {
    const { computation, calls, pass } = bench()
    for (const source of ['1', '12', '123']) {
      computation.setCells([{ id: id('a'), source }])
      await pass(40)
    }
    expect(calls).toHaveLength(0)
    await pass(80)
    expect(calls).toHaveLength(1)
    calls[0]?.finish([result('a', '123')])
    await settled()
    expect(stateOf(computation, 'a')).toBe('current')
  })

  it('setCells(cells) evaluates only cells without a result for their present text', async () => {
    const { calls, edit } = bench()
    await edit({ a: 'a1', b: 'b1' })
    calls[0]?.finish([result('a', 'a1'), result('b', 'b1')])
    await settled()
    await edit({ a: 'a2', b: 'b1' })
    expect(calls[1]?.wanted).toEqual(['a'])
    calls[1]?.finish([result('a', 'a2')])
    await settled()
    await edit({ a: 'a1', b: 'b1' })
    expect(calls).toHaveLength(2)
  })

  it('setCells(cells) shows each cell as it finishes', async () => {
    const { computation, calls, edit } = bench()
    await edit({ a: 'a1', b: 'b1' })
    calls[0]?.options.onBegin?.(id('a'))
    expect(stateOf(computation, 'a')).toBe('computing')
    calls[0]?.options.onResult?.(result('a', 'a1'))
    calls[0]?.options.onBegin?.(id('b'))
    expect([stateOf(computation, 'a'), stateOf(computation, 'b')]).toEqual(['current', 'computing'])
  })

  it('progress says how many of the wanted cells have come, and which computes now', async () => {
    const { computation, calls, edit } = bench()
    await edit({ a: 'a1', b: 'b1' })
    calls[0]?.options.onBegin?.(id('a'))
    expect(computation.progress).toEqual({ done: 0, of: 2, cell: 'a' })
    calls[0]?.options.onResult?.(result('a', 'a1'))
    calls[0]?.options.onBegin?.(id('b'))
    expect(computation.progress).toEqual({ done: 1, of: 2, cell: 'b' })
    calls[0]?.finish([result('a', 'a1'), result('b', 'b1')])
    await settled()
    expect(computation.progress).toEqual({ done: 2, of: 2, cell: undefined })
  })

  it('setCells(cells) ends a run that an edit has overtaken, and runs the slow cell after the others', async () => {
    const { computation, calls, edit, pass } = bench({ c: ['slow'] })
    await edit({ slow: 's1', b: 'b1', c: 'c1' })
    calls[0]?.options.onBegin?.(id('slow'))
    await edit({ slow: 's1', b: 'b2', c: 'c1' })
    expect(calls).toHaveLength(1)
    await pass(200)
    await settled()
    expect(calls[1]?.wanted).toEqual(['b'])
    calls[1]?.finish([result('b', 'b2')])
    await settled()
    expect(stateOf(computation, 'b')).toBe('current')
    expect(calls[2]?.wanted).toEqual(['slow', 'c'])
  })

  it('stop() ends the run, leaves the last good values out of date and does not begin again by itself', async () => {
    const { computation, calls, edit } = bench()
    await edit({ a: 'a1', b: 'b1' })
    calls[0]?.finish([result('a', 'a1'), result('b', 'b1')])
    await settled()
    await edit({ a: 'a2', b: 'b1' })
    calls[1]?.options.onBegin?.(id('a'))
    expect(computation.running).toBe(true)
    expect(computation.stop()).toBe(true)
    // A run that is ending does not swallow a second Escape.
    expect(computation.stop()).toBe(false)
    await settled()
    expect(computation.standing(id('a'))).toMatchObject({ state: 'out of date', result: { fingerprint: print('a1') } })
    await edit({ a: 'a2', b: 'b2' })
    expect(calls[2]?.wanted).toEqual(['b'])
    calls[2]?.finish([result('b', 'b2')])
    await settled()
    expect(computation.stop()).toBe(false)
    void computation.computeAll()
    await settled()
    expect(calls[3]?.wanted).toEqual(['a', 'b'])
  })

  it('receive(results) makes computing here needless', async () => {
    const { computation, calls, pass } = bench()
    computation.setCells([{ id: id('a'), source: 'a1' }])
    computation.receive([result('a', 'a1')])
    await pass(80)
    expect(calls).toHaveLength(0)
    expect(stateOf(computation, 'a')).toBe('current')
  })

  it('setCells(cells) shares results with the dimensions that the check found', async () => {
    const { calls, shared, edit, setNames } = bench()
    setNames([{ cell: id('a'), name: 'a', dimension: 'kg' }])
    await edit({ a: 'a1' })
    calls[0]?.finish([result('a', 'a1')])
    await settled()
    expect(shared).toMatchObject([{ cell: 'a', values: [{ dimension: 'kg' }] }])
  })

  it('setCells(cells) says when a run lasts, and that it ended', async () => {
    const { calls, longRuns, edit, pass } = bench()
    await edit({ a: 'a1' })
    await pass(150)
    expect(longRuns).toEqual([true])
    calls[0]?.finish([result('a', 'a1')])
    await settled()
    expect(longRuns).toEqual([true, false])
  })

  it('setCells(cells) says in a sentence when reading is not possible', async () => {
    const { troubles, edit } = bench()
    await edit({ a: 'unreadable' })
    expect(troubles).toEqual(['Computing did not begin: the compiler is gone'])
  })

  it('findings(cell) gives only those of that cell', async () => {
    const { computation, edit } = bench()
    await edit({ a: 'a1' })
    expect(computation.findings('nobody' as CellId)).toEqual([])
  })

  it('offerAgain(results) shares what the server did not take once its cell is back by an undo, which computes nothing', async () => {
    const { computation, calls, shared, edit } = bench()
    await edit({ a: 'a1', b: 'b1' })
    calls[0]?.finish([result('a', 'a1'), result('b', 'b1')])
    await settled()
    const refused = shared.filter(({ cell }) => cell === 'b')
    await edit({ a: 'a1' })
    computation.offerAgain(refused)
    await settled()
    expect(shared).toHaveLength(2)
    await edit({ a: 'a1', b: 'b1' })
    await settled()
    expect(calls).toHaveLength(1)
    expect(shared.slice(2).map(({ fingerprint }) => fingerprint)).toEqual([print('b1')])
  })

  it('tryOut(overrides) shows the trial, shares nothing of it, and forgets it at once', async () => {
    const { computation, calls, shared, tried, edit } = bench({ b: ['a'] })
    await edit({ a: 'a1', b: 'b1', c: 'c1' })
    calls[0]?.finish([result('a', 'a1'), result('b', 'b1'), result('c', 'c1')])
    await settled()
    const sharedBefore = shared.length
    const before = computation.standing(id('b'))
    computation.tryOut({ 'of a': 2 })
    expect(computation.running).toBe(true)
    await settled()
    expect(tried).toEqual([{ overrides: { 'of a': 2 }, wanted: ['a', 'b'] }])
    expect(computation.standing(id('b'))).toMatchObject({ state: 'current', trial: { values: [{ name: 'b' }] } })
    expect(computation.standing(id('c')).trial).toBeUndefined()
    expect(computation.book.currentResult(id('b'))).toBe(before.result)
    expect(shared).toHaveLength(sharedBefore)
    computation.tryOut({})
    expect(computation.standing(id('b'))).toEqual(before)
    expect(calls).toHaveLength(1)
  })

  it('setCells(cells) during a trial computes both, and shares the results of the document alone', async () => {
    const { computation, calls, shared, tried, edit } = bench({ b: ['a'] })
    await edit({ a: 'a1', b: 'b1' })
    calls[0]?.finish([result('a', 'a1'), result('b', 'b1')])
    computation.tryOut({ 'of a': 2 })
    await settled()
    await edit({ a: 'a1', b: 'b2' })
    expect(tried[1]).toEqual({ overrides: { 'of a': 2 }, wanted: ['b'] })
    expect(calls[1]?.wanted).toEqual(['b'])
    calls[1]?.finish([result('b', 'b2', 5)])
    await settled()
    expect(computation.standing(id('b')).result?.values[0]?.value).toEqual({ kind: 'number', si: 9 })
    expect(shared.map(({ values }) => values[0]?.value)).not.toContainEqual({ kind: 'number', si: 9 })
    expect(shared.map(({ fingerprint }) => fingerprint)).toContain(print('b2'))
  })
})
