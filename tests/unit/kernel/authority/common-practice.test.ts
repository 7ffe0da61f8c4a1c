/** Facts of the trade about lift rotors (common practice, no source): directions and limits, and where the saying is not quite true. */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { ring, threePerSide } from './plans.js'

const { authority, reliability, u } = preloaded
const weight = 16 * u.kN

describe('common practice of lift rotors (no source)', () => {
  it('half of them turn either way, so that torques cancel in hover: no yaw is left over at equal thrusts', () => {
    for (const text of ['PNPN', 'PPNNPN', 'PNPNPNPN', 'PPNNPPNN']) {
      const { thrusts, leftOver } = authority.trim({ rotors: ring(text, 1e5), weight })
      expect(Math.max(...thrusts) - Math.min(...thrusts)).toBeLessThan(1e-3)
      expect(Math.abs(leftOver.yaw)).toBeLessThan(1e-4)
    }
  })

  it('two on either side: lift, roll and pitch can be trimmed after any loss by leaving out the opposite one, on a knife edge', () => {
    const four = [
      [2, -2],
      [2, 2],
      [-2, 2],
      [-2, -2],
    ].map(([x = 0, y = 0], at) => ({ x, y, spin: at % 2 === 0 ? 1 : -1, maxThrust: 1e5, torqueRatio: 0.1 }))
    for (const lost of four.keys()) {
      const kept = authority.trim({ rotors: four, weight, lost: [lost], hold: ['lift', 'roll', 'pitch'] })
      expect(kept).toMatchObject({ feasible: true, controllable: false })
      expect(kept.thrusts[(lost + 2) % 4]).toBeCloseTo(0, 3)
      expect(Math.abs(kept.leftOver.yaw)).toBeCloseTo(0.1 * weight, 2)
      // With the centre of gravity off the diagonal that is left, on the side of what was lost, there is no trim at all.
      const aside = { x: 0.05 * (four[lost]?.x ?? 0), y: 0.05 * (four[lost]?.y ?? 0) }
      const off = authority.trim({
        rotors: four,
        weight,
        lost: [lost],
        hold: ['lift', 'roll', 'pitch'],
        centreOfGravity: aside,
      })
      expect(off.feasible).toBe(false)
    }
  })

  it('three on either side: of six single losses four at most can be held and steered, whichever way the rotors turn', () => {
    const { rows, best } = authority.search({ rotors: threePerSide([]), weight, keep: 100 })
    expect(Math.max(...rows.map((row) => row.held))).toBe(4)
    const lost = authority.losses({ rotors: best?.rotors ?? [], weight }).cases.filter((one) => !one.controllable)
    expect(lost.map((one) => one.lost)).toHaveLength(2)
  })

  it('three on either side, leaned outward by a few degrees: all six', () => {
    const leaned = authority.search({ rotors: threePerSide([]), weight, outwardCants: [5 * u.deg], keep: 1 }).best
    expect(leaned?.held).toBe(6)
    const four = authority.search({ rotors: threePerSide([]), weight, keep: 1 }).best
    // The two that were hopeless cost more than the four that were not.
    expect(leaned?.peakShare).toBeGreaterThan(four?.peakShare ?? 1)
  })

  it('more on either side: a smaller share is lost with one, and some rotor fails the more often', () => {
    const peaks = ['PNPN', 'PNPNPN', 'PNPNPNPN', 'PNPNPNPNPNPN'].map(
      (text) =>
        authority.losses({ rotors: ring(text, 1e6), weight, hold: ['lift', 'roll', 'pitch'] }).worst.peakToHover,
    )
    expect(peaks).toEqual([...peaks].sort((one, other) => other - one))
    const any = [4, 6, 8, 12].map((of) => reliability.maintenance({ of, unitFailure: 1e-5 }).anyFailure)
    expect(any).toEqual([...any].sort((one, other) => one - other))
  })
})
