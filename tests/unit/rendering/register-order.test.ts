import { describe, expect, test } from 'vitest'
import { type AssumptionRecord, CellId } from '../../../shared/contracts/index.js'
import {
  type AssumptionRow,
  arrangeRows,
  nextOrder,
  pageOrder,
  type RegisterColumn,
  readValue,
  valueText,
} from '../../../shared/rendering/register/index.js'

const cell = CellId.parse('a')

function row(record: AssumptionRecord, order = 0, dimension: string | null = 'kg'): AssumptionRow {
  return { name: record.name, cell, number: String(order + 1), order, state: 'current', record, dimension, usedIn: [] }
}

const rows = [
  row({ name: 'wing10', value: 30, unit: 'kg', source: 'Weighed', owner: 'masses' }, 0),
  row({ name: 'wing9', value: 'NaN', source: '  ' }, 1),
  row({ name: 'Battery', value: 350, low: 300, high: 400, source: 'quote', note: 'cell\nlevel' }, 2),
  row({ name: 'payload', value: 30, distribution: { kind: 'normal', mean: 30, deviation: 2 } }, 3),
]

function sorted(column: RegisterColumn, descending = false): readonly string[] {
  return arrangeRows(rows, { column, descending }).map(({ name }) => name)
}

describe('arrangeRows(rows, order, filter)', () => {
  test('arrangeRows sorts numbers as numbers and names as people count', () => {
    expect(sorted('name')).toEqual(['Battery', 'payload', 'wing9', 'wing10'])
    expect(sorted('value')).toEqual(['wing10', 'payload', 'Battery', 'wing9'])
  })

  test('arrangeRows keeps page order among equals and puts what is not stated last, falling too', () => {
    expect(sorted('value', true)).toEqual(['Battery', 'wing10', 'payload', 'wing9'])
    expect(sorted('source', true)).toEqual(['wing10', 'Battery', 'wing9', 'payload'])
    expect(sorted('sureness')).toEqual(['payload', 'Battery', 'wing10', 'wing9'])
    expect(sorted('trial')).toEqual(rows.map(({ name }) => name))
    const tried = [...rows, row({ name: 'span', value: 9, trial: 10 }, 4)]
    expect(arrangeRows(tried, { column: 'trial', descending: false })[0]?.name).toBe('span')
    expect(sorted('used')).toEqual(rows.map(({ name }) => name))
  })

  test('arrangeRows leaves the rows it was given as they are', () => {
    const before = [...rows]
    arrangeRows(rows, { column: 'row', descending: true })
    expect(rows).toEqual(before)
  })

  test('arrangeRows shows what holds every word, wherever it stands', () => {
    const found = (words: string, withoutSource = false) =>
      arrangeRows(rows, pageOrder, { words, withoutSource }).map(({ name }) => name)
    expect(found('WING masses')).toEqual(['wing10'])
    expect(found(' level ')).toEqual(['Battery'])
    expect(found('', true)).toEqual(['wing9', 'payload'])
    expect(found('.*')).toEqual([])
  })
})

describe('nextOrder(order, column)', () => {
  test('nextOrder rises first, then falls, then rises', () => {
    const once = nextOrder(pageOrder, 'value')
    expect(once).toEqual({ column: 'value', descending: false })
    expect(nextOrder(once, 'value')).toEqual({ column: 'value', descending: true })
    expect(nextOrder(nextOrder(once, 'value'), 'value')).toEqual(once)
  })
})

describe('readValue(text, row)', () => {
  const energy = row({ name: 'packEnergy', value: 235 * 3600, unit: 'Wh/kg' }, 0, 'm^2 s^-2')
  const si = (text: string, of = energy) => {
    const reading = readValue(text, of)
    return reading.ok ? reading.si : reading.message
  }

  test('readValue takes a bare number in the unit shown, and other units of the quantity', () => {
    expect(si('240')).toBe(864_000)
    expect(si('0.24 kWh/kg')).toBeCloseTo(864_000, 6)
    expect(si('1\u202f240.5')).toBeCloseTo(1240.5 * 3600, 6)
    expect(si('\u22122e2')).toBe(-720_000)
  })

  test('readValue reads per cent of a pure number', () => {
    const share = row({ name: 'share', value: 0.2 }, 0, '1')
    expect(si('25 %', share)).toBeCloseTo(0.25, 12)
    expect(si('0.3', share)).toBe(0.3)
  })

  test('readValue refuses what it cannot take, saying what came and what would be accepted', () => {
    const accepted = /Accepted is a number in Wh\/kg, with a point for decimals/
    for (const text of ['', 'much', '240 kg', '2,5', '240 zorkmid', '1e999', '<b>5</b>']) {
      expect(si(text), text).toMatch(accepted)
    }
    expect(si('240 kg')).toContain('"240 kg" is in kg, not in m^2 s^-2')
    expect(si('')).toContain('Nothing was typed.')
    expect(si('2,5')).toContain('comma')
    expect(si('5 kg', row({ name: 'x', value: 1 }, 0, null))).toContain('a unit is not taken')
    expect(si('1e308', row({ name: 'x', value: 1, unit: 'km' }, 0, 'm'))).toContain('too great')
  })

  test('valueText gives a text that readValue takes back to the same value', () => {
    expect(valueText(energy)).toBe('235')
    for (const value of [0.1 + 0.2, 1234.5678, 1e-9, -3]) {
      const one = row({ name: 'x', value, unit: 'mm' }, 0, 'm')
      expect(si(valueText(one), one)).toBeCloseTo(value, 12)
    }
  })
})
