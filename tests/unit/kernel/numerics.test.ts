import { describe, expect, it } from 'vitest'
import { brentMinimum, brentRoot } from '../../../kernel/library/numerics/index.js'

/**
 * Roots with a closed form, or from scipy 1.17.1:
 *   from scipy.optimize import brentq; brentq(lambda x: x - math.exp(-x), 0, 1, xtol=1e-15, rtol=9e-16)  # 0.567143290409784
 *   brentq(lambda x: x**3 - 2*x - 5, 2, 3, xtol=1e-15, rtol=9e-16)                                       # 2.094551481542327
 *   brentq(lambda x: math.cos(x) - x, 0, 1, xtol=1e-15, rtol=9e-16)                                      # 0.739085133215161
 */
const roots: readonly [string, (x: number) => number, number, number, number][] = [
  ['x - exp(-x)', (x) => x - Math.exp(-x), 0, 1, 0.567143290409784],
  ['x^3 - 2x - 5', (x) => x ** 3 - 2 * x - 5, 2, 3, 2.094551481542327],
  ['cos x - x', (x) => Math.cos(x) - x, 0, 1, 0.739085133215161],
  ['x^2 - 2', (x) => x * x - 2, 0, 5, Math.SQRT2],
  ['a steep one, (x - 1)^9', (x) => (x - 1) ** 9, 0, 3, 1],
  ['a step', (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
  ['a line, falling', (x) => 3 - x, 0, 10, 3],
  ['a root at the low end', (x) => x - 2, 2, 4, 2],
  ['a root at the high end', (x) => x - 4, 2, 4, 4],
]

describe('brentRoot(f, low, high, ...)', () => {
  it.each(roots)('finds the root of %s', (name, f, low, high, expected) => {
    const root = brentRoot(f, low, high, f(low), f(high), 1e-14)
    // Nine equal roots leave the function at rounding over a wide interval: 1e-2 there is 1e-18 in the function.
    expect(Math.abs(root.x - expected)).toBeLessThan(name.includes('^9') ? 1e-1 : 1e-13)
    expect(root.evaluations).toBeLessThan(200)
  })

  it('gains digits faster than bisection, which needs 47 steps for 14 digits', () => {
    const f = (x: number) => x - Math.exp(-x)
    expect(brentRoot(f, 0, 1, f(0), f(1), 1e-14).evaluations).toBeLessThan(10)
  })

  it('leaves a large value where the function jumps across zero', () => {
    const f = (x: number) => (x < 1 ? -1 : 1)
    expect(Math.abs(brentRoot(f, 0, 3, -1, 1, 1e-12).value)).toBe(1)
  })
})

describe('brentMinimum(f, low, high, tolerance)', () => {
  it.each<[string, (x: number) => number, number, number, number]>([
    ['a parabola', (x) => (x - 2) ** 2 + 3, 0, 10, 2],
    ['x - ln x', (x) => x - Math.log(x), 0.1, 10, 1],
    // scipy.optimize.minimize_scalar(lambda x: math.sin(x) + x*x/10, bounds=(-3, 0), method='bounded').x = -1.30644
    ['sin x + x^2/10', (x) => Math.sin(x) + (x * x) / 10, -3, 0, -1.306440008369],
    ['a kink', (x) => Math.abs(x - 0.7), 0, 1, 0.7],
    ['a flat-bottomed quartic', (x) => (x - 1) ** 4, -3, 4, 1],
  ])('finds the least value of %s', (name, f, low, high, expected) => {
    const minimum = brentMinimum(f, low, high, 1e-8)
    expect(Math.abs(minimum.x - expected)).toBeLessThan(name.includes('quartic') ? 1e-3 : 1e-7)
    expect(minimum.value).toBeLessThanOrEqual(f(expected) + 1e-8)
  })

  it('goes to the end where a function only falls', () => {
    expect(brentMinimum((x) => -x, 0, 1, 1e-8).x).toBeCloseTo(1, 6)
  })

  it('stops at the first value below stopBelow', () => {
    let calls = 0
    const f = (x: number) => {
      calls += 1
      return (x - 2) ** 2 - 1
    }
    expect(brentMinimum(f, 0, 10, 1e-8, 0).value).toBeLessThanOrEqual(0)
    expect(calls).toBeLessThan(6)
  })
})
