import { describe, expect, test } from 'vitest'
import { type FindTrace, type TraceSources, TraceWork } from '../../../client/asked/trace-work.js'
import { EvidenceTrouble, type ReadProgram, type TraceOptions } from '../../../kernel/cells/evidence/index.js'
import type { NumbersHost } from '../../../kernel/cells/program/index.js'
import type { AssumptionRecord, Trace } from '../../../shared/contracts/index.js'
import { cellId, cellView, number, resultOf, sheetView } from '../rendering/support.js'

const viewOf = (assumptions: readonly AssumptionRecord[]) =>
  sheetView([
    cellView('c', {
      result: resultOf('c', { values: [number('y', 10, '1'), number('z', 1, '1')], assumptions: [...assumptions] }),
    }),
  ])
const traceOf = (target: string, left: readonly string[] = []): Trace => ({ target, base: 1, steps: [], runs: 3, left })
const tried: readonly AssumptionRecord[] = [
  { name: 'a', value: 1, trial: 2 },
  { name: 'b', value: 3 },
]

function bench(more: Partial<TraceSources> = {}, find?: FindTrace, onState: () => void = () => {}) {
  const host = {} as NumbersHost
  const seen = { asked: [] as TraceOptions[], changes: [] as string[], view: viewOf(tried), host }
  const sources: TraceSources = {
    view: () => seen.view,
    reading: () => ({}) as ReadProgram,
    host: async () => host,
    say: () => {},
    now: () => 0,
    ...more,
  }
  const engine: FindTrace = async (options, given) => {
    expect(given).toBe(host)
    seen.asked.push(options)
    options.onProgress?.(1, 3)
    await Promise.resolve()
    return traceOf(options.target.name, options.signal?.aborted === true ? ['a'] : [])
  }
  const work = new TraceWork(
    sources,
    (what) => {
      seen.changes.push(what)
      if (what === 'state') onState()
    },
    find ?? engine,
  )
  return { work, seen }
}

describe('TraceWork', () => {
  test('trace() asks the engine for the number in its cell, with the trial values in force', async () => {
    const progress: unknown[] = []
    const bound: { work?: TraceWork } = {}
    const { work, seen } = bench({}, undefined, () => progress.push(bound.work?.running?.asked))
    bound.work = work
    await work.trace('y')
    expect(seen.asked[0]).toMatchObject({
      target: { name: 'y', cell: cellId('c') },
      trials: { a: 2 },
      assumptions: tried,
    })
    expect(work.answer).toMatchObject({ target: 'y', trials: true, found: { target: 'y', runs: 3 } })
    expect(progress).toContain(3)
    expect([work.running, work.outdated]).toEqual([undefined, false])
    expect(seen.changes).toContain('found')
  })

  test('trace() tells what is known so far, and the whole as the last word', async () => {
    const clock = { now: 0 }
    const seen: unknown[] = []
    const { work } = bench({ now: () => clock.now }, async ({ onTrace, known }) => {
      expect(known).toEqual({ y: 10, z: 1 })
      for (const left of [['a', 'b'], ['b'], []]) {
        onTrace?.(traceOf('y', left))
        seen.push(work.answer?.found?.left.length)
        clock.now += 150
      }
      return traceOf('y')
    })
    await work.trace('y')
    // The second came too soon after the first to be drawn.
    expect(seen).toEqual([2, 2, 0])
    expect(work.answer?.found?.left).toEqual([])
  })

  test('recall() knows a number again until the notebook changes', async () => {
    const { work, seen } = bench()
    await work.trace('y')
    await work.trace('z')
    expect(work.recall('y')).toBe(true)
    expect(work.answer?.target).toBe('y')
    seen.view = viewOf([{ name: 'a', value: 1 }])
    expect([work.recall('y'), work.outdated]).toEqual([false, true])
    expect(work.recall('unheardOf')).toBe(false)
  })

  test('stop() keeps what was found so far, and it is found out anew at the next question', async () => {
    const { work } = bench()
    const running = work.trace('y')
    work.stop()
    await running
    expect(work.answer?.found?.left).toEqual(['a'])
    expect(work.recall('y')).toBe(false)
  })

  test('trace() of another number hears no more of the first', async () => {
    const { work } = bench()
    const first = work.trace('y')
    await Promise.all([first, work.trace('z')])
    expect(work.answer).toMatchObject({ target: 'z', found: { target: 'z', left: [] } })
  })

  test('trace() says in a sentence what went wrong', async () => {
    const troubles: readonly (readonly [Partial<TraceSources>, FindTrace | undefined, string, string])[] = [
      [{}, undefined, 'gone', 'Tracing ended: "gone" is no number of this sheet any more.'],
      [
        { reading: () => undefined },
        undefined,
        'y',
        'Tracing ended: The cells have not been read yet; ask again in a moment.',
      ],
      [
        {},
        async () => {
          throw new EvidenceTrouble('NO_TRACE', { target: 'y', reason: 'it failed' })
        },
        'y',
        '"y" has no value to trace: it failed. A trace is asked of a number that computes.',
      ],
    ]
    for (const [sources, find, target, sentence] of troubles) {
      const { work } = bench(sources, find)
      await work.trace(target)
      expect(work.answer?.trouble).toBe(sentence)
      expect(work.running).toBeUndefined()
    }
  })
})
