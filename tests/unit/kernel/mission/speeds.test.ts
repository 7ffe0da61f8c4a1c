import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { craft, options, withCruise } from './craft.js'

const { air, drag, mission, u, wing } = preloaded
/** Slow enough a stall that no floor is in the way. */
const slow = mission.aircraft({ ...options, maximumLift: 10 })
const weight = craft.mass * u.g0

describe('mission.speeds(options)', () => {
  it('agrees with wing.stallSpeed and, in still air without hotel power, with the closed forms of drag', () => {
    const { density } = air.standard(900)
    const free = mission.aircraft({ ...options, maximumLift: 10, hotelPower: 0 })
    const found = mission.speeds({ aircraft: free, altitude: 900 })
    const at = { polar: options.polar, weight, wingArea: 15, density }
    expectClose(found.stall, wing.stallSpeed({ weight, density, wingArea: 15, maximumLift: 10 }), 1e-12)
    expectClose(found.bestRange.speed, drag.leastDragSpeed(at).speed, 1e-12)
    expectClose(found.bestEndurance.speed, drag.leastPowerSpeed(at).speed, 1e-12)
    expectClose(found.bestRange.liftToDrag, options.polar.maximumLiftToDrag, 1e-12)
    expectClose(found.bestRange.power, drag.leastDragSpeed(at).power / (0.84 * 0.91), 1e-12)
  })

  it.each([-25, -10, 0, 15, 40])(
    'finds the speed of least energy per distance with a wind of %d m/s, against a fine scan',
    (tailwind) => {
      const { bestRange } = mission.speeds({ aircraft: slow, tailwind })
      const scanned = (speed: number) => mission.trim({ aircraft: slow, speed }).power / (speed + tailwind)
      const least = bestRange.energyPerDistance ?? 0
      expectClose(scanned(bestRange.speed), least, 1e-12)
      let best = Number.MAX_VALUE
      for (let k = 0; k <= 2000; k += 1) best = Math.min(best, scanned(Math.max(22, -tailwind + 1) + k * 0.05))
      expect(best).toBeGreaterThanOrEqual(least * (1 - 1e-12))
      expectClose(best, least, 1e-5)
      // A metre per second beside it, either way, is worse.
      expect(scanned(bestRange.speed + 1)).toBeGreaterThan(least)
      expect(scanned(bestRange.speed - 1)).toBeGreaterThan(least)
    },
  )

  it('flies faster against the wind and with hotel power, which the closed form in still air does not know', () => {
    const speedOf = (change: object, tailwind = 0) =>
      mission.speeds({ aircraft: { ...slow, ...change }, tailwind }).bestRange.speed
    expect(speedOf({}, -15)).toBeGreaterThan(speedOf({}))
    expect(speedOf({}, 15)).toBeLessThan(speedOf({}))
    expect(speedOf({ hotelPower: 10_000 })).toBeGreaterThan(speedOf({ hotelPower: 0 }))
  })

  it('keeps the floor of 1.3 stall speeds and says where it binds', () => {
    const found = mission.speeds({ aircraft: craft })
    expectClose(found.floor, 1.3 * found.stall, 1e-12)
    expectClose(found.conversion, 1.2 * found.stall, 1e-12)
    expect(found.bestEndurance).toMatchObject({ floorBinds: true, speed: found.floor })
    expect(mission.speeds({ aircraft: slow }).bestEndurance.floorBinds).toBe(false)
  })

  it('finds the speed at which the rating is used up, and by how much it falls short', () => {
    const { greatest, ratingMargin } = mission.speeds({ aircraft: craft })
    const there = mission.trim({ aircraft: craft, speed: greatest?.speed ?? 0 })
    expectClose(there.propellerPower, 180 * u.kW, 1e-10)
    expect(ratingMargin).toBeGreaterThan(0)
    const weak = mission.speeds({ aircraft: withCruise({ powerLimit: 20 * u.kW }) })
    expect(weak.ratingMargin).toBeLessThan(0)
    expect(weak.greatest).toMatchObject({ floorBinds: true, speed: weak.floor })
    expect(mission.speeds({ aircraft: withCruise({ powerLimit: undefined }) }).greatest).toBeUndefined()
  })

  it('gives no energy per distance where the wind is not overcome', () => {
    const found = mission.speeds({ aircraft: craft, tailwind: -60 })
    expect(found.bestEndurance.energyPerDistance).toBeUndefined()
    expect(found.bestRange.speed).toBeGreaterThan(60)
  })

  it.each<[string, object, RegExp]>([
    ['a wind that is none', { tailwind: Number.NaN }, /tailwind/],
    ['an altitude in space', { altitude: 1e5 }, /altitude/],
    ['no mass', { mass: 0 }, /mass/],
    ['a misspelt option', { wind: 5 }, /option "wind"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.speeds({ aircraft: craft, ...wrong })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
