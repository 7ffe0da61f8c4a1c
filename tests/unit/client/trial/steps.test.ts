import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dragged, stepOf, stepped } from '../../../../client/trial/steps.js'

const energy = { low: 200, high: 265 }

describe('stepOf(value, scale)', () => {
  it('is a hundredth of the range, or a round number of about a hundredth of the value', () => {
    expect(stepOf(235, energy)).toBeCloseTo(0.65, 12)
    expect([235, 0.72, -1637, 0].map((value) => stepOf(value, undefined))).toEqual([1, 0.001, 10, 0.01])
    expect(stepOf(Number.NaN, undefined)).toBe(0.01)
  })
})

describe('stepped(value, scale, steps)', () => {
  it('goes on by steps without digits that say nothing', () => {
    expect(stepped(235, energy, 1)).toBe(235.65)
    expect(stepped(235, energy, -10)).toBe(228.5)
    expect(stepped(0.72, { low: 0.68, high: 0.76 }, 1)).toBe(0.7208)
    expect(stepped(0.1 + 0.2, undefined, 1)).toBe(0.301)
    expect(stepped(1637, undefined, 10)).toBe(1737)
  })

  it('goes out of the range too: a trial may', () => {
    expect(stepped(265, energy, 1)).toBe(265.65)
  })

  it('always moves, and goes back to where it was', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (low, wide) => {
          const scale = { low, high: low + wide }
          fc.pre(wide > 1e-9 * Math.abs(low))
          const on = stepped(low, scale, 1)
          expect(on).toBeGreaterThan(low)
          expect(Math.abs(stepped(on, scale, -1) - low)).toBeLessThanOrEqual(wide / 500)
        },
      ),
    ))
})

describe('dragged(position, scale)', () => {
  it('rounds to what can be told apart by eye, and keeps to the ends', () => {
    expect(dragged(243.2718, energy)).toBe(243.3)
    expect(dragged(199, energy)).toBe(200)
    expect(dragged(1e9, energy)).toBe(265)
    expect(dragged(0.72345, { low: 0.681, high: 0.76 })).toBe(0.7235)
  })

  it('never leaves the range', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        (share, low) => {
          const scale = { low, high: low + 0.37 }
          const to = dragged(low + share * 0.37, scale)
          expect(to).toBeGreaterThanOrEqual(scale.low)
          expect(to).toBeLessThanOrEqual(scale.high)
        },
      ),
    ))
})
