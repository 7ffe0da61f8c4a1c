/** What must hold of limits and of the diagrams of sizing for any input: a typed error or finite numbers, and their laws. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { answersAnything, within } from './any-input.js'
import { calls } from './calls/limits.js'
import { runs, slowRuns } from './runs.js'

const { air, battery, drag, limits, sizing } = preloaded
const numRuns = runs
const cell = battery.cells.power18650

answersAnything('every call of limits and of the diagrams of sizing', calls, 20_281)

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
        const tried = sizing.close({ requiredMass, from: 100 })
        if (!tried.closed || tried.growthFactor > 50) return
        const { growthFactor } = sizing.growthFactor({ requiredMass, grossMass: tried.grossMass })
        const more = sizing.close({ requiredMass: (m) => requiredMass(m) + 1e-3, from: 100 })
        expect(Math.abs((more.grossMass - tried.grossMass) / 1e-3 / growthFactor - 1)).toBeLessThan(1e-3)
      }),
      { numRuns: slowRuns(300), seed: 20_284 },
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
      { numRuns: slowRuns(300), seed: 20_285 },
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
      { numRuns: slowRuns(200), seed: 20_286 },
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
      { numRuns: slowRuns(200), seed: 20_287 },
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
      { numRuns: slowRuns(300), seed: 20_288 },
    )
  })
})
