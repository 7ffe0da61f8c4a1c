import { describe, expect, test } from 'vitest'
import {
  EvidenceTrouble,
  runTrace,
  type TraceRequest,
  type TraceTools,
  type UpstreamName,
} from '../../../../../kernel/cells/evidence/index.js'
import type { AssumptionRecord, Point, Trace, TraceStep } from '../../../../../shared/contracts/index.js'
import { cellId } from '../../../rendering/support.js'
import { normal, range, toolsOf } from '../spread/plain-model.js'

const plain = (name: string, value: number, more: Partial<AssumptionRecord> = {}): AssumptionRecord => ({
  name,
  value,
  ...more,
})
const upstream = (name: string, reads: readonly string[], more: Partial<UpstreamName> = {}): UpstreamName => ({
  name,
  cell: cellId('c'),
  line: 1,
  assumption: false,
  reads,
  methods: [],
  apart: false,
  ...more,
})

/** `y` read from these assumptions by a model that sees the document's values where the point has none. */
async function ask(
  assumptions: readonly AssumptionRecord[],
  model: (point: Point) => number,
  more: Partial<TraceRequest> = {},
  tools: Partial<ReturnType<typeof toolsOf> & TraceTools> = {},
): Promise<{ trace: Trace; step: (name: string) => TraceStep; evaluated: readonly Point[] }> {
  const held = Object.fromEntries(assumptions.map(({ name, value }) => [name, Number(value)]))
  const names = assumptions.map(({ name }) => name)
  const made = toolsOf((point) => model({ ...held, ...point }))
  const request: TraceRequest = {
    target: 'y',
    names: [...names.map((name) => upstream(name, [], { assumption: true })), upstream('y', names)],
    assumptions,
    values: {},
    handled: new Set(),
    ...more,
  }
  const trace = await runTrace(request, { ...made, ...tools })
  return {
    trace,
    step: (name) => trace.steps.find((one) => one.name === name) as TraceStep,
    evaluated: made.evaluated,
  }
}
const at = (point: Point, name: string) => point[name] as number

describe('runTrace() of what moves a number', () => {
  test('runTrace() tells what moves a number from what does not, and keeps the order', async () => {
    const { trace, step } = await ask(
      [plain('a', 2), plain('b', -3), plain('c', 4), plain('zero', 0)],
      (point) => at(point, 'a') * at(point, 'b') + at(point, 'zero') + 0 * at(point, 'c'),
    )
    expect(trace).toMatchObject({ target: 'y', base: -6, left: [] })
    expect(trace.steps.map(({ name, acts }) => [name, acts])).toEqual([
      ['a', 'moves'],
      ['b', 'moves'],
      ['c', 'inactive'],
      ['zero', 'moves'],
      ['y', 'moves'],
    ])
    expect(step('a')).toMatchObject({ kind: 'assumption', value: 2, wakes: [] })
    expect(step('y')).toMatchObject({ kind: 'number', value: -6, reads: ['a', 'b', 'c', 'zero'] })
  })

  test('runTrace() needs one evaluation for what the first step moves', async () => {
    const names = Array.from({ length: 30 }, (_, place) => plain(`a${place}`, place + 1.5))
    const { trace } = await ask(names, (point) => names.reduce((sum, { name }) => sum + at(point, name), 0))
    expect(trace.runs).toBe(31)
  })

  test('runTrace() tells what moves a number while the rest is tried', async () => {
    const names = Array.from({ length: 40 }, (_, place) => plain(`a${place}`, place + 1.5))
    const told: Trace[] = []
    const model = (point: Point) => names.reduce((sum, { name }, place) => sum + (place < 20 ? at(point, name) : 0), 0)
    const { trace } = await ask(names, model, {}, { onTrace: (some: Trace) => told.push(some) })
    const moving = told.map(({ steps }) => steps.filter(({ acts, name }) => acts === 'moves' && name !== 'y').length)
    expect(moving.slice(0, 3)).toEqual([16, 20, 20])
    expect(told[0]?.left).toHaveLength(24)
    expect(told[0]?.steps.at(-1)).toMatchObject({ name: 'y', value: trace.base })
    expect(trace.steps.filter(({ acts }) => acts === 'inactive')).toHaveLength(20)
  })

  test('runTrace() looks no farther out than to where the number begins to move', async () => {
    const { evaluated } = await ask([range('a', 5, 0, 100)], (point) => Math.max(10, at(point, 'a')))
    // 28.75 moves it: what lies beyond is not asked for.
    expect(Math.max(...evaluated.map((point) => point.a ?? 0))).toBe(28.75)
  })

  test('runTrace() takes digits that solving leaves open for no effect', async () => {
    const { step } = await ask(
      [plain('a', 1), plain('b', 2.5)],
      (point) => 100 * at(point, 'a') + 1e-9 * at(point, 'b'),
    )
    expect([step('a').acts, step('b').acts]).toEqual(['moves', 'hardly'])
  })

  test('runTrace() counts a step of 1 % that fails as moving, and no failure beyond the stated range', async () => {
    const fragile = (point: Point) => {
      if (at(point, 'a') !== 5.5) throw new Error('only 5.5')
      if (at(point, 'b') > 1) throw new Error('no share is above 1')
      return 7
    }
    const { step } = await ask([plain('a', 5.5), range('b', 1, 0.5, 1)], fragile)
    expect(step('a').acts).toBe('moves')
    expect(step('b')).toMatchObject({ acts: 'inactive', wakes: [] })
  })

  test('runTrace() turns switches over, and counts by one where fractions are refused', async () => {
    const { step } = await ask([plain('folded', 0), plain('ducts', 1), plain('rotors', 8)], (point) => {
      if (!Number.isInteger(at(point, 'rotors'))) throw new Error('rotors are whole')
      return (at(point, 'folded') === 1 ? 10 : 20) + (at(point, 'ducts') === 1 ? 0 : 5) + at(point, 'rotors')
    })
    for (const name of ['folded', 'ducts', 'rotors'])
      expect(step(name), name).toMatchObject({ acts: 'moves', wakes: [] })
  })

  test('runTrace() says a count that can be changed either way and moves nothing is inactive', async () => {
    const { step } = await ask([plain('rotors', 8), plain('a', 1.5)], (point) => {
      if (!Number.isInteger(at(point, 'rotors'))) throw new Error('rotors are whole')
      return at(point, 'a')
    })
    expect(step('rotors').acts).toBe('inactive')
  })

  test('runTrace() asks with the trial values in force', async () => {
    const model = (point: Point) => (at(point, 'folded') > 0.5 ? at(point, 'a') : 3)
    const records = [plain('folded', 0), plain('a', 2)]
    const standing = await ask(records, model)
    const tried = await ask(records, model, { base: { folded: 1, a: 9 } })
    expect(standing.step('a').acts).toBe('inactive')
    expect(tried.step('a')).toMatchObject({ acts: 'moves', value: 9 })
    expect(tried.trace.base).toBe(9)
  })
})

describe('runTrace() of what would wake the rest', () => {
  test('runTrace() finds the value of its own from which on an assumption begins to move the number', async () => {
    const model = (point: Point) => Math.max(10, at(point, 'a'), 2 * at(point, 'b'), 30 - at(point, 'c'))
    const { step } = await ask([range('a', 5, 0, 20), plain('b', 3), range('c', 25.5, 10, 40)], model)
    // Closed form: a above 10, b above 5, c below 20.
    for (const [name, from] of Object.entries({ a: 10, b: 5, c: 20 })) {
      expect(step(name), name).toMatchObject({ acts: 'inactive', wakes: [{ by: name, fails: false }] })
      expect(step(name).wakes[0]?.from, name).toBeCloseTo(from, 3)
    }
  })

  test('runTrace() finds one on either side, and from where on the number does not compute within the range', async () => {
    const { step } = await ask([range('a', 5, 0, 10)], (point) => {
      if (at(point, 'a') > 8) throw new Error('too much')
      return Math.min(at(point, 'a'), 2)
    })
    const [below, above] = step('a').wakes
    expect([below?.fails, above?.fails]).toEqual([false, true])
    expect(below?.from).toBeCloseTo(2, 3)
    expect(above?.from).toBeCloseTo(8, 3)
  })

  test('runTrace() says of a step function both that it moves the number and from which value on', async () => {
    const { step } = await ask([plain('a', 2.95)], (point) => Math.ceil(at(point, 'a')))
    expect(step('a').acts).toBe('moves')
    expect(step('a').wakes.map(({ from }) => Number(from.toFixed(3)))).toEqual([2, 3])
  })

  test('runTrace() finds the switch, or the value of another assumption, that decides about it', async () => {
    const { step } = await ask([plain('b', 2.5), plain('folded', 0), range('a', 10, 1, 20), plain('d', 6)], (point) =>
      at(point, 'folded') > 0.5 ? at(point, 'b') : at(point, 'a') + (at(point, 'a') < 4 ? at(point, 'd') : 0),
    )
    expect(step('b')).toMatchObject({ acts: 'inactive', wakes: [{ by: 'folded', from: 1, fails: false }] })
    expect(step('d')).toMatchObject({ acts: 'inactive', wakes: [{ by: 'a', fails: false }] })
    expect(step('d').wakes[0]?.from).toBeCloseTo(4, 2)
  })

  test('runTrace() leaves asleep what only two together would wake', async () => {
    const { step } = await ask([plain('one', 0), plain('other', 0), plain('b', 2.5), plain('a', 1.5)], (point) =>
      at(point, 'one') === 1 && at(point, 'other') === 1 ? at(point, 'b') : at(point, 'a'),
    )
    for (const name of ['one', 'other', 'b']) expect(step(name), name).toMatchObject({ acts: 'inactive', wakes: [] })
  })
})

describe('runTrace() of numbers and records on the way', () => {
  const branch = (point: Point) => {
    const left = point.left ?? 2 * at(point, 'a')
    const right = point.right ?? at(point, 'a') * at(point, 'b')
    return at(point, 'useRight') > 0.5 ? right : left
  }
  const names = [
    ...['a', 'b', 'useRight'].map((name) => upstream(name, [], { assumption: true })),
    upstream('left', ['a']),
    upstream('parts', ['a', 'b']),
    upstream('right', ['parts']),
    upstream('limits', []),
    upstream('y', ['useRight', 'left', 'right', 'limits']),
  ]
  const records = [plain('a', 3), plain('b', 4.5), plain('useRight', 0)]
  const values = { a: 3, b: 4.5, useRight: 0, left: 6, right: 13.5, y: 6 }
  const held = { a: 3, b: 4.5, useRight: 0 }
  const evaluateHandled = toolsOf((point) => branch({ ...held, ...point })).evaluateMany

  test('runTrace() sets numbers on the way, so that a branch not taken is inactive though what it reads moves the number', async () => {
    const { step } = await ask(records, branch, { names, values, handled: new Set(['left', 'right']) }, {
      evaluateHandled,
    } as object)
    const acts = (name: string) => step(name).acts
    expect(['a', 'b', 'useRight', 'left', 'right'].map(acts)).toEqual([
      'moves',
      'inactive',
      'moves',
      'moves',
      'inactive',
    ])
    for (const name of ['b', 'right'])
      expect(step(name).wakes, name).toEqual([{ by: 'useRight', from: 1, fails: false }])
    // A record cannot be set: it does what those do that read it and those that it is made from.
    expect([acts('parts'), step('parts').kind]).toEqual(['inactive', 'other'])
    expect(acts('limits')).toBe('not known')
  })

  test('runTrace() derives what cannot be set from what can', async () => {
    const { step } = await ask(records, branch, { names, values })
    expect([step('left').acts, step('right').acts]).toEqual(['moves', 'moves'])
  })

  test('runTrace() keeps what the text does not lead to only where it does something', async () => {
    const apart = (name: string) => upstream(name, [], { assumption: true, apart: true })
    const { trace } = await ask([plain('a', 2), plain('hidden', 3), plain('hue', 4)], (point) => at(point, 'hidden'), {
      names: [apart('hidden'), apart('hue'), upstream('a', [], { assumption: true }), upstream('y', ['a'])],
    })
    expect(trace.steps.map(({ name, acts, apart: alone }) => [name, acts, alone])).toEqual([
      ['hidden', 'moves', true],
      ['a', 'inactive', false],
      ['y', 'moves', false],
    ])
  })
})

describe('runTrace() stopped or without a number', () => {
  test('runTrace() stopped half-way says what was not tried', async () => {
    const stop = new AbortController()
    const records = Array.from({ length: 200 }, (_, place) => normal(`a${place}`, 2, 1))
    const model = (point: Point) => records.reduce((sum, { name }) => sum + at(point, name), 0)
    const { trace } = await ask(records, model, {}, {
      signal: stop.signal,
      onProgress: (done: number) => done >= 64 && stop.abort(),
    } as object)
    expect(trace.left).toHaveLength(136)
    expect(trace.steps.filter(({ acts }) => acts === 'not known')).toHaveLength(136)
    expect(trace.runs).toBe(65)
  })

  test('runTrace() stopped before it began knows nothing', async () => {
    const { trace } = await ask([plain('a', 1.5)], () => 1, {}, { signal: AbortSignal.abort() } as object)
    expect(trace).toMatchObject({ base: Number.NaN, runs: 0, left: ['a'] })
  })

  test('runTrace() refuses a number that does not compute as it stands, with the reason', async () => {
    const failing = ask([plain('a', 1.5)], () => {
      throw new Error('the mass runs away.')
    })
    await expect(failing).rejects.toThrow(EvidenceTrouble)
    await expect(failing).rejects.toThrow(
      '"y" has no value to trace: the mass runs away. A trace is asked of a number that computes.',
    )
    await expect(ask([plain('a', 1.5)], () => Number.NaN)).rejects.toThrow(
      '"y" has no value to trace: it is no finite number.',
    )
  })
})
