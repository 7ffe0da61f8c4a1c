import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from '../wing/refusals.js'

const { drag } = preloaded
const rotor = {
  blades: 2,
  radius: 1.3,
  chord: 0.14,
  hubDiameter: 0.25,
  hubHeight: 0.1,
  podDiameter: 0.25,
  podHeight: 0.15,
  speed: 58,
  density: 1.1,
  dynamicViscosity: 1.79e-5,
}

describe('drag.stoppedRotor(options)', () => {
  it('of a pair across the stream at no pitch is c R (c_d0 + 2 c_d0): one blade runs trailing edge first', () => {
    // NACA TN 3361 (summary read): drag at 180 degrees about twice that at 0.
    const { blades } = drag.stoppedRotor({ ...rotor, pitch: 0, rootCutout: 0, sectionDrag: 0.01, azimuth: Math.PI / 2 })
    expectClose(blades, 0.14 * 1.3 * 3 * 0.01, 1e-9)
  })

  it('costs less in line with the stream than across it, and turns from one to the other without a step', () => {
    const at = (azimuth: number) => drag.stoppedRotor({ ...rotor, azimuth }).blades
    expect(at(0)).toBeLessThan(0.5 * at(Math.PI / 2))
    for (let degrees = 0; degrees < 360; degrees += 1) {
      const angle = (degrees * Math.PI) / 180
      expect(Math.abs(at(angle + 1e-6) - at(angle))).toBeLessThan(1e-6)
    }
    expectClose(at(2 * Math.PI), at(0), 1e-12)
  })

  it('stays below the hubs of helicopters that were printed', () => {
    // Prouty, table 4.3 (read second-hand): 0.1115 m^2 for an articulated hub of a 1157 kg aircraft, the smallest there.
    expect(drag.stoppedRotor(rotor).high).toBeLessThan(0.1115)
  })

  it('adds blades, hub and pod, and carries a band of 40 % and an advisory', () => {
    const still = drag.stoppedRotor(rotor)
    expectClose(still.blades + still.hub + still.pod, still.dragArea, 1e-15)
    expectClose(still.high - still.low, 0.8 * still.dragArea, 1e-12)
    expect(listenWhile(() => drag.stoppedRotor(rotor)).advisories).toMatchObject([{ code: 'HOUSE_MODEL' }])
    const steep = listenWhile(() => drag.stoppedRotor({ ...rotor, pitch: -0.4 })).advisories
    expect(steep.map((one) => one.code)).toEqual(['STOPPED_PITCH', 'HOUSE_MODEL'])
  })

  it('grows with pitch, and past the stall with that of a plate', () => {
    const at = (pitch: number) => drag.stoppedRotor({ ...rotor, pitch, azimuth: Math.PI / 2 }).blades
    expect(at(0.2)).toBeGreaterThan(at(0.1))
    expect(at(1)).toBeGreaterThan(at(0.5))
    // Square to the stream no plate has more than 1.11 + 0.018 AR per area, here two of 0.1547 m^2.
    expect(at(1)).toBeLessThan(2 * 0.1547 * 1.5)
  })

  itRefuses(drag.stoppedRotor, rotor, [
    ['no blades', { blades: 0 }],
    ['thirteen blades', { blades: 13 }],
    ['no radius', { radius: 0 }],
    ['no chord', { chord: 0 }],
    ['a chord longer than the radius', { chord: 2 }],
    ['a blade that is all root', { rootCutout: 0.9 }],
    ['a blade without thickness', { thickness: 0 }],
    ['a section without drag', { sectionDrag: 0 }],
    ['a pitch beyond 1 rad', { pitch: 1.5 }],
    ['no hub', { hubDiameter: 0 }],
    ['a flat hub', { hubHeight: 0 }],
    ['a negative pod', { podDiameter: -1 }],
    ['a pod below nothing', { podHeight: -1 }],
    ['no speed', { speed: 0 }],
    ['no air', { density: 0 }],
    ['air without viscosity', { dynamicViscosity: 0 }],
    ['a Reynolds number of an insect', { speed: 1e-3 }],
    ['an azimuth that is no number', { azimuth: Number.NaN }],
    ['a size beyond numbers', { hubDiameter: 1e200, hubHeight: 1e200 }],
  ])
})

describe('drag.inLineShielding(options)', () => {
  const row = { dragArea: 0.02, frontalArea: 0.025, spacing: 3, count: 4 }

  it('costs less than side by side, and the less the closer (common practice, no source)', () => {
    const { share, factors, dragArea } = drag.inLineShielding(row)
    expect(share).toBeLessThan(1)
    expect(factors[0]).toBe(1)
    expect(factors).toEqual([...factors].sort((a, b) => b - a))
    expectClose(dragArea, 4 * 0.02 * share, 1e-15)
    expect(drag.inLineShielding({ ...row, spacing: 1 }).share).toBeLessThan(share)
    expect(drag.inLineShielding({ ...row, wakeGrowth: 0.05 }).share).toBeLessThan(share)
  })

  it('keeps the momentum that the wake formula starts from: deficit times area is constant', () => {
    // Jensen: V (1 - d) with d r^2 constant along the wake.
    const radius = Math.sqrt(0.025 / Math.PI)
    const flux = (spacing: number) => {
      const behind = drag.inLineShielding({ ...row, count: 2, spacing }).factors[1] ?? 1
      return (1 - Math.sqrt(behind)) * (radius + 0.08 * spacing) ** 2
    }
    expectClose(flux(1), flux(10), 1e-9)
  })

  it('says that sideslip ends the shelter, unless one stands alone', () => {
    expect(listenWhile(() => drag.inLineShielding(row)).advisories).toMatchObject([{ code: 'IN_LINE_SHELTER' }])
    expect(listenWhile(() => drag.inLineShielding({ ...row, count: 1 })).advisories).toEqual([])
  })

  itRefuses(drag.inLineShielding, row, [
    ['no drag', { dragArea: 0 }],
    ['no frontal area', { frontalArea: 0 }],
    ['no spacing', { spacing: 0 }],
    ['bodies that overlap', { spacing: 0.1 }],
    ['half a body', { count: 0.5 }],
    ['a procession', { count: 51 }],
    ['a wake that does not grow', { wakeGrowth: 0 }],
    ['a size beyond numbers', { dragArea: 1e308, count: 50 }],
  ])
})
