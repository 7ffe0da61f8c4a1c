import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { support, valueAt } from '../../../../../kernel/cells/evidence/index.js'
import { normalCumulative } from '../../../../../kernel/cells/evidence/spread/normal-cumulative.js'
import { normalQuantile } from '../../../../../kernel/cells/evidence/spread/normal-quantile.js'

// scipy 1.17.1: scipy.stats.norm.ppf.
const quantiles = [
  [1e-300, -37.0470962993612],
  [1e-12, -7.034483825301131],
  [1e-5, -4.264890793922825],
  [0.001, -3.090232306167813],
  [0.02425, -1.972961051311885],
  [0.05, -1.6448536269514729],
  [0.3, -0.5244005127080409],
  [0.425, -0.18911842627279252],
  [0.5, 0],
  [0.925, 1.4395314709384563],
  [0.95, 1.6448536269514722],
  [0.999, 3.090232306167813],
  [1 - 1e-9, 5.997807019601637],
] as const

// scipy 1.17.1: scipy.stats.norm.cdf.
const cumulative = [
  [-37, 5.7255712225239266e-300],
  [-10, 7.61985302416047e-24],
  [-7.5, 3.1908916729108844e-14],
  [-3, 0.0013498980316300933],
  [-1, 0.15865525393145707],
  [-0.1, 0.460172162722971],
  [0, 0.5],
  [0.5, 0.6914624612740131],
  [2, 0.9772498680518208],
  [7, 0.9999999999987201],
] as const

// scipy 1.17.1: scipy.stats.triang.ppf(p, 0.25, loc=2, scale=4) and lognorm.ppf(p, log(1.3), scale=5).
const shaped = [
  [0.01, 2.2, 2.7158021571154602],
  [0.2, 2.8944271909999157, 4.009339748549835],
  [0.5, 3.550510257216822, 5.0],
  [0.9, 4.904554884989668, 6.9983278804953315],
] as const

describe('quantiles', () => {
  test.each(quantiles)('normalQuantile(%f) is that of an independent library to 14 digits', (probability, z) => {
    expect(Math.abs(normalQuantile(probability) - z)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(z)))
  })

  test.each(cumulative)('normalCumulative(%f) is that of an independent library', (z, probability) => {
    // 15 digits of the probability in the middle, 7 in the far tail, where the continued fraction ends early.
    expect(Math.abs(normalCumulative(z) / probability - 1)).toBeLessThan(Math.abs(z) > 7 ? 1e-7 : 1e-12)
  })

  test('normalCumulative() undoes normalQuantile() and stays within 0 and 1 far out', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        expect(normalCumulative(normalQuantile(p))).toBeCloseTo(p, 13)
      }),
    )
    expect([normalCumulative(-50), normalCumulative(50)]).toEqual([0, 1])
  })
})

describe('valueAt', () => {
  test.each(shaped)(
    'valueAt() has the triangular and lognormal quantiles of an independent library at %f',
    (p, triangular, lognormal) => {
      const z = normalQuantile(p)
      expect(valueAt({ kind: 'triangular', low: 2, mode: 3, high: 6 }, z)).toBeCloseTo(triangular, 12)
      expect(valueAt({ kind: 'lognormal', median: 5, factor: 1.3 }, z)).toBeCloseTo(lognormal, 12)
    },
  )

  test('valueAt() is a normal number stretched, and a uniform one between its bounds', () => {
    expect(valueAt({ kind: 'normal', mean: 10, deviation: 2 }, -1.5)).toBe(7)
    expect(valueAt({ kind: 'uniform', low: 10, high: 20 }, normalQuantile(0.3))).toBeCloseTo(13, 12)
  })

  test('valueAt() stays within support() and never falls, for any bounds and any normal number', () => {
    const bounds = fc.tuple(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    )
    fc.assert(
      fc.property(
        bounds,
        fc.double({ min: -9, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        ([low, width, share], z, more) => {
          const high = low + width
          for (const distribution of [
            { kind: 'uniform', low, high },
            { kind: 'triangular', low, mode: low + share * width, high },
          ] as const) {
            const [least, greatest] = support(distribution)
            const value = valueAt(distribution, z)
            expect(value).toBeGreaterThanOrEqual(least - 1e-9)
            expect(value).toBeLessThanOrEqual(greatest + 1e-9)
            expect(valueAt(distribution, z + more)).toBeGreaterThanOrEqual(value - 1e-9)
          }
        },
      ),
    )
  })

  test('support() of normal and lognormal has no upper end', () => {
    expect(support({ kind: 'normal', mean: 1, deviation: 1 })).toEqual([
      Number.NEGATIVE_INFINITY,
      Number.POSITIVE_INFINITY,
    ])
    expect(support({ kind: 'lognormal', median: 1, factor: 2 })).toEqual([0, Number.POSITIVE_INFINITY])
  })
})
