/** `rotor.levelFlight`: forces, energy and best speeds against hand derivations, and a multirotor flown by its parts. */
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'

const { air, battery, layout, rotor, u } = preloaded
const eight = {
  ...{ weight: 16e3, dragArea: 1.2, radius: 1.3, count: 8, density: 1.2, tipSpeed: 165 },
  ...{ solidity: 0.12, inducedFactor: 1.15, profileDrag: 0.011 },
}
const diskArea = 8 * Math.PI * 1.3 ** 2

describe('rotor.levelFlight', () => {
  it.each([5, 25, 45])('balances forces across and along the path at %d m/s', (speed) => {
    const { thrust, diskTilt, hForce, drag } = rotor.levelFlight({ ...eight, speed })
    expectClose(thrust * Math.cos(diskTilt) + hForce * Math.sin(diskTilt), eight.weight, 1e-12)
    expectClose(thrust * Math.sin(diskTilt) - hForce * Math.cos(diskTilt), drag, 1e-10)
    expectClose(drag, 0.5 * 1.2 * speed ** 2 * 1.2, 1e-14)
  })

  it.each([5, 25, 45])('takes what induction, blades, drag and H-force take at %d m/s', (speed) => {
    const { power, inducedPower, profilePower, drag, hForce, diskTilt } = rotor.levelFlight({ ...eight, speed })
    expectClose(power, inducedPower + profilePower + drag * speed + hForce * speed * Math.cos(diskTilt), 1e-12)
  })

  it('is hover at no speed', () => {
    const { power, diskTilt } = rotor.levelFlight({ ...eight, speed: 0 })
    const { weight: thrust, ...rest } = eight
    const { power: hover } = rotor.hover({
      ...{ thrust: thrust / 8, radius: rest.radius, density: rest.density, tipSpeed: rest.tipSpeed },
      ...{ solidity: rest.solidity, inducedFactor: rest.inducedFactor, profileDrag: rest.profileDrag },
    })
    expect(diskTilt).toBe(0)
    expectClose(power, 8 * hover, 1e-10)
  })

  // Without blade drag and at high speed P = kappa W^2/(2 rho A V) + rho f V^3/2 (Glauert; Leishman, 2006, chapter 5, from memory).
  it.each([
    ['best endurance', 3],
    ['best range', 1],
  ] as const)('finds the closed-form speed of %s of light disks within 1 percent', (speed, factor) => {
    const light = { ...eight, profileDrag: 1e-9, weight: 3000, dragArea: 0.3, density: 1.2 }
    const expected = ((1.15 * 3000 ** 2) / (factor * 1.2 ** 2 * diskArea * 0.3)) ** 0.25
    expect(Math.abs(rotor.levelFlight({ ...light, speed }).speed / expected - 1)).toBeLessThan(0.01)
  })

  it('finds no better speed beside the best ones, and a faster one for the range with other power', () => {
    const range = rotor.levelFlight({ ...eight, speed: 'best range' })
    const endurance = rotor.levelFlight({ ...eight, speed: 'best endurance' })
    for (const step of [-0.5, 0.5]) {
      const beside = rotor.levelFlight({ ...eight, speed: range.speed + step })
      expect(beside.power / beside.speed).toBeGreaterThan(range.power / range.speed)
      expect(rotor.levelFlight({ ...eight, speed: endurance.speed + step }).power).toBeGreaterThan(endurance.power)
    }
    expect(range.speed).toBeGreaterThan(endurance.speed)
    expect(rotor.levelFlight({ ...eight, speed: 'best range', otherPower: 2e4 }).speed).toBeGreaterThan(range.speed)
    expectClose(range.liftToDrag, (eight.weight * range.speed) / range.power, 1e-14)
  })

  it('flies the mission of a multirotor with battery.run: as far as its pack lasts', () => {
    const plan = layout.multirotor({ count: 8, rotorRadius: 1.3 * u.m })
    const { density } = air.standard(0)
    const blades = { ...eight, density, radius: plan.rotors[0]?.radius ?? 0, count: plan.rotors.length }
    const hover = rotor.levelFlight({ ...blades, speed: 0 }).power / 0.9
    const { power, speed } = rotor.levelFlight({ ...blades, speed: 'best range' })
    const flown = battery.run({
      ...{ cell: battery.cells.power18650, series: 200, parallel: 60, rating: 'peak', floor: 0.1 },
      profile: [
        { name: 'hover', power: hover, duration: 45 },
        { name: 'cruise', power: power / 0.9, duration: (15 * u.km) / speed },
        { name: 'landing', power: hover, duration: 45 },
      ],
    })
    expect(flown.ok).toBe(true)
    expect(power).toBeLessThan(hover)
  })

  it.each<[string, object, RegExp]>([
    ['no weight', { weight: 0 }, /weight/],
    ['a negative drag area', { dragArea: -1 }, /dragArea/],
    ['flying backwards', { speed: -1 }, /speed/],
    ['a speed in other words', { speed: 'best rang' }, /best range/],
    ['a negative other power', { otherPower: -1 }, /otherPower/],
    ['a drag beyond numbers', { dragArea: Number.MAX_VALUE, speed: 50 }, /InvalidInput|beyond|numbers|finite|large/],
    ['an unknown option', { thrust: 5 }, /option "thrust"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => rotor.levelFlight({ ...eight, speed: 20, ...wrong } as Parameters<typeof rotor.levelFlight>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
