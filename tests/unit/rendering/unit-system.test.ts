import { describe, expect, it } from 'vitest'
import { type Figure, formatDimension, parseUnit, unitTable } from '../../../shared/contracts/index.js'
import {
  assumptionRows,
  figureTable,
  formatQuantity,
  linesOf,
  lineWords,
  renderRegister,
  renderSheet,
  resultInUnits,
  sheetContext,
  type UnitSystem,
  unitSystems,
  viewInUnits,
} from '../../../shared/rendering/index.js'
import { type Shown, unitFor } from '../../../shared/rendering/quantity/index.js'
import { recordTable } from '../../../shared/rendering/sheet/record-table.js'
import { cellView, newDocument, number, plainText, resultOf, sheetView } from './support.js'

const length = 'm'
const mass = 'kg'
const speed = 'm s^-1'
const power = 'kg m^2 s^-3'
const pressure = 'kg m^-1 s^-2'
const spaced = (text: string) => text.replaceAll('\u202f', ' ')

/** How a value reads in a system. */
function read(system: UnitSystem, si: number, dimension: string | null, unit?: string, name = 'x'): string {
  const shown: Shown = { unit, dimension, name, largest: Math.abs(si) }
  return spaced(formatQuantity(si, dimension, unitFor(system, shown)).text)
}

describe('unitFor in aviation units', () => {
  it.each([
    // Factors: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m, 1 NM = 1852 m (NIST SP 811, appendix B.8).
    ['gross mass', 1636.9422, mass, undefined, '3 609 lb'],
    ['altitude', 600, length, undefined, '1 969 ft'],
    ['cruise altitude', 3000, length, 'km', '9 843 ft'],
    ['range', 85_000, length, undefined, '45.90 nmi'],
    ['short hop', 8000, length, 'km', '4.320 nmi'],
    ['span', 11, length, 'm', '36.09 ft'],
    ['chord', 0.09, length, undefined, '3.543 in'],
    ['skin', 0.0012, length, 'mm', '0.04724 in'],
    ['wing area', 14, 'm^2', undefined, '150.7 ft²'],
    ['cruise speed', 50, speed, undefined, '97.19 kt'],
    ['cruise speed', 50, speed, 'km/h', '97.19 kt'],
    ['rate of climb', 2.54, speed, undefined, '500 ft/min'],
    ['rateOfClimb', 2.54, speed, 'm/s', '500 ft/min'],
    ['climb speed', 38, speed, undefined, '73.87 kt'],
    ['sinkRate', 1, speed, undefined, '196.9 ft/min'],
    ['tipSpeed', 150, speed, undefined, '492.1 ft/s'],
    ['wing loading', 110, 'kg m^-2', undefined, '22.53 lb/ft²'],
    ['disk loading', 500, pressure, undefined, '10.44 psf'],
    ['disk loading', 500, pressure, 'N/m^2', '10.44 psf'],
    ['static pressure', 94_322, pressure, undefined, '13.68 psi'],
    ['allowable stress', 3e8, pressure, undefined, '43 510 psi'],
    ['thrust', 2000, 'kg m s^-2', undefined, '449.6 lbf'],
    ['air density', 1.2250121, 'kg m^-3', undefined, '0.002377 slug/ft³'],
    ['foam density', 60, 'kg m^-3', undefined, '3.746 lb/ft³'],
    ['power loading', 0.06, 'm^-1 s', undefined, '10.06 lbf/hp'],
    ['cabin volume', 3.2, 'm^3', undefined, '113.0 ft³'],
    ['torque', 850, 'kg m^2 s^-2', 'N m', '626.9 ft lbf'],
    ['energy per distance', 720, 'kg m s^-2', 'Wh/km', '370.4 Wh/nmi'],
    ['lift slope', 0.1, 'm^-1', undefined, '0.03048 ft⁻¹'],
  ])('unitFor("aviation") shows %s %d as it is read in the trade', (name, si, dimension, unit, text) => {
    expect(read('aviation', si, dimension, unit, name)).toBe(text)
  })

  it.each([
    ['power', 315_000, power, undefined, '315 kW'],
    ['shaft power', 74_570, power, 'hp', '100.0 hp'],
    ['pack energy', 90 * 3.6e6, 'kg m^2 s^-2', undefined, '90 kWh'],
    ['specific energy', 235 * 3600, 'm^2 s^-2', undefined, '235 Wh/kg'],
    ['specific power', 5000, 'm^2 s^-3', 'kW/kg', '5 kW/kg'],
    ['temperature', 300, 'K', undefined, '300 K'],
    ['lapse rate', 0.0065, 'm^-1 K', 'K/m', '0.0065 K/m'],
    ['viscosity', 1.789e-5, 'kg m^-1 s^-1', undefined, '1.789×10⁻⁵ Pa s'],
    ['tilt', Math.PI / 6, '1', 'deg', '30°'],
    ['rotor speed', 100, 's^-1', 'rpm', '954.9 rpm'],
    ['reserve', 1200, 's', 'min', '20 min'],
    ['margin', 0.12, '1', '%', '12 %'],
    ['voltage', 800, 'kg m^2 s^-3 A^-1', undefined, '800 V'],
  ])('unitFor("aviation") leaves %s alone, which is read alike in both', (name, si, dimension, unit, text) => {
    expect(read('aviation', si, dimension, unit, name)).toBe(text)
    expect(read('SI', si, dimension, unit === 'hp' ? undefined : unit, name)).toBe(unit === 'hp' ? '74.57 kW' : text)
  })
})

describe('unitFor in SI', () => {
  it.each([
    ['altitude', 1828.8, length, 'ft', '1 829 m'],
    ['range', 85_192, length, 'nmi', '85.19 km'],
    ['chord', 0.0889, length, 'in', '88.9 mm'],
    ['gross mass', 1636.9422, mass, 'lb', '1 637 kg'],
    ['cruise speed', 51.444444, speed, 'kt', '51.44 m/s'],
    ['rate of climb', 2.54, speed, 'fpm', '2.54 m/s'],
    ['wing loading', 110, 'kg m^-2', 'lb/ft^2', '110 kg/m²'],
    ['disk loading', 500, pressure, 'psf', '500 Pa'],
    ['energy per distance', 720, 'kg m s^-2', 'Wh/nmi', '200 Wh/km'],
    ['damping', 12, 'kg s^-1', 'lbf/kt', '12 kg/s'],
    ['cruise speed', 50, speed, 'km/h', '180 km/h'],
    ['range', 85_000, length, 'km', '85 km'],
    ['hover power', 315_000, power, 'kW', '315 kW'],
  ])('unitFor("SI") shows %s %d %s in %s as %s', (name, si, dimension, unit, text) => {
    expect(read('SI', si, dimension, unit, name)).toBe(text)
  })
})

describe('unitFor of any unit', () => {
  it.each(unitSystems)('unitFor("%s") never changes what is measured', (system) => {
    for (const one of unitTable)
      for (const unit of [one.symbol, `1/${one.symbol}`, `${one.symbol}^2`, `N/${one.symbol}`, `kg ${one.symbol}/s`]) {
        const before = parseUnit(unit)
        if (!before.ok) throw new Error(before.message)
        const dimension = formatDimension(before.unit.dimension)
        const shown = unitFor(system, { unit, dimension, name: 'climb tip altitude', largest: 3 })
        const after = parseUnit(shown ?? unit)
        expect(after.ok && formatDimension(after.unit.dimension), `${unit} as ${shown}`).toBe(dimension)
      }
  })

  it('unitFor("as written") gives back what came, and nothing is known of a number without unit and dimension', () => {
    expect(unitFor('as written', { unit: 'km', dimension: length, name: 'range', largest: 1 })).toBe('km')
    for (const system of unitSystems)
      expect(unitFor(system, { unit: undefined, dimension: null, name: 'x', largest: 1 })).toBeUndefined()
  })

  it('unitFor(unreadable unit) leaves it', () => {
    expect(unitFor('aviation', { unit: 'cubit', dimension: length, name: 'span', largest: 1 })).toBe('cubit')
    expect(unitFor('SI', { unit: 'cubit', dimension: length, name: 'span', largest: 1 })).toBe('cubit')
  })
})

const plot: Figure = {
  figure: 'plot',
  caption: 'Reach',
  x: { label: 'range', dimension: length, unit: 'km' },
  y: { label: 'rate of climb', dimension: speed },
  marks: [
    { mark: 'line', x: [0, 92_600], y: [0, 5.08] },
    { mark: 'contour', x: [0, 1], y: [0, 1], value: [1, 2, 3, 4], levels: [0.45359237], dimension: mass, unit: 'kg' },
  ],
}

const result = resultOf('a', {
  values: [
    number('payload', 400, mass, { unit: 'kg' }),
    number('hoverPower', 315_000, power, { unit: 'kW' }),
    number('wrong', 3, mass, { unit: 'km' }),
    number('bare', 3, null),
    {
      name: 'parts',
      dimension: null,
      columns: { mass, power },
      value: {
        kind: 'list',
        length: 1,
        items: [
          {
            kind: 'record',
            more: 0,
            entries: [
              ['part', { kind: 'text', text: 'wing' }],
              ['mass', { kind: 'number', si: 180 }],
              ['power', { kind: 'number', si: 2000 }],
            ],
          },
        ],
      },
    },
  ],
  assumptions: [{ name: 'payload', value: 400, unit: 'kg', low: 300, high: 500 }],
  requirements: [{ name: 'footprint', actual: 13.2, atMost: 14, margin: 0.8, met: true, unit: 'm' }],
  figures: [plot],
})

describe('viewInUnits', () => {
  const view = sheetView([cellView('a', { result })])

  it('viewInUnits("as written") is the view itself', () => {
    expect(viewInUnits(view, 'as written')).toBe(view)
    expect(resultInUnits(result, 'as written')).toBe(result)
  })

  it('viewInUnits("aviation") reaches values, assumptions, requirements, tables and figures, and no number changes', () => {
    const shown = viewInUnits(view, 'aviation')
    const text = plainText(renderSheet(newDocument(), shown))
    for (const words of ['881.8 lb', '661.4 to 1 102 lb', '43.31 ft', 'at most 45.93 ft', 'Result, aviation units'])
      expect(text).toContain(words)
    expect(text).toContain('315 kW')
    expect(text).not.toContain('400 kg')
    expect(JSON.stringify(shown)).toContain('"si":400')
    const [first] = shown.cells
    const table = first?.result?.values.map(recordTable).find((one) => one !== null)
    expect(table?.heads.map((head) => head.text)).toEqual(['part', 'mass, lb', 'power, kW'])
    expect(table?.rows).toEqual([['wing', '396.8', '2']])
  })

  it('viewInUnits("aviation") passes over a unit that is not of the quantity, and over what is not known', () => {
    const values = resultInUnits(result, 'aviation').values
    expect(values.find(({ name }) => name === 'wrong')?.unit).toBe('lb')
    expect(values.find(({ name }) => name === 'bare')?.unit).toBeUndefined()
  })

  it('viewInUnits("aviation") leaves to the register the unit that the author wrote, so that no edit takes another one over', () => {
    const [row] = assumptionRows(viewInUnits(view, 'aviation'))
    expect([row?.record.unit, row?.stated?.unit]).toEqual(['lb', 'kg'])
    const table = renderRegister(newDocument(), row === undefined ? [] : [row])
    expect(plainText(table.querySelector('tbody'))).toContain('881.8 lb')
    expect(table.querySelector('[aria-label^="unit of payload: kg"]')).not.toBeNull()
    expect(assumptionRows(view)[0]?.stated).toBeUndefined()
  })

  it('viewInUnits("SI") says so at the head of the results', () => {
    expect(plainText(renderSheet(newDocument(), viewInUnits(view, 'SI')))).toContain('Result, SI units')
    expect(plainText(renderSheet(newDocument(), view))).not.toContain('units')
  })

  it('resultInUnits(the same result) is the same object, so that nothing is drawn twice', () => {
    expect(resultInUnits(result, 'aviation')).toBe(resultInUnits(result, 'aviation'))
  })

  it('resultInUnits puts the axes and levels of a figure into units, and its table with them', () => {
    const [figure] = resultInUnits(result, 'aviation').figures
    expect(figure?.x.unit).toBe('nmi')
    expect(figure?.y.unit).toBe('fpm')
    expect(figure?.marks[1]).toMatchObject({ unit: 'lb' })
    if (figure === undefined) throw new Error('no figure')
    const { columns, rows } = figureTable({ ...figure, marks: figure.marks.slice(0, 1) })
    expect(columns).toEqual(['range, nmi', 'rate of climb, ft/min'])
    expect(rows.at(-1)).toEqual([50, 1000])
  })

  it('resultInUnits keeps values that are not finite', () => {
    const odd = resultOf('b', { values: [{ ...number('x', 0, length), value: { kind: 'number', si: 'Infinity' } }] })
    expect(resultInUnits(odd, 'aviation').values[0]?.unit).toBe('ft')
  })
})

describe('linesOf in a system', () => {
  const cell = cellView('a', {
    result: resultOf('a', {
      values: [number('range', 85_000, length, { unit: 'km' }), number('reach', 90_000, length, { unit: 'km' })],
    }),
    formulas: [
      { name: 'range', expression: { kind: 'quantity', value: 85, unit: 'km' } },
      {
        name: 'reach',
        expression: {
          kind: 'sum',
          terms: [
            { minus: false, of: { kind: 'name', name: 'range', path: [] } },
            { minus: false, of: { kind: 'quantity', value: 5, unit: 'km' } },
          ],
        },
      },
    ],
  })
  const lines = (system: UnitSystem) => {
    const view = viewInUnits(sheetView([cell]), system)
    const [first] = view.cells
    return first === undefined ? [] : linesOf(first, sheetContext(view)).map((line) => spaced(lineWords(line)))
  }

  it('linesOf("aviation") keeps the formula as written and puts numbers into units', () => {
    expect(lines('aviation')).toEqual([
      'range = 85 km = 45.90 nmi',
      'reach = range + 5 km = 45.90 nmi + 2.700 nmi = 48.60 nmi',
    ])
  })

  it('linesOf("as written") shows what was written', () => {
    expect(lines('as written')[1]).toBe('reach = range + 5 km = 85 km + 5 km = 90 km')
  })
})
