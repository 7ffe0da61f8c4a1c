/** A multirotor flown by the same calls as an aircraft with a wing. */
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { air, battery, mission, rotor, u } = preloaded
const { density } = air.standard(0)
const blades = { solidity: 0.12, inducedFactor: 1.15, profileDrag: 0.011, tipSpeed: 165 }
const diskArea = 8 * Math.PI * 1.3 ** 2
const options = {
  mass: 1600,
  dragArea: 1.2,
  hotelPower: 2000,
  lift: { diskArea, ...blades, efficiency: 0.9, control: 'pitch' as const },
}
const craft = mission.multirotor(options)
const weight = 1600 * u.g0
const inFlight = { ...blades, weight, dragArea: 1.2, radius: 1.3, count: 8, density }
const legOf = (segment: object, more: object = {}) =>
  mission.demand({ aircraft: { ...options, ...more }, segments: [segment as never] }).rows[0]
const rated = (powerLimit: number) => ({ lift: { ...options.lift, powerLimit } })

describe('mission.multirotor(options)', () => {
  it('completes and freezes its record, which may be spread into another', () => {
    expect(craft).toMatchObject({
      mass: 1600,
      dragArea: 1.2,
      hotelPower: 2000,
      lift: { inducedFactor: 1.15, download: 0 },
    })
    expect(Object.isFrozen(craft) && Object.isFrozen(craft.lift)).toBe(true)
    expect('battery' in craft || 'powerLimit' in craft.lift).toBe(false)
    const again = mission.demand({ aircraft: { ...craft, mass: 1700 }, segments: [{ kind: 'hover', time: 60 }] })
    expect(again.energy).toBeGreaterThan(legOf({ kind: 'hover', time: 60 })?.energy ?? 0)
  })

  it.each<[string, object, RegExp]>([
    ['no mass', { mass: 0 }, /mass is 0 kg/],
    ['a negative drag area', { dragArea: -1 }, /dragArea is -1/],
    ['a wing', { wingArea: 15 }, /option "wingArea" is unknown/],
    ['a hotel power that is none', { hotelPower: Number.NaN }, /hotelPower/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.multirotor({ ...options, ...wrong })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('mission.demand of a multirotor', () => {
  it.each([5, 15, 25, 40])('cruises at %d m/s with the power of rotor.levelFlight', (speed) => {
    const row = legOf({ kind: 'cruise', distance: 10e3, speed })
    const level = rotor.levelFlight({ ...inFlight, speed })
    expectClose(row?.rotorPower ?? 0, level.power, 1e-11)
    expectClose(row?.energy ?? 0, ((level.power / 0.9 + 2000) * 10e3) / speed, 1e-11)
    expect(row).toMatchObject({ propellerPower: 0, floorBinds: false, distance: 10e3, speed })
  })

  it('hovers with the power of rotor.hover', () => {
    const { power } = rotor.hover({ ...blades, thrust: weight / 8, radius: 1.3, density })
    expectClose(legOf({ kind: 'hover', time: 60 })?.rotorPower ?? 0, 8 * power, 1e-12)
  })

  it('finds the speeds of best range and best endurance that rotor.levelFlight finds', () => {
    const ranging = rotor.levelFlight({ ...inFlight, speed: 'best range', otherPower: 0.9 * 2000 })
    expectClose(legOf({ kind: 'cruise', distance: 10e3 })?.speed ?? 0, ranging.speed, 1e-6)
    const waiting = rotor.levelFlight({ ...inFlight, speed: 'best endurance' })
    expectClose(legOf({ kind: 'reserve', time: 600 })?.speed ?? 0, waiting.speed, 1e-6)
    // Against the wind faster, and never slower than the wind.
    const speedIn = (tailwind: number) => legOf({ kind: 'cruise', distance: 10e3, tailwind })?.speed ?? 0
    expect(speedIn(-10)).toBeGreaterThan(speedIn(0))
    expect(speedIn(10)).toBeLessThan(speedIn(0))
    expect(speedIn(-60)).toBeGreaterThan(60)
  })

  it('climbs for its level power and, within what the induced power saves, the work against weight', () => {
    const level = rotor.levelFlight({ ...inFlight, speed: 25 })
    const climb = legOf({ kind: 'climb', to: 1, rate: 2, speed: 25 })
    const gained = (climb?.rotorPower ?? 0) - level.power
    expect(gained / (2 * weight)).toBeGreaterThan(0.9)
    expect(gained / (2 * weight)).toBeLessThan(1.02)
    expectClose(climb?.distance ?? 0, Math.sqrt(25 ** 2 - 2 ** 2) / 2, 1e-12)
    const sunk = legOf({ kind: 'descent', to: -1, speed: 25 })
    expect(sunk?.rotorPower).toBeLessThan(level.power)
    expect(sunk?.time).toBe(1 / 2.5)
  })

  it('uses its rating up where the speed or the rate of climb is left to it', () => {
    expectClose(legOf({ kind: 'climb', to: 300 }, rated(360e3))?.rotorPower ?? 0, 360e3, 1e-9)
    expectClose(legOf({ kind: 'cruise', time: 60, speed: 'power limit' }, rated(360e3))?.rotorPower ?? 0, 360e3, 1e-9)
    // What never suffices is flown at the speed of least power and counted as lacking.
    const short = mission.demand({
      aircraft: { ...options, ...rated(100e3) },
      segments: [
        { kind: 'cruise', time: 60, speed: 'power limit' },
        { kind: 'climb', to: 30 },
      ],
    })
    expect(short).toMatchObject({ feasible: false, status: 'lift rating', segment: 'cruise' })
    expect(short.deficits.liftPower).toBeGreaterThan(0)
    expect(short.deficits).not.toHaveProperty('cruisePower')
    // More than enough is flown at the end of the range.
    expect(legOf({ kind: 'cruise', time: 60, speed: 'power limit' }, rated(5e6))?.speed).toBe(0.5 * 165)
    const leap = legOf({ kind: 'climb', to: 300, speed: 20 }, rated(5e6))
    expectClose(leap?.time ?? 0, 30, 1e-12)
  })

  it('advises on an advance ratio beyond the fit', () => {
    const heard = listenWhile(() => legOf({ kind: 'cruise', time: 60, speed: 60 }))
    expect(heard.advisories).toMatchObject([{ code: 'ADVANCE_RATIO', quantity: 'segments[0].speed' }])
    expect(listenWhile(() => legOf({ kind: 'cruise', time: 60, speed: 45 })).advisories).toEqual([])
  })

  it.each<[string, object, RegExp]>([
    ['a transition', { kind: 'transition' }, /segments\[0\]\.kind is the text "transition".*multirotor/],
    ['a return transition', { kind: 'return transition' }, /"return transition"/],
    ['a climb that goes down', { kind: 'climb', to: -1 }, /segments\[0\]\.to/],
    ['a climb without rate and rating', { kind: 'climb', to: 10 }, /segments\[0\]\.rate is missing.*lift\.powerLimit/],
    [
      'a climb too steep',
      { kind: 'climb', to: 10, rate: 11, speed: 20 },
      /at most half of the 20\.00 m\/s.*vertical climb/,
    ],
    ['a descent too steep', { kind: 'descent', to: -10, rate: 11, speed: 20 }, /"landing" with a height/],
    [
      'a speed by a rating that is not given',
      { kind: 'cruise', time: 9, speed: 'power limit' },
      /lift\.powerLimit is not/,
    ],
    ['a wind that it cannot beat', { kind: 'cruise', distance: 9, tailwind: -90 }, /never arrives/],
  ])('refuses %s', (_, segment, message) => {
    expect(() => legOf(segment)).toThrow(InvalidInput)
    expect(() => legOf(segment)).toThrow(message)
  })

  it('refuses an aircraft that is none', () => {
    for (const aircraft of [null, 5, undefined])
      expect(() => mission.demand({ aircraft: aircraft as never, segments: [{ kind: 'hover', time: 1 }] })).toThrow(
        InvalidInput,
      )
  })
})

describe('mission.fly of a multirotor', () => {
  const aircraft = mission.multirotor({
    ...options,
    battery: { cell: battery.cells.power18650, series: 200, parallel: 60, rating: 'peak' },
  })
  const flown = mission.fly({
    aircraft,
    altitude: 600,
    distance: 12e3,
    segments: [
      { kind: 'hover', time: 30 },
      { kind: 'climb', to: 900, rate: 2 },
      { kind: 'cruise' },
      { kind: 'descent', to: 600 },
      { kind: 'landing', height: 30, time: 15 },
    ],
  })

  it('fills the sector, drains the battery and keeps the energy book', () => {
    expect(flown).toMatchObject({ feasible: true, status: 'ok' })
    expectClose(flown.distance, 12e3, 1e-12)
    expect(flown.stateOfCharge).toBeLessThan(1)
    expect(Math.abs(flown.openBalance)).toBeLessThan(1e-6)
    expect(flown.history.begins.map((one) => one.name)).toEqual(['hover', 'climb', 'cruise', 'descent', 'landing'])
  })

  it('agrees in coarse steps and with mission.demand', () => {
    const segments = [{ kind: 'cruise', time: 600, speed: 25 }] as const
    const asked = mission.demand({ aircraft, segments }).energy
    expectClose(mission.fly({ aircraft, segments }).energy, asked, 1e-12)
    expectClose(mission.fly({ aircraft, segments, steps: 'coarse' }).energy, asked, 1e-12)
  })
})
