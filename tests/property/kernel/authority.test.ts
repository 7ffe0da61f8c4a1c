/** What must hold of lost rotors and reliability for any input: a typed error or finite numbers, and the laws of trim. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LiftRotor } from '../../../kernel/library/authority/index.js'
import { preloaded } from '../../../kernel/library/index.js'
import { answersAnything, within } from './any-input.js'
import { calls } from './calls/authority.js'
import { slowRuns } from './runs.js'

const { authority, reliability } = preloaded

answersAnything('every call on lost rotors and reliability', calls, 20_311)

/** A plan of pairs left and right that turn opposite ways, and one on the middle line where the count is odd. */
const plan = fc
  .array(
    fc.record({
      x: within(-3, 3),
      y: within(0.3, 4),
      spin: fc.constantFrom(1, -1),
      torqueRatio: within(0.05, 0.15),
      cant: within(-0.1, 0.1),
      limit: within(0.1, 0.6),
    }),
    { minLength: 2, maxLength: 6 },
  )
  .map((pairs): LiftRotor[] =>
    pairs.flatMap(({ x, y, spin, torqueRatio, cant, limit }) => [
      { x, y, spin, torqueRatio, cant, maxThrust: 1000 * limit },
      { x, y: -y, spin: -spin, torqueRatio, cant: -cant, maxThrust: 1000 * limit },
    ]),
  )
const weight = 1000
const numRuns = slowRuns(60)

describe('laws of trim', () => {
  it('mirror images peak alike, and their thrusts are mirrored', () => {
    fc.assert(
      fc.property(plan, fc.nat(11), (rotors, lost) => {
        const at = lost % rotors.length
        const [one, other] = [at, at ^ 1].map((place) => authority.trim({ rotors, weight, lost: [place] }))
        if (other?.feasible !== one?.feasible) {
          // On the very boundary rounding may decide; a millionth more thrust then settles both.
          const stronger = rotors.map((rotor) => ({ ...rotor, maxThrust: rotor.maxThrust * (1 + 1e-6) }))
          for (const place of [at, at ^ 1])
            expect(authority.trim({ rotors: stronger, weight, lost: [place] }).feasible).toBe(true)
          return
        }
        if (one?.peakShare === undefined || other?.peakShare === undefined) return
        expect(other.peakShare / one.peakShare).toBeCloseTo(1, 6)
        one.thrusts.forEach((thrust, place) => {
          expect(Math.abs((other.thrusts[place ^ 1] as number) - thrust)).toBeLessThan(1e-3 * weight)
        })
      }),
      { numRuns },
    )
  })

  it('scaling mass and thrust limits together, and all arms together, changes no feasibility and no peak', () => {
    fc.assert(
      fc.property(plan, within(0.01, 100), within(0.1, 10), fc.nat(11), (rotors, heavier, longer, lost) => {
        const gone = [lost % rotors.length]
        const scaled = rotors.map((rotor) => ({
          ...rotor,
          x: rotor.x * longer,
          y: rotor.y * longer,
          torqueRatio: rotor.torqueRatio * longer,
          maxThrust: rotor.maxThrust * heavier,
        }))
        const plain = authority.trim({ rotors, weight, lost: gone })
        const other = authority.trim({ rotors: scaled, weight: weight * heavier, lost: gone })
        expect(other.feasible).toBe(plain.feasible)
        if (plain.peakShare !== undefined) expect((other.peakShare as number) / plain.peakShare).toBeCloseTo(1, 6)
      }),
      { numRuns },
    )
  })

  it('more thrust never makes a trim infeasible, nor lowers the index below zero, nor raises the peak', () => {
    fc.assert(
      fc.property(plan, fc.array(within(1, 3), { minLength: 12, maxLength: 12 }), fc.nat(11), (rotors, more, lost) => {
        const gone = [lost % rotors.length]
        const stronger = rotors.map((rotor, at) => ({ ...rotor, maxThrust: rotor.maxThrust * (more[at] as number) }))
        const before = authority.trim({ rotors, weight, lost: gone })
        const after = authority.trim({ rotors: stronger, weight, lost: gone })
        if (!before.feasible) return
        expect(after.feasible).toBe(true)
        expect(after.peakShare).toBeLessThanOrEqual((before.peakShare as number) * (1 + 1e-6))
        expect(after.index).toBeGreaterThan(-1e-6 * weight)
      }),
      { numRuns },
    )
  })

  it('a trim that is not feasible names an axis, and without the axes named it is feasible', () => {
    fc.assert(
      fc.property(plan, fc.nat(11), within(-0.5, 0.5), (rotors, lost, aside) => {
        const options = { rotors, weight, lost: [lost % rotors.length], centreOfGravity: { x: aside, y: aside / 2 } }
        const found = authority.trim(options)
        expect(found.cannotHold.length > 0).toBe(!found.feasible)
        expect('peakShare' in found).toBe(found.feasible)
        const hold = (['lift', 'roll', 'pitch', 'yaw'] as const).filter((axis) => !found.cannotHold.includes(axis))
        if (hold.length > 0 && !found.cannotHold.includes('lift'))
          expect(authority.trim({ ...options, hold }).feasible).toBe(true)
        if (found.index > 1e-6 * weight) expect(found.feasible).toBe(true)
      }),
      { numRuns },
    )
  })

  it('the thrusts give the weight and what is asked for about every held axis, within their limits', () => {
    fc.assert(
      fc.property(plan, within(-100, 100), (rotors, yaw) => {
        const found = authority.trim({ rotors, weight, disturbance: { yaw } })
        if (!found.feasible) return
        for (const axis of ['lift', 'roll', 'pitch', 'yaw'] as const)
          expect(Math.abs(found.leftOver[axis])).toBeLessThan(1e-6 * weight)
        found.thrusts.forEach((thrust, at) => {
          expect(thrust).toBeGreaterThanOrEqual(0)
          expect(thrust).toBeLessThanOrEqual((rotors[at]?.maxThrust ?? 0) * (1 + 1e-7) + 1e-6)
        })
      }),
      { numRuns },
    )
  })
})

describe('laws of reliability', () => {
  it('losing a function is the likelier the more units it needs, and the more its units fail', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 20 }),
        within(1e-9, 0.5),
        within(0, 0.2),
        (of, unitFailure, commonCause) => {
          let before = 0
          for (let needed = 1; needed <= of; needed += 1) {
            const failure = reliability.kOfN({ needed, of, unitFailure, commonCause })
            expect(failure).toBeGreaterThanOrEqual(before * (1 - 1e-12))
            before = failure
          }
          const oftener = reliability.kOfN({ needed: of, of, unitFailure: Math.min(1, 1.5 * unitFailure), commonCause })
          expect(oftener).toBeGreaterThan(before)
          expect(before).toBeLessThanOrEqual(1)
        },
      ),
      { numRuns: slowRuns(100) },
    )
  })

  it('a chain of losses stays a distribution whose failure only grows with time', () => {
    fc.assert(
      fc.property(within(1e-9, 10), within(0.01, 100), fc.integer({ min: 2, max: 8 }), (rate, time, of) => {
        const at = (t: number) => reliability.lossChain({ of, rate, time: t, survives: (lost) => lost.length < of / 2 })
        const [sooner, later] = [at(time), at(2 * time)]
        expect(sooner.reliability + sooner.failure).toBeCloseTo(1, 10)
        expect(later.failure).toBeGreaterThanOrEqual(sooner.failure * (1 - 1e-9))
      }),
    )
  })
})
