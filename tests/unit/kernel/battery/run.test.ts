import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { battery, u } = preloaded
const cell = battery.cells.power18650
const pack = { series: 200, parallel: 60 }
const sector = [
  { name: 'hover', power: 320 * u.kW, duration: 60 },
  { name: 'cruise', power: 90 * u.kW, duration: 900 },
  { name: 'landing', power: 320 * u.kW, duration: 60 },
]

/** A cell without knots between its ends: smooth, so that the order of the rule can be seen. */
const smooth = battery.cell({
  capacity: 3 * u.Ah,
  mass: 0.048,
  openCircuitVoltage: [3, 4.2],
  resistance: [0.05, 0.02],
  minimumVoltage: 2.5,
  specificHeat: 900,
})

describe('battery.run(options)', () => {
  it('flies a profile and reports the state at its end', () => {
    const flown = battery.run({ cell, ...pack, profile: sector })
    expect(flown).toMatchObject({ ok: true, status: 'ok', message: '', segment: 'landing', second: 60 })
    expectClose(flown.time, 1020, 1e-12)
    expectClose(flown.delivered, 320e3 * 120 + 90e3 * 900, 1e-12)
    expect(flown.temperature).toBeGreaterThan(298.15)
    expect(flown.history.time.length).toBe(flown.history.voltage.length)
  })

  it('keeps the book of energy: the integral of V_oc dQ is what was delivered and what became heat', () => {
    const flown = battery.run({ cell, ...pack, profile: sector, maxStep: 2 })
    expect(Math.abs(flown.openBalance)).toBeLessThan(1e-8)
    expectClose(flown.stored, flown.delivered + flown.heat, 1e-8)
  })

  it('agrees with an independent quadrature over its history, which converges with the second order of its trapezoids', () => {
    const errors = [20, 10, 5].map((maxStep) => {
      const { history, stored, heat, delivered } = battery.run({
        cell: smooth,
        series: 1,
        parallel: 1,
        profile: [{ power: 20, duration: 900 }],
        maxStep,
      })
      let fromStore = 0
      let asHeat = 0
      for (let k = 1; k < history.time.length; k += 1) {
        const open = (at: number) =>
          battery.cellAt({ cell: smooth, stateOfCharge: history.stateOfCharge[at] as number }).openCircuitVoltage
        const step = (history.time[k] as number) - (history.time[k - 1] as number)
        const loss = (at: number) => (history.current[at] as number) * (open(at) - (history.voltage[at] as number))
        fromStore +=
          (step / 2) * ((history.current[k] as number) * open(k) + (history.current[k - 1] as number) * open(k - 1))
        asHeat += (step / 2) * (loss(k) + loss(k - 1))
      }
      expectClose(fromStore, stored, 1e-4)
      expectClose(asHeat, heat, 1e-3)
      expectClose(fromStore - asHeat, delivered, 1e-12)
      return Math.abs(fromStore / stored - 1)
    })
    for (const [coarse = 1, fine = 1] of [errors.slice(0, 2), errors.slice(1, 3)])
      expect(Math.log2(coarse / fine)).toBeCloseTo(2, 1)
  })

  it('closes the book with the fourth order of its rule on a smooth cell', () => {
    const open = [300, 150, 75].map((maxStep) =>
      Math.abs(
        battery.run({ cell: smooth, series: 1, parallel: 1, profile: [{ power: 25, duration: 900 }], maxStep })
          .openBalance,
      ),
    )
    for (const [coarse = 1, fine = 1] of [open.slice(0, 2), open.slice(1, 3)]) {
      const order = Math.log2(coarse / fine)
      expect(order, open.join(' ')).toBeGreaterThan(3.5)
      expect(order, open.join(' ')).toBeLessThan(5.5)
    }
  })

  it('names segment and second of a limit, and stands exactly at it', () => {
    const profile = [...sector.slice(0, 2), { name: 'divert', power: 90 * u.kW, duration: 9000 }]
    const flown = battery.run({ cell, ...pack, profile, floor: 0.15 })
    expect(flown).toMatchObject({ ok: false, status: 'charge floor', segment: 'divert' })
    expectClose(flown.stateOfCharge, 0.15, 1e-8)
    expect(flown.message).toMatch(/charge floor reached in "divert" at second/)
    expect(flown.second).toBeGreaterThan(0)
    expectClose(flown.time, 960 + flown.second, 1e-12)
  })

  it('stops where the power can no longer be given', () => {
    const flown = battery.run({
      cell,
      ...pack,
      parallel: 30,
      rating: 'peak',
      profile: [{ name: 'hover', power: 320 * u.kW, duration: 3000 }],
    })
    expect(flown).toMatchObject({ ok: false, status: 'voltage floor', segment: 'hover' })
    const { stateOfCharge, temperature } = flown
    const limit = battery.powerLimit({ cell, ...pack, parallel: 30, rating: 'peak', stateOfCharge, temperature })
    expectClose(limit.power, 320 * u.kW, 1e-7)
    expectClose(flown.leastVoltage, 200 * 2.5, 1e-6)
  })

  it('stops at once where the first power is out of reach', () => {
    const flown = battery.run({ cell, ...pack, profile: [{ power: 5 * u.MW, duration: 10 }] })
    expect(flown).toMatchObject({ ok: false, status: 'current', segment: 'segment 1', time: 0 })
    expect(flown.leastMargin).toBeLessThan(0)
  })

  it('stops where the cells get too hot, and says so aloud', () => {
    const hot = { ...cell, maximumTemperature: 303.15 }
    const heard = listenWhile(() => {
      const flown = battery.run({ cell: hot, ...pack, profile: [{ power: 320 * u.kW, duration: 600 }] })
      expect(flown.status).toBe('temperature')
      expectClose(flown.temperature, 303.15, 1e-9)
    })
    expect(heard.advisories.map((one) => one.code)).toContain('PACK_RUN_ENDS')
  })

  it('cools towards the ambient as battery.heating has it', () => {
    const cells = 12_000
    const rest = battery.run({
      cell,
      ...pack,
      profile: [{ power: 0, duration: 600 }],
      temperature: 320,
      ambient: 290,
      conductance: 2000,
      maxStep: 5,
    })
    const lump = battery.heating({
      heat: 0,
      duration: 600,
      heatCapacity: cells * cell.mass * cell.specificHeat,
      temperature: 320,
      ambient: 290,
      conductance: 2000,
    })
    expectClose(rest.temperature, lump.temperature, 1e-9)
    expect(rest.stateOfCharge).toBe(1)
    expect(rest.openBalance).toBe(0)
  })

  it.each<[string, object, RegExp]>([
    ['an empty profile', { profile: [] }, /at least one/],
    ['a negative power', { profile: [{ power: -5, duration: 1 }] }, /profile\[0\].power/],
    ['no duration', { profile: [{ power: 5, duration: 0 }] }, /profile\[0\].duration/],
    ['a misspelt segment', { profile: [{ power: 5, time: 1 }] }, /option "time"/],
    ['a profile of weeks', { profile: [{ power: 5, duration: 1e7 }] }, /at most 100000 steps.*maxStep/],
    ['a conductance that cools at once', { conductance: 1e9 }, /conductance/],
    ['a floor above 1', { floor: 2 }, /floor/],
    ['an unknown option', { ambientTemperature: 290 }, /option "ambientTemperature"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => battery.run({ cell, ...pack, profile: sector, ...wrong } as Parameters<typeof battery.run>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('battery.availablePower(options)', () => {
  it('is battery.powerLimit per mass at each charge', () => {
    const curve = battery.availablePower({ cell, cellShare: 0.7, temperature: 280, points: 11 })
    const limit = battery.powerLimit({
      cell,
      series: 1,
      parallel: 1,
      stateOfCharge: curve.stateOfCharge[3] as number,
      temperature: 280,
    })
    expectClose(curve.specificPower[3] as number, 0.7 * limit.specificPower, 1e-13)
    expect(curve.binds[10]).toBe('current')
  })

  it('refuses a share of cells above 1', () => {
    expect(() => battery.availablePower({ cell, cellShare: 1.2 })).toThrow(/cellShare/)
  })
})

describe('battery.ragone(options)', () => {
  it('falls from the energy of the window to nothing at the greatest power', () => {
    const { specificEnergy, specificPower, endCharge } = battery.ragone({ cell, points: 20, floor: 0.1 })
    for (let k = 1; k < 20; k += 1) {
      expect(specificPower[k]).toBeGreaterThan(specificPower[k - 1] as number)
      expect(specificEnergy[k]).toBeLessThan(specificEnergy[k - 1] as number)
    }
    expect(endCharge[0]).toBeCloseTo(0.1, 12)
    expect(specificEnergy[0]).toBeLessThan(battery.window({ cell, to: 0.1 }).energy / cell.mass)
    expect(specificEnergy[19]).toBe(0)
  })

  it('agrees with battery.run at the same power, which integrates in time and not in charge', () => {
    const { specificPower, duration, endCharge } = battery.ragone({ cell, points: 10, rating: 'peak' })
    const isothermal = { ...cell, specificHeat: 1e9 }
    const power = (specificPower[5] as number) * cell.mass
    const flown = battery.run({
      cell: isothermal,
      series: 1,
      parallel: 1,
      rating: 'peak',
      profile: [{ power, duration: 1e4 }],
      maxStep: 0.2,
    })
    expectClose(flown.time, duration[5] as number, 1e-5)
    expect(flown.stateOfCharge).toBeCloseTo(endCharge[5] as number, 5)
  })

  it('refuses to start from an empty cell', () => {
    expect(() => battery.ragone({ cell, from: 0 })).toThrow(/above its voltage floor/)
  })
})
