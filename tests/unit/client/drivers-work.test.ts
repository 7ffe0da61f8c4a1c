import { describe, expect, test } from 'vitest'
import { type DriversSources, DriversWork } from '../../../client/asked/drivers-work.js'
import type { WantedNumbers } from '../../../kernel/cells/program/index.js'
import type { AssumptionRecord, NumbersOutcome, Point } from '../../../shared/contracts/index.js'
import { cellId, cellView, number, resultOf, sheetView } from '../rendering/support.js'

const viewOf = (assumptions: readonly AssumptionRecord[]) =>
  sheetView([
    cellView('c', {
      result: resultOf('c', {
        values: [number('y', 10, '1'), number('z', 1, '1')],
        assumptions: [...assumptions],
      }),
    }),
  ])
/** So many that three batches are needed. */
const many = Array.from({ length: 30 }, (_, at): AssumptionRecord => ({ name: `a${at}`, value: at + 1 }))

/** A notebook of one sum, and a clock that a batch moves by a second. */
function bench(
  assumptions: readonly AssumptionRecord[],
  more: Partial<DriversSources> = {},
  reaching = assumptions.map(({ name }) => name),
  onState: () => void = () => {},
) {
  const seen = {
    points: [] as Point[],
    changes: [] as string[],
    wanted: [] as WantedNumbers[],
    time: 0,
    view: viewOf(assumptions),
  }
  const held = Object.fromEntries(assumptions.map(({ name, value }) => [name, Number(value)]))
  const sum = (point: Point) => Object.values({ ...held, ...point }).reduce((total, value) => total + value, 0)
  const outcome = (point: Point): NumbersOutcome => ({
    ok: true,
    numbers: { y: sum(point), z: point.a0 ?? 1 },
    requirements: {},
  })
  const sources: DriversSources = {
    view: () => seen.view,
    open: async (wanted) => {
      seen.wanted.push(wanted)
      return {
        assumptions: reaching,
        sliced: true,
        evaluateMany: async (points, signal) => {
          await Promise.resolve()
          if (signal?.aborted === true) return []
          seen.time += 1000
          seen.points.push(...points)
          return points.map(outcome)
        },
      }
    },
    say: () => {},
    now: () => seen.time,
    ...more,
  }
  const work = new DriversWork(sources, (what) => {
    seen.changes.push(what)
    if (what === 'state') onState()
  })
  return { work, seen }
}

describe('DriversWork', () => {
  test('vary() finds what moves a number, with partial answers and progress on the way', async () => {
    const { work, seen } = bench(many)
    const running = work.vary('y')
    expect(work.running).toEqual({ part: 'Varying', done: 0, asked: 0 })
    await running
    expect(work.running).toBeUndefined()
    expect(work.answer).toMatchObject({ target: 'y', trials: false, found: { base: 465, left: [], runs: 181 } })
    expect(work.answer?.found?.drivers).toHaveLength(30)
    // Three batches, each told, and the whole.
    expect(seen.changes.filter((change) => change === 'found')).toHaveLength(4)
  })

  test('vary() asks for the number alone, and varies only what can reach it', async () => {
    const { work, seen } = bench(many, {}, ['a1', 'a3'])
    await work.vary('y')
    expect(seen.wanted).toEqual([{ names: [{ name: 'y', cell: cellId('c') }], requirements: [] }])
    expect(work.answer?.found?.drivers.map(({ name }) => name)).toEqual(['a3', 'a1'])
    expect(seen.points).toHaveLength(13)
  })

  test('vary() tells how long it will take, from the pace so far', async () => {
    const left: (number | undefined)[] = []
    const bound: { work?: DriversWork } = {}
    const { work } = bench(many, {}, undefined, () => left.push(bound.work?.running?.secondsLeft))
    bound.work = work
    await work.vary('y')
    expect(left.filter((seconds) => seconds !== undefined)).toEqual([2, 1, 0])
  })

  test('stop() keeps what was found so far and names what is left', async () => {
    const { work, seen } = bench(many)
    const running = work.vary('y')
    while (seen.points.length < 64) await Promise.resolve()
    work.stop()
    await running
    const { drivers = [], left = [] } = work.answer?.found ?? {}
    expect(drivers.length + left.length).toBe(30)
    expect(left.length).toBeGreaterThan(0)
    expect(work.running).toBeUndefined()
    // Asked again it is not taken for the whole answer.
    expect(work.recall('y')).toBe(false)
  })

  test('vary() of another number hears no more of the first', async () => {
    const { work } = bench(many)
    const first = work.vary('y')
    await Promise.resolve()
    const second = work.vary('z')
    await Promise.all([first, second])
    expect(work.answer?.found).toMatchObject({ target: 'z', drivers: [{ name: 'a0' }], left: [] })
  })

  test('recall() shows what is known of a number, and outdated tells that the notebook has changed', async () => {
    const { work, seen } = bench(many)
    await work.vary('y')
    await work.vary('z')
    expect(work.recall('y')).toBe(true)
    expect(work.answer).toMatchObject({ target: 'y', found: { target: 'y' } })
    expect(work.outdated).toBe(false)
    seen.view = viewOf(many.map((one) => ({ ...one, trial: 3 })))
    expect(work.outdated).toBe(true)
    expect(work.recall('y')).toBe(false)
    expect(work.recall('never asked')).toBe(false)
    expect(work.answer).toBeUndefined()
  })

  test('vary() starts from the trial values in force', async () => {
    const { work, seen } = bench([
      { name: 'a0', value: 1, trial: 5 },
      { name: 'a1', value: 2 },
    ])
    await work.vary('y')
    expect(seen.points[0]).toEqual({ a0: 5 })
    expect(work.answer).toMatchObject({ trials: true, found: { base: 7 } })
    expect(work.answer?.found?.drivers.find(({ name }) => name === 'a0')).toMatchObject({
      value: 5,
      high: { at: 5.5 },
    })
  })

  test('vary() says what is wrong with the number, and what went wrong on the way', async () => {
    const { work } = bench(many)
    await work.vary('gone')
    expect(work.answer?.trouble).toBe('Varying ended: "gone" is no number of this sheet any more.')
    const nothing = bench(many)
    nothing.seen.view = sheetView([cellView('c', { result: resultOf('c', { values: [number('w', 1, '1')] }) })])
    await nothing.work.vary('w')
    expect(nothing.work.answer?.trouble).toContain('"w" has no value to change from')
    const broken = bench(many, { open: () => Promise.reject(new Error('the evaluator is gone')) })
    await broken.work.vary('y')
    expect(broken.work.answer?.trouble).toBe('Varying ended: the evaluator is gone')
    expect(broken.work.running).toBeUndefined()
  })
})
