import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { craft, options, withCruise, withLift } from './craft.js'

const { mission, u } = preloaded
const strong = mission.aircraft({ ...options, cruise: { propellerEfficiency: 0.84, efficiency: 0.91 } })

describe('mission.transition(options)', () => {
  it('takes the time and distance of its acceleration where the thrust is there', () => {
    const out = mission.transition({ aircraft: strong, acceleration: 2 })
    expectClose(out.time, out.endSpeed / 2, 1e-12)
    expectClose(out.distance, out.endSpeed ** 2 / 4, 1e-12)
    expectClose(out.endSpeed, 1.3 * mission.speeds({ aircraft: strong }).stall, 1e-12)
    const back = mission.transition({ aircraft: strong, direction: 'return', acceleration: 1, speed: 55 })
    expectClose(back.time, 55, 1e-12)
    expectClose(back.distance, 55 ** 2 / 2, 1e-12)
  })

  it('has the energy of an independent quadrature of mission.trim over speed', () => {
    const acceleration = 1.5
    const { energy, endSpeed, peakPower } = mission.transition({ aircraft: strong, acceleration })
    const count = 10_000
    let sum = 0
    let peak = 0
    for (let k = 0; k < count; k += 1) {
      const { power } = mission.trim({ aircraft: strong, speed: ((k + 0.5) * endSpeed) / count, acceleration })
      sum += (power * endSpeed) / count / acceleration
      peak = Math.max(peak, power)
    }
    expectClose(energy, sum, 5e-5)
    expectClose(peakPower, peak, 1e-3)
  })

  it('needs a rating of the cruise motor that grows with the acceleration', () => {
    const at = (acceleration: number) => mission.transition({ aircraft: strong, acceleration })
    expect(at(2).ratingNeeded).toBeGreaterThan(at(1).ratingNeeded)
    const { ratingNeeded, endSpeed } = at(2)
    expectClose(
      ratingNeeded,
      mission.trim({ aircraft: strong, speed: endSpeed, acceleration: 2 }).propellerPower,
      1e-10,
    )
    expectClose(at(2).peakPropellerPower, ratingNeeded, 1e-12)
  })

  it('accelerates more slowly where the rating is short, and says what lacks where it is stuck', () => {
    const aircraft = mission.aircraft(withCruise({ powerLimit: 110 * u.kW }))
    const slower = mission.transition({ aircraft, acceleration: 2 })
    const free = mission.transition({ aircraft: strong, acceleration: 2 })
    expect(slower.time).toBeGreaterThan(free.time)
    expect(slower.ratingNeeded).toBeCloseTo(free.ratingNeeded, 6)
    expectClose(slower.peakPropellerPower, 110 * u.kW, 1e-9)
    expect(slower.thrustDeficit).toBe(0)
    const weak = mission.aircraft(withCruise({ powerLimit: 30 * u.kW }))
    const heard = listenWhile(() => {
      expect(mission.transition({ aircraft: weak, acceleration: 2 }).thrustDeficit).toBeGreaterThan(0)
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['TRANSITION_STUCK'])
  })

  it('given up on the way costs both ways', () => {
    const abortAt = 25
    const given = mission.transition({ aircraft: strong, abortAt, acceleration: 1.5, braking: 1 })
    expectClose(given.time, 25 / 1.5 + 25, 1e-12)
    expect(given.path.speed[0]).toBe(0)
    expectClose(Math.max(...given.path.speed), 25, 1e-12)
    expectClose(given.path.speed.at(-1) ?? -1, 0, 1e-12)
    expectClose(given.path.time.at(-1) ?? 0, given.time, 1e-12)
    const back = mission.transition({ aircraft: strong, direction: 'return', speed: 25 })
    const out = mission.transition({ aircraft: strong, speed: 25 })
    expectClose(given.energy, out.energy + back.energy, 1e-9)
  })

  it('costs more with a rotor that will not start again, most where its opposite must stop too', () => {
    const back = (stoppedRotors: number) => mission.transition({ aircraft: craft, direction: 'return', stoppedRotors })
    expect(back(1).energy).toBeGreaterThan(back(0).energy)
    expectClose(back(1).peakRotorPower / back(0).peakRotorPower, Math.sqrt(8 / 7), 1e-9)
    expectClose(back(2).peakRotorPower / back(0).peakRotorPower, Math.sqrt(8 / 6), 1e-9)
    expectClose(back(2).liftDeficit ?? 0, back(2).peakRotorPower - 500_000, 1e-12)
  })

  it.each<[string, object, RegExp]>([
    ['a direction that is none', { direction: 'retrun' }, /direction.*"return"/],
    ['no acceleration', { acceleration: 0 }, /acceleration/],
    ['no braking', { braking: 0 }, /braking/],
    ['no speed', { speed: 0 }, /speed/],
    ['giving up beyond the end', { abortAt: 500 }, /abortAt/],
    ['too many stopped rotors', { stoppedRotors: 9 }, /stoppedRotors/],
    ['a misspelt option', { acceleraton: 1 }, /option "acceleraton"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.transition({ aircraft: craft, ...wrong } as Parameters<typeof mission.transition>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('mission.corridor(options)', () => {
  it('is bounded by the stall below: with the flown share the wing has its margin everywhere', () => {
    const found = mission.corridor({ aircraft: craft })
    expect(found.open).toBe(true)
    found.speed.forEach((_, at) => {
      expect(found.flownShare[at]).toBeGreaterThanOrEqual(found.stallShare[at] ?? 0)
      expect(found.flownShare[at]).toBeLessThanOrEqual(found.rotorLimitShare[at] ?? 0)
      expect(found.incidenceShare[at]).toBeGreaterThanOrEqual(found.flownShare[at] ?? 0)
    })
    expectClose(found.stallSpeed, mission.speeds({ aircraft: craft }).stall, 1e-12)
  })

  it('starts at the thrust that power and blades allow over the weight', () => {
    const byPower = mission.corridor({ aircraft: withLift({ solidity: undefined }) })
    const hover = mission.trim({ aircraft: craft, speed: 0 }).rotorPower
    // A figure of merit makes hover power go with thrust^1.5 only as far as its split into induced and profile power holds.
    const share = byPower.rotorLimitShare[0] ?? 0
    expect(byPower.rotorLimit[0]).toBe('power')
    const thrust = (craft.mass * u.g0 * share) / 0.95
    const lifted = mission.trim({ aircraft: withLift({ solidity: undefined }), mass: craft.mass * share, speed: 0 })
    expectClose(lifted.rotorThrust, thrust, 1e-12)
    expectClose(lifted.rotorPower, 500_000, 1e-9)
    expect(hover).toBeLessThan(500_000)
    const byBlades = mission.corridor({ aircraft: withLift({ powerLimit: undefined }) })
    const blades = mission.trim({ aircraft: craft, speed: 0 }).bladeLoading ?? 1
    expectClose(byBlades.rotorLimitShare[0] ?? 0, 0.12 / blades, 1e-12)
    expect(byBlades.rotorLimit[0]).toBe('blade loading')
  })

  it('closes with weak rotors and says where and by how much', () => {
    const heard = listenWhile(() => {
      const closed = mission.corridor({ aircraft: withLift({ powerLimit: 300 * u.kW }) })
      expect(closed).toMatchObject({ open: false })
      expect(closed.leastWidth).toBeLessThan(0)
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['CORRIDOR_CLOSED'])
    const open = mission.corridor({ aircraft: craft })
    expect(mission.corridor({ aircraft: craft, stoppedRotors: 2 }).leastWidth).toBeLessThan(open.leastWidth)
  })

  it('has no limit of power where ten times the thrust of hover is within the rating', () => {
    const found = mission.corridor({ aircraft: withLift({ powerLimit: 1e9 }) })
    expect(new Set(found.rotorLimit)).toEqual(new Set(['blade loading']))
  })

  it.each<[string, object, RegExp]>([
    [
      'rotors without a limit',
      { aircraft: withLift({ solidity: undefined, powerLimit: undefined }) },
      /lift.solidity or .powerLimit/,
    ],
    ['one point', { points: 1 }, /points/],
    ['no speed', { to: 0 }, /to/],
    ['a least lift above what is flown', { leastLift: 1.4 }, /leastLift/],
    ['a misspelt option', { point: 5 }, /option "point"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.corridor({ aircraft: craft, ...wrong })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('mission.powerAgainstSpeed(options)', () => {
  it('is mission.trim at each speed, from hover to the rating', () => {
    const curve = mission.powerAgainstSpeed({ aircraft: craft, points: 41 })
    expect(curve.speed).toHaveLength(41)
    curve.speed.forEach((speed, at) => {
      const { power, rotorPower } = mission.trim({ aircraft: craft, speed })
      expectClose(curve.power[at] ?? 0, power, 1e-12)
      expectClose(curve.rotors[at] ?? 0, rotorPower / 0.9, 1e-12)
      expectClose((curve.rotors[at] ?? 0) + (curve.propeller[at] ?? 0) + 2000, power, 1e-12)
    })
    expectClose(curve.speed.at(-1) ?? 0, curve.greatestSpeed ?? 1, 1e-12)
    expect(curve.speed.some((speed) => Math.abs(speed - curve.conversionSpeed) < 1e-9)).toBe(true)
  })

  it('ends beyond best range without a rating, or where it is told to', () => {
    const free = mission.powerAgainstSpeed({ aircraft: strong })
    expect(free.greatestSpeed).toBeUndefined()
    expectClose(free.speed.at(-1) ?? 0, 1.4 * free.bestRangeSpeed, 1e-12)
    expectClose(mission.powerAgainstSpeed({ aircraft: strong, to: 30 }).speed.at(-1) ?? 0, 30, 1e-12)
    expect(mission.powerAgainstSpeed({ aircraft: withCruise({ powerLimit: 20_000 }) }).greatestSpeed).toBeUndefined()
  })

  it('falls from hover to a least and rises again: forward flight on the wing takes a fraction of hover', () => {
    const curve = mission.powerAgainstSpeed({ aircraft: craft })
    const least = Math.min(...curve.power)
    expect(least).toBeLessThan(0.35 * (curve.power[0] ?? 0))
    expect(curve.power.at(-1)).toBeGreaterThan(least)
  })

  it.each<[string, object, RegExp]>([
    ['no speed', { to: 0 }, /to/],
    ['few points', { points: 3 }, /points/],
    ['a misspelt option', { form: 5 }, /option "form"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.powerAgainstSpeed({ aircraft: craft, ...wrong })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
