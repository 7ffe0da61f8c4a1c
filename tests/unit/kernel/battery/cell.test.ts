import { describe, expect, it } from 'vitest'
import {
  negativePotential,
  positivePotential,
  stoichiometry,
} from '../../../../kernel/library/battery/published-ocv.js'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { battery, u } = preloaded
const plain = { capacity: 3 * u.Ah, mass: 0.048, openCircuitVoltage: 3.7, resistance: 0.02, minimumVoltage: 2.5 }
const refused = (wrong: object) => () => battery.cell({ ...plain, ...wrong } as Parameters<typeof battery.cell>[0])

describe('battery.cell(options)', () => {
  it('takes single values, or lists evenly spaced over charge', () => {
    const cell = battery.cell({ ...plain, openCircuitVoltage: [3, 3.6, 4.2], resistance: [0.04, 0.02, 0.02] })
    expect(cell.stateOfCharge).toEqual([0, 0.5, 1])
    expectClose(cell.nominalVoltage, 3.6, 1e-14)
    expectClose(battery.cellAt({ cell, stateOfCharge: 0.25 }).resistance, 0.03, 1e-14)
    expectClose(cell.specificEnergy, (3 * 3600 * 3.6) / 0.048, 1e-14)
  })

  it('raises resistance in the cold by the activation temperature', () => {
    const cell = battery.cell({ ...plain, activationTemperature: 3000 })
    const cold = battery.cellAt({ cell, stateOfCharge: 0.5, temperature: 273.15 }).resistance
    expectClose(cold, 0.02 * Math.exp(3000 * (1 / 273.15 - 1 / 298.15)), 1e-14)
  })

  it('meets the rows of a resistance table, lies between them, and carries on beyond', () => {
    const { resistance: _, ...rest } = plain
    const table = {
      temperature: [273.15, 298.15, 318.15],
      resistance: [
        [0.05, 0.05],
        [0.02, 0.02],
        [0.015, 0.015],
      ],
    }
    const cell = battery.cell({ ...rest, resistanceTable: table })
    const at = (temperature: number) => battery.cellAt({ cell, stateOfCharge: 0.3, temperature }).resistance
    expectClose(at(273.15), 0.05, 1e-14)
    expectClose(at(298.15), 0.02, 1e-13)
    const middle = 2 / (1 / 273.15 + 1 / 298.15)
    expectClose(at(middle), Math.sqrt(0.05 * 0.02), 1e-12)
    expect(at(253.15)).toBeGreaterThan(0.05)
    expect(at(333.15)).toBeLessThan(0.015)
  })

  it.each<[string, object, RegExp]>([
    ['no capacity', { capacity: 0 }, /capacity is 0 C/],
    ['no mass', { mass: Number.NaN }, /mass is NaN/],
    ['a voltage that falls with charge', { openCircuitVoltage: [4, 3] }, /never falls/],
    ['a floor above the full cell', { minimumVoltage: 3.7 }, /below the open-circuit voltage of a full cell/],
    ['charges that do not end at 1', { stateOfCharge: [0, 0.9] }, /rises from 0 to 1/],
    ['lists of unequal length', { stateOfCharge: [0, 0.5, 1], openCircuitVoltage: [3, 4] }, /a list of 3/],
    ['a list of words', { openCircuitVoltage: 'lots' }, /openCircuitVoltage/],
    ['no resistance', { resistance: undefined }, /resistance is missing/],
    ['a negative resistance in a list', { resistance: [0.1, -1] }, /resistance\[1\]/],
    ['a table beside a resistance', { resistanceTable: { temperature: [300], resistance: [[1, 1]] } }, /left out/],
    [
      'a table out of order',
      {
        resistance: undefined,
        resistanceTable: {
          temperature: [300, 280],
          resistance: [
            [1, 1],
            [1, 1],
          ],
        },
      },
      /temperatures that rise/,
    ],
    ['a pulse below the continuous current', { continuousCurrent: 10, peakCurrent: 5 }, /at least the continuous/],
    ['a hottest below the coldest', { minimumTemperature: 300, maximumTemperature: 280 }, /maximumTemperature/],
    ['a misspelt option', { capcity: 5 }, /did you mean "capacity"/],
  ])('refuses %s', (_, wrong, message) => {
    expect(refused(wrong)).toThrow(InvalidInput)
    expect(refused(wrong)).toThrow(message)
  })
})

describe('battery.cells', () => {
  it('follow the published electrode fits within 2 mV everywhere', () => {
    const { negative, positive } = stoichiometry
    for (let k = 0; k <= 1000; k += 1) {
      const charge = k / 1000
      const x = negative.empty + charge * (negative.full - negative.empty)
      const y = positive.empty + charge * (positive.full - positive.empty)
      const { openCircuitVoltage } = battery.cellAt({ cell: battery.cells.energy21700, stateOfCharge: charge })
      expect(Math.abs(openCircuitVoltage - (positivePotential(y) - negativePotential(x)))).toBeLessThan(0.002)
    }
  })

  it('are frozen through and through', () => {
    for (const cell of Object.values(battery.cells)) {
      expect(Object.isFrozen(cell)).toBe(true)
      expect(Object.isFrozen(cell.openCircuitVoltage) && Object.isFrozen(cell.resistance[0])).toBe(true)
    }
  })

  it('hold 180 to 280 Wh/kg as cells in service do (from memory)', () => {
    for (const cell of Object.values(battery.cells)) {
      expect(cell.specificEnergy / u.Wh).toBeGreaterThan(180)
      expect(cell.specificEnergy / u.Wh).toBeLessThan(280)
    }
  })
})

describe('battery.aged({ cell, capacityLeft, resistanceGrowth })', () => {
  const cell = battery.cells.power18650

  it('gives a cell with less charge and more resistance', () => {
    const old = battery.aged({ cell, capacityLeft: 0.8, resistanceGrowth: 1.5 })
    const at = { stateOfCharge: 0.4, temperature: 290 }
    expectClose(old.energy, 0.8 * cell.energy, 1e-14)
    expectClose(
      battery.cellAt({ cell: old, ...at }).resistance,
      1.5 * battery.cellAt({ cell, ...at }).resistance,
      1e-14,
    )
    expectClose(old.continuousRate ?? 0, (cell.continuousRate ?? 1) / 0.8, 1e-14)
  })

  it('advises past the usual end of life and refuses a growth below 1', () => {
    const heard = listenWhile(() => battery.aged({ cell, capacityLeft: 0.6, resistanceGrowth: 2 }))
    expect(heard.advisories).toMatchObject([{ code: 'PAST_END_OF_LIFE' }])
    expect(() => battery.aged({ cell, capacityLeft: 0.8, resistanceGrowth: 0.9 })).toThrow(/resistanceGrowth/)
    expect(() => battery.aged({ cell, capacityLeft: 1.1, resistanceGrowth: 1 })).toThrow(/capacityLeft/)
  })
})

describe('battery.fade({ cycles, cyclesToEndOfLife })', () => {
  it('reaches the end of life at its number of cycles, whatever the exponent', () => {
    for (const exponent of [0.5, 1, 1.5]) {
      const end = battery.fade({ cycles: 800, cyclesToEndOfLife: 800, exponent })
      expectClose(end.capacityLeft, 0.8, 1e-14)
      expectClose(end.resistanceGrowth, 1.5, 1e-14)
      expect(end.lifeLeft).toBe(0)
    }
  })

  it('advises beyond it, and refuses more cycles than leave any capacity', () => {
    const heard = listenWhile(() => battery.fade({ cycles: 900, cyclesToEndOfLife: 800 }))
    expect(heard.advisories).toMatchObject([{ code: 'PAST_END_OF_LIFE', quantity: 'cycles' }])
    expect(() => battery.fade({ cycles: 8000, cyclesToEndOfLife: 800 })).toThrow(/capacity left after 8000 cycles/)
  })
})
