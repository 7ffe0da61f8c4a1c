/** What must hold of missions for any input: a typed error or finite numbers, and the laws of the physics. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { answersAnything, within } from './any-input.js'
import { calls } from './calls/mission.js'
import { runs, slowRuns } from './runs.js'

const { battery, mission, rotor, u } = preloaded
const numRuns = runs

answersAnything('every call on missions', calls, 20_291)

/** Inside the box of what flies, as shares of its sides. */
const sane = fc.record({
  mass: within(600, 4000),
  wingLoading: within(600, 2000),
  diskLoading: within(100, 1000),
  zeroLiftDrag: within(0.02, 0.08),
  aspectRatio: within(6, 16),
  maximumLift: within(1.2, 2.5),
  figureOfMerit: within(0.5, 0.8),
  parallel: within(5, 200),
  control: fc.constantFrom('speed' as const, 'pitch' as const),
})
type Sane = typeof sane extends fc.Arbitrary<infer One> ? One : never
const craftOf = (s: Sane) =>
  mission.aircraft({
    mass: s.mass,
    wingArea: (s.mass * u.g0) / s.wingLoading,
    maximumLift: s.maximumLift,
    polar: { zeroLiftDrag: s.zeroLiftDrag, inducedFactor: 1 / (Math.PI * s.aspectRatio * 0.8) },
    lift: {
      diskArea: (s.mass * u.g0) / s.diskLoading,
      figureOfMerit: s.figureOfMerit,
      efficiency: 0.9,
      control: s.control,
    },
    cruise: { propellerEfficiency: 0.82, efficiency: 0.9 },
    hotelPower: 1000,
    battery: { cell: battery.cells.power18650, series: 180, parallel: s.parallel, rating: 'peak' },
  })
const sector = mission.segments([
  { kind: 'hover', time: 60 },
  { kind: 'transition' },
  { kind: 'climb', to: 600, rate: 3 },
  { kind: 'cruise', distance: 30_000 },
  { kind: 'descent', to: 0 },
  { kind: 'reserve', time: 600 },
  { kind: 'return transition' },
  { kind: 'landing', time: 45 },
])

describe('for any aircraft that flies', () => {
  it('mission.fly keeps the book of energy, answers always, and its rows add up', () => {
    fc.assert(
      fc.property(sane, (s) => {
        const flown = mission.fly({ aircraft: craftOf(s), segments: sector, steps: 'coarse' })
        // Cut coarsely, and past empty the store is carried on at the voltage of an empty cell.
        if (flown.feasible) expect(Math.abs(flown.openBalance)).toBeLessThan(5e-3)
        expect(flown.feasible).toBe(
          flown.deficits.energy <= 0 && flown.deficits.packPower <= 0 && flown.deficits.temperature <= 0,
        )
        const energy = flown.rows.reduce((sum, row) => sum + row.energy, 0)
        expect(Math.abs(energy / flown.energy - 1)).toBeLessThan(1e-9)
      }),
      { numRuns: slowRuns(300) },
    )
  })

  it('mission.trim never takes less power than the ideal rotor in hover, nor than drag times speed on the wing', () => {
    fc.assert(
      fc.property(sane, within(0, 90), (s, speed) => {
        const aircraft = craftOf(s)
        const point = mission.trim({ aircraft, speed })
        expect(point.power).toBeGreaterThanOrEqual(point.drag * speed)
        const hover = mission.trim({ aircraft, speed: 0 })
        const { density } = preloaded.air.standard(0)
        const ideal = rotor.hover({
          thrust: s.mass * u.g0,
          diskArea: aircraft.lift.diskArea,
          density,
          figureOfMerit: 1,
        })
        expect(hover.rotorPower).toBeGreaterThanOrEqual(ideal.power)
      }),
      { numRuns },
    )
  })

  it('mission.trim is continuous in speed across hover, conversion and the wing-borne range', () => {
    fc.assert(
      fc.property(sane, within(0, 1.5), (s, share) => {
        const aircraft = craftOf(s)
        const speed = share * mission.speeds({ aircraft }).conversion
        const [here, there] = [speed, speed + 1e-7].map((one) => mission.trim({ aircraft, speed: one }).power)
        expect(Math.abs((here ?? 0) / (there ?? 1) - 1)).toBeLessThan(1e-3)
      }),
      { numRuns },
    )
  })

  it('mission.speeds finds no better speed beside that of best range, whatever the wind', () => {
    fc.assert(
      fc.property(sane, within(-30, 30), within(0.8, 1.25), (s, tailwind, beside) => {
        const aircraft = craftOf(s)
        const { bestRange, floor } = mission.speeds({ aircraft, tailwind })
        const speed = Math.max(bestRange.speed * beside, floor)
        if (speed + tailwind <= 0) return
        const { power } = mission.trim({ aircraft, speed })
        expect(power / (speed + tailwind)).toBeGreaterThanOrEqual((bestRange.energyPerDistance ?? 0) * (1 - 1e-9))
      }),
      { numRuns },
    )
  })

  it('mission.fly lacks less energy with more strings', () => {
    fc.assert(
      fc.property(sane, (s) => {
        const lack = (parallel: number) =>
          mission.fly({ aircraft: craftOf({ ...s, parallel }), segments: sector, steps: 'coarse' }).deficits.energy
        expect(lack(s.parallel * 1.1)).toBeLessThan(lack(s.parallel))
      }),
      { numRuns: slowRuns(200) },
    )
  })
})
