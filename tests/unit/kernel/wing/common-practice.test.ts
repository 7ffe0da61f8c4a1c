/** Directions that practitioners hold to be true: common practice, no source. */
import { expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'

const { air, drag, rotor, u, wing } = preloaded

it('rotor.hover(options): fewer, larger rotors in a row as wide as the span take less power (common practice, no source)', () => {
  // One row in a span b has A = pi b^2/(4 n), so ideal power goes with sqrt(n).
  const span = 12
  const power = (count: number) =>
    rotor.hover({
      thrust: 16_000,
      diskArea: (Math.PI * span * span) / (4 * count),
      density: air.standard(0).density,
      figureOfMerit: 0.7,
    }).power
  expect(power(4)).toBeLessThan(power(6))
  expect(power(6)).toBeLessThan(power(8))
  expectClose(power(8) / power(4), Math.SQRT2, 1e-14)
})

it('wing.stallSpeed(options): freed of landing speeds the wing may be smaller and more slender (common practice, no source)', () => {
  // A runway aircraft lands at a stall speed of 61 knots at most; one that lands on rotors converts at 1.2 stall speeds, here 50 m/s.
  const mass = 1600
  const areaFor = (stall: number, maximumLift: number) => (mass * u.g0) / (0.5 * 1.225 * stall * stall * maximumLift)
  const runway = areaFor(61 * u.kt, wing.maximumLift({ sectionMaximum: 1.6 }).clean)
  const converting = areaFor(50 / 1.2, wing.maximumLift({ sectionMaximum: 1.6 }).clean)
  expect(converting).toBeLessThan(runway)
  expectClose(
    wing.stallSpeed({ weight: mass * u.g0, density: 1.225, wingArea: converting, maximumLift: 1.44 }),
    50 / 1.2,
    1e-12,
  )
  // At the same span, then, the smaller wing is the more slender one and flies fast with less drag.
  const span = 12
  const cruise = (area: number) =>
    drag.powerRequired({
      polar: drag.polar({
        zeroLiftDrag: (0.25 + 0.009 * area) / area,
        aspectRatio: (span * span) / area,
        spanEfficiency: 0.8,
      }),
      weight: mass * u.g0,
      wingArea: area,
      density: 1.1,
      speed: 62,
    }).power
  expect((span * span) / converting).toBeGreaterThan((span * span) / runway)
  expect(cruise(converting)).toBeLessThan(cruise(runway))
})
