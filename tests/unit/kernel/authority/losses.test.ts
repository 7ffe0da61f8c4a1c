import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { itRefuses } from '../wing/refusals.js'
import { ring } from './plans.js'

const { authority, u } = preloaded
const weight = 16 * u.kN
const eight = ring('PNPNPNPN', 6 * u.kN).map((rotor) => ({ ...rotor, radius: 1 }))
const inertia = { roll: 4000, pitch: 5000, yaw: 8000 }

describe('authority.losses(options)', () => {
  it('looks at every loss, mirror images alike, and takes the greatest thrust and torque of each rotor', () => {
    const seen = authority.losses({ rotors: eight, weight })
    expect(seen.cases.map((one) => one.lost)).toEqual([[0], [1], [2], [3], [4], [5], [6], [7]])
    for (const one of seen.cases) expect(one.peakToHover).toBeCloseTo(Math.SQRT2, 7)
    expect(seen).toMatchObject({ feasible: 8, controllable: 8, hoverThrust: 2000 })
    for (const rotor of seen.perRotor) {
      expect(rotor.thrust).toBeCloseTo(2000 * Math.SQRT2, 3)
      expect(rotor.torque).toBeCloseTo(200 * Math.SQRT2, 4)
      expect(rotor.power).toBeUndefined()
    }
  })

  it('gives powers by momentum theory where density, figure of merit and radii are known', () => {
    const seen = authority.losses({ rotors: eight, weight, density: 1.1, figureOfMerit: 0.7 })
    const power = 2000 ** 1.5 / (0.7 * Math.sqrt(2 * 1.1 * Math.PI))
    expect(seen.intact.powers?.[0]).toBeCloseTo(power, 3)
    expect(seen.perRotor[0]?.power).toBeCloseTo(power * 2 ** 0.75, 1)
  })

  it('finds the gravest pair: one that gives up an axis', () => {
    const seen = authority.losses({ rotors: ring('PNPNPNPN', 4.9 * u.kN), weight, simultaneous: 2 })
    expect(seen.cases).toHaveLength(28)
    expect(seen.feasible).toBeLessThan(28)
    expect(seen.worst.cannotHold.length).toBeGreaterThan(0)
  })

  it('prefers, as the gravest of those that hold all axes, one that cannot be steered', () => {
    const six = authority.losses({ rotors: ring('PPNNPN', 1e5), weight })
    expect(six).toMatchObject({ feasible: 6, controllable: 4 })
    expect(six.worst).toMatchObject({ controllable: false, lost: [4] })
  })

  itRefuses(authority.losses, { rotors: eight, weight }, [
    ['three at once', { simultaneous: 3 }],
    ['as many as there are', { rotors: eight.slice(0, 1) }],
    ['a density alone', { density: 1.1 }],
    ['a figure of merit above 1', { density: 1.1, figureOfMerit: 1.1 }],
    ['rotors without a radius', { rotors: ring('PNPN', 1), density: 1.1, figureOfMerit: 0.7 }],
    [
      'a radius for which power is beyond numbers',
      { rotors: [{ ...eight[0], radius: 5e-324 }, eight[1]], density: 1.1, figureOfMerit: 0.7 },
    ],
  ])
})

describe('authority.margin(options)', () => {
  it('is the attainable moment over the inertia: worked by hand for four rotors about roll', () => {
    const four = ring('PNPN', 8 * u.kN, 2)
    const left = authority.margin({ rotors: four, weight, inertia, simultaneous: 0 })
    // Roll with lift, pitch and yaw held: fore and aft stay at W/4 each, the sides go to 0 and W/2.
    expect(left.intact.roll.acceleration).toBeCloseTo((2 * 8000) / 4000, 5)
    expect(left.cases).toEqual([])
    expect(left).toMatchObject({ meets: 1, met: true })
  })

  it('is less at a corner of the travel of the centre of gravity and in wind, and says where', () => {
    const calm = authority.margin({ rotors: eight, weight, inertia })
    const corner = { x: 0.4, y: 0.1 }
    const disturbance = { roll: 0, pitch: 0, yaw: 60 }
    const worst = authority.margin({
      rotors: eight,
      weight,
      inertia,
      centresOfGravity: [{ x: 0, y: 0 }, corner],
      disturbances: [{}, disturbance],
    })
    for (const axis of ['roll', 'pitch', 'yaw'] as const) expect(worst.least[axis]).toBeLessThan(calm.least[axis])
    expect(worst.intact.yaw.disturbance).toEqual(disturbance)
    expect(worst.intact.pitch.centreOfGravity).toEqual(corner)
  })

  it('never meets with nothing left about an axis, whatever is required', () => {
    const edge = authority.margin({ rotors: ring('PNPNPN', 6 * u.kN), weight: 12 * u.kN, inertia })
    expect(edge.cases[0]).toMatchObject({ feasible: true, met: false })
    expect(edge.met).toBe(false)
    const given = authority.margin({
      rotors: ring('PNPNPN', 6 * u.kN),
      weight: 12 * u.kN,
      inertia,
      hold: ['lift', 'roll', 'pitch'],
    })
    expect(given.met).toBe(true)
  })

  it('goes below zero by what trim lacks, and to nothing where the other axes cannot be held', () => {
    const weak = authority.margin({ rotors: ring('PNPN', 5 * u.kN), weight, inertia })
    expect(weak.intact.feasible).toBe(true)
    expect(weak.cases[0]).toMatchObject({ feasible: false, met: false })
    const short = authority.margin({
      rotors: ring('PNPNPNPN', 3 * u.kN),
      weight,
      inertia,
      disturbances: [{ yaw: 2000 }],
      simultaneous: 0,
    })
    expect(short.intact.yaw.acceleration).toBeLessThan(0)
    expect(short.intact.feasible).toBe(false)
  })

  it('holds what is left against what is required', () => {
    const { intact } = authority.margin({ rotors: eight, weight, inertia, required: { yaw: 50 }, simultaneous: 0 })
    expect(intact.yaw).toMatchObject({ required: 50, met: false })
    expect(intact.roll.met).toBe(true)
  })

  itRefuses(authority.margin, { rotors: eight, weight, inertia }, [
    ['an inertia of 0', { inertia: { ...inertia, yaw: 0 } }],
    ['an unknown axis of inertia', { inertia: { ...inertia, lift: 1 } }],
    ['a negative requirement', { required: { roll: -1 } }],
    ['no centre of gravity', { centresOfGravity: [] }],
    ['disturbances that are no list', { disturbances: {} }],
    ['three lost', { simultaneous: 3 }],
  ])
})

describe('authority.windMoments(options)', () => {
  it('turns a fin into the wind and leaves the wind from ahead without yaw', () => {
    const winds = authority.windMoments({
      density: 1.2,
      frontDragArea: 1.5,
      sideDragArea: 8,
      sideCentre: { x: -1, z: -0.2 },
      frontCentre: { z: -0.1 },
    })
    expect(winds).toHaveLength(8)
    expect(winds[0]).toMatchObject({ side: 0, yaw: 0, roll: 0 })
    expect(winds[0]?.forward).toBeLessThan(0)
    // Pushed from ahead above the centre of gravity, the nose goes up.
    expect(winds[0]?.pitch).toBeGreaterThan(0)
    // From the right, behind the centre of gravity: the nose turns right, into the wind.
    expect(winds[2]?.yaw).toBeGreaterThan(0)
    expect(winds[6]?.yaw).toBeCloseTo(-(winds[2]?.yaw ?? 0), 9)
  })

  itRefuses(authority.windMoments, { density: 1.2, frontDragArea: 1.5, sideDragArea: 8 }, [
    ['a density of 0', { density: 0 }],
    ['a negative area', { sideDragArea: -1 }],
    ['two directions', { directions: 2 }],
    ['a centre that is no number', { sideCentre: { x: Number.NaN } }],
    ['a speed beyond numbers', { speed: 1e200 }],
    ['an unknown field of a centre', { frontCentre: { x: 1 } }],
  ])
})

describe('authority.rating(options)', () => {
  it('is the worst peak over hover, and does not depend on the mass', () => {
    const of = (w: number) => authority.rating({ rotors: eight, weight: w })
    expect(of(1000).thrustToHover).toBeCloseTo(Math.SQRT2, 7)
    expect(of(90_000).thrustToHover).toBeCloseTo(of(1000).thrustToHover, 9)
    expect(of(1000)).toMatchObject({ feasible: true, notMet: [] })
  })

  it('rises with the acceleration to be kept, and with the share kept back', () => {
    const trim = authority.rating({ rotors: eight, weight })
    const turning = authority.rating({ rotors: eight, weight, inertia, acceleration: { roll: 0.5, yaw: 0.02 } })
    expect(turning.thrustToHover).toBeGreaterThan(trim.thrustToHover * 1.02)
    expect(authority.rating({ rotors: eight, weight, usableShare: 0.8 }).thrustToHover).toBeCloseTo(
      trim.thrustToHover / 0.8,
      9,
    )
  })

  it('asks more torque of a rotor that keeps its speed than of one that runs faster', () => {
    const [speed, pitch] = (['speed', 'pitch'] as const).map((control) =>
      authority.rating({ rotors: eight, weight, control }),
    )
    expect(speed?.torqueToHover).toBeCloseTo(speed?.thrustToHover ?? 0, 12)
    expect(pitch?.torqueToHover).toBeCloseTo(pitch?.powerToHover ?? 0, 12)
    expect(pitch?.currentToHover).toBe(pitch?.torqueToHover)
  })

  it('is what the limits must be: trim at just that thrust is feasible, below it is not', () => {
    const { peakShare } = authority.rating({ rotors: eight, weight })
    const at = (share: number) =>
      authority.losses({ rotors: eight.map((rotor) => ({ ...rotor, maxThrust: share * weight })), weight }).feasible
    expect(at(peakShare * (1 + 1e-6))).toBe(8)
    expect(at(peakShare * (1 - 1e-4))).toBe(0)
  })

  it('names what no thrust can hold: yaw of four rotors after a loss, the way of a turn on the edge', () => {
    const four = authority.rating({ rotors: ring('PNPN', 1), weight })
    expect(four.feasible).toBe(false)
    expect(four.notMet).toHaveLength(4)
    expect(four.notMet[0]).toMatchObject({ cannotHold: ['yaw'], steerable: false })
    const edge = authority.rating({ rotors: ring('PNPNPN', 1), weight, inertia, acceleration: { yaw: 0.1 } })
    expect(edge.notMet).toHaveLength(6)
    expect(edge.notMet[0]?.cannotHold).toEqual(['yaw'])
    const line = authority.rating({ rotors: ring('PN', 1), weight })
    expect(line.notMet[0]?.cannotHold).toEqual(['roll', 'pitch', 'yaw'])
  })

  itRefuses(authority.rating, { rotors: eight, weight }, [
    ['an acceleration without inertia', { acceleration: { yaw: 1 } }],
    ['a usable share of 0', { usableShare: 0 }],
    ['another control', { control: 'cyclic' }],
    ['an acceleration of absurd size', { acceleration: { yaw: 1e300 } }],
  ])
})
