import { describe, expect, test } from 'vitest'
import { drawSamples, EvidenceTrouble } from '../../../../../kernel/cells/evidence/index.js'
import type { AssumptionRecord } from '../../../../../shared/contracts/index.js'
import { lognormal, normal, range, uniform } from './plain-model.js'

const samplesOf = (assumptions: readonly AssumptionRecord[]) => drawSamples({ assumptions, target: 'y' })
const refusal = (assumptions: readonly AssumptionRecord[]): EvidenceTrouble => {
  try {
    samplesOf(assumptions)
  } catch (fault) {
    if (fault instanceof EvidenceTrouble) return fault
  }
  throw new Error('it was not refused')
}

const ranks = (values: readonly number[]) => {
  const order = values.map((_, at) => at).sort((one, other) => (values[one] as number) - (values[other] as number))
  const found: number[] = []
  order.forEach((at, rank) => {
    found[at] = rank
  })
  return found
}
/** Spearman's rank correlation. */
const rankCorrelation = (xs: readonly number[], ys: readonly number[]) => {
  const [a, b] = [ranks(xs), ranks(ys)]
  const squares = a.reduce((sum, rank, at) => sum + (rank - (b[at] as number)) ** 2, 0)
  return 1 - (6 * squares) / (xs.length * (xs.length ** 2 - 1))
}

describe('correlations', () => {
  test('drawSamples() gives the stated rank correlations whatever the distributions are', () => {
    const samples = samplesOf([
      { ...lognormal('price', 3, 1.5), correlated: { mass: 0.7 } },
      { ...uniform('mass', 1, 2), correlated: { drag: -0.4 } },
      normal('drag', 0, 1),
    ])
    const points = Array.from({ length: 4096 }, (_, index) => samples.point(index))
    const column = (name: string) => points.map((point) => point[name] as number)
    // The standard error by chance is at most 1/sqrt(4096) = 0.016.
    expect(rankCorrelation(column('price'), column('mass'))).toBeCloseTo(0.7, 1.9)
    expect(rankCorrelation(column('mass'), column('drag'))).toBeCloseTo(-0.4, 1.9)
    expect(Math.abs(rankCorrelation(column('price'), column('drag')))).toBeLessThan(0.03)
  })

  test('drawSamples() gives the same points in whatever order assumptions and pairs are stated', () => {
    const one = [normal('a', 0, 1, { correlated: { b: 0.5 } }), uniform('b', 0, 1), normal('c', 2, 1)]
    const other = [normal('c', 2, 1), { ...uniform('b', 0, 1), correlated: { a: 0.5 } }, normal('a', 0, 1)]
    expect(samplesOf(other).point(77)).toEqual(samplesOf(one).point(77))
  })

  test('drawSamples() refuses correlations that contradict one another, naming those pairs alone and a way out', () => {
    const trouble = refusal([
      normal('a', 0, 1, { correlated: { b: 0.9, d: 0.1 } }),
      normal('b', 0, 1, { correlated: { c: 0.9 } }),
      normal('c', 0, 1, { correlated: { a: -0.9 } }),
      normal('d', 0, 1),
    ])
    expect(trouble.message).toBe(
      'These rank correlations cannot hold together: a and b 0.9, a and c -0.9, b and c 0.9. Change one of them; all of them times 0.53 could hold.',
    )
    const weaker = (rho: number) => 0.53 * rho
    expect(() =>
      samplesOf([
        normal('a', 0, 1, { correlated: { b: weaker(0.9) } }),
        normal('b', 0, 1, { correlated: { c: weaker(0.9) } }),
        normal('c', 0, 1, { correlated: { a: weaker(-0.9) } }),
      ]),
    ).not.toThrow()
  })

  test('drawSamples() refuses partners that are unknown, or held, and pairs stated in two ways', () => {
    expect(refusal([normal('a', 0, 1, { correlated: { wing: 0.5 } })]).message).toBe(
      '"a" is said to be correlated with "wing", which is no assumption of this notebook. Those with a distribution: a.',
    )
    expect(refusal([normal('a', 0, 1, { correlated: { b: 0.5 } }), range('b', 1, 0, 2)]).message).toContain(
      '"a" is said to be correlated with "b", but "b" has no distribution.',
    )
    expect(refusal([normal('a', 0, 1), { ...range('b', 1, 0, 2), correlated: { a: 0.5 } }]).code).toBe(
      'CORRELATION_OF_HELD',
    )
    expect(
      refusal([normal('a', 0, 1, { correlated: { b: 0.5 } }), normal('b', 0, 1, { correlated: { a: 0.4 } })]).message,
    ).toContain('"a" and "b" is stated twice, as 0.5 and as 0.4.')
  })

  test('drawSamples() refuses more distributions than there are dimensions, and counts and seeds that cannot be', () => {
    const many = Array.from({ length: 97 }, (_, at) => normal(`a${at}`, 0, 1))
    expect(refusal(many).message).toContain('97 assumptions have a distribution; at most 96 are sampled together.')
    expect(() => samplesOf(many.slice(1))).not.toThrow()
    const draw = (more: { count?: number; seed?: number }) => () =>
      drawSamples({ assumptions: [], target: 'y', ...more })
    expect(draw({ count: 15 })).toThrow('The number of samples is 15; give a whole number from 16 to 65536.')
    expect(draw({ count: 100.5 })).toThrow(EvidenceTrouble)
    expect(draw({ seed: -1 })).toThrow('The seed is -1; give a whole number from 0 to 4294967295.')
  })
})
