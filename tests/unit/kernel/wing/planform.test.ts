import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from './refusals.js'

const { wing, u } = preloaded

describe('wing.planform(options)', () => {
  it('has its mean aerodynamic chord where integration over the span puts it', () => {
    const main = wing.planform({ area: 14, aspectRatio: 10, taper: 0.45, sweep: 12 * u.deg })
    const strips = 20_000
    let [area, chordSquared, chordAcross, quarterPoint] = [0, 0, 0, 0]
    for (let strip = 0; strip < strips; strip += 1) {
      const y = ((strip + 0.5) / strips) * main.semiSpan
      const chord = main.rootChord + ((main.tipChord - main.rootChord) * y) / main.semiSpan
      const width = main.span / strips
      area += chord * width
      chordSquared += chord * chord * width
      chordAcross += chord * y * width
      quarterPoint += chord * (y * Math.tan(main.sweepLeadingEdge) + chord / 4) * width
    }
    expectClose(area, main.area, 1e-9)
    expectClose(chordSquared / area, main.meanAerodynamicChord, 1e-8)
    expectClose(chordAcross / area, main.meanAerodynamicChordAcross, 1e-8)
    expectClose(quarterPoint / area, main.quarterChordBehind, 1e-8)
  })

  it('is the same wing from any two of area, span and aspect ratio', () => {
    const one = wing.planform({ area: 14, span: 12, taper: 0.5 })
    const other = wing.planform({ span: 12, aspectRatio: one.aspectRatio, taper: 0.5 })
    const third = wing.planform({ area: 14, aspectRatio: one.aspectRatio, taper: 0.5 })
    expectClose(other.meanAerodynamicChord, one.meanAerodynamicChord, 1e-14)
    expectClose(third.tipChord, one.tipChord, 1e-14)
  })

  it('gives the published swept wing its leading edge: 53.543 degrees where the half chord has 45', () => {
    // Geometry of the Warren-12 planform (read second-hand).
    const swept = wing.planform({
      span: 2 * Math.SQRT2,
      area: 2 * Math.SQRT2,
      taper: 1 / 3,
      sweep: 45 * u.deg,
      sweepChordShare: 0.5,
    })
    expectClose(swept.sweepLeadingEdge / u.deg, 53.5431549, 1e-8)
    expectClose(swept.rootChord, 1.5, 1e-14)
    expectClose(swept.sweepHalfChord, Math.PI / 4, 1e-14)
  })

  it('advises on a taper outside 0.2 to 1', () => {
    const heard = (taper: number) => listenWhile(() => wing.planform({ area: 10, span: 10, taper })).advisories.length
    expect([0.1, 0.2, 1, 1.1].map(heard)).toEqual([1, 0, 0, 1])
  })

  itRefuses(wing.planform, { area: 10, span: 10 }, [
    ['three sizes', { aspectRatio: 10 }],
    ['one size', { area: undefined }],
    ['no area', { area: 0 }],
    ['no span', { span: -1 }],
    ['no aspect ratio', { span: undefined, aspectRatio: 0 }],
    ['a negative taper', { taper: -0.1 }],
    ['a sweep along the stream', { sweep: 1.5 }],
    ['a chord share beyond the chord', { sweepChordShare: 1.1 }],
    ['sizes beyond numbers', { span: 1e-200 }],
    ['spans beyond numbers', { span: undefined, area: 1e300, aspectRatio: 1e300 }],
    ['areas beyond numbers', { area: undefined, span: 1e-200, aspectRatio: 1e300 }],
  ])
})

describe('wing.sweepAt(options)', () => {
  it('goes back to where it came from', () => {
    const wingShape = { aspectRatio: 7, taper: 0.3 }
    const half = wing.sweepAt({ ...wingShape, sweep: 0.4, from: 0, to: 0.5 })
    expectClose(wing.sweepAt({ ...wingShape, sweep: half, from: 0.5, to: 0 }), 0.4, 1e-14)
  })

  it('is the same at every chord share without taper', () => {
    expectClose(wing.sweepAt({ aspectRatio: 7, taper: 1, sweep: 0.3, from: 0, to: 1 }), 0.3, 1e-15)
  })

  itRefuses(wing.sweepAt, { aspectRatio: 8, taper: 0.5, sweep: 0.1, from: 0, to: 1 }, [
    ['no aspect ratio', { aspectRatio: 0 }],
    ['a size beyond numbers', { aspectRatio: Number.MIN_VALUE }],
    ['a taper above 2', { taper: 3 }],
    ['a sweep beyond 1.4 rad', { sweep: -1.5 }],
    ['a share below 0', { from: -0.1 }],
    ['a share that is no number', { to: Number.NaN }],
  ])
})
