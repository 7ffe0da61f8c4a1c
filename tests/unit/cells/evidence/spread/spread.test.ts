import { describe, expect, test } from 'vitest'
import { drawSamples, runSpread, type SpreadRequest } from '../../../../../kernel/cells/evidence/index.js'
import { percentileOf, type Spread } from '../../../../../shared/contracts/index.js'
import { lognormal, normal, range, toolsOf, uniform } from './plain-model.js'

const ask = async (request: Omit<SpreadRequest, 'target'>, tools: Parameters<typeof runSpread>[2]): Promise<Spread> => {
  const whole = { ...request, target: 'y' }
  return runSpread(whole, drawSamples(whole), tools)
}
const summaryOf = (spread: Spread) => spread.summary as NonNullable<Spread['summary']>

// Quantiles of the standard normal distribution; scipy 1.17.1.
const z90 = 1.2815515655446004
const z95 = 1.6448536269514722

describe('runSpread against closed forms', () => {
  test('runSpread() of a sum of normal numbers gives its mean, deviation and percentiles', async () => {
    const assumptions = [normal('a', 1, 1), normal('b', 2, 2), normal('c', 0, 0.5)]
    const found = summaryOf(
      await ask(
        { assumptions },
        toolsOf((p) => (p.a ?? 0) + (p.b ?? 0) - 2 * (p.c ?? 0)),
      ),
    )
    const deviation = Math.sqrt(1 + 4 + 1)
    // Standard errors by chance for 2048 samples: mean 0.022, deviation 0.016, P90 0.038, P95 0.047 deviations; two of each.
    expect(Math.abs(found.mean - 3) / deviation).toBeLessThan(0.044)
    expect(Math.abs(found.deviation / deviation - 1)).toBeLessThan(0.032)
    expect(Math.abs(percentileOf(found, 0.5) - 3) / deviation).toBeLessThan(0.055)
    expect(Math.abs(percentileOf(found, 0.9) - (3 + z90 * deviation)) / deviation).toBeLessThan(0.076)
    expect(Math.abs(percentileOf(found, 0.05) - (3 - z95 * deviation)) / deviation).toBeLessThan(0.094)
    expect(found.curve).toHaveLength(101)
    expect([found.curve[0], found.curve[100], found.curve[90]]).toEqual([
      found.least,
      found.greatest,
      percentileOf(found, 0.9),
    ])
  })

  test('runSpread() of a product of lognormal numbers gives the lognormal one that it is', async () => {
    const assumptions = [lognormal('a', 3, 1.2), lognormal('b', 5, 1.5)]
    const found = summaryOf(
      await ask(
        { assumptions },
        toolsOf((p) => (p.a ?? 0) * (p.b ?? 0)),
      ),
    )
    const sigma = Math.hypot(Math.log(1.2), Math.log(1.5))
    const mean = 15 * Math.exp(sigma ** 2 / 2)
    expect(Math.abs(Math.log(percentileOf(found, 0.5) / 15)) / sigma).toBeLessThan(0.055)
    expect(Math.abs(Math.log(percentileOf(found, 0.9) / 15) - z90 * sigma) / sigma).toBeLessThan(0.076)
    expect(Math.abs(found.mean / mean - 1)).toBeLessThan(0.03)
    expect(Math.abs(found.deviation / (mean * Math.sqrt(Math.exp(sigma ** 2) - 1)) - 1)).toBeLessThan(0.08)
  })

  test('runSpread() gives the deviation of a sum of correlated normal numbers', async () => {
    const assumptions = [normal('a', 0, 1, { correlated: { b: -0.6 } }), normal('b', 0, 2)]
    const found = summaryOf(
      await ask(
        { assumptions },
        toolsOf((p) => (p.a ?? 0) + (p.b ?? 0)),
      ),
    )
    const r = 2 * Math.sin((-0.6 * Math.PI) / 6)
    expect(Math.abs(found.deviation / Math.sqrt(1 + 4 + 4 * r) - 1)).toBeLessThan(0.032)
  })

  test('runSpread() gives the probability that a requirement is met, with its interval and the margin kept by 90 %', async () => {
    const assumptions = [uniform('a', 0, 1), uniform('b', 0, 1)]
    const spread = await ask(
      { assumptions },
      toolsOf((p) => {
        const y = (p.a ?? 0) + (p.b ?? 0)
        return { y, margin: 1.5 - y }
      }),
    )
    const [limit] = spread.requirements
    // P(a + b <= 1.5) = 7/8; P90 of the sum is 2 - sqrt(0.2).
    expect(limit).toMatchObject({ name: 'limit', computed: 2048, failed: 0 })
    expect(limit?.between[0]).toBeLessThan(0.875)
    expect(limit?.between[1]).toBeGreaterThan(0.875)
    expect(Math.abs((limit?.probability ?? 0) - 0.875)).toBeLessThan(0.0146)
    expect(limit?.bounds).toEqual([limit?.probability, limit?.probability])
    expect(limit?.marginKept90).toBeCloseTo(1.5 - (2 - Math.sqrt(0.2)), 1.5)
  })
})

describe('runSpread', () => {
  const fails = (p: { readonly a?: number }) => {
    if ((p.a ?? 0) < -1) throw new Error('the mass does not close')
    return { y: p.a ?? 0, margin: p.a ?? 0 }
  }

  test('runSpread() counts failures by reason with a point to try, and bounds the probability by them', async () => {
    const spread = await ask({ assumptions: [normal('a', 0, 1)], count: 1024 }, toolsOf(fails))
    const [reason] = spread.failures
    expect(spread.failures).toHaveLength(1)
    expect(reason).toMatchObject({ code: 'THROWN', message: 'the mass does not close', lost: reason?.count })
    expect(reason?.example.a).toBeLessThan(-1)
    // P(a < -1) = 0.158655; evenly spread samples come within one of it.
    expect(Math.abs((reason?.count ?? 0) - 0.158655 * 1024)).toBeLessThan(2)
    const [limit] = spread.requirements
    expect(summaryOf(spread).count).toBe(1024 - (reason?.count ?? 0))
    expect(limit).toMatchObject({ met: 512, failed: reason?.count })
    expect(limit?.bounds[0]).toBe(0.5)
    expect(limit?.bounds[1]).toBeCloseTo(0.6587, 2)
    expect(limit?.probability).toBeCloseTo(0.5 / (1 - 0.158655), 2)
  })

  test('runSpread() keeps a number that was computed beside a failure, and counts one that is not finite', async () => {
    const tools = toolsOf(() => 0)
    const spread = await ask(
      { assumptions: [uniform('a', 0, 1)], count: 64 },
      {
        ...tools,
        evaluateMany: async (points) =>
          points.map((point) =>
            (point.a ?? 0) < 0.5
              ? { ok: false, code: 'DOES_NOT_CLOSE', message: 'no', numbers: { y: 1 }, requirements: {} }
              : { ok: true, numbers: (point.a ?? 0) < 0.75 ? {} : { y: 2 }, requirements: {} },
          ),
      },
    )
    expect(spread.failures).toMatchObject([
      { code: 'DOES_NOT_CLOSE', count: 32, lost: 0 },
      { code: 'NO_NUMBER', message: '"y" is no finite number here.', count: 16, lost: 16 },
    ])
    expect(summaryOf(spread).count).toBe(48)
  })

  test('runSpread() gives the same answer for the same seed, and another for another', async () => {
    const request = { assumptions: [normal('a', 0, 1), uniform('b', 0, 1)], count: 256 }
    const model = toolsOf((p) => (p.a ?? 0) * (p.b ?? 0))
    const first = await ask({ ...request, seed: 4 }, model)
    expect(await ask({ ...request, seed: 4 }, model)).toEqual(first)
    expect(first.seed).toBe(4)
    expect(summaryOf(await ask({ ...request, seed: 5 }, model)).mean).not.toBe(summaryOf(first).mean)
  })

  test('runSpread() holds bare ranges and trial values, and gives them back as intervals', async () => {
    const tools = toolsOf((p) => (p.a ?? 0) + (p.trial ?? 0))
    const spread = await ask(
      { assumptions: [normal('a', 0, 1), range('b', 2, 1, 3)], base: { trial: 100 }, count: 16 },
      tools,
    )
    expect(spread).toMatchObject({ sampled: ['a'], intervals: [{ name: 'b', low: 1, high: 3 }], correlated: false })
    expect(tools.evaluated.every((point) => point.b === undefined && point.trial === 100)).toBe(true)
  })

  test('runSpread() without any distribution evaluates the one point there is', async () => {
    const tools = toolsOf(() => 7)
    const spread = await ask({ assumptions: [range('b', 2, 1, 3)] }, tools)
    expect(spread).toMatchObject({ sampled: [], asked: 1, done: 1, stopped: false })
    expect(summaryOf(spread)).toMatchObject({ mean: 7, deviation: 0, least: 7, greatest: 7 })
  })

  test('runSpread() shows the answer so far and how far it is, and keeps what it has when it is stopped', async () => {
    const stop = new AbortController()
    const seen: number[] = []
    const spread = await ask(
      { assumptions: [normal('a', 0, 1)], count: 1024 },
      {
        ...toolsOf((p) => p.a ?? 0),
        signal: stop.signal,
        onProgress: (done, asked) => {
          expect(asked).toBe(1024)
          if (done >= 256) stop.abort()
        },
        onSpread: (partial) => seen.push(summaryOf(partial).count),
      },
    )
    expect(seen).toEqual([64, 128, 192, 256])
    expect(spread).toMatchObject({ done: 256, asked: 1024, stopped: true })
    expect(summaryOf(spread).count).toBe(256)
  })

  test('runSpread() may end once two doublings changed nothing to speak of, and shows every doubling', async () => {
    const tools = toolsOf((p) => p.a ?? 0)
    const spread = await ask({ assumptions: [uniform('a', 0, 1)], count: 4096, untilSettled: true }, tools)
    expect(spread.done).toBeLessThan(1024)
    expect(spread.convergence.settledAt).toBeDefined()
    expect(spread.convergence.rows.map(({ count }) => count)).toEqual(
      [32, 64, 128, 256, 512].filter((count) => count <= spread.done),
    )
    const rare = toolsOf((p) => ((p.a ?? 0) > 0.9995 ? 1e6 : (p.a ?? 0)))
    expect((await ask({ assumptions: [uniform('a', 0, 1)], count: 1024 }, rare)).convergence.settledAt).toBeUndefined()
  })

  test('runSpread() with nothing but failures has no summary', async () => {
    const spread = await ask(
      { assumptions: [uniform('a', 0, 1)], count: 32 },
      toolsOf(() => {
        throw new Error('never')
      }),
    )
    expect(spread.summary).toBeUndefined()
    expect(spread).toMatchObject({ requirements: [], failures: [{ count: 32 }], convergence: { rows: [] } })
  })
})
