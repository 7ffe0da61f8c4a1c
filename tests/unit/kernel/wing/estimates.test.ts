import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from './refusals.js'

const { wing, u } = preloaded

describe('wing.spanEfficiencyEstimates(options)', () => {
  it('lies within about 10 % between the three methods at aspect ratio 10', () => {
    const estimates = wing.spanEfficiencyEstimates({ aspectRatio: 10, taper: 0.5 })
    expect(estimates.spread).toBeGreaterThan(0.03)
    expect(estimates.spread).toBeLessThan(0.12)
    expectClose(estimates.mean, (estimates.raymer + estimates.howe + estimates.nitaScholz) / 3, 1e-15)
    expect(estimates.low).toBe(Math.min(estimates.raymer, estimates.howe, estimates.nitaScholz))
    expect(estimates.high).toBe(Math.max(estimates.raymer, estimates.howe, estimates.nitaScholz))
  })

  it('goes over from straight to swept without a step, and does not mind the direction of the sweep', () => {
    const at = (sweep: number) => wing.spanEfficiencyEstimates({ aspectRatio: 8, sweepQuarterChord: sweep })
    expectClose(at(30 * u.deg - 1e-9).raymer, at(30 * u.deg + 1e-9).raymer, 1e-7)
    expectClose(at(1e-9).raymer, at(0).raymer, 1e-7)
    expect(at(-0.3)).toEqual(at(0.3))
  })

  it('holds the swept estimate at 0.2 where it would fall below', () => {
    expect(wing.spanEfficiencyEstimates({ aspectRatio: 25, sweepQuarterChord: 0.7 }).raymer).toBe(0.2)
  })

  it('advises above an aspect ratio of 10', () => {
    const heard = (aspectRatio: number) =>
      listenWhile(() => wing.spanEfficiencyEstimates({ aspectRatio })).advisories.length
    expect([10, 12].map(heard)).toEqual([0, 1])
  })

  itRefuses(wing.spanEfficiencyEstimates, { aspectRatio: 8 }, [
    ['an aspect ratio of 40', { aspectRatio: 40 }],
    ['a taper above 1', { taper: 1.1 }],
    ['a plate', { thickness: 0.01 }],
    ['a sweep beyond 0.8 rad', { sweepQuarterChord: 0.9 }],
    ['Mach 1', { mach: 1 }],
    ['a body as wide as the span', { bodyWidthShare: 1 }],
    ['a negative engine', { wingEngines: -1 }],
    ['a hundred engines', { wingEngines: 100 }],
    ['a profile factor of 2', { profileFactor: 2 }],
  ])
})

describe('wing.maximumLift(options)', () => {
  it('keeps nine tenths of a straight section and loses the cosine of the sweep', () => {
    expectClose(wing.maximumLift({ sectionMaximum: 1.6 }).clean, 1.44, 1e-15)
    expectClose(
      wing.maximumLift({ sectionMaximum: 1.6, sweepQuarterChord: Math.PI / 6 }).clean,
      1.44 * Math.cos(Math.PI / 6),
      1e-15,
    )
  })

  it('adds flaps in the order plain, slotted, Fowler, double-slotted', () => {
    const of = (kind: 'plain' | 'split' | 'slotted' | 'Fowler' | 'double-slotted') =>
      wing.maximumLift({ sectionMaximum: 1.6, flap: { kind, flappedShare: 0.6, chordGrowth: 1.2 } }).flapIncrement
    // Raymer, table 12.2 (from memory): 0.9, 0.9, 1.3, 1.3 c'/c, 1.6 c'/c, each times 0.9 and the flapped share.
    expectClose(of('plain'), 0.9 * 0.9 * 0.6, 1e-15)
    expectClose(of('split'), of('plain'), 1e-15)
    expectClose(of('slotted'), 0.9 * 1.3 * 0.6, 1e-15)
    expectClose(of('Fowler'), 1.2 * of('slotted'), 1e-15)
    expectClose(of('double-slotted'), 0.9 * 1.6 * 1.2 * 0.6, 1e-15)
  })

  it('advises below a Reynolds number of a million and beyond 0.6 rad of sweep', () => {
    const heard = listenWhile(() => wing.maximumLift({ sectionMaximum: 1.4, reynolds: 4e5, sweepQuarterChord: 0.7 }))
    expect(heard.advisories.map((one) => one.code)).toEqual(['MAXIMUM_LIFT_SWEEP', 'MAXIMUM_LIFT_REYNOLDS'])
  })

  const flap = { kind: 'plain', flappedShare: 0.5 }
  itRefuses(wing.maximumLift, { sectionMaximum: 1.6 }, [
    ['a section maximum of 0', { sectionMaximum: 0 }],
    ['a sweep beyond 1 rad', { sweepQuarterChord: 1.1 }],
    ['no Reynolds number', { reynolds: -1 }],
    ['a flap that is no record', { flap: 'plain' }],
    ['an unknown field of the flap', { flap: { ...flap, share: 1 } }],
    ['an unknown kind of flap', { flap: { ...flap, kind: 'fouler' } }],
    ['a flapped share above 1', { flap: { ...flap, flappedShare: 1.1 } }],
    ['a hinge along the stream', { flap: { ...flap, sweepHinge: 1.5 } }],
    ['a chord that doubles', { flap: { ...flap, chordGrowth: 2 } }],
  ])
})
