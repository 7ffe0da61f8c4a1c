/** What must hold of lost rotors and reliability for any input: a typed error or finite numbers, and the laws of trim. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LiftRotor } from '../../../kernel/library/authority/index.js'
import { preloaded } from '../../../kernel/library/index.js'
import { anything, numbersOf, type V, v, within } from './any-input.js'

const { authority, figure, reliability } = preloaded

const rotorsOf = (x: V, count = 4): LiftRotor[] =>
  Array.from({ length: count }, (_, at) => ({
    x: v(x, at) * (at % 2 === 0 ? 1 : -1),
    y: v(x, at + 1) * (at % 4 < 2 ? 1 : -1),
    spin: at % 3 === 0 ? 1 : -1,
    maxThrust: 100 * v(x, at + 2),
    torqueRatio: v(x, at + 3) / 10,
    cant: v(x, at + 1) / 30,
  }))
const hoverOf = (x: V) => ({ rotors: rotorsOf(x), weight: 100 * v(x, 7) })
const inertiaOf = (x: V) => ({ roll: v(x, 8), pitch: v(x, 9), yaw: v(x, 10) })
const square = [1, -1].flatMap((x) => [1, -1].map((y) => ({ x, y, spin: x * y, maxThrust: 500, torqueRatio: 0.1 })))
const sound = { rotors: square, weight: 1000 }

const calls: readonly [string, number, (x: V) => unknown][] = [
  [
    'authority.effectiveness',
    10,
    (x) => authority.effectiveness({ rotors: rotorsOf(x), centreOfGravity: { x: v(x, 8), y: v(x, 9) } }),
  ],
  [
    'authority.trim',
    12,
    (x) => authority.trim({ ...hoverOf(x), lost: [1], disturbance: { yaw: v(x, 8), roll: v(x, 9) } }),
  ],
  [
    'authority.trim of a sound plan',
    4,
    (x) =>
      authority.trim({
        ...sound,
        weight: v(x, 0),
        centreOfGravity: { x: v(x, 1), y: v(x, 2) },
        disturbance: { pitch: v(x, 3) },
      }),
  ],
  [
    'authority.losses',
    11,
    (x) =>
      authority.losses({
        ...hoverOf(x),
        rotors: rotorsOf(x).map((one) => ({ ...one, radius: v(x, 8) })),
        density: v(x, 9),
        figureOfMerit: v(x, 10),
      }),
  ],
  [
    'authority.margin',
    14,
    (x) =>
      authority.margin({
        ...hoverOf(x),
        inertia: inertiaOf(x),
        required: { yaw: v(x, 11) },
        disturbances: [{ roll: v(x, 12) }],
        simultaneous: 0,
      }),
  ],
  [
    'authority.rating',
    13,
    (x) =>
      authority.rating({
        ...hoverOf(x),
        inertia: inertiaOf(x),
        acceleration: { roll: v(x, 11) },
        usableShare: v(x, 12) / 3,
      }),
  ],
  ['authority.attainable', 10, (x) => authority.attainable({ ...hoverOf(x), directions: 5 * v(x, 8) })],
  [
    'authority.electricalLosses',
    10,
    (x) =>
      authority.electricalLosses({
        ...hoverOf(x),
        feeds: [
          [1, 0],
          [v(x, 8) / 3, 1],
          [0, 1],
          [1, v(x, 9) / 3],
        ],
      }),
  ],
  ['authority.pairing', 9, (x) => authority.pairing({ ...hoverOf(x), rotorsPerBus: v(x, 8) })],
  ['authority.pairing of a sound plan', 1, (x) => authority.pairing({ ...sound, weight: 1000 * v(x, 0) })],
  [
    'authority.search',
    10,
    (x) =>
      authority.search({
        ...hoverOf(x),
        stretches: [{ x: v(x, 8), y: 1 }],
        outwardCants: [v(x, 9) / 10],
        patterns: [[1, -1, 1, -1]],
      }),
  ],
  [
    'authority.windMoments',
    6,
    (x) =>
      authority.windMoments({
        speed: v(x, 0),
        density: v(x, 1),
        frontDragArea: v(x, 2),
        sideDragArea: v(x, 3),
        sideCentre: { x: v(x, 4) },
        directions: 3 * v(x, 5),
      }),
  ],
  [
    'authority.rotorResponse',
    9,
    (x) =>
      authority.rotorResponse({
        control: 'speed',
        thrust: v(x, 0),
        thrustAfter: v(x, 1),
        radius: v(x, 2),
        tipSpeed: 100 * v(x, 3),
        solidity: v(x, 4),
        density: v(x, 5),
        speedOfSound: 300 * v(x, 6),
        torque: v(x, 7),
        rotorInertia: v(x, 8),
      }),
  ],
  [
    'authority.countTrade',
    7,
    (x) =>
      authority.countTrade({
        counts: [4],
        arrangements: ['ring'],
        footprint: { length: 5 * v(x, 0), width: 5 * v(x, 1) },
        weight: 1e4 * v(x, 2),
        density: v(x, 3),
        figureOfMerit: v(x, 4) / 3,
        tipSpeed: 100 * v(x, 5),
        unitFailure: v(x, 6) / 1e3,
      }),
  ],
  ['figure.lossPlan', 8, (x) => figure.lossPlan({ rotors: rotorsOf(x), trim: authority.trim(hoverOf(x)) })],
  [
    'reliability.kOfN',
    4,
    (x) =>
      reliability.kOfN({
        needed: Math.round(v(x, 0)),
        of: Math.round(3 * v(x, 1)),
        unitFailure: v(x, 2) / 3,
        commonCause: v(x, 3) / 3,
      }),
  ],
  [
    'reliability.requiredUnitFailure',
    3,
    (x) => reliability.requiredUnitFailure({ needed: 3, of: 5, target: v(x, 0) / 10, commonCause: v(x, 1) / 3 }),
  ],
  [
    'reliability.unitFailure',
    4,
    (x) =>
      reliability.unitFailure({
        rate: v(x, 0) / 10,
        time: v(x, 1),
        startFailure: v(x, 2) / 30,
        latentFailure: v(x, 3) / 30,
      }),
  ],
  ['reliability.maintenance', 2, (x) => reliability.maintenance({ of: Math.round(v(x, 0)), unitFailure: v(x, 1) / 3 })],
  [
    'reliability.chain',
    3,
    (x) =>
      reliability.chain({
        generator: [
          [-v(x, 0), v(x, 1)],
          [v(x, 0), -v(x, 1)],
        ],
        time: v(x, 2),
      }),
  ],
  [
    'reliability.lossChain',
    3,
    (x) => reliability.lossChain({ of: 4, rate: v(x, 0), time: v(x, 1), survives: (lost) => lost.length < v(x, 2) }),
  ],
]

describe('lost rotors and reliability for any input', () => {
  it.each(calls)('%s answers with finite numbers or an error of the kernel', (_, count, call) => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: count, maxLength: count }), (x) => {
        for (const number of numbersOf(() => call(x))) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: 150 },
    )
  })
})

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
const numRuns = 60

describe('laws of trim', () => {
  it('mirror images peak alike, and their thrusts are mirrored', () => {
    fc.assert(
      fc.property(plan, fc.nat(11), (rotors, lost) => {
        const at = lost % rotors.length
        const [one, other] = [at, at ^ 1].map((place) => authority.trim({ rotors, weight, lost: [place] }))
        expect(other?.feasible).toBe(one?.feasible)
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
