/** What must hold of layouts for any input: a typed error or finite numbers, and the laws of the geometry. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { anything, flatten, numbersOf, type V, v, within } from './any-input.js'

const { figure, layout } = preloaded
const numRuns = 1000

/** One absurd value among many sane ones reaches further than twenty absurd ones, which the first check refuses. */
const mostlySane = fc.oneof({ weight: 25, arbitrary: within(0.01, 3) }, { weight: 1, arbitrary: anything })

const sign = (value: number) => (value > 1 ? 1 : -1)
const anyRotor = (x: V) => ({
  x: v(x, 0) - 1,
  y: v(x, 1) - 1,
  z: -v(x, 2) / 2,
  radius: v(x, 3),
  spin: sign(v(x, 4)),
  cant: { lateral: v(x, 5) / 5, longitudinal: v(x, 6) / 5 },
})
const anyRecord = (x: V) =>
  layout.record({
    rotors: [anyRotor(x), { x: -2 * v(x, 7), y: 1, radius: v(x, 3), spin: 1, role: 'tilt' }],
    booms: [{ from: { x: 3, y: v(x, 1) - 1, z: 0 }, to: { x: -3, y: v(x, 8), z: 0 }, diameter: v(x, 9) / 10 }],
    wing: {
      x: v(x, 8),
      z: v(x, 9) / 3,
      span: 4 * v(x, 10),
      rootChord: v(x, 11),
      tipChord: v(x, 9),
      sweep: v(x, 5) / 5,
    },
    body: { x: 2, length: 3 * v(x, 11), width: v(x, 10), height: v(x, 8) },
    propellers: [{ x: -3, radius: v(x, 7) }],
    ground: v(x, 6),
  })
const anyWinged = (x: V) => ({
  rotorRadius: v(x, 0),
  rotorGap: v(x, 1) / 5,
  boomOffset: 2 * v(x, 2),
  rotorHeight: v(x, 3) / 3,
  cant: { lateral: v(x, 4) / 5, longitudinal: -v(x, 5) / 5 },
  wing: { area: 8 * v(x, 6), aspectRatio: 5 * v(x, 7), taper: v(x, 8) / 3, sweep: v(x, 9) / 5 },
  tail: { area: v(x, 10), arm: 3 * v(x, 11) },
  body: { length: 4 * v(x, 11), width: v(x, 10), height: v(x, 9) },
})
const anyLoading = (x: V) =>
  layout.loading({
    fixed: [{ name: 'empty', mass: 1e3 * v(x, 0), x: v(x, 1) - 1, y: v(x, 2) - 1 }],
    loads: [
      { name: 'a', mass: 50 * v(x, 3), x: v(x, 4), y: v(x, 5) },
      { name: 'b', mass: 50 * v(x, 6), x: -v(x, 7), y: v(x, 8) },
    ],
  })
const anyLimits = (x: V) => [
  { label: 'fixed', forward: v(x, 9), aft: -v(x, 10) },
  { label: 'over mass', mass: [1e3 * v(x, 11), 2e3 * v(x, 11)], forward: [v(x, 9), v(x, 10)] },
]
const anySpinUp = (x: V) =>
  layout.spinUp({
    blades: 1 + Math.floor(v(x, 0)),
    operating: [50 * v(x, 1), 50 * v(x, 1) + 50 * v(x, 2)],
    modes: [{ name: 'boom', frequency: 10 * v(x, 3), stiffening: v(x, 4) }],
    wanted: v(x, 5) / 10,
  })

const calls: readonly [string, (x: V) => unknown][] = [
  ['layout.record', anyRecord],
  ['layout.liftPlusCruise', (x) => layout.liftPlusCruise(anyWinged(x))],
  ['layout.vectoredThrust', (x) => layout.vectoredThrust({ ...anyWinged(x), rowsAhead: 1, columns: 2 })],
  ['layout.mixedThrust', (x) => layout.mixedThrust({ ...anyWinged(x), rowsAhead: Math.round(v(x, 3)), rowsBehind: 1 })],
  [
    'layout.multirotor',
    (x) => layout.multirotor({ rotorRadius: v(x, 0), count: 2 + Math.round(v(x, 1)), rotorGap: v(x, 2) }),
  ],
  [
    'layout.multirotor grid',
    (x) => layout.multirotor({ rotorRadius: v(x, 0), plan: 'grid', rows: Math.round(v(x, 1)), columns: 2 }),
  ],
  ['layout.units', (x) => layout.units(anyRecord(x), { maxThrust: 1e3 * v(x, 4), torqueRatio: [v(x, 5), v(x, 6)] })],
  ['layout.pad', (x) => layout.pad(anyRecord(x))],
  ['layout.blockedArea', (x) => layout.blockedArea(anyRecord(x))],
  [
    'layout.enclosingCircle',
    (x) => layout.enclosingCircle([0, 3, 6, 9].map((at) => ({ x: v(x, at), y: v(x, at + 1), radius: v(x, at + 2) }))),
  ],
  ['layout.loading', anyLoading],
  [
    'layout.hoverLimits',
    (x) =>
      layout.hoverLimits({
        units: layout.units(anyRecord(x), { maxThrust: 1e4 * v(x, 0), torqueRatio: 0.1 }),
        masses: [500 * v(x, 1), 500 * v(x, 1) + 100 * v(x, 2)],
        thrustFactor: 1 + v(x, 3) / 10,
        usableShare: v(x, 4) / 3,
        across: v(x, 5) - 1,
      }),
  ],
  [
    'layout.cruiseLimits',
    (x) =>
      layout.cruiseLimits(anyRecord(x), { neutralPoint: v(x, 0), leastMargin: v(x, 1) / 20, greatestMargin: v(x, 2) }),
  ],
  ['layout.gravityMargins', (x) => layout.gravityMargins({ loading: anyLoading(x), limits: anyLimits(x) })],
  [
    'layout.outwash',
    (x) =>
      layout.outwash({
        ...{ thrust: 1e4 * v(x, 0), diskArea: 20 * v(x, 1), density: v(x, 2) },
        ...{ distance: 10 * v(x, 3), height: v(x, 4) },
      }),
  ],
  [
    'layout.hubMoment',
    (x) =>
      layout.hubMoment({
        ...{ thrust: 1e3 * v(x, 0), speed: 20 * v(x, 1), radius: v(x, 2), density: v(x, 3) },
        ...{ tipSpeed: 100 * v(x, 4), solidity: v(x, 5) / 10, spin: sign(v(x, 6)) },
        ...{ flapFrequency: 1 + v(x, 7), lockNumber: 3 * v(x, 8) },
      }),
  ],
  [
    'layout.boomLoads',
    (x) =>
      layout.boomLoads({
        rotors: [
          { arm: v(x, 0), mass: 10 * v(x, 1), maxThrust: 1e3 * v(x, 2) },
          {
            ...{ arm: 2 * v(x, 3), mass: 10 * v(x, 4), maxThrust: 1e3 * v(x, 5), transitionThrust: 1e3 * v(x, 6) },
            ...{ hubMoment: { roll: 100 * v(x, 7), pitch: -100 * v(x, 8) }, stoppedForce: 100 * v(x, 9) },
          },
        ],
        manoeuvreFactor: 2 * v(x, 10),
        landingFactor: 2 * v(x, 11),
      }),
  ],
  ['layout.spinUp', anySpinUp],
  [
    'figure.planView',
    (x) => figure.planView({ layout: anyRecord(x), centreOfGravity: { x: v(x, 0), y: v(x, 1) }, lost: [0] }),
  ],
  ['figure.frontView', (x) => figure.frontView({ layout: anyRecord(x), centreOfGravity: { x: v(x, 0), y: v(x, 1) } })],
  [
    'figure.loadingEnvelope',
    (x) => figure.loadingEnvelope({ loading: anyLoading(x), limits: anyLimits(x), greatestMass: 2e3 * v(x, 11) }),
  ],
  ['figure.spinUp', (x) => figure.spinUp({ spinUp: anySpinUp(x) })],
]

describe('layouts for any input', () => {
  it.each(calls)('%s answers with finite numbers or refuses by name', (_, call) => {
    let answered = 0
    const input = fc.array(mostlySane, { minLength: 12, maxLength: 12 })
    fc.assert(
      fc.property(input, (x) => {
        const numbers = numbersOf(() => call(x))
        if (numbers.length > 0) answered += 1
        expect(numbers.every(Number.isFinite)).toBe(true)
      }),
      { numRuns, seed: 20_301 },
    )
    expect(answered).toBeGreaterThan(numRuns / 20)
  })

  it('layout.checks answers with finite numbers or refuses by name', () => {
    const input = fc.array(mostlySane, { minLength: 12, maxLength: 12 })
    fc.assert(
      fc.property(input, (x) => {
        const numbers = numbersOf(() =>
          layout.checks(anyRecord(x), { footprint: 4 * v(x, 0), wanted: { wing: v(x, 1) } }),
        )
        expect(numbers.every(Number.isFinite)).toBe(true)
      }),
      { numRuns: 200, seed: 20_302 },
    )
  })

  it('layout.lossLimits answers with finite numbers in order or refuses by name', () => {
    let answered = 0
    fc.assert(
      fc.property(fc.array(mostlySane, { minLength: 6, maxLength: 6 }), (x) => {
        const limit = () =>
          layout.lossLimits({
            units: layout.units(layout.multirotor({ count: 8, rotorRadius: v(x, 0) }), {
              maxThrust: 3e3 * v(x, 1),
              torqueRatio: v(x, 2) / 10,
            }),
            masses: [400 * v(x, 3)],
            usableShare: v(x, 4) / 3,
            across: v(x, 5) / 10,
          })
        const numbers = numbersOf(limit)
        expect(numbers.every(Number.isFinite)).toBe(true)
        if (numbers.length === 0) return
        answered += 1
        const { forward, aft } = limit()
        expect(forward[0]).toBeGreaterThanOrEqual(aft[0] ?? Number.NaN)
      }),
      { numRuns: 60, seed: 20_308 },
    )
    expect(answered).toBeGreaterThan(5)
  })

  it('answers at least 95 of 100 sane layouts, loads and speeds', () => {
    const sane = fc.sample(fc.array(within(0.5, 1.5), { minLength: 12, maxLength: 12 }), { numRuns: 200, seed: 20_303 })
    for (const [name, call] of calls) {
      const refused = sane.filter((x) => {
        try {
          return flatten(call(x)).length === 0
        } catch (error) {
          if (error instanceof InvalidInput) return true
          throw error
        }
      })
      expect(refused.length, name).toBeLessThanOrEqual(10)
    }
  })
})

describe('laws of layouts', () => {
  const anyPlan = fc.array(within(0.3, 2), { minLength: 12, maxLength: 12 })

  it('layout.pad moves with the layout, scales with it, and holds every disk', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(within(-5, 5), within(-5, 5), within(0.1, 2)), { minLength: 1, maxLength: 12 }),
        (rows) => {
          const build = (size: number, shift: number) =>
            layout.record({
              rotors: rows.map(([x, y, radius]) => ({
                x: size * x + shift,
                y: size * y,
                radius: size * radius,
                spin: 1,
              })),
            })
          const here = layout.pad(build(1, 0))
          expect(layout.pad(build(1, 7)).x - here.x).toBeCloseTo(7, 6)
          expect(layout.pad(build(3, 0)).diameter / here.diameter).toBeCloseTo(3, 8)
          for (const [x, y, radius] of rows)
            expect(Math.hypot(x - here.x, y - here.y) + radius).toBeLessThanOrEqual(here.diameter / 2 + 1e-9)
        },
      ),
      { numRuns, seed: 20_304 },
    )
  })

  it('layout.checks finds the same clearances in the mirror', () => {
    fc.assert(
      fc.property(anyPlan, (x) => {
        const plan = anyRecord(x)
        const mirrored = layout.record({
          ...plan,
          rotors: plan.rotors.map((one) => ({
            ...one,
            y: -one.y,
            spin: -one.spin,
            cant: { ...one.cant, lateral: -one.cant.lateral },
          })),
          booms: plan.booms.map(({ from, to, diameter }) => ({
            from: { ...from, y: -from.y },
            to: { ...to, y: -to.y },
            diameter,
          })),
        })
        const [here, there] = [plan, mirrored].map((one) => layout.checks(one)) as [
          ReturnType<typeof layout.checks>,
          ReturnType<typeof layout.checks>,
        ]
        expect(there.netSpin + here.netSpin).toBe(0)
        expect(there.blocked.total).toBeCloseTo(here.blocked.total, 9)
        const margins = (seen: typeof here) => seen.findings.map(({ margin }) => margin).sort((a, b) => a - b)
        margins(there).forEach((margin, index) => {
          expect(margin).toBeCloseTo(margins(here)[index] ?? Number.NaN, 5)
        })
      }),
      { numRuns: 100, seed: 20_305 },
    )
  })

  it('layout.blockedArea is never more than the disks hold, part by part', () => {
    fc.assert(
      fc.property(anyPlan, (x) => {
        const { wing, tail, booms, body, diskArea } = layout.blockedArea(anyRecord(x))
        for (const area of [wing, tail, booms, body]) {
          expect(area).toBeGreaterThanOrEqual(0)
          expect(area).toBeLessThanOrEqual(diskArea * (1 + 1e-9))
        }
      }),
      { numRuns, seed: 20_306 },
    )
  })

  it('layout.hoverLimits narrow with mass, and lie within the hubs', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 10 }),
        within(0.5, 2),
        within(1e3, 9e3),
        (count, rotorRadius, maxThrust) => {
          const plan = layout.multirotor({ count, rotorRadius })
          const units = layout.units(plan, { maxThrust, torqueRatio: 0.1 })
          const most = (count * maxThrust) / 9.80665
          const { forward, aft } = layout.hoverLimits({
            units,
            masses: [0.3, 0.5, 0.7, 0.9].map((share) => share * most),
          })
          const reach = Math.max(...plan.rotors.map(({ x }) => x))
          forward.forEach((end, index) => {
            expect(end).toBeGreaterThanOrEqual((aft[index] ?? 0) - 1e-9)
            expect(end).toBeLessThanOrEqual((forward[index - 1] ?? reach) + 1e-9)
          })
        },
      ),
      { numRuns: 300, seed: 20_307 },
    )
  })
})
