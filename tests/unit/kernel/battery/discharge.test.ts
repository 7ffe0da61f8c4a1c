import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { battery, u } = preloaded
const cell = battery.cells.power18650
const state = { cell, series: 200, parallel: 40, stateOfCharge: 0.4, temperature: 298.15 }

describe('battery.discharge(options)', () => {
  it('gives current, voltage and heat that add up to the power and to the open-circuit power', () => {
    const now = battery.discharge({ ...state, power: 300 * u.kW })
    expect(now).toMatchObject({ ok: true, status: 'ok', message: '' })
    expectClose(now.current * now.voltage, 300 * u.kW, 1e-13)
    expectClose(now.current * now.openCircuitVoltage, 300 * u.kW + now.heat, 1e-13)
    expectClose(now.current ** 2 * now.resistance, now.heat, 1e-13)
    expectClose(now.efficiency, now.voltage / now.openCircuitVoltage, 1e-14)
    expectClose(now.deficit, 300 * u.kW - now.powerLimit, 1e-14)
  })

  it('is the same per cell whatever the pack', () => {
    const one = battery.discharge({ ...state, series: 1, parallel: 1, power: 300e3 / 8000 })
    const all = battery.discharge({ ...state, power: 300e3 })
    expectClose(one.cellVoltage, all.cellVoltage, 1e-13)
  })

  it('explains what it cannot give, with the signed deficit and the values at the limit', () => {
    const limit = battery.powerLimit(state)
    const asked = battery.discharge({ ...state, power: 1.2 * limit.power })
    expect(asked.ok).toBe(false)
    expect(asked.status).toBe('current')
    expect(asked.message).toMatch(/cannot give .* kW at a charge of 0.4000 and 298.1 K|298.2 K/)
    expectClose(asked.deficit, 0.2 * limit.power, 1e-12)
    expectClose(asked.power, limit.power, 1e-14)
    expectClose(asked.current, limit.current, 1e-14)
    expect(battery.discharge({ ...state, power: 0.5 * limit.power }).deficit).toBeLessThan(0)
  })

  it.each<['voltage floor' | 'half voltage' | 'current' | 'empty', object]>([
    ['voltage floor', { minimumVoltage: 2.5 }],
    ['half voltage', { minimumVoltage: 1 }],
    ['current', { continuousCurrent: 5 }],
    ['empty', { openCircuitVoltage: [2.4, 2.6], minimumVoltage: 2.5 }],
  ])('names the bound: %s', (status, with_) => {
    const own = { capacity: 1e4, mass: 0.05, openCircuitVoltage: 3.4, resistance: 0.03, minimumVoltage: 2.5, ...with_ }
    const asked = battery.discharge({ ...state, cell: own, stateOfCharge: 0.1, power: 1e9 })
    expect(asked.status).toBe(status)
    expect(asked.message).not.toBe('')
    expect(Number.isFinite(asked.current)).toBe(true)
  })

  it('lets the rated current of a pulse through where it is asked to, with an advisory', () => {
    const { power } = battery.powerLimit(state)
    const heard = listenWhile(() => {
      expect(battery.discharge({ ...state, power: 1.1 * power, rating: 'peak' }).ok).toBe(true)
    })
    expect(heard.advisories).toMatchObject([{ code: 'CONTINUOUS_CURRENT' }])
  })

  it('advises when it fails and when the cell is too cold', () => {
    const heard = listenWhile(() => battery.discharge({ ...state, temperature: 240, power: 1e7 }))
    expect(heard.advisories.map((one) => one.code)).toEqual(['CELL_TEMPERATURE', 'PACK_POWER'])
  })

  it.each<[string, object]>([
    ['a negative power', { power: -1 }],
    ['a charge above 1', { stateOfCharge: 1.01 }],
    ['a temperature in Celsius', { temperature: 25 }],
    ['no cells', { series: 0 }],
    ['a rating it does not know', { rating: 'burst' }],
    ['a cell that is a number', { cell: 3.7 }],
    ['a record that lacks its lists', { cell: { cell: 'circuit' } }],
    ['an unknown option', { voltage: 700 }],
  ])('refuses %s', (_, wrong) => {
    const call = () => battery.discharge({ ...state, power: 1e5, ...wrong } as Parameters<typeof battery.discharge>[0])
    expect(call).toThrow(InvalidInput)
  })
})

describe('battery.pack(options)', () => {
  it('counts cells in series and parallel from voltage and energy', () => {
    const pack = battery.pack({ cell, voltage: 700 * u.V, energy: 80 * u.kWh })
    expect(pack.series).toBe(Math.round(700 / cell.nominalVoltage))
    expect(Number.isInteger(pack.parallel)).toBe(true)
    expect(pack.energy).toBeGreaterThanOrEqual(80 * u.kWh)
    expect(pack.energy - pack.series * cell.energy).toBeLessThan(80 * u.kWh)
    expectClose(pack.mass, (pack.count * cell.mass) / 0.7, 1e-14)
    const sized = battery.pack({ cell, voltage: 700, energy: 80 * u.kWh, whole: false })
    expectClose(sized.energy, 80 * u.kWh, 1e-14)
  })

  it('advises a share of cells outside practice and refuses what cannot be', () => {
    const heard = listenWhile(() => battery.pack({ cell, series: 10, parallel: 2, cellShare: 0.95 }))
    expect(heard.advisories).toMatchObject([{ code: 'CELL_SHARE' }])
    expect(() => battery.pack({ cell, series: 10, parallel: 0 })).toThrow(/parallel/)
    expect(() => battery.pack({ cell, voltage: -1, energy: 1 })).toThrow(/voltage/)
    const whole = 'yes' as unknown as boolean
    expect(() => battery.pack({ cell, voltage: 1, energy: 1, whole })).toThrow(/true or false/)
  })
})

describe('battery.window({ cell, from, to })', () => {
  it('adds up: two windows side by side are the whole', () => {
    const upper = battery.window({ cell, from: 1, to: 0.37 })
    const lower = battery.window({ cell, from: 0.37, to: 0 })
    expectClose(upper.energy + lower.energy, cell.energy, 1e-13)
    expectClose(upper.chargeShare + lower.chargeShare, 1, 1e-14)
    expect(upper.energyShare).toBeGreaterThan(upper.chargeShare)
  })

  it('refuses a window the wrong way round', () => {
    expect(() => battery.window({ cell, from: 0.2, to: 0.5 })).toThrow(/below from, which is 0.2/)
  })
})

describe('battery.massForMission(options)', () => {
  const mission = { cell, floor: 0.1, energy: 40 * u.kWh, demands: [{ name: 'landing', power: 300 * u.kW }] }

  it('is the greater of the mass for energy and the mass for power, and says which', () => {
    const sized = battery.massForMission(mission)
    expect(sized.mass).toBe(Math.max(sized.energyMass, sized.powerMass))
    expect(battery.massForMission({ ...mission, energy: 400 * u.kWh }).binds).toBe('energy')
    expect(battery.massForMission({ ...mission, energy: 1 })).toMatchObject({ binds: 'power', demand: 'landing' })
  })

  it('gives a pack that can just give the power, and just holds the energy', () => {
    const sized = battery.massForMission({ ...mission, energy: 1 })
    const limit = battery.powerLimit({ ...state, series: 1, parallel: sized.count, stateOfCharge: 0.1 })
    expectClose(limit.power, 300 * u.kW, 1e-12)
    const long = battery.massForMission({ ...mission, energy: 400 * u.kWh, efficiency: 1 })
    expectClose(long.count * battery.window({ cell, to: 0.1 }).energy, 400 * u.kWh, 1e-12)
  })

  it('takes the worst of several demands and advises on the cold', () => {
    const demands = [
      { name: 'take-off', power: 320 * u.kW, stateOfCharge: 0.95 },
      { name: 'landing in the cold', power: 300 * u.kW, stateOfCharge: 0.15, temperature: 250 },
    ]
    const heard = listenWhile(() => {
      expect(battery.massForMission({ ...mission, demands }).demand).toBe('landing in the cold')
    })
    expect(heard.advisories).toMatchObject([{ code: 'CELL_TEMPERATURE' }])
  })

  it.each<[string, object, RegExp]>([
    ['no demands', { demands: [] }, /at least one/],
    ['a demand on an empty cell', { demands: [{ power: 1, stateOfCharge: 0 }] }, /voltage floor/],
    ['a floor above the start', { floor: 1 }, /below the charge at the start/],
    ['an efficiency of 0', { efficiency: 0 }, /efficiency/],
    ['a misspelt demand', { demands: [{ powr: 1 }] }, /did you mean "power"/],
  ])('refuses %s', (_, wrong, message) => {
    expect(() => battery.massForMission({ ...mission, ...wrong })).toThrow(message)
  })
})

describe('battery.heating(options)', () => {
  const lump = { heat: 500, duration: 300, heatCapacity: 20e3, temperature: 295, ambient: 285 }

  it('passes into the adiabatic rise without a jump as the conductance goes to nothing', () => {
    const adiabatic = battery.heating(lump).rise
    expectClose(adiabatic, (500 * 300) / 20e3, 1e-14)
    expectClose(battery.heating({ ...lump, conductance: 1e-9 }).rise, adiabatic, 1e-9)
  })

  it('ends at the balance of heat and cooling', () => {
    expectClose(battery.heating({ ...lump, conductance: 50, duration: 1e6 }).temperature, 285 + 10, 1e-12)
  })

  it('refuses a negative conductance', () => {
    expect(() => battery.heating({ ...lump, conductance: -1 })).toThrow(/conductance/)
  })
})

describe('battery.peukert(options)', () => {
  const lead = { capacity: 100 * u.Ah, ratedTime: 20 * u.h, current: 5 * u.A, exponent: 1.2 }

  it('gives the rated time at the rated current', () => {
    expectClose(battery.peukert(lead).time, 20 * u.h, 1e-14)
    expectClose(battery.peukert(lead).capacityShare, 1, 1e-14)
  })

  it('advises above the exponents of lithium-ion cells, and refuses one below 1', () => {
    expect(listenWhile(() => battery.peukert(lead)).advisories).toMatchObject([{ code: 'PEUKERT_EXPONENT' }])
    expect(() => battery.peukert({ ...lead, exponent: 0.9 })).toThrow(/exponent/)
    expect(() => battery.peukertRangeSpeed({ exponent: 3 })).toThrow(/exponent/)
  })
})
