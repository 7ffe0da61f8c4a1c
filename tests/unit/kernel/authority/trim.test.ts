import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { itRefuses } from '../wing/refusals.js'
import { ring, threePerSide } from './plans.js'

const { authority, u } = preloaded
const weight = 16 * u.kN
const eight = ring('PNPNPNPN', 5 * u.kN)

describe('authority.effectiveness(options)', () => {
  it('gives lift, roll, pitch and yaw of an upright rotor from its place and spin', () => {
    const rows = authority.effectiveness({ rotors: [{ x: 1, y: 2, spin: -1, maxThrust: 1, torqueRatio: 0.3 }] })
    expect(rows).toMatchObject({ lift: [1], pitch: [1], yaw: [-0.3] })
    expect(rows.roll[0]).toBe(-2)
    expect([rows.side[0] ?? 1, rows.forward[0] ?? 1].map(Math.abs)).toEqual([0, 0])
  })

  it('leans the thrust with lateral and longitudinal cant: a lean forward pulls, and yaws by its arm to the side', () => {
    const at = (cant: { lateral?: number; longitudinal?: number }) =>
      authority.effectiveness({ rotors: [{ x: 2, y: 3, spin: 1, maxThrust: 1, torqueRatio: 0, cant }] })
    const forward = at({ longitudinal: 0.1 })
    expect(forward.forward[0]).toBeCloseTo(Math.sin(0.1), 12)
    expect(forward.yaw[0]).toBeCloseTo(-3 * Math.sin(0.1), 12)
    const right = at({ lateral: 0.1 })
    expect(right.side[0]).toBeCloseTo(Math.sin(0.1), 12)
    expect(right.yaw[0]).toBeCloseTo(2 * Math.sin(0.1), 12)
    expect(right.lift[0]).toBeCloseTo(Math.cos(0.1), 12)
  })

  it('takes a number as lateral cant, and height below or above the centre of gravity as an arm for the lean', () => {
    const rotor = { x: 0, y: 0, z: -0.5, spin: 1, maxThrust: 1, torqueRatio: 0, cant: 0.1 }
    const rows = authority.effectiveness({ rotors: [rotor], centreOfGravity: { x: 0, y: 0, z: 0.5 } })
    // One metre above the centre of gravity, pulled to the right: the right side goes down.
    expect(rows.roll[0]).toBeCloseTo(Math.sin(0.1), 12)
  })

  itRefuses(authority.effectiveness, { rotors: eight }, [
    ['no rotors', { rotors: [] }],
    ['more rotors than any aircraft has', { rotors: ring('PN'.repeat(13), 1) }],
    ['a spin of 0', { rotors: [{ ...eight[0], spin: 0 }] }],
    ['a place that is no number', { rotors: [{ ...eight[0], x: Number.NaN }] }],
    ['a place far away', { rotors: [{ ...eight[0], x: 1e6 }] }],
    ['a negative greatest thrust', { rotors: [{ ...eight[0], maxThrust: -1 }] }],
    ['a negative torque ratio', { rotors: [{ ...eight[0], torqueRatio: -1 }] }],
    ['a cant beyond 1.2 rad', { rotors: [{ ...eight[0], cant: 1.3 }] }],
    ['an unknown part of a cant', { rotors: [{ ...eight[0], cant: { sideways: 0.1 } }] }],
    ['a radius of 0', { rotors: [{ ...eight[0], radius: 0 }] }],
    ['an unknown field of a rotor', { rotors: [{ ...eight[0], diameter: 1 }] }],
    ['a centre of gravity that is no number', { centreOfGravity: { x: '1', y: 0 } }],
  ])
})

describe('authority.trim(options)', () => {
  it('hovers on equal thrusts with torques that cancel, and leaves nothing over', () => {
    const found = authority.trim({ rotors: eight, weight })
    expect(found.peakShare).toBeCloseTo(1 / 8, 8)
    for (const thrust of found.thrusts) expect(thrust).toBeCloseTo(2000, 4)
    for (const torque of found.torques) expect(torque).toBeCloseTo(200, 5)
    for (const left of Object.values(found.leftOver)) expect(Math.abs(left)).toBeLessThan(1e-5)
    expect(found).toMatchObject({ feasible: true, controllable: true, cannotHold: [], shortfall: {} })
    expect(found.utilisation).toBeCloseTo(0.4, 8)
  })

  it('follows the centre of gravity: rotors nearer to it carry more', () => {
    const { thrusts } = authority.trim({ rotors: eight, weight, centreOfGravity: { x: 0.5, y: 0 } })
    expect(thrusts[0]).toBeGreaterThan(thrusts[4] as number)
    const moment = thrusts.reduce((sum, thrust, at) => sum + thrust * ((eight[at]?.x ?? 0) - 0.5), 0)
    expect(Math.abs(moment)).toBeLessThan(1e-4)
  })

  it('balances a moment from outside, the wind on the fin for instance', () => {
    const found = authority.trim({ rotors: eight, weight, disturbance: { yaw: 100, roll: -500 } })
    const yaw = found.thrusts.reduce((sum, thrust, at) => sum + thrust * 0.1 * (eight[at]?.spin ?? 0), 0)
    expect(yaw).toBeCloseTo(-100, 4)
    expect(Math.abs(found.leftOver.roll)).toBeLessThan(1e-5)
  })

  it('holds side and forward force too where asked, and tells of them where not', () => {
    const leaning = eight.map((rotor) => ({ ...rotor, cant: 0.1 }))
    const loose = authority.trim({ rotors: leaning, weight })
    expect(loose.leftOver.side).toBeCloseTo(weight * Math.tan(0.1), 3)
    const tight = authority.trim({ rotors: leaning, weight, hold: ['lift', 'roll', 'pitch', 'yaw', 'side'] })
    expect(tight.feasible).toBe(false)
    expect(tight.cannotHold).toEqual(['side'])
    expect(Math.abs(tight.shortfall.side ?? 0)).toBeGreaterThan(100)
  })

  it('names lift where the rotors are too weak, says how much is lacking and gives all they have', () => {
    const weak = authority.trim({ rotors: ring('PNPNPNPN', 1900), weight })
    expect(weak.cannotHold).toEqual(['lift'])
    expect(weak.shortfall.lift).toBeCloseTo(800, 3)
    expect(weak.utilisation).toBeCloseTo(1, 8)
    expect(weak.index).toBeLessThan(0)
    expect('peakShare' in weak).toBe(false)
  })

  it('names roll where only one side is left, and pitch where only the front is', () => {
    const side = authority.trim({ rotors: threePerSide([1, -1, 1, -1, 1, -1]), weight, lost: [0, 1, 2] })
    expect(side.cannotHold).toContain('roll')
    expect(side.cannotHold).not.toContain('lift')
    expect(authority.trim({ rotors: ring('PNPN', 1e5), weight, lost: [1, 2, 3] }).cannotHold).toContain('pitch')
  })

  it('gives up everything when nothing turns', () => {
    const found = authority.trim({ rotors: ring('PN', 1e5), weight, lost: [0, 1] })
    expect(found).toMatchObject({ feasible: false, thrusts: [0, 0], degradedPeakShare: 0, utilisation: 0 })
    expect(found.cannotHold).toContain('lift')
  })

  it('cannot give up more than everything: a wind that no rotor reaches takes its axis with it', () => {
    const found = authority.trim({ rotors: ring('PNPN', 100), weight, disturbance: { roll: 1e9 } })
    expect(found.cannotHold).toEqual(['lift', 'roll'])
  })

  it('calls a trim on the edge feasible and not controllable', () => {
    const edge = authority.trim({ rotors: ring('PNPNPN', 6 * u.kN), weight: 12 * u.kN, lost: [0] })
    expect(edge).toMatchObject({ feasible: true, controllable: false })
    expect(edge.peakShare).toBeCloseTo(1 / 4, 8)
    expect(edge.thrusts[3]).toBeCloseTo(0, 3)
  })

  it('measures the index of one axis, and of more axes than four', () => {
    const lift = authority.trim({ rotors: eight, weight, hold: ['lift'] })
    expect(lift.index).toBeCloseTo(16e3, 6)
    const leaning = eight.map((rotor, at) => ({
      ...rotor,
      cant: { lateral: at % 3 === 0 ? 0.2 : -0.1, longitudinal: at % 2 === 0 ? 0.2 : -0.2 },
    }))
    const all = authority.trim({
      rotors: leaning,
      weight,
      hold: ['lift', 'roll', 'pitch', 'yaw', 'side', 'forward'],
    })
    expect(Number.isFinite(all.index)).toBe(true)
  })

  it('has an index of zero or below where too few rotors are left to bound anything', () => {
    const pair = authority.trim({ rotors: ring('PN', 1e5), weight, hold: ['lift', 'roll', 'pitch', 'yaw'] })
    expect(pair.feasible).toBe(true)
    expect(pair.index).toBeLessThanOrEqual(0)
    expect(pair.index).toBeGreaterThan(-1e-6)
    expect(authority.trim({ rotors: ring('PN', 1e5), weight, lost: [0] }).index).toBeLessThan(-100)
  })

  itRefuses(authority.trim, { rotors: eight, weight }, [
    ['a weight of 0', { weight: 0 }],
    ['a weight of a moon', { weight: 1e12 }],
    ['a lost rotor that is none', { lost: [8] }],
    ['a rotor lost twice', { lost: [1, 1] }],
    ['lost rotors that are no list', { lost: 3 }],
    ['no axis to hold', { hold: [] }],
    ['an axis that is none', { hold: ['lift', 'rol'] }],
    ['a moment that is no number', { disturbance: { yaw: Number.POSITIVE_INFINITY } }],
    ['a moment of absurd size', { disturbance: { yaw: 1e300 } }],
    ['lift from outside', { disturbance: { lift: 5 } }],
  ])

  it('suggests the axis that was meant', () => {
    expect(() => authority.trim({ rotors: eight, weight, hold: ['rol' as 'roll'] })).toThrow(/roll/)
  })
})
