import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { rotor } = preloaded
const codes = (run: () => void) => listenWhile(run).advisories.map((one) => one.code)

describe('rotor.hover with interference', () => {
  const byMerit = { thrust: 4000, diskArea: 20, density: 1.2, figureOfMerit: 0.7 }
  const byBlades = {
    thrust: 4000,
    radius: 1.2,
    density: 1.2,
    tipSpeed: 170,
    solidity: 0.12,
    inducedFactor: 1.1,
    profileDrag: 0.01,
  }

  it('raises all power of a figure of merit, and only the induced power of blades', () => {
    expectClose(rotor.hover({ ...byMerit, interference: 1.1 }).power, 1.1 * rotor.hover(byMerit).power, 1e-14)
    expectClose(rotor.hover({ ...byMerit, interference: 1.1 }).figureOfMerit, 0.7 / 1.1, 1e-14)
    const [apart, near] = [rotor.hover(byBlades), rotor.hover({ ...byBlades, interference: 1.1 })]
    expectClose(near.inducedPower, 1.1 * apart.inducedPower, 1e-14)
    expect(near.profilePower).toBe(apart.profilePower)
  })

  it('refuses an interference below 1', () => {
    expect(() => rotor.hover({ ...byMerit, interference: 0.9 })).toThrow(/interference is 0.9/)
    expect(() => rotor.hover({ ...byBlades, interference: 0.9 })).toThrow(/interference is 0.9/)
  })
})

describe('rotor.download', () => {
  const blocked = { blockedArea: 3, dragCoefficient: 1.2, diskArea: 40 }

  it('is the drag of the blocked area in the wake, at any thrust', () => {
    const { share, thrustFactor } = rotor.download(blocked)
    const { inducedVelocity } = rotor.hover({ thrust: 1e4, diskArea: 40, density: 1.2, figureOfMerit: 1 })
    expectClose(share, (0.6 * (2 * inducedVelocity) ** 2 * 1.2 * 3) / 1e4, 1e-13)
    expectClose(thrustFactor * (1 - share), 1, 1e-14)
  })

  it('is a quarter at the disk, where the wake has half of its speed', () => {
    expectClose(rotor.download({ ...blocked, wakeFactor: 1 }).share, rotor.download(blocked).share / 4, 1e-14)
  })

  it('advises above a fifth of the thrust', () => {
    expect(codes(() => rotor.download({ ...blocked, blockedArea: 8 }))).toEqual(['DOWNLOAD'])
    expect(codes(() => rotor.download(blocked))).toEqual([])
  })

  it.each<[string, object, RegExp]>([
    ['more than the thrust', { blockedArea: 40 }, /less than the thrust; it is 1.20 of it/],
    ['a negative area', { blockedArea: -1 }, /blockedArea/],
    ['a negative coefficient', { dragCoefficient: -1 }, /dragCoefficient/],
    ['no disk', { diskArea: 0 }, /diskArea/],
    ['a wake faster than the far wake', { wakeFactor: 3 }, /wakeFactor is 3/],
    ['a misspelt option', { area: 1 }, /option "area"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.download({ ...blocked, ...options })).toThrow(message)
  })
})

describe('rotor.overlap', () => {
  it('is 1 for disks that touch at most, and sqrt(2) for disks at one place', () => {
    const pair = (spacing: number) =>
      rotor.overlap({
        radius: 1,
        positions: [
          [0, 0],
          [spacing, 0],
        ],
      })
    expect(pair(2).interference).toBe(1)
    expect(pair(5)).toMatchObject({ overlapShare: 0, leastSpacing: 5 })
    expectClose(pair(0).interference, Math.SQRT2, 1e-14)
    expect(rotor.overlap({ radius: 1, positions: [[3, 4]] })).toMatchObject({ interference: 1, leastSpacing: 0 })
  })

  it('lies near Harris’s fit for tandem rotors, sqrt(2) - (sqrt(2)/2) s + (1 - sqrt(2)/2) s^2 (from memory)', () => {
    for (const s of [0.2, 0.5, 0.8]) {
      const fit = Math.SQRT2 - (Math.SQRT2 / 2) * s + (1 - Math.SQRT2 / 2) * s * s
      const { interference } = rotor.overlap({
        radius: 1,
        positions: [
          [0, 0],
          [2 * s, 0],
        ],
      })
      expectClose(interference, fit, 0.04)
    }
  })

  it('adds pairs: a row of three overlapped alike has two lenses on three disks', () => {
    const row = rotor.overlap({
      radius: 1,
      positions: [
        [0, 0],
        [1.6, 0],
        [3.2, 0],
      ],
    })
    const pair = rotor.overlap({
      radius: 1,
      positions: [
        [0, 0],
        [1.6, 0],
      ],
    })
    expectClose(row.interference - 1, (pair.interference - 1) * (4 / 3), 1e-12)
  })

  it('advises where more than half of a disk is shared', () => {
    const at = (spacing: number) =>
      codes(() =>
        rotor.overlap({
          radius: 1,
          positions: [
            [0, 0],
            [0, spacing],
          ],
        }),
      )
    expect(at(0.5)).toEqual(['DISK_OVERLAP'])
    expect(at(1.5)).toEqual([])
  })

  it.each<[string, object, RegExp]>([
    ['no rotors', { positions: [] }, /positions is a list of 0/],
    ['what is not a pair', { positions: [[1, 2, 3]] }, /positions\[0\] is a list of 3/],
    ['a place that is none', { positions: [[0, Number.NaN]] }, /positions\[0\]\[1\] is NaN/],
    ['a place across that is none', { positions: [['a', 0]] }, /positions\[0\]\[0\]/],
    ['no radius', { radius: 0 }, /radius/],
    ['a misspelt option', { position: [] }, /did you mean "positions"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.overlap({ radius: 1, positions: [[0, 0]], ...options } as never)).toThrow(message)
  })
})

describe('rotor.coaxial', () => {
  const pair = { thrust: 4000, diskArea: 5, density: 1.2 }

  it('is 1.281 at equal thrust: Leishman’s lower rotor in the vena contracta (from memory)', () => {
    expectClose(rotor.coaxial(pair).interference, 1.281, 2e-4)
  })

  it('takes no more than both rotors in one plane, and conserves momentum and energy', () => {
    for (const upperShare of [0.3, 0.5, 0.7]) {
      const { idealPower, coplanarPower, upperInducedVelocity, lowerInflow } = rotor.coaxial({ ...pair, upperShare })
      expect(idealPower).toBeLessThan(coplanarPower)
      const massFlow = 1.2 * 5 * lowerInflow
      const wake = 4000 / massFlow
      expectClose(idealPower, 0.5 * massFlow * wake ** 2, 1e-12)
      expectClose(idealPower, 4000 * (upperShare * upperInducedVelocity + (1 - upperShare) * lowerInflow), 1e-12)
    }
  })

  it.each<[string, object, RegExp]>([
    ['no thrust', { thrust: 0 }, /thrust/],
    ['no disk', { diskArea: 0 }, /diskArea/],
    ['no air', { density: 0 }, /density/],
    ['all thrust on one', { upperShare: 1 }, /upperShare is 1/],
    ['a misspelt option', { share: 1 }, /option "share"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.coaxial({ ...pair, ...options })).toThrow(message)
  })
})

describe('rotor.ducted', () => {
  const fan = { thrust: 1000, diskArea: 1, density: 1.225, expansionRatio: 1 }

  it('is the open rotor at an expansion ratio of one half', () => {
    const open = rotor.hover({ thrust: 1000, diskArea: 1, density: 1.225, figureOfMerit: 0.7 })
    const ducted = rotor.ducted({ ...fan, expansionRatio: 0.5, figureOfMerit: 0.7 })
    expectClose(ducted.power, open.power, 1e-14)
    expectClose(ducted.inducedVelocity, open.inducedVelocity, 1e-14)
    expect(ducted.ductThrust).toBe(0)
  })

  it('has ratios that belong together', () => {
    const { rotorThrust, ductThrust, idealPower, powerRatio, thrustRatio } = rotor.ducted({
      ...fan,
      expansionRatio: 1.3,
    })
    expectClose(rotorThrust + ductThrust, 1000, 1e-14)
    const open = rotor.hover({ thrust: 1000, diskArea: 1, density: 1.225, figureOfMerit: 1 }).power
    expectClose(idealPower / open, powerRatio, 1e-13)
    expectClose(thrustRatio ** -1.5, powerRatio, 1e-13)
  })

  it('gains little at equal envelope (common practice, no source): the duct’s wall takes disk', () => {
    const outside = Math.PI / 4
    const open = rotor.hover({ thrust: 500, diskArea: outside, density: 1.2, figureOfMerit: 0.72 }).power
    const inside = rotor.ducted({
      thrust: 500,
      diskArea: outside * 0.8 ** 2,
      density: 1.2,
      expansionRatio: 1,
      figureOfMerit: 0.72,
    }).power
    expect(inside / open).toBeGreaterThan(0.85)
    expect(inside / open).toBeLessThan(1)
  })

  it('advises on a wide diffuser and a sharp lip', () => {
    const at = (options: object) => codes(() => rotor.ducted({ ...fan, ...options }))
    expect(at({ lipRadius: 0.1 })).toEqual([])
    expect(at({ expansionRatio: 2 })).toEqual(['DUCT_EXPANSION'])
    expect(at({ lipRadius: 0.02 })).toEqual(['DUCT_LIP'])
  })

  it.each<[string, object, RegExp]>([
    ['no thrust', { thrust: 0 }, /thrust/],
    ['no disk', { diskArea: 0 }, /diskArea/],
    ['no air', { density: 0 }, /density/],
    ['a duct that throttles', { expansionRatio: 0.2 }, /expansionRatio is 0.2/],
    ['a figure of merit above 1', { figureOfMerit: 1.2 }, /figureOfMerit/],
    ['a lip of 0', { lipRadius: 0 }, /lipRadius/],
    ['a misspelt option', { lip: 1 }, /option "lip"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.ducted({ ...fan, ...options })).toThrow(message)
  })
})

describe('rotor.ductInCruise', () => {
  const ring = { diameter: 1, chord: 0.5, sectionDrag: 0.01, dynamicPressure: 2000 }

  it('is the unrolled ring, and carries no induced drag without lift', () => {
    const { dragArea, skinDrag, inducedDrag, aspectRatio } = rotor.ductInCruise(ring)
    expectClose(dragArea, Math.PI * 0.5 * 0.01, 1e-14)
    expectClose(skinDrag, 2000 * dragArea, 1e-14)
    expect([inducedDrag, aspectRatio]).toEqual([0, 2])
  })

  it('advises outside the rings that were tested', () => {
    expect(codes(() => rotor.ductInCruise({ ...ring, chord: 0.2 }))).toEqual(['DUCT_ASPECT_RATIO'])
    expect(codes(() => rotor.ductInCruise(ring))).toEqual([])
  })

  it.each<[string, object, RegExp]>([
    ['no diameter', { diameter: 0 }, /diameter/],
    ['no chord', { chord: 0 }, /chord/],
    ['no drag', { sectionDrag: 0 }, /sectionDrag/],
    ['a negative lift', { lift: -1 }, /lift/],
    ['no stream', { dynamicPressure: 0 }, /dynamicPressure/],
    ['a misspelt option', { span: 1 }, /option "span"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.ductInCruise({ ...ring, ...options })).toThrow(message)
  })
})
