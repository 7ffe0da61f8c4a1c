/** What must hold of layouts for any input: a typed error or finite numbers, and the laws of the geometry. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { answersAnything, flatten, within } from './any-input.js'
import { anyRecord, calls } from './calls/layout.js'
import { runs, slowRuns } from './runs.js'

const { layout } = preloaded
const numRuns = runs

answersAnything('every call on layouts', calls, 20_301)

describe('sane layouts', () => {
  it('answers at least 95 of 100 sane layouts, loads and speeds', () => {
    const sane = fc.sample(fc.array(within(0.5, 1.5), { minLength: 12, maxLength: 12 }), {
      numRuns: slowRuns(200),
      seed: 20_303,
    })
    for (const [name, , call] of calls) {
      const refused = sane.filter((x) => {
        try {
          return flatten(call(x)).length === 0
        } catch (error) {
          if (error instanceof InvalidInput) return true
          throw error
        }
      })
      expect(refused.length / sane.length, name).toBeLessThanOrEqual(0.05)
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
      { numRuns: slowRuns(100), seed: 20_305 },
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
      { numRuns: slowRuns(300), seed: 20_307 },
    )
  })
})
