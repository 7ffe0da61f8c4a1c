import { describe, expect, it } from 'vitest'
import type { Standing } from '../../../../client/compute/result-book.js'
import { TrialComputation } from '../../../../client/trial/trial-computation.js'
import type { Reading } from '../../../../kernel/cells/index.js'
import type { EvaluationOptions, Overrides, Wanted } from '../../../../kernel/cells/program/index.js'
import type { CellResult } from '../../../../shared/contracts/index.js'
import { failure, id, program, result, runnable } from '../result-samples.js'

interface Call {
  readonly overrides: Overrides
  readonly wanted: Wanted
  readonly options: EvaluationOptions
  finish(results: readonly CellResult[]): Promise<void>
  fail(reason: string): Promise<void>
}

const settled = () => new Promise<void>((resolve) => setTimeout(resolve, 0))

/** `needs` states the assumption `x`, `sums` reads it, `other` stands alone with the assumption `y`. */
function readingOf(version = '1'): Reading {
  const cells = [
    { ...runnable('needs', `needs${version}`), assumptions: ['x'] },
    runnable('sums', `sums${version}`, ['needs']),
    { ...runnable('other', `other${version}`), assumptions: ['y'] },
  ]
  return { graph: {}, program: program(cells) } as unknown as Reading
}

function bench() {
  const calls: Call[] = []
  const timers: { at: number; call: () => void }[] = []
  const long: boolean[] = []
  const troubles: string[] = []
  let now = 0
  const trial = new TrialComputation(
    {
      evaluate: (_, overrides, wanted, options) =>
        new Promise((resolve, reject) => {
          const finish = (results: readonly CellResult[]) => {
            resolve({ results, ran: [] })
            return settled()
          }
          const fail = (reason: string) => {
            reject(new Error(reason))
            return settled()
          }
          options.signal?.addEventListener('abort', () => void finish([failure('needs', 'needs1', 'STOPPED')]))
          calls.push({ overrides, wanted, options, finish, fail })
        }),
      after: (milliseconds, call) => {
        const entry = { at: now + milliseconds, call }
        timers.push(entry)
        return () => void timers.splice(timers.indexOf(entry), timers.includes(entry) ? 1 : 0)
      },
    },
    {
      onChange: () => undefined,
      onLongRun: (running) => long.push(running),
      onTrouble: (sentence) => troubles.push(sentence),
    },
  )
  const pass = async (milliseconds: number) => {
    now += milliseconds
    for (const timer of timers.splice(0)) {
      if (timer.at <= now) timer.call()
      else timers.push(timer)
    }
    await settled()
  }
  return { trial, calls, pass, long, troubles }
}

const own = (cell: string, version = '1'): Standing => ({ state: 'current', result: result(cell, cell + version) })
const tried = (value: number, version = '1') => [
  result('needs', `needs${version}`, value),
  result('sums', `sums${version}`, 10 * value),
]
const shownBy = ({ result }: Standing) => {
  const value = result?.values[0]?.value
  return value?.kind === 'number' ? value.si : undefined
}

describe('TrialComputation', () => {
  it('set(overrides) computes the cells that the values reach and no others', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    expect(calls).toHaveLength(0)
    trial.set({ x: 2 })
    expect(calls).toMatchObject([{ overrides: { x: 2 }, wanted: ['needs', 'sums'] }])
    expect(trial.standing(id('sums'), own('sums'))).toEqual(own('sums'))
    expect(trial.running).toBe(true)
    await calls[0]?.finish(tried(2))
    const standing = trial.standing(id('sums'), own('sums'))
    expect(standing).toMatchObject({ state: 'current', result: { values: [{ value: { si: 20 } }] } })
    expect(standing.trial).toEqual({
      values: [{ name: 'sums', said: { kind: 'number', si: 1 } }],
      requirements: [],
      figures: false,
    })
    expect(trial.standing(id('other'), own('other'))).toEqual(own('other'))
    expect(trial.running).toBe(false)
  })

  it('set({}) shows the document again at once, and the same values are not computed twice', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    trial.set({ x: 2 })
    await calls[0]?.finish(tried(2))
    trial.set({})
    expect(trial.standing(id('sums'), own('sums'))).toEqual(own('sums'))
    trial.set({ x: 2 })
    expect(shownBy(trial.standing(id('sums'), own('sums')))).toBe(20)
    expect(calls).toHaveLength(1)
  })

  it('set(overrides) many times during a run computes the latest values after it, and shows what comes meanwhile', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    for (const x of [2, 3, 4]) trial.set({ x })
    expect(calls).toHaveLength(1)
    await calls[0]?.finish(tried(2))
    expect(shownBy(trial.standing(id('sums'), own('sums')))).toBe(20)
    expect(trial.standing(id('sums'), own('sums')).state).toBe('current')
    expect(calls).toMatchObject([{}, { overrides: { x: 4 } }])
    await calls[1]?.finish(tried(4))
    expect(shownBy(trial.standing(id('sums'), own('sums')))).toBe(40)
    expect(calls).toHaveLength(2)
  })

  it('set(overrides) ends a run that lasts long after it was overtaken', async () => {
    const { trial, calls, pass, long } = bench()
    trial.take(readingOf())
    trial.set({ x: 2 })
    await pass(400)
    expect(long).toEqual([true])
    expect(trial.standing(id('sums'), own('sums')).state).toBe('computing')
    for (const x of [2.5, 3]) trial.set({ x })
    await pass(2999)
    expect(calls[0]?.options.signal?.aborted).toBe(false)
    await pass(1)
    expect(calls[0]?.options.signal?.aborted).toBe(true)
    expect(calls).toMatchObject([{}, { overrides: { x: 3 } }])
    expect(long).toEqual([true, false])
    await calls[1]?.finish(tried(3))
    await pass(5000)
    expect(calls).toHaveLength(2)
  })

  it('take(reading) computes the trial of the new text', async () => {
    const { trial, calls } = bench()
    trial.set({ x: 2, y: 5, nobody: 1 })
    trial.take(readingOf())
    expect(calls).toMatchObject([{ overrides: { x: 2, y: 5 }, wanted: ['needs', 'sums', 'other'] }])
    await calls[0]?.finish([...tried(2), result('other', 'other1', 5)])
    trial.take(readingOf('2'))
    expect(trial.standing(id('sums'), own('sums', '2'))).toMatchObject({ state: 'computing', result: { values: [{}] } })
    await calls[1]?.finish([...tried(2, '2'), result('other', 'other2', 5)])
    expect(trial.standing(id('sums'), own('sums', '2')).state).toBe('current')
    expect(trial.progress).toEqual({ done: 3, of: 3 })
  })

  it('stop() ends the run; what has no result is out of date until a value changes', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    expect(trial.stop()).toBe(false)
    trial.set({ x: 2 })
    expect(trial.stop()).toBe(true)
    expect(trial.stop()).toBe(false)
    await settled()
    expect(calls).toHaveLength(1)
    expect(trial.standing(id('sums'), own('sums')).state).toBe('out of date')
    trial.computeAll()
    expect(calls).toHaveLength(2)
  })

  it('standing(cell, own) of a failure keeps the last good values and the rows of the register', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    trial.set({ x: -1 })
    await calls[0]?.finish([failure('needs', 'needs1'), { ...failure('sums', 'sums1'), outcome: 'held back' }])
    const said: CellResult = { ...result('needs', 'needs1', 7), assumptions: [{ name: 'x', value: 7 }] }
    const standing = trial.standing(id('needs'), { state: 'current', result: said })
    expect(standing).toMatchObject({ state: 'failed', result: { assumptions: [{ name: 'x', value: 7, trial: -1 }] } })
    expect(shownBy(standing)).toBe(7)
    expect(trial.standing(id('sums'), own('sums')).state).toBe('held back')
  })

  it('standing(cell, own) has the units of the document while the checker has not read the text', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    trial.set({ x: 2 })
    await calls[0]?.finish(tried(2))
    const plain = result('sums', 'sums1')
    const known = { ...plain, values: plain.values.map((value) => ({ ...value, dimension: 'kg' })) }
    const dimensionOf = (own: Standing) => trial.standing(id('sums'), own).result?.values[0]?.dimension
    expect(dimensionOf({ state: 'current', result: known })).toBe('kg')
    expect(dimensionOf({ state: 'out of date', result: known })).toBeNull()
    expect(dimensionOf({ state: 'current', result: plain })).toBeNull()
  })

  it('standing(cell, own) marks everything while the result of the document is not known', async () => {
    const { trial, calls } = bench()
    trial.take(readingOf())
    trial.set({ x: 2 })
    await calls[0]?.finish(tried(2))
    expect(trial.standing(id('sums'), { state: 'out of date' }).trial?.values).toEqual([{ name: 'sums' }])
  })

  it('set(overrides) says why nothing was computed, and does not ask again by itself', async () => {
    const { trial, calls, troubles } = bench()
    trial.take(readingOf())
    trial.set({ x: 2 })
    await calls[0]?.fail('the kernel could not be fetched.')
    expect(troubles).toEqual([
      'The trial was not computed: the kernel could not be fetched. The document is as it was.',
    ])
    expect(calls).toHaveLength(1)
    trial.set({ x: 3 })
    await calls[1]?.finish([])
    expect(calls).toHaveLength(2)
    expect(trial.running).toBe(false)
  })

  it('prepare() opens the isolate once, with the document as it is', async () => {
    const { trial, calls } = bench()
    trial.prepare()
    expect(calls).toHaveLength(0)
    trial.take(readingOf())
    trial.prepare()
    trial.prepare()
    expect(calls).toMatchObject([{ overrides: {}, wanted: ['needs'] }])
    await calls[0]?.fail('no frame')
    trial.set({ x: 2 })
    expect(calls).toHaveLength(2)
  })
})
