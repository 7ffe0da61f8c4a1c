import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from './refusals.js'

const { wing, u } = preloaded

describe('wing.manoeuvreLoadFactor(options)', () => {
  it('reaches 3.8 where 2.1 + 24000/(W + 10000) does, at 4118 lb', () => {
    const at = (pounds: number) => wing.manoeuvreLoadFactor({ mass: pounds * u.lb }).positive
    expect(at(4117)).toBe(3.8)
    expect(at(4118)).toBeLessThan(3.8)
    expectClose(at(4118), 3.8, 1e-4)
  })

  it('gives the other categories their own factors', () => {
    // 14 CFR 23.337 before 2017 (from memory).
    expect(wing.manoeuvreLoadFactor({ mass: 1000, category: 'utility' })).toEqual({
      positive: 4.4,
      negative: -0.4 * 4.4,
    })
    expect(wing.manoeuvreLoadFactor({ mass: 1000, category: 'acrobatic' })).toEqual({ positive: 6, negative: -3 })
  })

  it('advises above 5670 kg', () => {
    expect(listenWhile(() => wing.manoeuvreLoadFactor({ mass: 6000 })).advisories).toHaveLength(1)
  })

  itRefuses(wing.manoeuvreLoadFactor, { mass: 1000 }, [
    ['no mass', { mass: 0 }],
    ['an unknown category', { category: 'aerobatic' }],
  ])
})

describe('wing.gustLoadFactor(options)', () => {
  const sound = { wingLoading: 1400, meanChord: 1.18, liftCurveSlope: 5, speed: 60 }

  it('grows with speed and gust alike, up and down by the same', () => {
    const one = wing.gustLoadFactor(sound)
    const faster = wing.gustLoadFactor({ ...sound, speed: 120 })
    const harder = wing.gustLoadFactor({ ...sound, gustSpeed: 30.48 })
    expectClose(faster.positive - 1, 2 * (one.positive - 1), 1e-14)
    expectClose(harder.positive, faster.positive, 1e-14)
    expectClose(one.positive + one.negative, 2, 1e-15)
  })

  it('never passes the sharp-edged gust', () => {
    const { positive, alleviation } = wing.gustLoadFactor({ ...sound, wingLoading: 1e5 })
    expect(alleviation).toBeLessThan(0.88)
    expect(positive - 1).toBeLessThan((1.225 * 15.24 * 60 * 5) / 2e5)
  })

  it('advises below a mass ratio of 5', () => {
    expect(listenWhile(() => wing.gustLoadFactor({ ...sound, wingLoading: 100 })).advisories).toHaveLength(1)
  })

  itRefuses(wing.gustLoadFactor, sound, [
    ['no wing loading', { wingLoading: 0 }],
    ['no chord', { meanChord: 0 }],
    ['no lift slope', { liftCurveSlope: 0 }],
    ['no speed', { speed: -1 }],
    ['no gust', { gustSpeed: 0 }],
    ['a hurricane', { gustSpeed: 50 }],
    ['no air', { density: 0 }],
    ['a chord beyond numbers', { meanChord: 1e-310 }],
  ])
})

describe('wing.designSpeeds(options)', () => {
  const sound = { wingLoading: 1400, maximumLift: 1.5, loadFactor: 3.8 }

  it('manoeuvres at the stall speed of the load factor', () => {
    const { stall, manoeuvre } = wing.designSpeeds(sound)
    const heavy = wing.stallSpeed({ weight: 3.8 * 1400, density: 1.225, wingArea: 1, maximumLift: 1.5 })
    expectClose(manoeuvre, heavy, 1e-14)
    expectClose(stall, wing.stallSpeed({ weight: 1400, density: 1.225, wingArea: 1, maximumLift: 1.5 }), 1e-14)
  })

  it('gives 210.14 and 291.05 knots at 44 pounds per square foot', () => {
    // 14 CFR 23.335 as a course notebook has it (read), its slip of knots for feet per second put right.
    const { cruise, dive } = wing.designSpeeds({ ...sound, wingLoading: 44 * 47.880259 })
    // Half a unit of the last printed digit.
    expectClose(cruise / u.kt, 210.14, 0.005 / 210)
    expectClose(dive / u.kt, 291.05, 0.005 / 291)
  })

  it('holds the factors below 20 and above 100 pounds per square foot, and says so above', () => {
    const factor = (psf: number) =>
      wing.designSpeeds({ ...sound, wingLoading: psf * 47.880259 }).cruise / u.kt / Math.sqrt(psf)
    expectClose(factor(10), 33, 1e-12)
    expectClose(factor(150), 28.6, 1e-12)
    expect(listenWhile(() => factor(150)).advisories).toHaveLength(1)
    expect(listenWhile(() => factor(10)).advisories).toHaveLength(0)
  })

  itRefuses(wing.designSpeeds, sound, [
    ['no wing loading', { wingLoading: 0 }],
    ['no maximum lift', { maximumLift: 0 }],
    ['a load factor below 1', { loadFactor: 0.9 }],
    ['a wing loading beyond numbers', { maximumLift: 1e-310 }],
  ])
})
