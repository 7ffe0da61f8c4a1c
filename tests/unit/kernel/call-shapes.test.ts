/** The calls that checks from outside rely on, written as they would write them: names of options and of answers that stay. */
import { describe, expect, it } from 'vitest'
import { DoesNotClose, preloaded } from '../../../kernel/library/index.js'

const { air, authority, battery, drag, propeller, reliability, rotor, sizing, wing } = preloaded

const blades = {
  ...{ radius: 1, rootCutout: 0.15, chord: 0.1, blades: 3, collective: 0.15, twist: -0.1, tipSpeed: 150 },
  ...{ axialSpeed: 0, density: 1.225, dynamicViscosity: 1.8e-5, speedOfSound: 340 },
  section: { liftSlope: 5.7, minimumDrag: 0.01 },
}
const surface = { semiSpan: 5, rootChord: 1.4, tipChord: 0.8, sweepLeadingEdge: 0.1 }
const cell = { capacity: 10_800, mass: 0.048, openCircuitVoltage: [3, 3.6, 4.2], resistance: 0.02, minimumVoltage: 2.5 }
const pack = { cell, series: 100, parallel: 20, stateOfCharge: 0.8, temperature: 298.15 }
const square = [
  [1, 1, 1],
  [1, -1, -1],
  [-1, -1, 1],
  [-1, 1, -1],
].map(([x = 0, y = 0, spin = 0]) => ({ x, y, spin, maxThrust: 5000, torqueRatio: 0.1 }))
const hold = ['lift', 'roll', 'pitch', 'yaw'] as const
const loads = ['thrust', 'torque', 'power', 'thrustCoefficient', 'torqueCoefficient', 'figureOfMerit']
const slopes = ['liftCurveSlope', 'delta', 'tau', 'spanEfficiency']
const latticed = ['liftCurveSlope', 'pitchCurveSlope', 'lift', 'inducedDrag', 'spanEfficiency']
const hovers = ['inducedVelocity', 'idealPower', 'power', 'figureOfMerit', 'diskLoading']

describe('calls from outside', () => {
  it.each<[string, () => object, readonly string[]]>([
    [
      'air.standard',
      () => air.standard(1000, 15),
      ['temperature', 'pressure', 'density', 'speedOfSound', 'dynamicViscosity'],
    ],
    [
      'rotor.hover by merit',
      () => rotor.hover({ thrust: 2e4, diskArea: 40, density: 1.2, figureOfMerit: 0.7 }),
      hovers,
    ],
    [
      'rotor.hover by blades',
      () =>
        rotor.hover({
          ...{ thrust: 2000, radius: 1.3, density: 1.2, tipSpeed: 160 },
          ...{ solidity: 0.1, inducedFactor: 1.15, profileDrag: 0.01 },
        }),
      hovers,
    ],
    [
      'rotor.axial',
      () => rotor.axial({ climbSpeed: -8, thrust: 2e4, diskArea: 40, density: 1.2 }),
      ['inducedVelocity', 'power'],
    ],
    ['rotor.bladeElement', () => rotor.bladeElement(blades), loads],
    [
      'rotor.bladeElement with tables',
      () =>
        rotor.bladeElement({
          ...blades,
          chord: [
            [0.15, 0.12],
            [1, 0.08],
          ],
          twist: [
            [0.15, 0.2],
            [1, 0],
          ],
        }),
      loads,
    ],
    [
      'rotor.bladeElement with functions',
      () =>
        rotor.bladeElement({
          ...blades,
          chord: (station) => 0.12 - 0.04 * station,
          twist: (station) => -0.1 * station,
        }),
      loads,
    ],
    [
      'propeller.ideal',
      () => propeller.ideal({ thrust: 1000, speed: 50, diskArea: 2.5, density: 1.2 }),
      ['efficiency', 'power'],
    ],
    ['wing.liftingLine', () => wing.liftingLine({ aspectRatio: 6, taper: 0.4, sectionLiftSlope: 6.28 }), slopes],
    [
      'wing.liftingLine with twist',
      () => wing.liftingLine({ aspectRatio: 6, taper: 0.4, sectionLiftSlope: 6.28, twist: -0.05 }),
      slopes,
    ],
    [
      'wing.lattice',
      () => wing.lattice({ surfaces: [surface], spanwise: 8, chordwise: 2, angleOfAttack: 0.1 }),
      latticed,
    ],
    [
      'wing.lattice with twist and dihedral',
      () =>
        wing.lattice({
          surfaces: [{ ...surface, twist: -0.05, dihedral: 0.05 }],
          ...{ spanwise: 8, chordwise: 2, angleOfAttack: 0.1 },
        }),
      latticed,
    ],
    ['battery.discharge', () => battery.discharge({ ...pack, power: 5e4 }), ['current', 'voltage', 'heat']],
    [
      'authority.trim',
      () => authority.trim({ rotors: square, weight: 1e4, centreOfGravity: { x: 0.1, y: 0 }, hold, lost: [] }),
      ['peakShare', 'index'],
    ],
    [
      'sizing.close',
      () => sizing.close({ requiredMass: (mass) => 400 + 0.6 * mass, from: 500 }),
      ['grossMass', 'iterations'],
    ],
    ['drag.polar', () => drag.polar({ zeroLiftDrag: 0.03, aspectRatio: 10, spanEfficiency: 0.8 }), ['inducedFactor']],
  ])('%s answers numbers by these names', (_, call, names) => {
    const answer = call() as Readonly<Record<string, unknown>>
    for (const name of names) expect(Number.isFinite(answer[name]), name).toBe(true)
  })

  it('drag.buildUp, drag.skinFriction, air.densityAltitude and reliability.kOfN take what is written', () => {
    expect(drag.buildUp([{ name: 'gear', dragArea: 0.1 }]).dragArea).toBe(0.1)
    for (const method of ['laminar', 'Prandtl-Schlichting', 'Karman-Schoenherr', 'ITTC-1957'] as const)
      expect(drag.skinFriction({ reynolds: 1e6, method })).toBeGreaterThan(0)
    expect(air.densityAltitude(1)).toBeGreaterThan(0)
    expect(reliability.kOfN({ needed: 7, of: 8, unitFailure: 1e-4 })).toBeLessThan(
      reliability.kOfN({ needed: 7, of: 8, unitFailure: 1e-4, commonCause: 0.05 }),
    )
  })

  it.each([
    [5, 'climb'],
    [-8, 'vortex ring'],
    [-27, 'turbulent wake'],
    [-40, 'windmill'],
  ])('rotor.axial at %d m/s is in the state "%s"', (climbSpeed, state) => {
    expect(rotor.axial({ climbSpeed, thrust: 2e4, diskArea: 40, density: 1.2 }).state).toBe(state)
  })

  it('authority.trim of a lost rotor that cannot be held names the axis and gives no peak', () => {
    const lost = authority.trim({ rotors: square, weight: 1e4, hold, lost: [0] })
    expect(lost).toMatchObject({ feasible: false, cannotHold: ['yaw'] })
    expect('peakShare' in lost).toBe(false)
    expect(lost.thrusts).toHaveLength(4)
  })

  it('battery.discharge beyond its power answers with the reason', () => {
    const asked = battery.discharge({ ...pack, power: 5e6 })
    expect(asked.ok).toBe(false)
    expect(asked.message).toMatch(/cannot give/)
  })

  it('sizing.close that does not close answers why, and throws it where its gross mass is read', () => {
    const sized = sizing.close({ requiredMass: (mass) => 400 + 1.1 * mass, from: 500 })
    expect(sized).toMatchObject({ closed: false, reason: expect.any(String), runsAway: expect.any(String) })
    const read = () => {
      const { grossMass } = sized
      return grossMass
    }
    expect(read).toThrow(DoesNotClose)
    expect(read).toThrow(sized.closed ? '' : sized.reason)
  })
})
