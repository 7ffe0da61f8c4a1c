import { describe, expect, test } from 'vitest'
import { type SpreadSources, SpreadWork } from '../../../client/asked/spread-work.js'
import type { AssumptionRecord, NumbersOutcome, Point } from '../../../shared/contracts/index.js'
import { cellView, number, resultOf, sheetView } from '../rendering/support.js'

const normal = (name: string, more: Partial<AssumptionRecord> = {}): AssumptionRecord => ({
  name,
  value: 10,
  distribution: { kind: 'normal', mean: 10, deviation: 1 },
  ...more,
})
const viewOf = (assumptions: readonly AssumptionRecord[], values = [number('y', 20, '1')]) =>
  sheetView([cellView('a', { result: resultOf('a', { values, assumptions: [...assumptions] }) })])

/** A notebook of one sum, and a clock that a batch moves by a second. */
function bench(
  assumptions: readonly AssumptionRecord[],
  more: Partial<SpreadSources> = {},
  onState: () => void = () => {},
) {
  const seen = { points: [] as Point[], changes: [] as string[], time: 0, view: viewOf(assumptions) }
  const outcome = (point: Point): NumbersOutcome => ({
    ok: true,
    numbers: { y: (point.a ?? 0) + (point.b ?? 0), z: point.a ?? 0 },
    requirements: {},
  })
  const sources: SpreadSources = {
    view: () => seen.view,
    evaluateMany: async (_target, points, signal) => {
      await Promise.resolve()
      if (signal.aborted) return []
      seen.time += 1000
      seen.points.push(...points)
      return points.map(outcome)
    },
    reaching: () => undefined,
    say: () => {},
    now: () => seen.time,
    ...more,
  }
  const work = new SpreadWork(sources, (part) => {
    seen.changes.push(part)
    if (part === 'state') onState()
  })
  return { work, seen }
}
const options = { count: 256, seed: 1, untilSettled: false }

describe('SpreadWork', () => {
  test('sample() finds the spread of a number, with progress and time left on the way', async () => {
    const { work, seen } = bench([normal('a'), normal('b')])
    const running = work.sample('y', options)
    expect(work.running).toEqual({ part: 'samples', done: 0, asked: 0 })
    await running
    expect(work.running).toBeUndefined()
    expect(work.answers).toMatchObject({ target: 'y', spread: { done: 256, sampled: ['a', 'b'], seed: 1 } })
    expect(seen.changes.filter((change) => change === 'samples')).toHaveLength(5)
  })

  test('sample() tells how long it will take, from the pace so far', async () => {
    const left: (number | undefined)[] = []
    const bound: { work?: SpreadWork } = {}
    const { work } = bench([normal('a')], {}, () => left.push(bound.work?.running?.secondsLeft))
    bound.work = work
    await work.sample('y', options)
    // Four batches, a second each.
    expect(left.filter((seconds) => seconds !== undefined)).toEqual([3, 2, 1, 0])
  })

  test('stop() keeps what was found so far', async () => {
    const { work, seen } = bench([normal('a')])
    const running = work.sample('y', options)
    while (seen.points.length < 128) await Promise.resolve()
    work.stop()
    await running
    expect(work.answers?.spread?.stopped).toBe(true)
    expect(work.answers?.spread?.done).toBeGreaterThanOrEqual(128)
    expect(work.running).toBeUndefined()
  })

  test('sample() of another number hears no more of the first', async () => {
    const { work } = bench([normal('a'), normal('b')])
    const first = work.sample('y', options)
    await Promise.resolve()
    const second = work.sample('z', options)
    await Promise.all([first, second])
    expect(work.answers).toMatchObject({ target: 'z', spread: { target: 'z', done: 256, stopped: false } })
  })

  test('shareOut() and varyRanges() go on from the same samples', async () => {
    const { work, seen } = bench([normal('a'), normal('b'), { name: 'c', value: 1, low: 0, high: 2 }], {
      reaching: () => ['a', 'b'],
    })
    await work.shareOut()
    expect(seen.points).toHaveLength(0)
    await work.sample('y', options)
    await work.shareOut()
    await work.varyRanges()
    expect(work.answers?.shares).toMatchObject({ method: 'Sobol indices', target: 'y' })
    expect(work.answers?.envelope?.effects.map(({ name }) => name)).toEqual(['c'])
  })

  test('recall() shows what is known of a number, and outdated tells that the notebook has changed', async () => {
    const { work, seen } = bench([normal('a')])
    await work.sample('y', options)
    await work.sample('z', options)
    expect(work.recall('y')).toBe(true)
    expect(work.answers).toMatchObject({ target: 'y', spread: { target: 'y' } })
    expect(work.outdated).toBe(false)
    seen.view = viewOf([normal('a', { trial: 12 })])
    expect(work.outdated).toBe(true)
    expect(work.recall('y')).toBe(false)
    expect(work.recall('never asked')).toBe(false)
    expect(work.answers).toBeUndefined()
  })

  test('sample() keeps trial values of what is held in force, and those of what is sampled out of it', async () => {
    const { work, seen } = bench([normal('a', { trial: 99 }), { name: 'b', value: 1, trial: 5 }])
    await work.sample('y', options)
    expect(seen.points.every((point) => point.b === 5 && point.a !== 99)).toBe(true)
  })

  test('sample() says what is wrong with the correlations, and what went wrong on the way', async () => {
    const { work } = bench([normal('a', { correlated: { wing: 0.5 } })])
    await work.sample('y', options)
    expect(work.answers?.trouble).toContain('"a" is said to be correlated with "wing"')
    const broken = bench([normal('a')], {
      evaluateMany: async () => {
        throw new Error('the evaluator is gone')
      },
    })
    await broken.work.sample('y', options)
    expect(broken.work.answers?.trouble).toBe('Sampling ended: the evaluator is gone')
    expect(broken.work.running).toBeUndefined()
  })
})
