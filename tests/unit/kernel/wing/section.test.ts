import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from './refusals.js'

const { wing, u } = preloaded

describe('wing.sectionLiftSlope(options)', () => {
  it('is 2 pi per radian for a thin section at low speed', () => {
    expect(wing.sectionLiftSlope()).toBe(2 * Math.PI)
  })

  it('grows with Mach number by the Prandtl-Glauert factor', () => {
    expectClose(wing.sectionLiftSlope({ mach: 0.6 }) / wing.sectionLiftSlope(), 1.25, 1e-14)
  })

  it('advises above Mach 0.6 and below a Reynolds number of 500,000', () => {
    const heard = (options: object) =>
      listenWhile(() => wing.sectionLiftSlope(options)).advisories.map((one) => one.code)
    expect(heard({ mach: 0.6, reynolds: 5e5 })).toEqual([])
    expect(heard({ mach: 0.7, reynolds: 2e5 })).toEqual(['SECTION_MACH', 'SECTION_REYNOLDS'])
  })

  itRefuses(wing.sectionLiftSlope, {}, [
    ['an efficiency no section has', { efficiency: 0.1 }],
    ['a Mach number near 1', { mach: 0.95 }],
    ['no Reynolds number', { reynolds: 0 }],
  ])
})

describe('wing.thinAerofoil(options)', () => {
  it('agrees with the same integrals by the midpoint rule', () => {
    // Independent: the slope of the 2412 mean line written out, 20,000 points.
    const slope = (x: number) => (x < 0.4 ? (0.04 / 0.16) * (0.4 - x) : (0.04 / 0.36) * (0.4 - x))
    const points = 20_000
    let [lift, moment] = [0, 0]
    for (let point = 0; point < points; point += 1) {
      const t = ((point + 0.5) / points) * Math.PI
      const z = slope((1 - Math.cos(t)) / 2)
      lift -= z * (Math.cos(t) - 1)
      moment += 0.5 * z * (Math.cos(2 * t) - Math.cos(t))
    }
    const section = wing.thinAerofoil({ section: '2412' })
    expectClose(section.zeroLiftAngle, lift / points, 1e-7)
    expectClose(section.quarterChordMoment, (moment / points) * Math.PI, 1e-7)
  })

  it('gives five-digit sections their design lift of 0.15 times the first digit', () => {
    // The definition of the series: NACA Report 537.
    expectClose(wing.thinAerofoil({ section: '23012' }).idealLift, 0.3, 2e-3)
    expectClose(wing.thinAerofoil({ section: '43012' }).idealLift, 0.6, 2e-3)
  })

  it('gives reflexed sections almost no moment, which is what they are for', () => {
    for (const digits of ['22112', '23112', '24112', '25112'])
      expect(Math.abs(wing.thinAerofoil({ section: digits }).quarterChordMoment)).toBeLessThan(0.0025)
  })

  it('knows that a symmetric section has neither angle nor moment, whatever its thickness', () => {
    expect(wing.thinAerofoil({ section: '0012' })).toMatchObject({
      zeroLiftAngle: 0,
      quarterChordMoment: 0,
      idealLift: 0,
    })
    expect(wing.thinAerofoil({ section: '2415' })).toEqual(wing.thinAerofoil({ section: '2412' }))
  })

  itRefuses(wing.thinAerofoil, { section: '2412' }, [
    ['a number for text', { section: 2412 }],
    ['six digits', { section: '652415' }],
    ['a mean line without a place', { section: '2012' }],
    ['a five-digit mean line that does not exist', { section: '23912' }],
  ])
})

describe('wing.plainFlap(options)', () => {
  it('is the whole section at a chord share of 1 and nothing at 0', () => {
    expectClose(wing.plainFlap({ chordShare: 1 }).effectiveness, 1, 1e-15)
    expect(Math.abs(wing.plainFlap({ chordShare: 0 }).effectiveness)).toBeLessThan(1e-15)
  })

  it('pitches the nose down when it goes down', () => {
    expect(wing.plainFlap({ chordShare: 0.25 }).momentPerDeflection).toBeLessThan(0)
  })

  it('advises beyond 15 degrees, up or down', () => {
    const heard = (angle: number) =>
      listenWhile(() => wing.plainFlap({ chordShare: 0.3, deflection: angle * u.deg })).advisories.length
    expect([-16, -14, 14, 16].map(heard)).toEqual([1, 0, 0, 1])
  })

  itRefuses(wing.plainFlap, { chordShare: 0.3 }, [
    ['a chord share above 1', { chordShare: 1.1 }],
    ['a deflection beyond 1.2 rad', { deflection: 1.3 }],
  ])
})
