import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { editAssumption } from '../../../kernel/cells/edit/index.js'
import { type AssumptionRecord, CellId } from '../../../shared/contracts/index.js'
import {
  type AssumptionRow,
  distributionText,
  rangeText,
  readDistribution,
  readRange,
  readUnit,
} from '../../../shared/rendering/register/index.js'

const row = (record: Partial<AssumptionRecord> = {}, dimension: string | null = 'm^2 s^-2'): AssumptionRow => ({
  name: 'packEnergy',
  cell: CellId.parse('a'),
  number: '1',
  order: 0,
  state: 'current',
  record: { name: 'packEnergy', value: 235 * 3600, unit: 'Wh/kg', ...record },
  dimension,
  usedIn: [],
})

const said = (reading: { readonly ok: boolean; readonly message?: string }) => (reading.ok ? 'taken' : reading.message)

describe('readRange(text, row)', () => {
  const of = (text: string) => {
    const reading = readRange(text, row())
    return reading.ok ? reading.stated : reading.message
  }

  test('readRange takes two numbers in the unit shown, with one unit for both, or each with its own', () => {
    expect(of('200 to 265')).toEqual([720_000, 954_000])
    expect(of('range 200 Wh/kg to 265 Wh/kg')).toEqual([720_000, 954_000])
    expect(of('0.2 – 0.265 kWh/kg')).toEqual([720_000, 954_000])
    expect(of('200 Wh/kg to 0.265 kWh/kg')).toEqual([720_000, 954_000])
    expect(of(' ')).toBeNull()
  })

  test('readRange refuses in a sentence, with an example in the unit', () => {
    for (const [text, words] of [
      ['200', '"200" is not two numbers parted by "to".'],
      ['200 to', '"200 to" is not two numbers parted by "to".'],
      ['1 to 2 to 3', 'is not two numbers parted by "to".'],
      ['265 to 200', '"265 to 200" does not rise from the lower end to the upper.'],
      ['200 to much', '"much" does not begin with a number'],
      ['200 kg to 265', '"200 kg" is in kg'],
      ['2,5 to 3', 'holds a comma'],
      ['<b> to 5', '"<b>" does not begin with a number'],
    ] as const) {
      expect(of(text), text).toContain(words)
      expect(of(text), text).toMatch(
        /Accepted is a range such as "212 to 259" in Wh\/kg, or nothing, which takes it out\.$/,
      )
    }
  })

  test('readRange takes back what rangeText gives', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -1e7, max: 1e7, noNaN: true }),
        fc.double({ min: 0, max: 1e7, noNaN: true }),
        (low, wide) => {
          const one = row({ low, high: low + wide })
          const reading = readRange(rangeText(one), one)
          if (!reading.ok || reading.stated === null) throw new Error(`not taken: ${rangeText(one)}`)
          const [back, to] = reading.stated
          expect(Math.abs(back - low)).toBeLessThanOrEqual(1e-12 * Math.abs(low) + 1e-300)
          expect(Math.abs(to - low - wide)).toBeLessThanOrEqual(1e-12 * Math.abs(low + wide) + 1e-300)
        },
      ),
    ))
})

describe('readDistribution(text, row)', () => {
  const of = (text: string, one = row()) => {
    const reading = readDistribution(text, one)
    return reading.ok ? reading.stated : reading.message
  }

  test('readDistribution reads the words in which distributions are shown', () => {
    expect(of('normal, deviation 10 Wh/kg')).toEqual({ normal: 36_000 })
    expect(of('Normal 10')).toEqual({ normal: 36_000 })
    expect(of('uniform, 200 to 265')).toEqual({ uniform: [720_000, 954_000] })
    expect(of('triangular: 200 to 265 Wh/kg')).toEqual({ triangular: [720_000, 954_000] })
    expect(of('lognormal, factor 1.2')).toEqual({ lognormal: 1.2 })
    expect(of('')).toBeNull()
  })

  test('readDistribution takes back what distributionText gives, and the source takes it', () => {
    const source = "const packEnergy = assumption('packEnergy', 235 * u.Wh / u.kg, { unit: 'Wh/kg' }) // kept"
    const value = 235 * 3600
    for (const distribution of [
      { kind: 'normal', mean: value, deviation: 36_000 },
      { kind: 'uniform', low: 720_000, high: 954_000 },
      { kind: 'triangular', low: 720_000, mode: value, high: 954_000 },
      { kind: 'lognormal', median: value, factor: 1.25 },
    ] as const) {
      const one = row({ distribution })
      const reading = readDistribution(distributionText(one), one)
      const stated = reading.ok ? reading.stated : null
      const { kind } = distribution
      const form = { normal: 36_000, uniform: [720_000, 954_000], triangular: [720_000, 954_000], lognormal: 1.25 }[
        kind
      ]
      expect(stated).toEqual({ [kind]: form })
      const edit = editAssumption(source, 'packEnergy', { distribution: stated })
      expect(edit.ok && edit.source).toMatch(/, distribution: \{ \w+: .*\} \}\) \/\/ kept$/)
      const back = edit.ok ? editAssumption(edit.source, 'packEnergy', { distribution: null }) : edit
      expect(back).toEqual({ ok: true, source })
    }
  })

  test('readDistribution refuses in a sentence that names the forms', () => {
    for (const [text, words] of [
      ['gaussian 5', '"gaussian" is no distribution.'],
      ['unifrom, 1 to 2', '"unifrom" is no distribution; did you mean "uniform"?'],
      ['5', '"5" is no distribution.'],
      ['normal, deviation 0', 'A deviation is above 0.'],
      ['normal', 'Nothing was typed.'],
      ['uniform, 265 to 200', 'does not rise'],
      ['uniform, 200 to 200', 'does not rise'],
      ['uniform, 200', 'is not two numbers'],
      ['triangular, 240 to 265', 'The value 235 does not lie between "240 to 265"'],
      ['triangular, 265 to 200', 'does not rise'],
      ['triangular, 265', 'is not two numbers'],
      ['lognormal, factor 1', '"1" is no factor above 1'],
      ['lognormal, factor 1.2 kg', 'is no factor above 1'],
      ['constructor', '"constructor" is no distribution.'],
    ] as const) {
      expect(of(text), text).toContain(words)
      expect(of(text), text).toMatch(
        /Accepted is "normal, deviation 11.8", "uniform, 212 to 259", .*or nothing, which takes it out\.$/,
      )
    }
    expect(of('lognormal, factor 2', row({ value: -1 }))).toContain('about a value above 0')
  })

  test('distributionText and rangeText are empty where nothing is stated', () => {
    expect([distributionText(row()), rangeText(row()), rangeText(row({ low: 1 }))]).toEqual(['', '', ''])
  })
})

describe('readUnit(text, row)', () => {
  test('readUnit takes a unit of the same quantity, and nothing', () => {
    expect(readUnit(' kWh/kg ', row())).toEqual({ ok: true, stated: 'kWh/kg' })
    expect(readUnit('', row())).toEqual({ ok: true, stated: null })
    expect(readUnit('kg', row({ unit: undefined as never }, null))).toEqual({ ok: true, stated: 'kg' })
  })

  test('readUnit refuses another quantity and what is no unit', () => {
    expect(said(readUnit('kg', row()))).toBe(
      '"kg" is a unit of kg, and "packEnergy" is in m^2 s^-2. Accepted is a unit of the latter.',
    )
    expect(said(readUnit('zorkmid', row()))).toContain('"zorkmid" has no unit "zorkmid"')
    expect(said(readUnit('degC', row({}, 'K')))).toContain('give a temperature in K')
  })
})
