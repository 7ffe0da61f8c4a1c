import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from './refusals.js'

const { wing } = preloaded
const section = 2 * Math.PI

describe('wing.liftCurveSlope(options)', () => {
  it('falls to pi AR/2 for a slender wing and rises to the section for a long one', () => {
    expectClose(wing.liftCurveSlope({ aspectRatio: 1e-4 }), (Math.PI * 1e-4) / 2, 1e-4)
    expectClose(wing.liftCurveSlope({ aspectRatio: 1e6 }), section, 1e-5)
    expectClose(wing.liftCurveSlope({ aspectRatio: 1e6, method: 'lifting line' }), section, 1e-5)
  })

  it('of the lifting line advises below an aspect ratio of 4', () => {
    const heard = listenWhile(() => wing.liftCurveSlope({ aspectRatio: 3, method: 'lifting line' }))
    expect(heard.advisories).toMatchObject([{ code: 'LIFTING_LINE_ASPECT_RATIO', value: 3, range: [4, null] }])
    expect(listenWhile(() => wing.liftCurveSlope({ aspectRatio: 3 })).advisories).toEqual([])
    expect(listenWhile(() => wing.liftCurveSlope({ aspectRatio: 8, mach: 0.8 })).advisories).toHaveLength(1)
  })

  itRefuses(wing.liftCurveSlope, { aspectRatio: 8 }, [
    ['no aspect ratio', { aspectRatio: 0 }],
    ['an unknown method', { method: 'lifting lime' }],
    ['a section slope no section has', { sectionLiftSlope: 0.1 }],
    ['Mach 1', { mach: 1 }],
    ['a sweep along the stream', { sweepHalfChord: 1.5 }],
    ['a sweep for the lifting line', { method: 'lifting line', sweepHalfChord: 0.1 }],
    ['an efficiency for the lifting surface', { slopeEfficiency: 0.9 }],
    ['an efficiency above 1', { method: 'lifting line', slopeEfficiency: 1.1 }],
    ['a size beyond numbers', { aspectRatio: 1e308 }],
  ])

  it('says which method was meant', () => {
    const wrong = { aspectRatio: 8, method: 'lifting lime' as 'lifting line' }
    expect(() => wing.liftCurveSlope(wrong)).toThrow(/did you mean "lifting line"/)
  })
})

describe('wing.liftingLine(options)', () => {
  const sound = { aspectRatio: 8, taper: 0.5, sectionLiftSlope: section }

  it('converges: 100 terms are within 1e-5 in slope and 0.1 % in delta of 200', () => {
    const [hundred, two] = [100, 200].map((terms) => wing.liftingLine({ ...sound, terms }))
    expectClose(hundred?.liftCurveSlope ?? 0, two?.liftCurveSlope ?? 1, 1e-5)
    expectClose(hundred?.delta ?? 0, two?.delta ?? 1, 1e-3)
  })

  it('solves the four-term hand solution of a rectangular wing of aspect ratio 6', () => {
    // Independent script, collocation at 11.25, 33.75, 56.25 and 78.75 degrees: delta 0.0501.
    const hand = wing.liftingLine({ aspectRatio: 6, taper: 1, sectionLiftSlope: section, terms: 4 })
    expectClose(hand.delta, 0.0501, 2e-3)
  })

  it('takes no drag of twist and no zero-lift angle from a plain wing', () => {
    const plain = wing.liftingLine(sound)
    expect([plain.twistDrag, plain.twistDragPerLift].every((one) => Math.abs(one) === 0)).toBe(true)
    expect(Math.abs(plain.zeroLiftAngle)).toBe(0)
    expect(plain.inducedDrag).toBeUndefined()
    expectClose(plain.spanEfficiency, 1 / (1 + plain.delta), 1e-15)
  })

  it('says that washout asks for more angle at the root and helps a rectangular wing at one lift', () => {
    const washed = wing.liftingLine({
      aspectRatio: 8,
      taper: 1,
      sectionLiftSlope: section,
      twist: -0.05,
      liftCoefficient: 0.6,
    })
    const plain = wing.liftingLine({ aspectRatio: 8, taper: 1, sectionLiftSlope: section, liftCoefficient: 0.6 })
    expect(washed.zeroLiftAngle).toBeGreaterThan(0)
    expect(washed.spanEfficiency).toBeGreaterThan(plain.spanEfficiency)
    expect(washed.spanEfficiency).toBeLessThan(1)
    expect(washed.liftCurveSlope).toBe(plain.liftCurveSlope)
    expectClose(plain.inducedDrag ?? 0, (0.36 * (1 + plain.delta)) / (Math.PI * 8), 1e-14)
  })

  it('advises below an aspect ratio of 4', () => {
    const heard = listenWhile(() => wing.liftingLine({ ...sound, aspectRatio: 3 }))
    expect(heard.advisories).toMatchObject([{ code: 'LIFTING_LINE_ASPECT_RATIO' }])
  })

  itRefuses(wing.liftingLine, sound, [
    ['an aspect ratio of 0', { aspectRatio: 0 }],
    ['a negative taper', { taper: -1 }],
    ['a section slope of a plate seen from afar', { sectionLiftSlope: 100 }],
    ['a twist beyond 0.5 rad', { twist: 1 }],
    ['no lift where efficiency is asked for', { liftCoefficient: 0 }],
    ['half a term', { terms: 0.5 }],
    ['a thousand terms', { terms: 1000 }],
  ])
})
