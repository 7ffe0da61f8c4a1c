/**
 * Published cases of wing and drag. Numbers that somebody else printed are the evidence; formulas worked out again only check
 * arithmetic. Known misses keep their tolerance and are listed with the error they have.
 */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../kernel/library/index.js'
import { methods } from './airframe-methods.js'
import { readCases } from './cases.js'
import { checkCases, type KnownMisses } from './check-cases.js'

const { drag, u, wing } = preloaded

const knownMisses: KnownMisses = {
  anderson_apd_2_5_CL: {
    error: -0.004636,
    why: 'the book rounds its slope of 4.51 per radian to 0.079 per degree, which is 4.526; the slope itself is met',
  },
  naca0012_cd0_160000: {
    error: 0.19636,
    why: 'a plate that is laminar over half of it has too much friction where the section is laminar nearly to its end',
  },
  naca0012_cd0_360000: { error: 0.2231, why: 'as at 160,000' },
  naca0012_cd0_700000: { error: 0.19867, why: 'as at 160,000' },
}

const cases = readCases('cases-airframe.json')

checkCases({ subject: 'wing and drag', cases, methods, knownMisses })

describe('the worked drag build-up of a course notebook (read; it cites Raymer 12.5)', () => {
  const foot = u.ft
  const lengths = { fuselage: 31.6, wing: 4.3, tail: 2.4, fin: 3.7 }
  const wetted = { fuselage: 380, wing: 224, tail: 60, fin: 39 }

  it('has the zero-lift drag of 0.018733 that its parts add up to', () => {
    const built = drag.buildUp(
      [
        {
          name: 'fuselage',
          wettedArea: wetted.fuselage * u.ft2,
          length: lengths.fuselage * foot,
          laminarShare: 0.1,
          formFactor: drag.bodyFormFactor({ fineness: 5.5 }),
        },
        {
          name: 'wing',
          wettedArea: wetted.wing * u.ft2,
          length: lengths.wing * foot,
          formFactor: drag.wingFormFactor({ thickness: 0.18 }),
        },
        ...(['tail', 'fin'] as const).map((name) => ({
          name,
          wettedArea: wetted[name] * u.ft2,
          length: lengths[name] * foot,
          formFactor: drag.wingFormFactor({ thickness: 0.12 }),
          interference: 1.04,
        })),
      ],
      { wingArea: 134 * u.ft2, speed: 102.89, density: 0.96287, dynamicViscosity: 1.73188e-5 },
    )
    expect(Math.abs((built.zeroLiftDrag ?? 0) / 0.018733 - 1)).toBeLessThan(1e-4)
    // Friction of the fuselage as printed.
    expect(Math.abs((built.parts[0]?.skinFriction ?? 0) / 0.002103 - 1)).toBeLessThan(3e-4)
  })
})

describe('lifting line against vortex lattice', () => {
  it('lies 7.5 % above at aspect ratio 6 and 4.3 % at 10, rectangular: the gap between the methods', () => {
    const gap = (aspectRatio: number) => {
      const surface = { semiSpan: aspectRatio / 2, rootChord: 1, tipChord: 1, sweepLeadingEdge: 0 }
      const lattice = wing.lattice({ surfaces: [surface], spanwise: 40, chordwise: 8, angleOfAttack: 0.05 })
      const line = wing.liftingLine({ aspectRatio, taper: 1, sectionLiftSlope: 2 * Math.PI })
      return line.liftCurveSlope / lattice.liftCurveSlope - 1
    }
    expect(gap(6)).toBeCloseTo(0.075, 3)
    expect(gap(10)).toBeCloseTo(0.043, 3)
  })
})

describe('a uniform lattice without inset', () => {
  it('converges from above: 2.7838 at 20 and 2.7648 at 40 strips on the Warren-12 planform', () => {
    // Independent script.
    const warren = { semiSpan: Math.SQRT2, rootChord: 1.5, tipChord: 0.5, sweepLeadingEdge: 53.5431549 * u.deg }
    const slope = (spanwise: number) =>
      wing.lattice({ surfaces: [warren], spanwise, chordwise: 8, angleOfAttack: 0.05, tipInset: 0 }).liftCurveSlope
    expect(slope(20)).toBeCloseTo(2.7838, 4)
    expect(slope(40)).toBeCloseTo(2.7648, 4)
  })
})
