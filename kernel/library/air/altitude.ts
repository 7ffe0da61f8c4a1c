/** Altitudes that stand for something else: for a density, and for a height measured with a tape. */
import { requireWithin } from '../check.js'
import { InvalidInput } from '../errors.js'
import type { Density, Length } from '../quantity.js'
import * as isa from './constants.js'
import { standard } from './standard.js'

/** Inverse of the density in the lower layer: rho/rho0 = (T/T0)^(g/(RL) - 1). */
const densityExponent = isa.pressureExponent - 1
const densest = isa.seaLevelDensity * (1 - (isa.lapseRate * isa.lowest) / isa.seaLevelTemperature) ** densityExponent
const thinnest = standard(isa.highest).density

/**
 * Altitude in the standard atmosphere at which the air has a given density.
 *
 * @equation H = (T0/L)(1 - (rho/rho0)^(1/(g/(R L) - 1))) below 11 km; H = 11 km - (R T11/g) ln(rho/rho11) above
 * @param density - rho [kg/m^3], 0.08803 to 1.931
 * @returns geopotential altitude [m]
 * @throws InvalidInput for a density that the standard atmosphere has nowhere from -5 to 20 km
 * @method Exact inverse of `air.standard` at offset 0, to rounding.
 * @validity -5 to 20 km.
 * @source ISO 2533:1975, Standard Atmosphere (constants read in a transcription; inverted here).
 * @example
 * air.densityAltitude(0.987151 * u.kg / u.m3) // 2192.5
 */
export function densityAltitude(density: Density): Length {
  // The ends are widened by rounding, so that the density of an end altitude is accepted again.
  if (typeof density !== 'number' || !(density >= thinnest * (1 - 1e-12) && density <= densest * (1 + 1e-12)))
    throw new InvalidInput({
      method: 'air.densityAltitude',
      argument: 'density',
      value: typeof density === 'number' ? density : 'not a number',
      unit: 'kg/m^3',
      accepted: `from ${thinnest.toPrecision(4)} to ${densest.toPrecision(4)} kg/m^3, the standard atmosphere from 20 km down to -5 km`,
    })
  return density >= isa.tropopauseDensity
    ? (isa.seaLevelTemperature / isa.lapseRate) * (1 - (density / isa.seaLevelDensity) ** (1 / densityExponent))
    : isa.tropopause - isa.scaleHeight * Math.log(density / isa.tropopauseDensity)
}

/**
 * Geopotential altitude of a geometric height above mean sea level, for use with `air.standard`.
 *
 * @equation H = r z/(r + z), r = 6356766 m
 * @param height - geometric height z [m], -5000 to 20000
 * @returns geopotential altitude H [m]
 * @throws InvalidInput outside the heights given
 * @method Closed form for gravity that falls with the square of the distance from the earth's centre.
 * @validity -5 to 20 km.
 * @source ISO 2533:1975, Standard Atmosphere, relation of geopotential and geometric altitude (radius read in a
 * transcription).
 * @example
 * air.geopotentialAltitude(5000 * u.m) // 4996.07
 */
export function geopotentialAltitude(height: Length): Length {
  requireWithin('air.geopotentialAltitude', 'height', height, 'm', isa.lowest, isa.highest)
  return (isa.earthRadius * height) / (isa.earthRadius + height)
}
