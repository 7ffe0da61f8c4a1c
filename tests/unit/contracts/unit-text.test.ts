import * as mathjs from 'mathjs'
import { describe, expect, test } from 'vitest'
import {
  formatDimension,
  parseDimension,
  parseQuantity,
  parseUnit,
  unitTable,
} from '../../../shared/contracts/index.js'

/** Symbols whose spelling differs in mathjs, the independent units library the factors are checked against. */
const spelledThere: Readonly<Record<string, string>> = {
  nmi: '1852 m',
  t: 'tonne',
  min: 'minute',
  h: 'hour',
  psf: 'lbf/ft^2',
  mps: 'm/s',
  kmh: 'km/hour',
  kt: '1852 m/hour',
  fpm: 'ft/minute',
  rpm: '2 * 3.141592653589793 / minute',
  mohm: 'milliohm',
  Ah: 'A hour',
  g0: '9.80665 m/s^2',
  m2: 'm^2',
  ft2: 'ft^2',
  m3: 'm^3',
  Wh: 'W hour',
  kWh: 'kW hour',
  L: 'litre',
  C: 'A s',
  // mathjs rounds its own hp and psi to ten digits, so both are built from its exact foot, inch and pound-force.
  slug: 'lbf s^2/ft',
  hp: '550 ft lbf/s',
  psi: 'lbf/in^2',
}

const coherent = (dimension: string) => (dimension === '1' ? '' : dimension)

describe('unitTable against mathjs', () => {
  test.each(unitTable.map((unit) => [unit.symbol, unit] as const))('%s has the factor mathjs has', (symbol, unit) => {
    const there = mathjs.evaluate(`(${spelledThere[symbol] ?? `1 ${symbol}`})`)
    const target = coherent(formatDimension(unit.dimension))
    const factor = typeof there === 'number' ? there : target === '' ? there.toNumber('rad') : there.toNumber(target)
    expect(Math.abs(factor / unit.factor - 1)).toBeLessThan(1e-12)
  })
})

describe('parseUnit', () => {
  test.each([
    ['Wh/kg', 3600, 'm^2 s^-2'],
    ['kg m^2 s^-3', 1, 'kg m^2 s^-3'],
    ['kg*m^2/s^3', 1, 'kg m^2 s^-3'],
    ['N·m', 1, 'kg m^2 s^-2'],
    ['m/s', 1, 'm s^-1'],
    ['m/s²', 1, 'm s^-2'],
    ['m s⁻¹', 1, 'm s^-1'],
    ['m2', 1, 'm^2'],
    ['m**2', 1, 'm^2'],
    ['kW/kg', 1000, 'm^2 s^-3'],
    ['N/m^2', 1, 'kg m^-1 s^-2'],
    ['%', 0.01, '1'],
    ['1', 1, '1'],
    ['', 1, '1'],
    ['1/s', 1, 's^-1'],
    ['Ω', 1, 'kg m^2 s^-3 A^-2'],
    ['kg m^0.5', 1, 'kg m^0.5'],
  ])('reads "%s"', (text, factor, dimension) => {
    const reading = parseUnit(text)
    expect(reading.ok && [reading.unit.factor, formatDimension(reading.unit.dimension)]).toEqual([factor, dimension])
  })

  test.each([
    ['furlong', /no unit "furlong".*Known units: m km/],
    ['KW', /Did you mean "kW"/],
    ['m//s', /both sides/],
    ['/s', /both sides/],
    ['m/', /ends where a unit should follow/],
    ['*m', /both sides/],
    ['°C', /offset.*in K/],
  ])('refuses "%s" in a sentence', (text, sentence) => {
    const reading = parseUnit(text)
    expect(!reading.ok && reading.message).toMatch(sentence)
  })
})

describe('parseQuantity', () => {
  test.each([
    ['235 Wh/kg', 846_000],
    ['60km', 60_000],
    ['-1.5e3 N', -1500],
    ['8', 8],
    ['.5 kg', 0.5],
    ['1_000 m', 1000],
    ['5 %', 0.05],
  ])('reads "%s"', (text, si) => {
    const reading = parseQuantity(text)
    expect(reading.ok && reading.si).toBeCloseTo(si, 9)
  })

  test.each(['sixty km', '', 'km', 'NaN m', 'Infinity kg', '1..2 m', '0x10 m'])('refuses "%s"', (text) => {
    expect(parseQuantity(text).ok).toBe(false)
  })
})

describe('parseDimension', () => {
  test('reads back what formatDimension writes, for every unit', () => {
    for (const unit of unitTable) {
      const text = formatDimension(unit.dimension)
      expect(formatDimension(parseDimension(text) ?? [9, 9, 9, 9, 9])).toBe(text)
    }
  })
  test('gives null for anything else', () => {
    expect(parseDimension('kg furlong')).toBeNull()
    expect(parseDimension('')).toBeNull()
  })
})
