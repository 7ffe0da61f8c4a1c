/** What must hold for any input: a typed error or a finite answer, and the laws that the physics obeys. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DoesNotClose, InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { answersAnything } from './any-input.js'
import { calls } from './calls/slice.js'
import { runs, slowRuns } from './runs.js'

const { air, drag, rotor, sizing } = preloaded

const share = fc.double({ min: 0.05, max: 1, noNaN: true })
const size = fc.double({ min: 0.1, max: 1e5, noNaN: true })

answersAnything('every plain call', calls, 20_261)

describe('laws', () => {
  it('rotor.hover never beats the ideal rotor', () => {
    fc.assert(
      fc.property(size, share, share, share, (thrust, solidity, loss, drags) => {
        const hover = rotor.hover({
          thrust,
          radius: 1.5,
          density: 1.2,
          tipSpeed: 170,
          solidity,
          inducedFactor: 1 + loss,
          profileDrag: drags * 0.02,
        })
        expect(hover.figureOfMerit).toBeLessThan(1)
        expect(hover.power).toBeGreaterThan(hover.idealPower)
      }),
      { numRuns: runs, seed: 20_262 },
    )
  })

  it('air density falls with altitude and with temperature, and densityAltitude inverts it', () => {
    const altitude = fc.double({ min: -5000, max: 19_000, noNaN: true })
    fc.assert(
      fc.property(altitude, fc.double({ min: 0.01, max: 40, noNaN: true }), (height, warmer) => {
        const here = air.standard(height)
        expect(air.standard(height + 1).density).toBeLessThan(here.density)
        expect(air.standard(height, warmer).density).toBeLessThan(here.density)
        expect(Math.abs(air.densityAltitude(here.density) - height)).toBeLessThan(1e-5)
      }),
      { numRuns: runs, seed: 20_263 },
    )
  })

  it('drag.leastPowerSpeed takes no more power than any speed above the floor', () => {
    fc.assert(
      fc.property(size, share, share, share, (weight, zeroLift, floorShare, other) => {
        const polar = drag.polar({ zeroLiftDrag: 0.1 * zeroLift, aspectRatio: 10, spanEfficiency: 0.8 })
        const flight = { polar, weight, wingArea: 10, density: 1.1 }
        const floor = 2 * floorShare * drag.leastPowerSpeed(flight).speed
        const best = drag.leastPowerSpeed({ ...flight, floor })
        const { power } = drag.powerRequired({ ...flight, speed: floor * (1 + other) })
        expect(best.power).toBeLessThanOrEqual(power * (1 + 1e-12))
      }),
      { numRuns: runs, seed: 20_264 },
    )
  })
})

describe('sizing.close for a convex build-up a + b m + c m^1.5, whose roots are those of a cubic in sqrt(m)', () => {
  const build = fc.record({
    fixed: fc.double({ min: 1, max: 5000, noNaN: true }),
    growth: fc.double({ min: 0, max: 0.95, noNaN: true }),
    // The fold lies where the least of c x^3 - (1-b) x^2 + a is zero: c = 2 ((1-b)/3)^1.5/sqrt(a).
    ofFold: fc.double({ min: 0, max: 1.5, noNaN: true }),
    start: fc.double({ min: -3, max: 3, noNaN: true }),
  })

  it('finds the smallest root from any start, or says that there is none', () => {
    fc.assert(
      fc.property(build, ({ fixed, growth, ofFold, start }) => {
        const foldFactor = (2 * ((1 - growth) / 3) ** 1.5) / Math.sqrt(fixed)
        const power = ofFold * foldFactor
        const requiredMass = (m: number) => fixed + growth * m + power * m ** 1.5
        const from = fixed * 10 ** start
        const answer = sizing.close({ requiredMass, from })
        if (Math.abs(ofFold - 1) < 1e-9) return
        expect(answer.closed).toBe(ofFold < 1)
        if (!answer.closed) return
        expect(Math.abs(requiredMass(answer.grossMass) / answer.grossMass - 1)).toBeLessThan(1e-11)
        // The smaller root lies left of the least excess, which is where the build-up's slope is 1.
        const turning = power === 0 ? Number.POSITIVE_INFINITY : ((1 - growth) / (1.5 * power)) ** 2
        expect(answer.grossMass).toBeLessThanOrEqual(turning)
        expect(answer.growthFactor).toBeGreaterThanOrEqual(1 - 1e-9)
      }),
      { numRuns: slowRuns(2000), seed: 20_265 },
    )
  })

  it('never throws anything but the errors of the kernel, whatever the build-up answers', () => {
    const term = fc.oneof(fc.double({ min: -1e3, max: 1e4 }), fc.constantFrom(0, Number.NaN, Number.POSITIVE_INFINITY))
    fc.assert(
      fc.property(term, term, term, fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (a, b, c, from) => {
        try {
          const sized = sizing.close({ requiredMass: (m) => ({ a, b: b * 1e-3 * m, c: c * Math.sin(m / 100) }), from })
          expect(Number.isFinite(sized.grossMass) && sized.grossMass > 0).toBe(true)
          expect(Number.isFinite(sized.growthFactor)).toBe(true)
        } catch (error) {
          expect(error instanceof DoesNotClose || error instanceof InvalidInput).toBe(true)
        }
      }),
      { numRuns: slowRuns(500), seed: 20_266 },
    )
  })
})
