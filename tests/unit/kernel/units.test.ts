import { readFileSync } from 'node:fs'
import { unit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { formatDimension, parseDimension, unitTable } from '../../../shared/contracts/index.js'
import { expectClose } from './close-to.js'

const { u } = preloaded

/**
 * Factors from mathjs 15.2.0 (general-purpose units library): our symbol, its spelling there, the SI unit there. Its horsepower,
 * psi and slug are stored rounded (1e-9 or so), hence their tolerance; NIST below has them exactly.
 */
const mathjs: readonly [keyof typeof u, string, string, number?][] = [
  ['m', 'm', 'm'],
  ['km', 'km', 'm'],
  ['cm', 'cm', 'm'],
  ['mm', 'mm', 'm'],
  ['ft', 'ft', 'm'],
  ['in', 'inch', 'm'],
  ['mi', 'mile', 'm'],
  ['kg', 'kg', 'kg'],
  ['g', 'g', 'kg'],
  ['t', 'tonne', 'kg'],
  ['lb', 'lbm', 'kg'],
  ['s', 's', 's'],
  ['min', 'minute', 's'],
  ['h', 'hour', 's'],
  ['N', 'N', 'N'],
  ['kN', 'kN', 'N'],
  ['lbf', 'lbf', 'N'],
  ['W', 'W', 'W'],
  ['kW', 'kW', 'W'],
  ['MW', 'MW', 'W'],
  ['hp', 'hp', 'W', 1e-9],
  ['J', 'J', 'J'],
  ['kJ', 'kJ', 'J'],
  ['MJ', 'MJ', 'J'],
  ['Wh', 'Wh', 'J'],
  ['kWh', 'kWh', 'J'],
  ['Pa', 'Pa', 'Pa'],
  ['kPa', 'kPa', 'Pa'],
  ['MPa', 'MPa', 'Pa'],
  ['bar', 'bar', 'Pa'],
  ['psi', 'psi', 'Pa', 1e-9],
  ['psf', 'lbf/ft^2', 'Pa'],
  ['slug', 'lbf s^2/ft', 'kg'],
  ['m2', 'm2', 'm^2'],
  ['ft2', 'sqft', 'm^2'],
  ['m3', 'm3', 'm^3'],
  ['L', 'L', 'm^3'],
  ['mps', 'm/s', 'm/s'],
  ['kmh', 'km/h', 'm/s'],
  ['fpm', 'ft/minute', 'm/s'],
  ['rad', 'rad', 'rad'],
  ['deg', 'deg', 'rad'],
  ['rpm', '2 pi rad/minute', 'rad/s'],
  ['Hz', 'Hz', 'Hz'],
  ['K', 'K', 'K'],
  ['A', 'A', 'A'],
  ['V', 'V', 'V'],
  ['ohm', 'ohm', 'ohm'],
  ['mohm', 'milliohm', 'ohm'],
  ['C', 'C', 'C'],
  ['Ah', 'A hour', 'C'],
]

/** NIST Special Publication 811 (2008), appendix B.8, to the digits printed; bold there (exact) means 1e-15 here. */
const nist: readonly [keyof typeof u, number, number][] = [
  ['ft', 0.3048, 1e-15],
  ['in', 0.0254, 1e-15],
  ['nmi', 1852, 1e-15],
  ['mi', 1609.344, 1e-15],
  ['lb', 0.45359237, 1e-15],
  ['slug', 14.5939, 1e-6],
  ['lbf', 4.448222, 1e-6],
  ['hp', 745.6999, 1e-6],
  ['psi', 6894.757, 1e-6],
  ['psf', 47.88026, 1e-6],
  ['kt', 0.5144444, 1e-6],
  ['kmh', 0.2777778, 1e-6],
  ['fpm', 0.00508, 1e-15],
  ['ft2', 0.09290304, 1e-15],
  ['Wh', 3600, 1e-15],
  ['kWh', 3.6e6, 1e-15],
  ['bar', 1e5, 1e-15],
  ['rpm', 0.1047198, 1e-6],
  ['deg', 0.01745329, 1e-6],
  ['g0', 9.80665, 1e-15],
]

describe('u', () => {
  it('has every unit of the contract table and nothing else, frozen', () => {
    expect(Object.keys(u)).toEqual(unitTable.map((entry) => entry.symbol))
    expect(Object.isFrozen(u)).toBe(true)
  })

  it.each(mathjs)('u.%s agrees with mathjs', (symbol, text, si, tolerance = 1e-14) => {
    const pi = text.startsWith('2 pi ') ? 2 * Math.PI : 1
    expectClose(u[symbol], pi * unit(1, text.replace('2 pi ', '')).toNumber(si), tolerance, symbol)
  })

  it.each(nist)('u.%s agrees with NIST SP 811', (symbol, factor, tolerance) => {
    expectClose(u[symbol], factor, tolerance, symbol)
  })

  it('leaves no unit of the table unchecked', () => {
    const checked = new Set<string>([...mathjs, ...nist].map(([symbol]) => symbol))
    expect(unitTable.map((entry) => entry.symbol).filter((symbol) => !checked.has(symbol))).toEqual([])
  })
})

describe('quantity types', () => {
  const source = readFileSync(new URL('../../../kernel/library/quantity.ts', import.meta.url), 'utf8')
  const dimensions = new Map(
    [...source.matchAll(/export type (\w+) = Quantity<'([^']+)'>/g)].map((match) => [match[1] ?? '', match[2] ?? '']),
  )

  it('spell dimensions as formatDimension writes them', () => {
    expect(dimensions.size).toBeGreaterThan(25)
    for (const [name, text] of dimensions) {
      const dimension = parseDimension(text)
      expect(dimension, name).not.toBeNull()
      expect(dimension && formatDimension(dimension), name).toBe(text)
    }
  })

  it('give each member of u the dimension that the table has', () => {
    const units = readFileSync(new URL('../../../kernel/library/units.ts', import.meta.url), 'utf8')
    for (const entry of unitTable) {
      const type = new RegExp(`readonly ${entry.symbol}: (\\w+)`).exec(units)?.[1] ?? ''
      expect(dimensions.get(type), entry.symbol).toBe(formatDimension(entry.dimension))
    }
  })
})
