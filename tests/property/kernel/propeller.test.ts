/** The laws of propellers and sections that must hold for any sane input. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { within } from './any-input.js'
import { runs, slowRuns } from './runs.js'

const { air, propeller, section, u } = preloaded
const ground = air.standard(0)

describe('propeller.bladeElement', () => {
  it('never beats the actuator disk', () => {
    fc.assert(
      fc.property(
        within(0.05, 2.5),
        within(0.1, 1.1),
        within(0.05, 0.25),
        fc.integer({ min: 2, max: 6 }),
        (j, angle, chord, blades) => {
          const radius = 1
          const loads = propeller.bladeElement({
            ...ground,
            radius,
            rootCutout: 0.15,
            chord,
            blades,
            twist: (x) => Math.atan((0.75 * Math.tan(angle)) / x),
            tipSpeed: 150,
            advanceRatio: j,
            section: { liftSlope: 5.9, minimumDrag: 0.008, dragRise: 0.01, zeroLiftAngle: -3 * u.deg },
          })
          if (loads.thrust <= 0) return
          const bound = propeller.ideal({
            thrust: loads.thrust,
            speed: loads.speed,
            diskArea: Math.PI * radius ** 2,
            density: ground.density,
          })
          expect(loads.efficiency).toBeLessThan(bound.efficiency)
          expect(loads.power).toBeGreaterThan(bound.power)
          expect(loads.efficiency).toBeCloseTo((j * loads.thrustCoefficient) / loads.powerCoefficient, 9)
        },
      ),
      { numRuns: runs, seed: 40_276 },
    )
  })
})

describe('propeller.estimate and propeller.minimumInducedLoss', () => {
  it('propeller.estimate never beats the actuator disk', () => {
    fc.assert(
      fc.property(
        within(100, 3000),
        within(5, 90),
        within(0.5, 1.5),
        within(120, 230),
        (thrust, speed, radius, tipSpeed) => {
          const disk = { thrust, speed, diskArea: Math.PI * radius ** 2, density: 1.1 }
          try {
            const made = propeller.estimate({
              thrust,
              speed,
              radius,
              density: 1.1,
              tipSpeed,
              solidity: 0.1,
              profileDrag: 0.01,
            })
            expect(made.efficiency).toBeLessThan(propeller.ideal(disk).efficiency)
            const { inducedPower, profilePower, swirlPower, power } = made
            expect((thrust * speed + inducedPower + profilePower + swirlPower) / power).toBeCloseTo(1, 10)
          } catch (error) {
            expect(error).toBeInstanceOf(InvalidInput)
          }
        },
      ),
      { numRuns: runs, seed: 40_277 },
    )
  })

  it('propeller.minimumInducedLoss stays below the actuator disk and is met by propeller.bladeElement', () => {
    fc.assert(
      fc.property(
        within(100, 900),
        within(35, 80),
        fc.integer({ min: 2, max: 5 }),
        within(150, 220),
        (thrust, speed, blades, tipSpeed) => {
          const common = { ...ground, radius: 1, rootCutout: 0.15, blades, tipSpeed, speed }
          const polar = { liftSlope: 5.9, minimumDrag: 0.008, zeroLiftAngle: -3 * u.deg }
          const design = propeller.minimumInducedLoss({ ...common, thrust, liftCoefficient: 0.5, section: polar })
          const bound = propeller.ideal({ thrust, speed, diskArea: Math.PI, density: ground.density })
          expect(design.efficiency).toBeLessThan(bound.efficiency)
          const { chord, twist } = design
          const met = propeller.bladeElement({ ...common, chord, twist, section: polar })
          expect(Math.abs(met.thrust / thrust - 1)).toBeLessThan(0.03)
          expect(Math.abs(met.efficiency - design.efficiency)).toBeLessThan(0.01)
        },
      ),
      { numRuns: slowRuns(200), seed: 40_278 },
    )
  })
})

describe('section.coefficients', () => {
  const sections = fc.record({
    liftSlope: within(4, 7),
    minimumDrag: within(0.005, 0.03),
    zeroLiftAngle: within(-0.1, 0.1),
    dragRise: within(0, 0.05),
    maximumLift: within(0.8, 1.8),
    thickness: within(0.05, 0.2),
    referenceReynolds: within(1e5, 1e7),
  })

  it('is continuous in angle round the whole circle, with drag above zero everywhere', () => {
    fc.assert(
      fc.property(
        sections,
        within(-Math.PI, Math.PI),
        within(0, 0.75),
        within(1e5, 1e7),
        (s, angle, mach, reynolds) => {
          const made = section.linear(s)
          const at = (angleOfAttack: number) => section.coefficients({ section: made, angleOfAttack, mach, reynolds })
          const [one, other] = [at(angle), at(angle + 1e-7)]
          expect(Math.abs(one.lift - other.lift)).toBeLessThan(1e-5)
          expect(Math.abs(one.drag - other.drag)).toBeLessThan(1e-5)
          expect(one.drag).toBeGreaterThan(0)
        },
      ),
      { numRuns: runs, seed: 40_279 },
    )
  })

  it('of a table is that of the linear section it was read from, past its ends too', () => {
    fc.assert(
      fc.property(within(5, 6.5), within(-2, 2), (liftSlope, angle) => {
        const made = section.linear({ liftSlope, minimumDrag: 0.01 })
        const stall = 1.2 / liftSlope
        const tested = section.table({
          polars: [{ angle: [-stall, 0, stall], lift: [-1.2, 0, 1.2], drag: [0.01, 0.01, 0.01] }],
        })
        const one = section.coefficients({ section: made, angleOfAttack: angle })
        const other = section.coefficients({ section: tested, angleOfAttack: angle })
        expect(other.lift).toBeCloseTo(one.lift, 9)
        expect(other.drag).toBeCloseTo(one.drag, 9)
      }),
      { numRuns: runs, seed: 40_280 },
    )
  })
})
