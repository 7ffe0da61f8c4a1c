import { describe, expect, it } from 'vitest'
import { parseUnit, unitTable } from '../../../shared/contracts/index.js'
import {
  chooseUnit,
  formatNumber,
  formatQuantity,
  humaniseName,
  typesetNodes,
  typesetUnitText,
} from '../../../shared/rendering/index.js'
import { newDocument } from './support.js'

const spaced = (text: string) => text.replaceAll('\u202f', ' ')

describe('formatNumber', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [1, '1'],
    [400, '400'],
    [0.72, '0.72'],
    [0.1 + 0.2, '0.3'],
    [315.88361, '315.9'],
    [1636.9422, '1 637'],
    [11.648468, '11.65'],
    [397.99982, '398.0'],
    [99.9999, '100.0'],
    [12345.678, '12 350'],
    [12345, '12 345'],
    [163694.22, '163 700'],
    [999999.7, '1.000×10⁶'],
    [1e6, '10⁶'],
    [2.5e7, '2.5×10⁷'],
    [0.001, '0.001'],
    [0.0010004, '0.001000'],
    [0.00098765, '9.877×10⁻⁴'],
    [1.234567e-7, '1.235×10⁻⁷'],
    [6.02214076e23, '6.022×10²³'],
    [5e-324, '4.941×10⁻³²⁴'],
    [1.7976931348623157e308, '1.798×10³⁰⁸'],
    [-0.0425, '−0.0425'],
    [-1636.9422, '−1 637'],
    [Number.NaN, 'not a number'],
    [Number.POSITIVE_INFINITY, 'infinity'],
    [Number.NEGATIVE_INFINITY, 'minus infinity'],
  ])('formatNumber(%s) is "%s"', (value, text) => {
    expect(spaced(formatNumber(value))).toBe(text)
  })

  it('formatNumber(name) reads the names under which numbers that are not finite travel', () => {
    expect(formatNumber('NaN')).toBe('not a number')
    expect(formatNumber('-Infinity')).toBe('minus infinity')
  })
})

const power = 'kg m^2 s^-3'
const energy = 'kg m^2 s^-2'

describe('formatQuantity', () => {
  it.each([
    [315883.61, power, undefined, '315.9 kW'],
    [950, power, undefined, '950 W'],
    [2.4e7, power, undefined, '24 MW'],
    [315883.61, power, 'W', '315 900 W'],
    [1000, energy, undefined, '1 000 J'],
    [7200, energy, undefined, '2 Wh'],
    [77.302737 * 3.6e6, energy, undefined, '77.30 kWh'],
    [85, energy, 'N m', '85 N m'],
    [397.83578, 'kg m^-1 s^-2', undefined, '397.8 Pa'],
    [397.83578, 'kg m^-1 s^-2', 'N/m^2', '397.8 N/m²'],
    [101325, 'kg m^-1 s^-2', undefined, '101.3 kPa'],
    [600, 'm', undefined, '600 m'],
    [85000, 'm', undefined, '85 km'],
    [0.032, 'm', undefined, '32 mm'],
    [1636.9422, 'kg', undefined, '1 637 kg'],
    [0.05, 'kg', undefined, '50 g'],
    [90, 's', undefined, '90 s'],
    [1200, 's', undefined, '20 min'],
    [9000, 's', undefined, '2.5 h'],
    [235 * 3600, 'm^2 s^-2', undefined, '235 Wh/kg'],
    [5000, 'm^2 s^-3', undefined, '5 kW/kg'],
    [16052.9, 'kg m s^-2', undefined, '16.05 kN'],
    [58, 'm s^-1', undefined, '58 m/s'],
    [58, 'm s^-1', 'km/h', '208.8 km/h'],
    [0.018, 'm^2', undefined, '0.018 m²'],
    [1.0980332, 'kg m^-3', undefined, '1.098 kg/m³'],
    [303.15, 'K', undefined, '303.1 K'],
    [0.8, '1', undefined, '0.8'],
    [0.8, '1', '%', '80 %'],
    [Math.PI / 6, '1', 'deg', '30°'],
    [-0, 'kg', undefined, '0 kg'],
    [2, 'kg^2 m^0.5', undefined, '2 kg² m⁰·⁵'],
    [3, null, undefined, '3'],
    [3000, null, 'kg', '3 000 kg'],
  ] as const)('formatQuantity(%s, %s, %s) reads "%s"', (si, dimension, unit, text) => {
    expect(spaced(formatQuantity(si, dimension, unit).text)).toBe(text)
  })

  it('formatQuantity(si, dimension, unit) never shows a number under a unit of another dimension', () => {
    expect(spaced(formatQuantity(1200, 'kg', 'kW').text)).toBe('1 200 kg')
    expect(spaced(formatQuantity(1200, 'kg', 'furlongs').text)).toBe('1 200 kg')
  })

  it('formatQuantity(NaN) gives the name of the number and no unit', () => {
    expect(formatQuantity('NaN', 'kg')).toEqual({ number: 'not a number', unit: '', text: 'not a number' })
    expect(formatQuantity('Infinity', 'm', 'km').text).toBe('infinity')
  })

  it('formatQuantity(si, dimension) parts number and unit for columns', () => {
    expect(formatQuantity(235 * 3600, 'm^2 s^-2')).toMatchObject({ number: '235', unit: 'Wh/kg' })
  })
})

describe('chooseUnit', () => {
  it('chooseUnit(dimension, si) gives for every dimension of the unit table a unit that has it', () => {
    for (const unit of unitTable) {
      const dimension = unit.dimension.join() === '0,0,0,0,0' ? '1' : text(unit.dimension)
      for (const si of [0, 1e-9, 0.5, 30, 5e4, 1e12]) {
        const reading = parseUnit(chooseUnit(dimension, si))
        expect(reading.ok && reading.unit.dimension, `${unit.symbol} at ${si}`).toEqual([...unit.dimension])
      }
    }
  })
})

function text(dimension: readonly number[]): string {
  return ['kg', 'm', 's', 'K', 'A']
    .flatMap((base, index) => (dimension[index] === 0 ? [] : [`${base}^${dimension[index]}`]))
    .join(' ')
}

describe('typesetUnitText', () => {
  it.each([
    ['kg m^2 s^-3', 'kg m² s⁻³'],
    ['Wh/kg', 'Wh/kg'],
    ['N/m^2', 'N/m²'],
    ['m2', 'm²'],
    ['m**3', 'm³'],
    ['mohm', 'mΩ'],
    ['1', ''],
    ['m^12', 'm¹²'],
  ])('typesetUnitText("%s") is "%s"', (given, wanted) => {
    expect(typesetUnitText(given)).toBe(wanted)
  })

  it('typesetNodes(document, text) sets longer exponents as raised elements and keeps ² and ³', () => {
    const holder = newDocument().createElement('p')
    holder.append(...typesetNodes(newDocument(), '1.2×10⁻⁷ kg m² s⁻³'))
    expect(holder.innerHTML).toBe('1.2×10<sup>−7</sup> kg m² s<sup>−3</sup>')
  })
})

describe('humaniseName', () => {
  it.each([
    ['grossMass', 'gross mass'],
    ['liftToDrag', 'lift to drag'],
    ['wing_area', 'wing area'],
    ['E', 'E'],
    ['CLmax', 'CLmax'],
    ['ISAOffset', 'ISA offset'],
    ['maximumCL', 'maximum CL'],
    ['rotor2', 'rotor 2'],
    ['Vstall', 'Vstall'],
    ['$x', 'x'],
    ['_', '_'],
    ['batteryMassPerSector', 'battery mass per sector'],
  ])('humaniseName("%s") is "%s"', (name, words) => {
    expect(humaniseName(name)).toBe(words)
  })
})
