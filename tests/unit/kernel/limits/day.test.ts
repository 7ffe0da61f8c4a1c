import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { battery, limits, powertrain, u } = preloaded
const sector = [
  { name: 'hover', power: 320e3, duration: 45, motorHeatShare: 2 },
  { name: 'cruise', power: 90e3, duration: 300 },
  { name: 'landing', power: 320e3, duration: 45, motorHeatShare: 2 },
]
const right = {
  cell: battery.cells.power18650,
  series: 200,
  parallel: 40,
  rating: 'peak' as const,
  sector,
  sectors: 3,
  turnaround: 900,
  chargePower: 150e3,
  chargeRate: 2 / 3600,
  ambient: 303.15,
  conductance: 400,
}

describe('limits.day(options)', () => {
  it('flies the first sector as battery.run does', () => {
    const flown = limits.day(right)
    const { cell, series, parallel, rating, ambient, conductance } = right
    const profile = sector.map(({ name, power, duration }) => ({ name, power, duration }))
    const run = battery.run({ cell, series, parallel, rating, ambient, conductance, temperature: ambient, profile })
    expectClose(flown.rows[0]?.arrival ?? 0, run.stateOfCharge, 1e-12)
    expectClose(flown.rows[0]?.cellTemperature ?? 0, run.greatestTemperature, 1e-12)
    expect(flown).toMatchObject({ ok: true, message: '', sectorsFlown: 3 })
  })

  it('keeps the book of charge: what was drawn less what was charged is what is missing at the end', () => {
    const flown = limits.day({ ...right, cyclesToEndOfLife: 1000 })
    const drawn = flown.rows.reduce((sum, row) => sum + row.departure - row.arrival, 0)
    expectClose(flown.cycles, drawn, 1e-12)
    expectClose(flown.daysToEndOfLife ?? 0, 1000 / drawn, 1e-12)
    flown.rows.slice(1).forEach((row, index) => {
      expect(row.departure).toBeGreaterThan(flown.rows[index]?.arrival ?? 1)
    })
    // Energy into the terminals is what is stored and what became heat: more than the open-circuit energy, by less than a tenth.
    const first = flown.rows[0]
    const { energy } = battery.window({
      cell: right.cell,
      from: flown.rows[1]?.departure ?? 1,
      to: first?.arrival ?? 0,
    })
    expect((first?.charged ?? 0) / (8000 * energy)).toBeGreaterThan(1)
    expect((first?.charged ?? 0) / (8000 * energy)).toBeLessThan(1.1)
  })

  it('heats the lift motors as powertrain.overload does, and cools them between', () => {
    const motor = powertrain.motor({ continuousTorque: 250, ratedSpeed: 125, efficiency: 0.94 })
    const { heatShare, endShare } = powertrain.overload({ motor, torque: 330, speed: 125, duration: 45 })
    const hover = { name: 'hover', power: 320e3, duration: 45, motorHeatShare: heatShare }
    const flown = limits.day({ ...right, sectors: 1, sector: [hover] })
    expectClose(flown.greatestMotorHeat, endShare, 1e-9)
    const hot = limits.day({ ...right, sector: [{ ...hover, motorHeatShare: 5 }] })
    expect(hot).toMatchObject({ ok: false, sectorsFlown: 3 })
    expect(hot.message).toMatch(/lift motors reach 1\.56 times/)
  })

  it('charges by constant power, then rate, then voltage, and ends where the current fades', () => {
    const slow = limits.day({ ...right, chargePower: 20e3, sectors: 2, turnaround: 600 })
    expectClose(slow.rows[0]?.charged ?? 0, 20e3 * 600, 1e-6)
    const byRate = limits.day({ ...right, chargePower: 1e9, chargeRate: 0.2 / 3600, sectors: 2, turnaround: 600 })
    const gained = (byRate.rows[1]?.departure ?? 0) - (byRate.rows[0]?.arrival ?? 0)
    expectClose(gained, (0.2 * 600) / 3600, 1e-6)
    const long = limits.day({ ...right, sectors: 2, turnaround: 6 * u.h })
    expect(long.rows[0]?.chargingTime).toBeLessThan(2 * u.h)
    expect(long.rows[1]?.departure).toBeGreaterThan(0.99)
    const partly = limits.day({ ...right, chargeTo: 0.9, sectors: 2, turnaround: 2 * u.h })
    expectClose(partly.rows[1]?.departure ?? 0, 0.9, 1e-6)
    expect(partly.rows[0]?.departure).toBe(0.9)
  })

  it('waits with the charge until the cells are cool, and cools faster on the ground where there is a chiller', () => {
    const waiting = { ...right, chargeBelow: 304.15, temperature: 310, sectors: 2 }
    const slow = limits.day({ ...waiting, groundConductance: 2000 })
    const quick = limits.day({ ...waiting, groundConductance: 8000 })
    expect(slow.rows[0]?.coolingTime).toBeGreaterThan(quick.rows[0]?.coolingTime ?? 0)
    expect(quick.rows[0]?.coolingTime).toBeGreaterThan(0)
  })

  it('ends the day with sector, segment and second where the pack is spent, with an advisory', () => {
    const heard = listenWhile(() => {
      const flown = limits.day({ ...right, chargePower: 0, sectors: 10, floor: 0.1 })
      expect(flown.ok).toBe(false)
      expect(flown.message).toMatch(/^Sector \d+: charge floor reached in "/)
      expect(flown.sectorsFlown).toBe(flown.rows.length - 1)
      expect(flown.charged).toBe(0)
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['DAY_ENDS'])
  })

  it('runs its history through flight and ground without a gap', () => {
    const { history } = limits.day(right)
    const steps = history.time.slice(1).map((time, index) => time - (history.time[index] ?? 0))
    expect(Math.min(...steps)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...steps)).toBeLessThanOrEqual(10 + 1e-9)
    for (const list of Object.values(history)) expect(list).toHaveLength(history.time.length)
    expectClose(history.time.at(-1) ?? 0, 3 * 390 + 2 * 900, 1e-9)
  })

  it.each<[string, object, RegExp]>([
    ['no sector', { sector: [] }, /at least one { name, power/],
    ['half a sector', { sectors: 1.5 }, /sectors/],
    ['more sectors than a day has', { sectors: 51 }, /sectors/],
    ['a negative turnaround', { turnaround: -1 }, /turnaround/],
    ['a charger that draws', { chargePower: -1 }, /chargePower/],
    ['a rate of 0', { chargeRate: 0 }, /chargeRate/],
    ['a charge beyond full', { chargeTo: 1.1 }, /chargeTo/],
    ['motors without heat', { motorThermalTime: 0 }, /motorThermalTime/],
    ['an ambient of space', { ambient: 3 }, /ambient/],
    ['frozen cells', { temperature: 100 }, /temperature/],
    ['a charge in the frost of space', { chargeBelow: 10 }, /chargeBelow/],
    ['a life of no cycles', { cyclesToEndOfLife: 0 }, /cyclesToEndOfLife/],
    ['no cells in series', { series: 0 }, /series/],
    ['no strings', { parallel: 0 }, /parallel/],
    ['a chiller that is quicker than the cells', { groundConductance: 1e9 }, /groundConductance/],
    ['a negative motor load', { sector: [{ power: 1, duration: 1, motorHeatShare: -1 }] }, /motorHeatShare/],
    ['a power that is NaN', { sector: [{ power: Number.NaN, duration: 1 }] }, /power/],
    ['an unknown field of a segment', { sector: [{ power: 1, durations: 1 }] }, /did you mean "duration"/],
    ['a state of charge', { stateOfCharge: 1 }, /option "stateOfCharge"/],
    ['an unknown option', { sectrs: 1 }, /did you mean "sectors"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => limits.day({ ...right, ...wrong } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
