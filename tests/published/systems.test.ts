/**
 * Published cases of batteries, masses, booms and wires. Printed numbers are the evidence; formulas worked out again only check
 * arithmetic. Known misses keep their tolerance and are listed with the error they have.
 */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../kernel/library/index.js'
import { type Case, kindOf, readCases, storedDigits } from './cases.js'
import { methods, publishedDuty } from './system-methods.js'

const { battery, u } = preloaded
const cases = ['cases-battery.json', 'cases-mass.json'].flatMap(readCases)

/** Computed over published, less one, where that is beyond the case's tolerance; and why. */
const knownMisses: Readonly<Record<string, { readonly error: number; readonly why: string }>> = {}

function evaluate(one: Case): number {
  const method = methods.find(([pattern]) => pattern.test(one.id))
  if (method === undefined) throw new Error(`no kernel method answers the case ${one.id}`)
  return method[1](one.inputs)
}

function checkKind(kind: 'external' | 're-evaluated'): void {
  const chosen = cases.filter((one) => kindOf(one) === kind)
  it(`there are some (${chosen.length} of ${cases.length})`, () => expect(chosen.length).toBeGreaterThan(0))
  it.each(chosen)('$id ($provenance): $quantity, $source', (one) => {
    const actual = evaluate(one)
    const error = actual / one.expected - 1
    const allowed = one.tolerance_rel + storedDigits
    const miss = knownMisses[one.id]
    const said = `${actual} for ${one.expected}, off by ${error.toExponential(2)}`
    if (miss === undefined) {
      expect(Math.abs(error), said).toBeLessThanOrEqual(allowed)
      return
    }
    expect(Math.abs(error), `${said}: no longer a miss`).toBeGreaterThan(allowed)
    const change = Math.abs(error / miss.error - 1)
    expect(change, `${said}: a known miss of ${miss.error} (${miss.why})`).toBeLessThan(0.02)
  })
}

describe('external: numbers printed by somebody else', () => checkKind('external'))
describe('re-evaluated: published formulas worked out again', () => checkKind('re-evaluated'))

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
