import { describe, expect, test } from 'vitest'
import { drawSamples, runShares, type SharesRequest, type Tools } from '../../../../../kernel/cells/evidence/index.js'
import type { AssumptionRecord, Shares } from '../../../../../shared/contracts/index.js'
import { lognormal, normal, toolsOf, uniform } from './plain-model.js'

const ask = (
  assumptions: readonly AssumptionRecord[],
  tools: Tools,
  more: Partial<SharesRequest> = {},
): Promise<Shares> => runShares({ target: 'y', within: 0, ...more }, drawSamples({ assumptions, target: 'y' }), tools)
const shareOf = (shares: Shares, name: string) => {
  const found = shares.shares.find((share) => share.name === name)
  if (found === undefined) throw new Error(`no share of ${name}`)
  return found
}

/** True value within the 95 % interval widened by half: with a fixed seed this is certain, by chance 1 of 300 would miss. */
const expectNear = (estimate: { value: number; low: number; high: number } | undefined, truth: number) => {
  const { value, low, high } = estimate ?? { value: Number.NaN, low: 0, high: 0 }
  expect(Math.abs(value - truth)).toBeLessThan(0.75 * (high - low) + 0.002)
}

describe('Sobol indices', () => {
  test('runShares() of a sum gives each its part of the variance, alone as with others', async () => {
    const shares = await ask(
      [normal('a', 0, 1), normal('b', 0, 2), normal('c', 5, 0.5)],
      toolsOf((p) => (p.a ?? 0) + (p.b ?? 0) - 2 * (p.c ?? 0)),
    )
    expect(shares.method).toBe('Sobol indices')
    expect(shares.shares[0]?.name).toBe('b')
    for (const [name, truth] of [
      ['a', 1 / 6],
      ['b', 4 / 6],
      ['c', 1 / 6],
    ] as const) {
      expectNear(shareOf(shares, name).alone, truth)
      expectNear(shareOf(shares, name).withOthers, truth)
      expect(Math.abs((shareOf(shares, name).withOthers?.value ?? 0) - truth)).toBeLessThan(0.03)
    }
  })

  test('runShares() of a product tells what each does alone from what it does together with others', async () => {
    // Lognormal factors: V = (w_a - 1) ... with w = exp(sigma^2); S_i = (w_i - 1)/(prod w - 1), T_i = (w_i - 1) prod_(j != i) w_j/(prod w - 1).
    const factors = { a: 1.4, b: 1.7 }
    const w = { a: Math.exp(Math.log(1.4) ** 2), b: Math.exp(Math.log(1.7) ** 2) }
    const all = w.a * w.b - 1
    const shares = await ask(
      [lognormal('a', 2, factors.a), lognormal('b', 3, factors.b)],
      toolsOf((p) => (p.a ?? 0) * (p.b ?? 0)),
    )
    expectNear(shareOf(shares, 'a').alone, (w.a - 1) / all)
    expectNear(shareOf(shares, 'b').alone, (w.b - 1) / all)
    expectNear(shareOf(shares, 'a').withOthers, ((w.a - 1) * w.b) / all)
    expectNear(shareOf(shares, 'b').withOthers, ((w.b - 1) * w.a) / all)
  })

  // Ishigami, T., Homma, T., 1990, with 7 and 0.1; indices as in Saltelli, A. and others, Sensitivity Analysis in Practice, 2004 (from memory), re-evaluated:
  // V = 7^2/8 + 0.1 pi^4/5 + 0.01 pi^8/18 + 1/2.
  test('runShares() of the Ishigami function gives its indices', async () => {
    const { PI: pi } = Math
    const a = 7
    const b = 0.1
    const variance = a ** 2 / 8 + (b * pi ** 4) / 5 + (b ** 2 * pi ** 8) / 18 + 1 / 2
    const first = (1 + (b * pi ** 4) / 5) ** 2 / 2 / variance
    const second = a ** 2 / 8 / variance
    const crossed = (8 * b ** 2 * pi ** 8) / 225 / variance
    const shares = await ask(
      ['x1', 'x2', 'x3'].map((name) => uniform(name, -pi, pi)),
      toolsOf(({ x1 = 0, x2 = 0, x3 = 0 }) => Math.sin(x1) + a * Math.sin(x2) ** 2 + b * x3 ** 4 * Math.sin(x1)),
    )
    expectNear(shareOf(shares, 'x1').alone, first)
    expectNear(shareOf(shares, 'x2').alone, second)
    expectNear(shareOf(shares, 'x3').alone, 0)
    expectNear(shareOf(shares, 'x1').withOthers, first + crossed)
    expectNear(shareOf(shares, 'x2').withOthers, second)
    expectNear(shareOf(shares, 'x3').withOthers, crossed)
    expect(shares).toMatchObject({ rows: 1024, runs: 4096, missing: 0, stopped: false })
  })

  test('runShares() spends nothing on what cannot reach the number and ends when the intervals are narrow enough', async () => {
    const tools = toolsOf((p) => p.a ?? 0)
    const shares = await ask([normal('a', 0, 1), normal('b', 0, 1)], tools, { reaching: ['a'], within: 0.2 })
    expect(shares).toMatchObject({ settled: true, runs: shares.rows * 2 })
    expect(shares.rows).toBeLessThan(1024)
    expect(tools.evaluated).toHaveLength(shares.rows * 3)
    expect(shareOf(shares, 'b')).toEqual({ name: 'b', alone: zero, withOthers: zero })
    expect((await ask([normal('a', 0, 1)], tools, { reaching: [] })).shares).toEqual([
      { name: 'a', alone: zero, withOthers: zero },
    ])
  })

  test('runShares() of a number that nothing moves gives no share to anything', async () => {
    const shares = await ask(
      [normal('a', 0, 1), normal('b', 0, 1)],
      toolsOf(() => 3),
      { mostRows: 64 },
    )
    expect(shares.shares.map(({ withOthers }) => withOthers?.value)).toEqual([0, 0])
  })

  test('runShares() counts runs without a number and rests on the others', async () => {
    const shares = await ask(
      [uniform('a', 0, 1), uniform('b', 0, 1)],
      toolsOf((p) => {
        if ((p.b ?? 0) > 0.9) throw new Error('no')
        return (p.a ?? 0) + (p.b ?? 0)
      }),
    )
    expect(shares.missing).toBeGreaterThan(100)
    // Uniform on [0, 1] and [0, 0.9].
    expectNear(shareOf(shares, 'a').withOthers, 1 / 1.81)
  })

  test('runShares() keeps the rows it has when it is stopped', async () => {
    const stop = new AbortController()
    const shares = await ask([normal('a', 0, 1), normal('b', 0, 2)], {
      ...toolsOf((p) => (p.a ?? 0) + (p.b ?? 0)),
      signal: stop.signal,
      onProgress: (done) => done > 300 && stop.abort(),
    })
    expect(shares).toMatchObject({ stopped: true, settled: false })
    expect(shares.rows).toBeGreaterThan(64)
    expect(shares.shares[0]?.name).toBe('b')
  })
})

const zero = { value: 0, low: 0, high: 0 }

describe('Shapley effects', () => {
  // Owen, A. B., Prieur, C., "On Shapley value for measuring importance of dependent inputs", SIAM/ASA Journal on Uncertainty
  // Quantification 5 (2017) 986-1002, section 4.2: two linear Gaussian inputs.
  test('runShares() of two correlated normal numbers gives the closed form of the linear Gaussian case', async () => {
    const rho = 2 * Math.sin((0.5 * Math.PI) / 6)
    const [one, two] = [1, 2 * 0.75]
    const shares = await ask(
      [normal('a', 0, 1, { correlated: { b: 0.5 } }), normal('b', 0, 2)],
      toolsOf((p) => (p.a ?? 0) + 0.75 * (p.b ?? 0)),
    )
    const all = one ** 2 + two ** 2 + 2 * rho * one * two
    expect(shares.method).toBe('Shapley effects')
    const truth = (one ** 2 * (1 - rho ** 2 / 2) + rho * one * two + (two ** 2 * rho ** 2) / 2) / all
    expectNear(shareOf(shares, 'a').fair, truth)
    expectNear(shareOf(shares, 'b').fair, 1 - truth)
  })

  // The sum over all subsets of Var(E[y | subset]) of a linear Gaussian model (Owen and Prieur, theorem 2), evaluated with numpy 2:
  // y = a + 0.5 b + 2 c + 0.7 d, deviations 1, 2, 0.5, 1, rank correlations a-b 0.6 and b-c -0.4.
  test('runShares() of four normal numbers, two pairs of them correlated, gives the effects summed over all subsets', async () => {
    const assumptions = [
      normal('a', 0, 1, { correlated: { b: 0.6 } }),
      normal('b', 0, 2, { correlated: { c: -0.4 } }),
      normal('c', 0, 0.5),
      normal('d', 0, 1),
    ]
    const shares = await ask(
      assumptions,
      toolsOf((p) => (p.a ?? 0) + 0.5 * (p.b ?? 0) + 2 * (p.c ?? 0) + 0.7 * (p.d ?? 0)),
      { mostRows: 2048 },
    )
    const truths = { a: 0.43521, b: 0.272698, c: 0.166271, d: 0.125821 }
    for (const [name, truth] of Object.entries(truths)) {
      expectNear(shareOf(shares, name).fair, truth)
      expect(Math.abs((shareOf(shares, name).fair?.value ?? 0) - truth)).toBeLessThan(0.03)
    }
    expect(shares.shares.reduce((sum, { fair }) => sum + (fair?.value ?? 0), 0)).toBeCloseTo(1, 12)
  })

  test('runShares() gives a share to one that acts through its correlation only, and none to one that cannot reach', async () => {
    const assumptions = [normal('a', 0, 1, { correlated: { b: 0.8 } }), normal('b', 0, 1), normal('apart', 0, 1)]
    const shares = await ask(
      assumptions,
      toolsOf((p) => p.a ?? 0),
      { reaching: ['a'] },
    )
    const rho = 2 * Math.sin((0.8 * Math.PI) / 6)
    expectNear(shareOf(shares, 'b').fair, rho ** 2 / 2)
    expect(shareOf(shares, 'apart').fair).toEqual(zero)
    expect(shares.runs).toBe(shares.rows * 2)
  })

  test('runShares() leaves out rows in which a run gave no number, and counts those runs', async () => {
    const assumptions = [uniform('a', 0, 1), { ...uniform('b', 0, 1), correlated: { a: 0.3 } }]
    const shares = await ask(
      assumptions,
      toolsOf((p) => {
        if ((p.a ?? 0) > 0.95) throw new Error('no')
        return (p.a ?? 0) + (p.b ?? 0)
      }),
    )
    expect(shares.missing).toBeGreaterThan(10)
    expect(shares.shares.every(({ fair }) => Math.abs((fair?.value ?? 0) - 0.5) < 0.1)).toBe(true)
  })
})
