/** The other kinds of aircraft on one sector, with what the kernel has for each: data, not a class per kind. */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'

const { air, layout, mission, propeller, u } = preloaded
const conditions = air.standard(0)
const mass = 1600
const body = { length: 6.6, width: 1.5, height: 1.5 }
const wing = { area: 15, aspectRatio: 11 }
const polar = (zeroLiftDrag: number) => ({ zeroLiftDrag, inducedFactor: 0.036 })
const blades = { solidity: 0.12, inducedFactor: 1.15, profileDrag: 0.011 }

const segments = [
  { kind: 'hover', time: 45 },
  { kind: 'transition' },
  { kind: 'cruise', distance: 40e3, speed: 58 },
  { kind: 'return transition' },
  { kind: 'landing', time: 45 },
] as const

const fly = (kind: ReturnType<typeof layout.vectoredThrust>, zeroLiftDrag: number, propellerEfficiency: number) =>
  mission.demand({
    aircraft: {
      ...{ mass, wingArea: wing.area, maximumLift: 1.6, polar: polar(zeroLiftDrag) },
      lift: { diskArea: layout.pad(kind).diskArea, figureOfMerit: 0.72, efficiency: 0.9 },
      cruise: { propellerEfficiency, efficiency: 0.9 },
    },
    segments,
  })

describe('one sector of 40 km', () => {
  const liftPlusCruise = layout.liftPlusCruise({ rotorRadius: 1.3, wing, body, propellers: [{ radius: 0.95 }] })
  const vectored = layout.vectoredThrust({ rotorRadius: 1.3, wing, body, rowsAhead: 1, rowsBehind: 1, columns: 2 })
  const multirotor = layout.multirotor({ count: 8, rotorRadius: 1.3, body })

  it('is flown by vectored thrust on its own rotors, tilted; fewer and slower ones push better, never beyond the ideal', () => {
    const thrust = (mass * u.g0) / 13
    const efficiency = (tipSpeed: number, pushing: number) =>
      propeller.bladeAngleForThrust({
        ...conditions,
        ...{ radius: 1.3, rootCutout: 0.2, chord: 0.16, blades: 3, tipSpeed, speed: 58, twist: -0.5 },
        ...{ thrust: thrust / pushing, section: { liftSlope: 5.7, minimumDrag: 0.011 } },
      }).efficiency
    const all = vectored.rotors.filter((one) => one.role === 'tilt').length
    expect(all).toBe(8)
    expect(efficiency(90, all)).toBeGreaterThan(efficiency(110, all))
    expect(efficiency(90, all / 2)).toBeGreaterThan(efficiency(90, all))
    expect(efficiency(90, all / 2)).toBeLessThan(
      propeller.ideal({ density: conditions.density, thrust: thrust / 4, speed: 58, diskArea: Math.PI * 1.3 ** 2 })
        .efficiency,
    )
    // A cleaner wing buys back what its slow propellers cost only if they are good enough.
    const standing = fly(liftPlusCruise, 0.042, 0.83).energy
    expect(fly(vectored, 0.028, efficiency(90, all / 2)).energy).toBeLessThan(standing)
    expect(fly(vectored, 0.028, 0.4).energy).toBeGreaterThan(standing)
  })

  it('takes a multirotor more energy in cruise, and less in hover for the same disks', () => {
    const { diskArea } = layout.pad(multirotor)
    const onRotors = mission.demand({
      aircraft: mission.multirotor({
        ...{ mass, dragArea: 1.1 },
        lift: { diskArea, ...blades, tipSpeed: 165, efficiency: 0.9 },
      }),
      segments: [segments[0], { kind: 'cruise', distance: 40e3 }, segments[4]],
    }).energy
    const onWing = fly(liftPlusCruise, 0.042, 0.83).energy
    expect(diskArea).toBeCloseTo(layout.pad(liftPlusCruise).diskArea, 9)
    // Common practice (no source): wingless cruise takes two to four times the energy of a wing per distance.
    expect(onRotors / onWing).toBeGreaterThan(1.3)
    expect(onRotors / onWing).toBeLessThan(5)
  })
})
