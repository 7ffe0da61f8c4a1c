/**
 * Constants of the standard atmosphere (ISO 2533:1975, tables 1 and 4; ICAO Doc 7488 has the same).
 *
 * The pressure at the tropopause follows from the others, so that the two layers join without a step; the printed 22632.0 Pa
 * is its rounding.
 */

/** [m/s^2] */
export const gravity = 9.80665
/** Specific gas constant of dry air [J/(kg K)]. */
export const gasConstant = 287.05287
/** Ratio of specific heats. */
export const heatRatio = 1.4
/** [K] */
export const seaLevelTemperature = 288.15
/** [Pa] */
export const seaLevelPressure = 101_325
/** Temperature lost per metre below the tropopause [K/m]. */
export const lapseRate = 0.0065
/** [m] */
export const tropopause = 11_000
/** Nominal earth radius of the standard [m]. */
export const earthRadius = 6_356_766
/** Ends of the table of ICAO Doc 7488 and of the isothermal layer [m]. */
export const lowest = -5000
export const highest = 20_000
/** [K] */
export const usualOffset = 50

/** [K] */
export const tropopauseTemperature = seaLevelTemperature - lapseRate * tropopause
/** g/(R L), 5.25588. */
export const pressureExponent = gravity / (gasConstant * lapseRate)
/** [Pa] */
export const tropopausePressure = seaLevelPressure * (tropopauseTemperature / seaLevelTemperature) ** pressureExponent
/** R T11/g [m]: the height over which pressure falls by e in the isothermal layer. */
export const scaleHeight = (gasConstant * tropopauseTemperature) / gravity
/** [kg/m^3] */
export const seaLevelDensity = seaLevelPressure / (gasConstant * seaLevelTemperature)
/** [kg/m^3] */
export const tropopauseDensity = tropopausePressure / (gasConstant * tropopauseTemperature)
