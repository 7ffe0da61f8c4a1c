import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from './refusals.js'

const { wing, u } = preloaded

describe('wing.tailVolume(options)', () => {
  const sound = { tailArea: 2.5, tailArm: 5, wingArea: 14, referenceLength: 1.2 }

  it('advises far from any aircraft', () => {
    expect(listenWhile(() => wing.tailVolume({ ...sound, tailArea: 20 })).advisories).toHaveLength(1)
    expect(listenWhile(() => wing.tailVolume(sound)).advisories).toHaveLength(0)
  })

  itRefuses(wing.tailVolume, sound, [
    ['no tail', { tailArea: 0 }],
    ['no arm', { tailArm: 0 }],
    ['no wing', { wingArea: -1 }],
    ['no chord', { referenceLength: 0 }],
    ['a size beyond numbers', { tailArea: 1e200, tailArm: 1e200 }],
  ])
})

describe('wing.tailSizing(options)', () => {
  const sound = { kind: 'general aviation, one engine', wingArea: 14, span: 11.8, chord: 1.24, tailArm: 5 } as const

  it('gives back the volumes it was asked for', () => {
    const tail = wing.tailSizing(sound)
    expectClose(
      wing.tailVolume({ tailArea: tail.horizontalArea, tailArm: 5, wingArea: 14, referenceLength: 1.24 }),
      0.7,
      1e-14,
    )
    expectClose(
      wing.tailVolume({ tailArea: tail.verticalArea, tailArm: 5, wingArea: 14, referenceLength: 11.8 }),
      0.04,
      1e-14,
    )
  })

  it('lets volumes of one’s own go before those of the kind', () => {
    expect(wing.tailSizing({ ...sound, horizontalVolume: 0.9 })).toMatchObject({
      horizontalVolume: 0.9,
      verticalVolume: 0.04,
    })
  })

  itRefuses(wing.tailSizing, sound as Parameters<typeof wing.tailSizing>[0], [
    ['neither kind nor volumes', { kind: undefined, horizontalVolume: 0.5 }],
    ['an unknown kind', { kind: 'flying boat' }],
    ['no wing', { wingArea: 0 }],
    ['no span', { span: 0 }],
    ['no chord', { chord: 0 }],
    ['no arm', { tailArm: 0 }],
    ['a volume of 0', { horizontalVolume: 0 }],
    ['a volume above 3', { verticalVolume: 4 }],
    ['a size beyond numbers', { wingArea: 1e200, span: 1e200 }],
  ])
})

describe('wing.downwash(options)', () => {
  it('turns the stream at the tail by twice what the wing feels', () => {
    const { angle } = wing.downwash({ liftCurveSlope: 5, aspectRatio: 8, liftCoefficient: 0.4 })
    expectClose(angle, (2 * 0.4) / (Math.PI * 8), 1e-15)
  })

  it('advises where a tail would hardly stabilise', () => {
    expect(listenWhile(() => wing.downwash({ liftCurveSlope: 4, aspectRatio: 3 })).advisories).toHaveLength(1)
  })

  itRefuses(wing.downwash, { liftCurveSlope: 5, aspectRatio: 8 }, [
    ['no slope', { liftCurveSlope: 0 }],
    ['no aspect ratio', { aspectRatio: 0 }],
    ['a lift that is no number', { liftCoefficient: Number.NaN }],
    ['an efficiency above 1', { spanEfficiency: 1.2 }],
    ['a size beyond numbers', { aspectRatio: 1e-310 }],
  ])
})

describe('wing.neutralPoint(options)', () => {
  const sound = {
    liftCurveSlope: 5,
    aerodynamicCentre: 0.25,
    tailVolume: 0.7,
    tailLiftCurveSlope: 4,
    downwashSlope: 0.35,
  }

  it('is the aerodynamic centre without a tail, and moves forward with a body', () => {
    expect(wing.neutralPoint({ ...sound, tailVolume: 0 })).toBe(0.25)
    expect(wing.neutralPoint({ ...sound, bodyPitchSlope: 0.5 })).toBeLessThan(wing.neutralPoint(sound))
  })

  it('agrees with the lattice of wing and tail, given their slopes and the downwash that the lattice shows', () => {
    // Independent of the formula: both surfaces solved together.
    const main = { semiSpan: 5, rootChord: 1, tipChord: 1, sweepLeadingEdge: 0 }
    const tail = { semiSpan: 1.5, rootChord: 0.6, tipChord: 0.6, sweepLeadingEdge: 0, x: 5, z: 0.6 }
    const lattice = (surfaces: Parameters<typeof wing.lattice>[0]['surfaces'], more = {}) =>
      wing.lattice({ surfaces, spanwise: 20, chordwise: 3, angleOfAttack: 0.05, ...more })
    const both = lattice([main, tail])
    const alone = lattice([main])
    const free = lattice([{ ...tail, x: 0, z: 0 }])
    const share = (both.surfaces[1]?.liftCurveSlope ?? 0) / ((free.liftCurveSlope * 1.8) / 10)
    const point = wing.neutralPoint({
      liftCurveSlope: both.surfaces[0]?.liftCurveSlope ?? 0,
      aerodynamicCentre: alone.aerodynamicCentre / u.m,
      tailVolume: (0.18 * (5 + free.aerodynamicCentre - alone.aerodynamicCentre)) / u.m,
      tailLiftCurveSlope: free.liftCurveSlope,
      downwashSlope: 1 - share,
      tailAreaShare: 0.18,
    })
    expectClose(point, both.aerodynamicCentre, 0.02)
  })

  itRefuses(wing.neutralPoint, sound, [
    ['no slope', { liftCurveSlope: 0 }],
    ['no centre', { aerodynamicCentre: Number.NaN }],
    ['a negative volume', { tailVolume: -1 }],
    ['a tail without slope', { tailLiftCurveSlope: 0 }],
    ['a downwash above 1', { downwashSlope: 1.1 }],
    ['a pressure ratio of 3', { tailPressureRatio: 3 }],
    ['a tail of three wings', { tailAreaShare: 3 }],
    ['a body that is no number', { bodyPitchSlope: Number.NaN }],
    ['a size beyond numbers', { tailVolume: 1e308, liftCurveSlope: 1e-3, tailLiftCurveSlope: 10 }],
  ])
})

describe('wing.staticMargin(options)', () => {
  it('is the same by the neutral point and by the slopes', () => {
    const bySlopes = wing.staticMargin({ centreOfGravity: 0.3, pitchCurveSlope: -0.5, liftCurveSlope: 5 })
    const byPoint = wing.staticMargin({ centreOfGravity: 0.3, neutralPoint: bySlopes.neutralPoint })
    expectClose(byPoint.margin, 0.1, 1e-14)
  })

  it('advises outside 0.05 to 0.3', () => {
    const heard = (neutralPoint: number) =>
      listenWhile(() => wing.staticMargin({ centreOfGravity: 0.3, neutralPoint })).advisories.length
    expect([0.2, 0.4, 0.7].map(heard)).toEqual([1, 0, 1])
  })

  itRefuses(wing.staticMargin, { centreOfGravity: 0.3, neutralPoint: 0.4 } as Parameters<typeof wing.staticMargin>[0], [
    ['no centre of gravity', { centreOfGravity: undefined }],
    ['the neutral point twice', { pitchCurveSlope: -0.5, liftCurveSlope: 5 }],
    ['nothing to go by', { neutralPoint: undefined }],
    ['one slope only', { neutralPoint: undefined, liftCurveSlope: 5 }],
    ['a neutral point that is no number', { neutralPoint: Number.NaN }],
    ['a pitch slope that is no number', { neutralPoint: undefined, pitchCurveSlope: Number.NaN, liftCurveSlope: 5 }],
    ['no lift slope', { neutralPoint: undefined, pitchCurveSlope: -1, liftCurveSlope: 0 }],
    ['a size beyond numbers', { neutralPoint: undefined, pitchCurveSlope: -1, liftCurveSlope: 1e-310 }],
  ])
})

describe('wing.trim(options)', () => {
  const sound = {
    liftCurveSlope: 4.58,
    zeroLiftMoment: -0.032,
    gravityBehindCentre: 0.11,
    tailVolume: 0.34,
    tailLiftCurveSlope: 5.73,
    tailIncidence: 2.7 * u.deg,
    downwashSlope: 0.35,
  }

  it('leaves no moment at its angle: wing, centre and tail add up to nothing', () => {
    const trim = wing.trim(sound)
    const moment = trim.liftCoefficient * 0.11 - 0.032 - 0.34 * trim.tailLiftCoefficient
    expect(Math.abs(moment)).toBeLessThan(1e-14)
  })

  it('has the slope that the neutral point says', () => {
    const trim = wing.trim(sound)
    const point = wing.neutralPoint({ ...pick(sound), aerodynamicCentre: 0 })
    expectClose(trim.momentSlope, -4.58 * (point - 0.11), 1e-13)
  })

  it('advises on an unstable aircraft and on an angle beyond attached flow', () => {
    const codes = (wrong: object) =>
      listenWhile(() => wing.trim({ ...sound, ...wrong })).advisories.map((one) => one.code)
    expect(codes({})).toEqual([])
    expect(codes({ gravityBehindCentre: 0.5 })).toContain('UNSTABLE')
    expect(codes({ tailIncidence: 0.3 })).toEqual(['TRIM_ANGLE'])
  })

  itRefuses(wing.trim, sound, [
    ['no slope', { liftCurveSlope: 0 }],
    ['a moment that is no number', { zeroLiftMoment: Number.NaN }],
    ['gravity nowhere', { gravityBehindCentre: Number.NaN }],
    ['a negative volume', { tailVolume: -1 }],
    ['a tail without slope', { tailLiftCurveSlope: 0 }],
    ['a tail on edge', { tailIncidence: 1 }],
    ['a downwash above 1', { downwashSlope: 2 }],
    ['a downwash of half a circle', { downwashAtZeroLift: 3 }],
    ['gravity in the neutral point', { gravityBehindCentre: 0, tailVolume: 0 }],
    ['a size beyond numbers', { zeroLiftMoment: 1e308, gravityBehindCentre: 1e-5, tailVolume: 0 }],
  ])
})

function pick(sound: {
  liftCurveSlope: number
  tailVolume: number
  tailLiftCurveSlope: number
  downwashSlope: number
}) {
  const { liftCurveSlope, tailVolume, tailLiftCurveSlope, downwashSlope } = sound
  return { liftCurveSlope, tailVolume, tailLiftCurveSlope, downwashSlope }
}

describe('wing.tailLoad(options)', () => {
  const sound = {
    weight: 19_613,
    dynamicPressure: 2000,
    wingArea: 14,
    chord: 1.24,
    zeroLiftMoment: -0.05,
    gravityBehindCentre: 0.05,
    tailArm: 5,
  }

  it('carries the weight with the wing and leaves no moment', () => {
    const { tailLift, wingLift } = wing.tailLoad(sound)
    expectClose(tailLift + wingLift, 19_613, 1e-15)
    const moment = wingLift * 0.05 * 1.24 - 2000 * 14 * 1.24 * 0.05 - tailLift * 5
    expect(Math.abs(moment)).toBeLessThan(1e-9)
  })

  it('pushes down more the further ahead gravity lies', () => {
    const at = (gravityBehindCentre: number) => wing.tailLoad({ ...sound, gravityBehindCentre }).tailLift
    expect(at(-0.1)).toBeLessThan(at(0))
    expect(at(0)).toBeLessThan(at(0.1))
  })

  itRefuses(wing.tailLoad, sound, [
    ['no weight', { weight: 0 }],
    ['no stream', { dynamicPressure: 0 }],
    ['no wing', { wingArea: 0 }],
    ['no chord', { chord: 0 }],
    ['a moment that is no number', { zeroLiftMoment: Number.NaN }],
    ['gravity nowhere', { gravityBehindCentre: Number.NaN }],
    ['no arm', { tailArm: 0 }],
    ['a tail ahead of the wing', { gravityBehindCentre: -10 }],
    ['a size beyond numbers', { weight: 1e308, gravityBehindCentre: 100 }],
  ])
})
