import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { craft, options, withCruise, withLift } from './craft.js'

const { air, drag, mission, rotor, u } = preloaded
const { density } = air.standard(0)
const weight = craft.mass * u.g0
const byBlades = (control: 'speed' | 'pitch', more = {}) =>
  mission.aircraft(withLift({ figureOfMerit: undefined, profileDrag: 0.011, download: 0, control, ...more }))

describe('mission.trim(options)', () => {
  it('is rotor.hover at rest, by figure of merit and by blades', () => {
    const hover = mission.trim({ aircraft: craft, speed: 0 })
    const byMerit = rotor.hover({ thrust: weight / 0.95, diskArea: 42.5, density, figureOfMerit: 0.72 })
    expectClose(hover.rotorPower, byMerit.power, 1e-12)
    expectClose(hover.power, byMerit.power / 0.9 + 2000, 1e-12)
    expect(hover).toMatchObject({ state: 'hover', rotorShare: 1, wingLift: 0, propellerPower: 0 })
    const blades = rotor.hover({
      thrust: weight,
      radius: Math.sqrt(42.5 / (8 * Math.PI)),
      count: 8,
      density,
      tipSpeed: 165,
      solidity: 0.14,
      inducedFactor: 1.15,
      profileDrag: 0.011,
    })
    for (const control of ['speed', 'pitch'] as const) {
      const trimmed = mission.trim({ aircraft: byBlades(control), speed: 0 })
      expectClose(trimmed.rotorPower, blades.power, 1e-12)
      expectClose(trimmed.bladeLoading ?? 0, blades.bladeLoading, 1e-12)
    }
  })

  it('is rotor.edgewise with what the wing leaves, at constant tip speed', () => {
    const aircraft = byBlades('pitch')
    const speed = 25
    const shared = mission.trim({ aircraft, speed })
    const edgewise = rotor.edgewise({
      thrust: shared.rotorThrust,
      speed,
      radius: Math.sqrt(42.5 / (8 * Math.PI)),
      count: 8,
      density,
      tipSpeed: 165,
      solidity: 0.14,
      inducedFactor: 1.15,
      profileDrag: 0.011,
    })
    expect(shared.state).toBe('transition')
    expectClose(shared.rotorPower, edgewise.power, 1e-10)
    const polarDrag =
      0.5 * density * speed ** 2 * 15 * (0.038 + options.polar.inducedFactor * shared.liftCoefficient ** 2)
    expectClose(shared.drag, polarDrag + edgewise.hForce, 1e-10)
  })

  it('is drag.powerRequired where the wing carries all', () => {
    const cruise = mission.trim({ aircraft: craft, speed: 58 })
    const wingBorne = drag.powerRequired({ polar: options.polar, weight, wingArea: 15, density, speed: 58 })
    expect(cruise).toMatchObject({ state: 'wing-borne', rotorShare: 0, rotorPower: 0 })
    expectClose(cruise.drag, wingBorne.drag, 1e-12)
    expectClose(cruise.power, wingBorne.power / (0.84 * 0.91) + 2000, 1e-12)
  })

  it.each(['speed', 'pitch'] as const)(
    'is continuous in speed from hover to beyond conversion, with %s control',
    (control) => {
      const aircraft = mission.aircraft(withLift({ control, uncoveredDragArea: 0.4 }))
      const power = (speed: number) => mission.trim({ aircraft, speed }).power
      const step = 1e-4
      let jump = 0
      for (let k = 0; k < 800; k += 1) jump = Math.max(jump, Math.abs(power(0.08 * k + step) - power(0.08 * k)))
      // No step: over a tenth of a millimetre per second power moves by no more than the steepest place allows.
      expect(jump).toBeLessThan(60)
      const { conversion } = mission.speeds({ aircraft })
      expectClose(power(conversion * (1 - 1e-9)), power(conversion * (1 + 1e-9)), 2e-4)
    },
  )

  it('takes thrust for inertia, none for braking, and tells what limits lack', () => {
    const pushed = mission.trim({ aircraft: craft, speed: 30, acceleration: 2 })
    const level = mission.trim({ aircraft: craft, speed: 30 })
    expectClose(pushed.thrustNeeded - level.thrustNeeded, 2 * craft.mass, 1e-12)
    const braked = mission.trim({ aircraft: craft, speed: 30, acceleration: -2 })
    expect(braked.propellerPower).toBe(0)
    expect(braked.thrustNeeded).toBeLessThan(0)
    const weak = mission.trim({
      aircraft: withCruise({ powerLimit: 50_000, staticThrust: 1000 }),
      speed: 30,
      acceleration: 2,
    })
    expect(weak.deficits.cruisePower).toBeGreaterThan(0)
    expectClose(weak.deficits.thrust ?? 0, weak.thrustNeeded - 1000, 1e-12)
    expectClose(level.deficits.liftPower ?? 0, level.rotorPower - 500_000, 1e-12)
    const free = mission.trim({
      aircraft: mission.aircraft({
        ...withLift({ powerLimit: undefined, solidity: undefined }),
        cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
      }),
      speed: 30,
    })
    expect(free.deficits).toEqual({})
    expect(free.bladeLoading).toBeUndefined()
  })

  it('takes the rating for the static thrust at rest', () => {
    const aircraft = mission.aircraft(withCruise({ staticThrust: 3000 }))
    const full = mission.trim({ aircraft, speed: 0, acceleration: 3000 / craft.mass })
    expectClose(full.propellerPower, 180_000, 1e-12)
    const half = mission.trim({ aircraft, speed: 0, acceleration: 1500 / craft.mass })
    expectClose(half.propellerPower, 180_000 * 0.5 ** 1.5, 1e-12)
  })

  it('hovers on the rotors that turn: power goes with one over the root of their area', () => {
    const all = mission.trim({ aircraft: craft, speed: 0 })
    const seven = mission.trim({ aircraft: craft, speed: 0, stoppedRotors: 1 })
    expectClose(seven.rotorPower / all.rotorPower, Math.sqrt(8 / 7), 1e-12)
    const pitch = mission.aircraft(withLift({ control: 'pitch' }))
    expectClose(
      mission.trim({ aircraft: pitch, speed: 0, stoppedRotors: 1 }).bladeLoading ?? 0,
      ((all.bladeLoading ?? 0) * 8) / 7,
      1e-12,
    )
  })

  it.each<[string, object, RegExp]>([
    ['a negative speed', { speed: -1 }, /speed/],
    ['no acceleration', { acceleration: Number.NaN }, /acceleration/],
    ['a stalled wing', { liftCoefficient: 2 }, /liftCoefficient/],
    ['all rotors stopped', { stoppedRotors: 8 }, /less than the 8 lift rotors/],
    ['a negative number of rotors', { stoppedRotors: -1 }, /stoppedRotors/],
    [
      'stopped rotors of an unknown number',
      { aircraft: withLift({ count: undefined }), stoppedRotors: 1 },
      /lift.count/,
    ],
    ['a misspelt option', { sped: 5 }, /option "sped"/],
    ['a speed beyond numbers', { speed: 1e200 }, /size that no aircraft has/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.trim({ aircraft: craft, speed: 20, ...wrong })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
