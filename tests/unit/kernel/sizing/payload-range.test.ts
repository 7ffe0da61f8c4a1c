import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'

const { sizing, u } = preloaded
const craft = {
  grossMass: 1200,
  batteryMass: 300,
  usableSpecificEnergy: (180 * u.Wh) / u.kg,
  liftToDrag: 12,
  efficiency: 0.75,
}

describe('sizing.electricRange(options)', () => {
  it('is the closed form of Hepperle, less what the reserve flies', () => {
    const whole = (craft.usableSpecificEnergy / u.g0) * 12 * 0.75 * (300 / 1200)
    expectClose(sizing.electricRange(craft).range, whole, 1e-12)
    const kept = sizing.electricRange({ ...craft, speed: 50, reserveTime: 1200 })
    expectClose(kept.range, whole - 60_000, 1e-12)
    expectClose(kept.endurance ?? 0, kept.range / 50, 1e-12)
    expectClose(kept.reserveShare, 60_000 / whole, 1e-12)
    expect(sizing.electricRange({ ...craft, speed: 50, reserveTime: 1e6 }).range).toBe(0)
  })

  it.each<[string, object, RegExp]>([
    ['no mass', { grossMass: 0 }, /grossMass/],
    ['no battery', { batteryMass: 0 }, /batteryMass/],
    ['more battery than aircraft', { batteryMass: 1300 }, /at most the gross mass/],
    ['no energy', { usableSpecificEnergy: 0 }, /usableSpecificEnergy/],
    ['no lift', { liftToDrag: 0 }, /liftToDrag/],
    ['an efficiency above 1', { efficiency: 1.1 }, /efficiency/],
    ['a speed of 0', { speed: 0 }, /speed/],
    ['a reserve without a speed', { reserveTime: 60 }, /given where there is a reserve/],
    ['a negative reserve', { speed: 50, reserveTime: -1 }, /reserveTime/],
    ['an absurd energy', { usableSpecificEnergy: 1e308 }, /range of numbers/],
    ['an unknown option', { liftTodrag: 1 }, /did you mean "liftToDrag"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => sizing.electricRange({ ...craft, ...wrong })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('sizing.payloadRange(options)', () => {
  const [empty, reserve] = [900, 50_000]
  const usable = craft.usableSpecificEnergy * craft.batteryMass
  const perMetre = (payload: number) => ((empty + payload) * u.g0) / (12 * 0.75)
  const energy = (payload: number, range: number) => perMetre(payload) * (range + reserve) - usable

  it('flies each payload as far as the closed form says, with the reserve kept', () => {
    const reach = sizing.payloadRange({ mostPayload: 400, evaluate: energy })
    expect(reach.payload).toHaveLength(21)
    reach.payload.forEach((payload, at) => {
      const { range } = sizing.electricRange({
        ...craft,
        grossMass: empty + payload,
        speed: 50,
        reserveTime: reserve / 50,
      })
      expectClose(reach.range[at] ?? 0, range, 1e-9)
    })
    expect(reach.corners.map((one) => one.corner)).toEqual(['full payload', 'ferry'])
    expectClose(reach.corners[1]?.range ?? 0, usable / perMetre(0) - reserve, 1e-9)
  })

  it('finds the trade: the payload at which battery may be exchanged no more', () => {
    // Payload gives way to battery up to a greatest battery mass, at a fixed gross mass.
    const [gross, fixed, mostBattery] = [1500, 800, 450]
    const force = (gross * u.g0) / (12 * 0.75)
    const e = craft.usableSpecificEnergy
    const evaluate = (payload: number, range: number) => {
      const needed = (force * (range + reserve)) / e
      return { 'gross mass': fixed + payload + needed - gross, 'battery bay': needed - mostBattery }
    }
    const reach = sizing.payloadRange({ mostPayload: 400, evaluate })
    expect(reach.corners.map((one) => [one.corner, one.binds])).toEqual([
      ['full payload', 'gross mass'],
      ['trade', 'battery bay'],
      ['ferry', 'battery bay'],
    ])
    expectClose(reach.corners[1]?.payload ?? 0, gross - fixed - mostBattery, 1e-6)
    expectClose(reach.corners[0]?.range ?? 0, ((gross - fixed - 400) * e) / force - reserve, 1e-9)
    expectClose(reach.corners[2]?.range ?? 0, (mostBattery * e) / force - reserve, 1e-9)
  })

  it('gives range 0 with the reason where a payload cannot take off, and stops where nothing binds', () => {
    const heavy = sizing.payloadRange({
      mostPayload: 400,
      points: 3,
      evaluate: (payload, range) => ({ 'hover power': payload - 300, energy: range - 1e5 }),
    })
    expect(heavy.range[0]).toBe(0)
    expect(heavy.binds).toEqual(['hover power', 'energy', 'energy'])
    const endless = sizing.payloadRange({ mostPayload: 400, points: 2, mostRange: 5e5, evaluate: () => -1 })
    expect(endless).toMatchObject({ range: [5e5, 5e5], binds: ['nothing', 'nothing'] })
  })

  it('says nothing of what it tries on the way', () => {
    let calls = 0
    sizing.payloadRange({
      mostPayload: 100,
      points: 2,
      evaluate: (_, range) => {
        calls += 1
        return range - 1e5
      },
    })
    expect(calls).toBeLessThan(100)
  })

  it.each<[string, object, RegExp]>([
    ['no function', { evaluate: 5 }, /evaluate is 5/],
    ['an answer that is NaN', { evaluate: () => Number.NaN }, /answer of evaluate/],
    ['an answer that is text', { evaluate: () => 'x' }, /the text "x"/],
    ['an empty answer', { evaluate: () => ({}) }, /a record/],
    ['a limit that is NaN', { evaluate: () => ({ energy: Number.NaN }) }, /"energy" of the answer/],
    ['no payload', { mostPayload: 0 }, /mostPayload/],
    ['a negative least payload', { leastPayload: -1 }, /leastPayload/],
    ['payloads out of order', { leastPayload: 500 }, /below mostPayload/],
    ['no range', { mostRange: 0 }, /mostRange/],
    ['one point', { points: 1 }, /points/],
    ['an unknown option', { payload: 1 }, /unknown/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => sizing.payloadRange({ mostPayload: 400, evaluate: energy, ...wrong } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
