import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { air } = preloaded

describe('air.standard(altitude, temperatureOffset)', () => {
  // ISO 2533 / U.S. Standard Atmosphere 1976 as printed (values from memory, to the digits printed).
  it.each([
    [0, 101325, 1.225],
    [11_000, 22632.06, 0.363918],
    [15_000, 12044.6, 0.193674],
    [20_000, 5474.89, 0.0880349],
  ])('agrees with the printed table at %s m', (altitude, pressure, density) => {
    expectClose(air.standard(altitude).pressure, pressure, 4e-6)
    expectClose(air.standard(altitude).density, density, 4e-6)
  })

  it('gives the density of the worked sizing problem on its hot day', () => {
    expectClose(air.standard(600, 15).density, 1.0980332, 1e-7)
  })

  it('joins the layers at 11 km without a step', () => {
    const [below, above] = [air.standard(11_000), air.standard(11_000 * (1 + 1e-12))]
    expectClose(above.pressure, below.pressure, 1e-11)
    expectClose(above.temperature, below.temperature, 1e-11)
  })

  it('leaves the pressure alone on a hot day and lightens the air', () => {
    const [standard, hot] = [air.standard(1500), air.standard(1500, 20)]
    expect(hot.pressure).toBe(standard.pressure)
    expectClose(hot.density * hot.temperature, standard.density * standard.temperature, 1e-15)
  })

  it.each([
    [-5001, 0],
    [20_001, 0],
    [Number.NaN, 0],
    [0, Number.NaN],
    [0, -288.15],
  ])('refuses altitude %s m with offset %s K', (altitude, offset) => {
    expect(() => air.standard(altitude, offset)).toThrow(InvalidInput)
  })

  it('advises on a day that no weather has', () => {
    expect(listenWhile(() => air.standard(0, 60)).advisories).toMatchObject([{ code: 'TEMPERATURE_OFFSET', value: 60 }])
    expect(listenWhile(() => air.standard(0, 40)).advisories).toEqual([])
  })
})

describe('air.densityAltitude(density)', () => {
  it.each([-5000, 0, 600, 10_999, 11_000, 11_001, 15_000, 20_000])('inverts air.standard at %s m', (altitude) => {
    expect(air.densityAltitude(air.standard(altitude).density)).toBeCloseTo(altitude, 6)
  })

  it.each([0, 0.05, 2.5, Number.NaN, '1' as unknown as number])('refuses %s', (density) => {
    expect(() => air.densityAltitude(density)).toThrow(/20 km down to -5 km/)
  })
})

describe('air.geopotentialAltitude(height)', () => {
  it('is 4996.07 m at a geometric 5000 m, where a geometric table prints 255.7 K and 0.5405 bar', () => {
    // Printed in a widely used table in geometric height (engineeringtoolbox.com, International Standard Atmosphere).
    const altitude = air.geopotentialAltitude(5000)
    expectClose(altitude, 4996.07, 1e-6)
    expect(air.standard(altitude).temperature).toBeCloseTo(255.7, 1)
    expect(air.standard(altitude).pressure / 1e5).toBeCloseTo(0.5405, 4)
  })

  it('refuses heights outside the atmosphere it knows', () => {
    expect(() => air.geopotentialAltitude(30_000)).toThrow(InvalidInput)
  })
})

describe('air.dynamicViscosity(temperature)', () => {
  it('is 1.7894e-5 Pa s at 288.15 K (printed in the standard atmosphere)', () => {
    expectClose(air.dynamicViscosity(288.15), 1.7894e-5, 3e-5)
  })

  it('advises outside 150 to 500 K and refuses what is not a temperature', () => {
    expect(listenWhile(() => air.dynamicViscosity(600)).advisories).toMatchObject([{ code: 'VISCOSITY_RANGE' }])
    expect(() => air.dynamicViscosity(0)).toThrow(InvalidInput)
  })
})
