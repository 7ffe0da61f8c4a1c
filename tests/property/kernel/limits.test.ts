/** What must hold of limits and of the diagrams of sizing for any input: a typed error or finite numbers, and their laws. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { anything, numbersOf, type V, v, within } from './any-input.js'

const { air, battery, drag, limits, sizing } = preloaded
const numRuns = 1000
const cell = battery.cells.power18650
const polar = (x: V) => ({ zeroLiftDrag: v(x, 0) / 20, inducedFactor: v(x, 1) / 20 })
const craft = (x: V) => ({ polar: polar(x), weight: 1e4 * v(x, 2), wingArea: 10 * v(x, 3), density: v(x, 4) })

const calls: readonly [string, number, (x: V) => unknown][] = [
  [
    'sizing.constraintDiagram',
    12,
    (x) =>
      sizing.constraintDiagram({
        polar: polar(x),
        propellerEfficiency: v(x, 2),
        constraints: [
          { kind: 'stall', density: v(x, 3), speed: 50 * v(x, 4), maximumLift: v(x, 5), margin: v(x, 6) },
          { kind: 'cruise', density: v(x, 3), speed: 50 * v(x, 7) },
          { kind: 'climb', density: v(x, 3), climbSpeed: v(x, 8) },
          { kind: 'turn', density: v(x, 3), speed: 50 * v(x, 7), loadFactor: v(x, 9) },
        ],
        design: { wingLoading: 1e3 * v(x, 10), specificPower: 100 * v(x, 11) },
      }),
  ],
  [
    'sizing.diskLoadingWindow',
    9,
    (x) =>
      sizing.diskLoadingWindow({
        density: v(x, 0),
        download: v(x, 1) / 6,
        design: 300 * v(x, 2),
        bounds: [
          { kind: 'hover power', specificPower: 100 * v(x, 3), figureOfMerit: v(x, 4) },
          { kind: 'footprint', grossMass: 1e3 * v(x, 5), diskArea: v(x, 6) },
          { kind: 'outwash', speed: 10 * v(x, 7) },
          { kind: 'tip speed', speed: 100 * v(x, 7), solidity: v(x, 8) },
        ],
      }),
  ],
  [
    'sizing.electricRange',
    7,
    (x) =>
      sizing.electricRange({
        grossMass: 1e3 * v(x, 0),
        batteryMass: 1e2 * v(x, 1),
        usableSpecificEnergy: 1e5 * v(x, 2),
        liftToDrag: 5 * v(x, 3),
        efficiency: v(x, 4),
        speed: 30 * v(x, 5),
        reserveTime: 1e3 * v(x, 6),
      }),
  ],
  [
    'sizing.payloadRange',
    4,
    (x) =>
      sizing.payloadRange({
        mostPayload: 100 * v(x, 0),
        leastPayload: v(x, 1),
        points: 3,
        evaluate: (payload, range) => ({
          energy: range * (1 + payload * v(x, 2)) - 1e5 * v(x, 3),
          load: payload - 200,
        }),
      }),
  ],
  [
    'sizing.growthFactor',
    3,
    (x) => {
      const requiredMass = (m: number) => ({ a: 100 * v(x, 0), b: (v(x, 1) / 4) * m, c: 1e-5 * v(x, 2) * m * m })
      const { grossMass } = sizing.close({ requiredMass, from: 100 })
      return sizing.growthFactor({ requiredMass, grossMass })
    },
  ],
  [
    'sizing.sensitivity',
    3,
    (x) =>
      sizing.sensitivity({
        name: 'a',
        value: v(x, 0),
        grossMass: 100 * v(x, 1),
        requiredMass: (m, a) => 100 * v(x, 1) * (1 - v(x, 2) / 4) * (a / v(x, 0)) + (v(x, 2) / 4) * m,
      }),
  ],
  [
    'sizing.tryClose with deficits',
    4,
    (x) =>
      sizing.tryClose({
        requiredMass: (m) => 100 * v(x, 0) + (v(x, 1) / 3) * m,
        from: 100,
        deficits: (m) => ({ power: { lacking: v(x, 2) * m - v(x, 3), of: v(x, 3) }, bare: v(x, 2) }),
      }),
  ],
  [
    'limits.packPower',
    6,
    (x) =>
      limits.packPower({
        cell,
        energy: 1e8 * v(x, 0),
        floor: v(x, 1) / 10,
        demands: [{ power: 1e5 * v(x, 2), stateOfCharge: v(x, 3) / 3 }],
        corners: [{ name: 'a', capacityLeft: v(x, 4), resistanceGrowth: 1 + v(x, 5) }],
      }),
  ],
  [
    'limits.speedFloors',
    6,
    (x) =>
      limits.speedFloors({
        weight: 1e4 * v(x, 0),
        density: v(x, 1),
        wingArea: 10 * v(x, 2),
        maximumLift: v(x, 3),
        speeds: [{ name: 'a', speed: 30 * v(x, 4), loadFactor: v(x, 5) }],
      }),
  ],
  [
    'limits.margins',
    12,
    (x) =>
      limits.margins({
        grossMass: 1e3 * v(x, 0),
        density: v(x, 1),
        lift: {
          diskArea: 20 * v(x, 2),
          figureOfMerit: v(x, 3),
          shaftPower: 1e5 * v(x, 4),
          thrustRatio: v(x, 5),
          packPower: 1e5 * v(x, 6),
        },
        wing: { wingArea: 10 * v(x, 7), maximumLift: v(x, 8), speed: 30 * v(x, 9) },
        cruise: {
          polar: polar(x),
          wingArea: 10 * v(x, 7),
          speed: 30 * v(x, 9),
          propellerEfficiency: v(x, 10),
          shaftPower: 1e5 * v(x, 11),
        },
      }),
  ],
  [
    'limits.hotAndHigh',
    5,
    (x) =>
      limits.hotAndHigh({
        altitudes: [1e3 * v(x, 0), 2e3 * v(x, 1)],
        temperatureOffsets: [10 * v(x, 2)],
        margins: (there) => ({ a: v(x, 3) * there.density - 1, b: v(x, 4) }),
      }),
  ],
  [
    'limits.climbAfterLoss',
    9,
    (x) =>
      limits.climbAfterLoss({
        ...craft(x),
        shaftPower: 1e5 * v(x, 5),
        units: Math.round(v(x, 6)),
        propellerEfficiency: v(x, 7),
        addedDragArea: v(x, 8),
      }),
  ],
  [
    'limits.verticalClimbAfterLoss',
    6,
    (x) =>
      limits.verticalClimbAfterLoss({
        thrusts: [1e3 * v(x, 0), 1e3 * v(x, 1)],
        diskArea: v(x, 2),
        density: v(x, 3),
        figureOfMerit: v(x, 4),
        unitPower: 1e4 * v(x, 5),
      }),
  ],
  [
    'limits.massGrowth',
    5,
    (x) =>
      limits.massGrowth({
        growthFactor: v(x, 0),
        items: [
          { name: 'a', mass: v(x, 1), allowance: v(x, 2), low: v(x, 3), high: v(x, 4) },
          { name: 'b', mass: v(x, 1), category: 'battery', maturity: 'layout' },
        ],
      }),
  ],
  [
    'limits.hotelPower',
    5,
    (x) =>
      limits.hotelPower({
        items: [{ name: 'a', power: v(x, 0), duty: v(x, 1) }],
        heat: [{ name: 'b', heat: v(x, 2) }],
        coolingShare: v(x, 3),
        converterEfficiency: v(x, 4),
      }),
  ],
  [
    'limits.glide',
    8,
    (x) => limits.glide({ ...craft(x), height: 100 * v(x, 5), headwind: v(x, 6), addedDragArea: v(x, 7) }),
  ],
  [
    'limits.routeReach',
    8,
    (x) =>
      limits.routeReach({
        length: 1e4 * v(x, 0),
        height: 100 * v(x, 1),
        liftToDrag: 5 * v(x, 2),
        energyLeft: (along) => 1e6 * v(x, 3) + along,
        rotorBorne: { power: 1e5 * v(x, 4), speed: 10 * v(x, 5), landingEnergy: 1e5 * v(x, 6) },
        sites: [{ name: 'a', along: 1e3 * v(x, 7) }],
        points: 7,
      }),
  ],
  [
    'limits.whatSizesWhat',
    3,
    (x) =>
      limits.whatSizesWhat({
        limits: [0, 1, 2].map((at) => ({ component: at < 2 ? 'a' : 'b', limit: String(at), size: v(x, at) })),
      }),
  ],
  ['limits.failureTable', 1, (x) => limits.failureTable({ cases: [{ failure: 'a', phase: 'b', margin: v(x, 0) }] })],
]

describe('every call of limits and of the diagrams of sizing', () => {
  it.each(calls)('%s gives finite numbers or an error of the kernel, for any input', (_, count, call) => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: count, maxLength: count }), (values) => {
        for (const number of numbersOf(() => call(values))) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns, seed: 20_281 },
    )
  })

  it('limits.day gives finite numbers or an error of the kernel, for any input', () => {
    const count = 9
    fc.assert(
      fc.property(fc.array(anything, { minLength: count, maxLength: count }), (x) => {
        const call = () =>
          limits.day({
            cell,
            series: 100,
            parallel: 10 * v(x, 0),
            sectors: 2,
            sector: [{ power: 1e4 * v(x, 1), duration: 0.1 * v(x, 2), motorHeatShare: v(x, 3) }],
            turnaround: 0.05 * v(x, 4),
            chargePower: 1e4 * v(x, 5),
            chargeTo: v(x, 6) / 3,
            ambient: 280 + 10 * v(x, 7),
            conductance: v(x, 8),
          })
        for (const number of numbersOf(call)) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: 200, seed: 20_282 },
    )
  })
})

describe('laws of sizing diagrams', () => {
  const clean = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 })

  it('sizing.constraintDiagram: a design is feasible just where every margin is, and least power has none to spare', () => {
    fc.assert(
      fc.property(within(300, 2500), within(20, 200), within(35, 70), (wingLoading, specificPower, speed) => {
        const { design, best } = sizing.constraintDiagram({
          polar: clean,
          propellerEfficiency: 0.84,
          design: { wingLoading, specificPower },
          constraints: [
            { kind: 'stall', density: 1.1, speed: 45, maximumLift: 1.5 },
            { kind: 'cruise', density: 1.1, speed },
            { kind: 'climb', density: 1.1, climbSpeed: 3 },
          ],
        })
        expect(design?.feasible).toBe(design?.margins.every((one) => one.margin >= 0))
        if (design?.feasible === true) expect(specificPower).toBeGreaterThanOrEqual(best.specificPower * (1 - 0.01))
      }),
      { numRuns, seed: 20_283 },
    )
  })

  it('sizing.growthFactor is what a design closed anew with a little more fixed mass gains', () => {
    fc.assert(
      fc.property(within(50, 500), within(0.1, 0.6), within(1e-6, 5e-5), (fixed, share, bend) => {
        const requiredMass = (m: number) => fixed + share * m + bend * m * m
        const tried = sizing.tryClose({ requiredMass, from: 100 })
        if (!tried.closed || tried.growthFactor > 50) return
        const { growthFactor } = sizing.growthFactor({ requiredMass, grossMass: tried.grossMass })
        const more = sizing.close({ requiredMass: (m) => requiredMass(m) + 1e-3, from: 100 })
        expect(Math.abs((more.grossMass - tried.grossMass) / 1e-3 / growthFactor - 1)).toBeLessThan(1e-3)
      }),
      { numRuns: 300, seed: 20_284 },
    )
  })

  it('sizing.payloadRange: more payload never flies further where mass costs energy', () => {
    fc.assert(
      fc.property(within(500, 2000), within(1e7, 5e8), within(0, 1e5), (empty, energy, reserve) => {
        const { range } = sizing.payloadRange({
          mostPayload: 400,
          points: 5,
          evaluate: (payload, flown) => (empty + payload) * (flown + reserve) - energy / 2,
        })
        for (let at = 1; at < range.length; at += 1)
          expect(range[at] ?? 0).toBeGreaterThanOrEqual((range[at - 1] ?? 0) * (1 - 1e-9))
      }),
      { numRuns: 300, seed: 20_285 },
    )
  })
})

describe('laws of limits', () => {
  it('limits.packPower: no corner fewer, no pack lighter', () => {
    fc.assert(
      fc.property(within(1e7, 3e8), within(5e4, 6e5), within(0.05, 0.3), (energy, power, floor) => {
        const options = { cell, energy, floor, rating: 'peak' as const, demands: [{ power }] }
        const all = limits.packPower(options)
        for (const row of all.rows) {
          const alone = limits.packPower({ ...options, corners: [{ name: 'new' }] })
          expect(all.mass).toBeGreaterThanOrEqual(alone.mass)
          expect(all.mass).toBeGreaterThanOrEqual(row.mass)
          expect(row.neededSpecificPower).toBeLessThanOrEqual(row.availableSpecificPower * (1 + 1e-12))
        }
      }),
      { numRuns: 200, seed: 20_286 },
    )
  })

  it('limits.hotAndHigh: the hotter the day, the lower the ceiling', () => {
    fc.assert(
      fc.property(within(0.75, 1.15), (density) => {
        const { ceilings } = limits.hotAndHigh({
          altitudes: [0, 1500, 3000, 4500],
          temperatureOffsets: [-20, 0, 20],
          margins: (there) => ({ hover: there.density - density }),
        })
        for (const [at, one] of ceilings.entries()) {
          if (one.limit === 'hover' && one.altitude > 0)
            expect(Math.abs(air.standard(one.altitude, one.temperatureOffset).density - density)).toBeLessThan(1e-8)
          expect(one.altitude).toBeLessThanOrEqual(ceilings[at - 1]?.altitude ?? 4500)
        }
      }),
      { numRuns: 200, seed: 20_287 },
    )
  })

  it('limits.routeReach: gaps hold every point that lacks and none that has', () => {
    fc.assert(
      fc.property(within(100, 1500), within(0, 60e3), within(0, 60e3), (height, first, second) => {
        const { points, gaps } = limits.routeReach({
          length: 60e3,
          height,
          liftToDrag: 12,
          sites: [first, second].map((along, at) => ({ name: String(at), along, runway: true })),
          points: 41,
        })
        // A point just at the edge of a gap may fall to either side by rounding.
        for (const { along, margin } of points.filter((point) => Math.abs(point.margin) > 1e-3))
          expect(gaps.some((gap) => along >= gap.from - 1e-6 && along <= gap.to + 1e-6)).toBe(margin < 0)
      }),
      { numRuns: 300, seed: 20_288 },
    )
  })
})
