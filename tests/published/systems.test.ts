/**
 * Published cases of batteries, masses, booms and wires. Printed numbers are the evidence; formulas worked out again only check
 * arithmetic. Known misses keep their tolerance and are listed with the error they have.
 */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../kernel/library/index.js'
import { readCases } from './cases.js'
import { checkCases } from './check-cases.js'
import { methods, publishedDuty } from './system-methods.js'

const { battery, u } = preloaded
const cases = ['cases-battery.json', 'cases-mass.json'].flatMap(readCases)

checkCases({ subject: 'batteries, masses, booms and wires', cases, methods })

describe('the published duty of one cell (Bills et al., Scientific Data 10:344, 2023; read in a dataset card)', () => {
  const fly = (cell: typeof battery.cells.power18650) =>
    battery.run({ cell, series: 1, parallel: 1, profile: publishedDuty, rating: 'peak' })

  it('takes 22,520 J at the terminals, 43.2 % of them in the two hovers', () => {
    const flown = fly(battery.cells.power18650)
    expect(flown.ok).toBe(true)
    expect(flown.delivered).toBeCloseTo(22_520, 6)
    const hover = publishedDuty
      .filter((segment) => segment.power === 54)
      .reduce((sum, { power, duration }) => sum + power * duration, 0)
    expect(hover / flown.delivered).toBeCloseTo(0.432, 3)
  })

  it('is flown by a new power cell and by one at the end of its life, as the published cells did for hundreds of missions', () => {
    const old = battery.aged({ cell: battery.cells.power18650, capacityLeft: 0.85, resistanceGrowth: 1.5 })
    for (const cell of [battery.cells.power18650, old]) {
      const flown = fly(cell)
      expect(flown.message).toBe('')
      expect(flown.leastVoltage).toBeGreaterThan(2.5)
      expect(flown.stateOfCharge).toBeGreaterThan(0.1)
    }
  })

  it('heats a cell by 5 to 25 K if nothing cools it, more with the lower of the specific heats read, 830 and 1040 J/(kg K)', () => {
    const warm = fly(battery.cells.power18650)
    const nickelCobaltAluminium = fly({ ...battery.cells.power18650, specificHeat: 830 })
    for (const flown of [warm, nickelCobaltAluminium]) {
      expect(flown.greatestTemperature - 298.15).toBeGreaterThan(5)
      expect(flown.greatestTemperature - 298.15).toBeLessThan(25)
    }
    expect(nickelCobaltAluminium.greatestTemperature).toBeGreaterThan(warm.greatestTemperature)
  })

  it('draws at landing a current within the current of a pulse but above the continuous one of the data page', () => {
    const flown = fly(battery.cells.power18650)
    expect(flown.greatestCurrent).toBeGreaterThan(battery.cells.power18650.continuousCurrent ?? 0)
    expect(flown.greatestCurrent).toBeLessThan(20 * u.A)
  })
})
