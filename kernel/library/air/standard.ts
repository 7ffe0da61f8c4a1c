/** The standard atmosphere in its two lowest layers, with a temperature offset for hot and cold days. */
import { requireFinite, requireWithin } from '../check.js'
import { InvalidInput } from '../errors.js'
import type {
  AbsoluteTemperature,
  Density,
  DynamicViscosity,
  Length,
  Pressure,
  Speed,
  TemperatureDifference,
} from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import * as isa from './constants.js'
import { dynamicViscosity } from './viscosity.js'

export interface Air {
  /** [K] */
  readonly temperature: AbsoluteTemperature
  /** [Pa] */
  readonly pressure: Pressure
  /** [kg/m^3] */
  readonly density: Density
  /** [m/s] */
  readonly speedOfSound: Speed
  /** [Pa s] */
  readonly dynamicViscosity: DynamicViscosity
}

/**
 * Air at an altitude in the standard atmosphere, or on a day that is warmer or colder than standard.
 *
 * @equation p = p0 (T_s/T0)^(g/(R L)), T_s = T0 - L H below 11 km; p = p11 exp(-g (H - 11 km)/(R T11)) above;
 * T = T_s + offset; rho = p/(R T); a = sqrt(1.4 R T)
 * @param altitude - geopotential pressure altitude H [m], -5000 to 20000. It is the altitude an altimeter set to 1013.25 hPa
 * shows. A height measured with a tape is geometric: `air.geopotentialAltitude` converts it (4 m less at 5 km).
 * @param temperatureOffset - difference from the standard temperature at that altitude [K], 0 when left out
 * @returns temperature [K], pressure [Pa], density [kg/m^3], speedOfSound [m/s], dynamicViscosity [Pa s]
 * @throws InvalidInput outside the altitudes given, or where the offset leaves no positive temperature
 * @method Closed form of ISO 2533. Pressure depends on pressure altitude alone; the offset changes temperature and so density.
 * Dry air. Agrees with values printed in its
 * tables (from memory) to their rounding (4e-6).
 * @validity -5 to 20 km. An offset beyond 50 K carries an advisory (outside any day on record near the ground; common practice,
 * no source). Humid air is lighter: up to 1 % at 30 degrees Celsius.
 * @source ISO 2533:1975, Standard Atmosphere (constants read in a transcription); ICAO Doc 7488, Manual of the ICAO Standard Atmosphere, 3rd edition, 1993 (from memory).
 * @example
 * const day = air.standard(600 * u.m, 15 * u.K)
 * day.density // 1.0980332
 */
export function standard(altitude: Length, temperatureOffset: TemperatureDifference = 0): Air {
  const method = 'air.standard'
  requireWithin(method, 'altitude', altitude, 'm', isa.lowest, isa.highest)
  requireFinite(method, 'temperatureOffset', temperatureOffset, 'K')
  const standardTemperature = standardTemperatureAt(altitude)
  const temperature = standardTemperature + temperatureOffset
  if (!(temperature > 0))
    throw new InvalidInput({
      method,
      argument: 'temperatureOffset',
      value: temperatureOffset,
      unit: 'K',
      accepted: `above ${-standardTemperature} K, so that the temperature stays positive`,
    })
  if (isListening() && Math.abs(temperatureOffset) > isa.usualOffset) adviseOffset(temperatureOffset)
  const pressure = pressureAt(altitude)
  return {
    temperature,
    pressure,
    density: pressure / (isa.gasConstant * temperature),
    speedOfSound: Math.sqrt(isa.heatRatio * isa.gasConstant * temperature),
    dynamicViscosity: dynamicViscosity(temperature),
  }
}

function standardTemperatureAt(altitude: number): number {
  return altitude <= isa.tropopause ? isa.seaLevelTemperature - isa.lapseRate * altitude : isa.tropopauseTemperature
}

function pressureAt(altitude: number): number {
  return altitude <= isa.tropopause
    ? isa.seaLevelPressure * (1 - (isa.lapseRate * altitude) / isa.seaLevelTemperature) ** isa.pressureExponent
    : isa.tropopausePressure * Math.exp(-(altitude - isa.tropopause) / isa.scaleHeight)
}

function adviseOffset(offset: number): void {
  advise({
    code: 'TEMPERATURE_OFFSET',
    method: 'air.standard',
    quantity: 'temperatureOffset',
    value: offset,
    range: [-isa.usualOffset, isa.usualOffset],
    message: `A day ${offset} K from standard lies outside the weather on record near the ground.`,
  })
}
