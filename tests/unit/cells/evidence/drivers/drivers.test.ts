import { describe, expect, test } from 'vitest'
import { type DriversRequest, EvidenceTrouble, runDrivers } from '../../../../../kernel/cells/evidence/index.js'
import type { AssumptionRecord, Driver, Drivers, Point } from '../../../../../shared/contracts/index.js'
import { lognormal, normal, range, toolsOf, uniform } from '../spread/plain-model.js'

const plain = (name: string, value: number, more: Partial<AssumptionRecord> = {}): AssumptionRecord => ({
  name,
  value,
  ...more,
})
type Model = (point: Point) => number

/** The model sees the document's values where the point has none of its own. */
const ask = (
  assumptions: readonly AssumptionRecord[],
  model: Model,
  more: Partial<DriversRequest> = {},
): Promise<Drivers> => {
  const held = Object.fromEntries(assumptions.map(({ name, value }) => [name, Number(value)]))
  return runDrivers(
    { target: 'y', assumptions, ...more },
    toolsOf((point) => model({ ...held, ...point })),
  )
}
const only = ({ drivers }: Drivers): Driver => {
  expect(drivers).toHaveLength(1)
  return drivers[0] as Driver
}
const at = (point: Point, name: string) => point[name] as number

describe('runDrivers against closed forms', () => {
  test('runDrivers() of a linear number gives slope times distance, over the range and over 10 %', async () => {
    const found = await ask(
      [range('a', 10, 8, 13), plain('b', -20, { unit: 'kg' })],
      (point) => 3 * at(point, 'a') - 2 * at(point, 'b') + 5,
    )
    expect(found).toMatchObject({ target: 'y', base: 75, without: [], unvaried: [], left: [], runs: 13 })
    const [a, b] = found.drivers as [Driver, Driver]
    expect(a).toMatchObject({ name: 'a', value: 10, from: 'range', smooth: true })
    expect([a.low, a.high]).toEqual([
      { at: 8, value: 69, change: -6 },
      { at: 13, value: 84, change: 9 },
    ])
    expect(a.elasticity).toBeCloseTo((3 * 10) / 75, 12)
    expect(b).toMatchObject({ name: 'b', unit: 'kg', from: 'ten percent', smooth: true })
    expect([b.low, b.high]).toEqual([
      { at: -22, value: 79, change: 4 },
      { at: -18, value: 71, change: -4 },
    ])
    expect(b.elasticity).toBeCloseTo((-2 * -20) / 75, 12)
  })

  test('runDrivers() of a product of powers gives the exponents as elasticities', async () => {
    const exponents = { a: 1, b: -2, c: 0.5, d: 3.5, e: -0.25 }
    const values = { a: 4, b: 0.3, c: 1e6, d: 2, e: 1e-9 }
    const found = await ask(
      Object.entries(values).map(([name, value]) => plain(name, value)),
      (point) => Object.entries(exponents).reduce((y, [name, power]) => y * at(point, name) ** power, 7),
    )
    for (const [name, power] of Object.entries(exponents)) {
      const driver = found.drivers.find((one) => one.name === name) as Driver
      // Central difference: n (n - 1)(n - 2) h^2 / 6 off, with h = 1 %.
      const off = (power * (power - 1) * (power - 2) * 1e-4) / 6
      expect(driver.elasticity).toBeCloseTo(power + off, 6)
      expect(driver.smooth).toBe(true)
      expect((driver.high.value as number) / found.base).toBeCloseTo(1.1 ** power, 10)
      expect((driver.low.change as number) / found.base).toBeCloseTo(0.9 ** power - 1, 10)
    }
    expect(found.drivers.map(({ name }) => name)).toEqual(['d', 'b', 'a', 'c', 'e'])
  })

  test('runDrivers() equals finite differences written out here, on trial values', async () => {
    const model: Model = (point) => Math.exp(at(point, 'a') / 3) * Math.log(at(point, 'b')) + Math.sin(at(point, 'a'))
    const found = await ask([range('a', 1, 0.5, 4), plain('b', 9)], model, { base: { a: 2 } })
    const y = model({ a: 2, b: 9 })
    expect(found.base).toBe(y)
    const [a, b] = ['a', 'b'].map((name) => found.drivers.find((one) => one.name === name)) as [Driver, Driver]
    expect(a.value).toBe(2)
    expect(a.low.change).toBeCloseTo(model({ a: 0.5, b: 9 }) - y, 12)
    expect(a.high.change).toBeCloseTo(model({ a: 4, b: 9 }) - y, 12)
    expect(a.elasticity).toBeCloseTo(((model({ a: 2.02, b: 9 }) - model({ a: 1.98, b: 9 })) / y / 0.04) * 2, 10)
    expect(b.high.change).toBeCloseTo(model({ a: 2, b: 9.9 }) - y, 12)
    expect(b.elasticity).toBeCloseTo(((model({ a: 2, b: 9.09 }) - model({ a: 2, b: 8.91 })) / y / 0.18) * 9, 10)
  })

  test('runDrivers() takes the ends of a distribution where 5 % and 95 % lie', async () => {
    const found = await ask(
      [normal('a', 10, 2), uniform('b', 0, 20), lognormal('c', 3, 1.5), normal('d', 1, 1, { low: 0.9, high: 1.2 })],
      (point) => at(point, 'a') + at(point, 'b') + at(point, 'c') + at(point, 'd'),
    )
    const ends = Object.fromEntries(found.drivers.map(({ name, from, low, high }) => [name, [from, low.at, high.at]]))
    // Quantile of the standard normal distribution; scipy 1.17.1.
    const z95 = 1.6448536269514722
    expect(ends.a).toEqual(['distribution', expect.closeTo(10 - 2 * z95, 10), expect.closeTo(10 + 2 * z95, 10)])
    expect(ends.b).toEqual(['distribution', expect.closeTo(1, 6), expect.closeTo(19, 6)])
    expect(ends.c).toEqual(['distribution', expect.closeTo(3 / 1.5 ** z95, 10), expect.closeTo(3 * 1.5 ** z95, 10)])
    expect(ends.d).toEqual(['range', 0.9, 1.2])
  })
})

describe('runDrivers where a number is not smooth', () => {
  test.each([
    ['at the value', 10],
    ['within half a step', 10.03],
    ['a third of a step away', 10 + 0.1 / 3],
    ['between half a step and a step', 10.07],
  ])('runDrivers() of max() marks a bend %s', async (_where, limit) => {
    const found = await ask([plain('a', 10)], (point) => 50 + Math.max(at(point, 'a'), limit))
    expect(only(found)).toMatchObject({ smooth: false, unsteady: 'bend' })
  })

  test('runDrivers() marks a step close to the value', async () => {
    const found = await ask([plain('a', 10)], (point) => 100 + at(point, 'a') + (at(point, 'a') > 10.02 ? 1 : 0))
    expect(only(found)).toMatchObject({ smooth: false, unsteady: 'bend' })
  })

  test('runDrivers() marks a limit that acts in one part of the range only', async () => {
    const found = await ask([range('a', 10, 5, 20)], (point) => Math.max(at(point, 'a'), 15))
    expect(only(found)).toMatchObject({
      low: { change: 0 },
      high: { change: 5 },
      elasticity: 0,
      smooth: false,
      unsteady: 'threshold',
    })
  })

  test('runDrivers() gives an end that fails with its reason and keeps the other', async () => {
    const root: Model = (point) => {
      if (at(point, 'a') < 2) throw new Error('the root of a negative number')
      return Math.sqrt(at(point, 'a') - 2)
    }
    const driver = only(await ask([range('a', 6, 1, 11)], root))
    expect(driver).toMatchObject({ smooth: false, unsteady: 'failure', high: { at: 11, value: 3, change: 1 } })
    expect(driver.low).toEqual({ at: 1, failure: 'the root of a negative number' })
    expect(driver.elasticity).toBeCloseTo(6 / 4 / 2, 4)
  })

  test('runDrivers() gives no elasticity where a small step fails, and says that it is not smooth', async () => {
    const model: Model = (point) => {
      if (at(point, 'a') > 1) throw new Error('an efficiency above 1')
      return at(point, 'a')
    }
    const driver = only(await ask([range('a', 1, 0.8, 1)], model))
    expect(driver).toMatchObject({ smooth: false, unsteady: 'failure', low: { at: 0.8 }, high: { at: 1, change: 0 } })
    expect(driver).not.toHaveProperty('elasticity')
  })

  test('runDrivers() says so where an end has no finite number', async () => {
    const driver = only(await ask([range('a', 1, 0, 2)], (point) => 1 / at(point, 'a')))
    expect(driver.low).toEqual({ at: 0, failure: '"y" is no finite number there.' })
  })

  test('runDrivers() calls steep, curved and nearly still numbers smooth', async () => {
    const found = await ask([plain('a', 10), plain('b', 10), plain('c', 10), plain('d', 10)], (point) => {
      const { a = 0, b = 0, c = 0, d = 0 } = point as Record<string, number>
      // Steep; level at the value; the turn of a wave; with the unevenness that a closure to 1e-9 leaves.
      return 100 * (a / 10) ** 12 + 1e4 * (b / 10 - 1) ** 2 + Math.cos(c / 5) + 1e-9 * Math.sin(1e6 * d) + 100
    })
    expect(found.drivers.map(({ smooth }) => smooth)).toEqual(found.drivers.map(() => true))
    expect(found.drivers).toHaveLength(4)
  })
})

describe('runDrivers where there is little to vary', () => {
  test('runDrivers() invents no step for 0 without a range', async () => {
    const found = await ask(
      [
        plain('offset', 0),
        range('lift', 0, -1, 2),
        plain('lost', Number.NaN),
        normal('error', 0, 1),
        plain('e', 0, { low: 0, high: 0 }),
      ],
      (point) => 5 + at(point, 'lift') + at(point, 'error'),
    )
    expect(found.unvaried).toEqual([
      { name: 'offset', reason: 'zero without a range' },
      { name: 'lost', reason: 'not finite' },
      { name: 'e', reason: 'zero without a range' },
    ])
    expect(found.drivers.map(({ name, smooth }) => [name, smooth])).toEqual([
      ['lift', true],
      ['error', true],
    ])
    for (const driver of found.drivers) expect(driver).not.toHaveProperty('elasticity')
  })

  test('runDrivers() lists what moved nothing apart, rounding of the last digit included', async () => {
    const found = await ask([plain('a', 3), plain('b', 7), plain('c', 0.1)], (point) => {
      return at(point, 'a') + (at(point, 'b') - at(point, 'b')) + 1e-15 * at(point, 'c')
    })
    expect(found.drivers.map(({ name }) => name)).toEqual(['a'])
    expect(found.without).toEqual(['b', 'c'])
  })

  test('runDrivers() gives no elasticity of a number that is 0', async () => {
    const driver = only(await ask([plain('a', 4)], (point) => at(point, 'a') - 4))
    expect(driver).toMatchObject({ smooth: true, high: { change: expect.closeTo(0.4, 12) } })
    expect(driver).not.toHaveProperty('elasticity')
  })

  test('runDrivers() refuses a number that does not compute as it stands, with the reason', async () => {
    const fails = ask([plain('a', 4)], () => {
      throw new Error('The mass runs away.')
    })
    await expect(fails).rejects.toThrow(
      '"y" has no value to change from: The mass runs away. Drivers are asked of a number that computes.',
    )
    await expect(ask([], () => Number.NaN)).rejects.toBeInstanceOf(EvidenceTrouble)
  })

  test('runDrivers() says which were left when it was stopped, and tells progress', async () => {
    const stop = new AbortController()
    const seen: (readonly [number, number])[] = []
    const tools = toolsOf((point) => 100 + Object.values(point).reduce((sum, value) => sum + value, 0), {
      signal: stop.signal,
      onProgress: (done, asked) => {
        seen.push([done, asked])
        stop.abort()
      },
    })
    const assumptions = Array.from({ length: 20 }, (_, index) => plain(`a${index}`, index + 1))
    const found = await runDrivers({ target: 'y', assumptions }, tools)
    expect(seen).toEqual([[64, 121]])
    expect(found.drivers).toHaveLength(10)
    expect(found.left).toEqual(['a10', 'a11', 'a12', 'a13', 'a14', 'a15', 'a16', 'a17', 'a18', 'a19'])
    const before = await runDrivers({ target: 'y', assumptions }, tools)
    expect(before).toMatchObject({ drivers: [], base: Number.NaN, runs: 0 })
    expect(before.left).toHaveLength(20)
  })

  test('runDrivers() gives the answer so far after each batch, and ends at once where there is none', async () => {
    const seen: (readonly [drivers: number, left: number])[] = []
    const assumptions = Array.from({ length: 20 }, (_, index) => plain(`a${index}`, index + 1))
    const onDrivers = ({ drivers, left }: Drivers) => void seen.push([drivers.length, left.length])
    const sum = toolsOf((point) => 100 + Object.values(point).reduce((total, value) => total + value, 0))
    await runDrivers({ target: 'y', assumptions }, { ...sum, onDrivers })
    expect(seen).toEqual([
      [10, 10],
      [20, 0],
    ])
    const nothing = toolsOf(() => Number.NaN)
    await expect(runDrivers({ target: 'y', assumptions }, nothing)).rejects.toBeInstanceOf(EvidenceTrouble)
    expect(nothing.evaluated).toHaveLength(64)
  })
})
