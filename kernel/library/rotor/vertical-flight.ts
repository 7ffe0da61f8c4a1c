/** What climb and descent share: a rotor's losses on top of the ideal disk. */
import { requireNonNegative, requirePositive, requireWithin } from '../check.js'
import type { Area, Density, Force, Power, Ratio } from '../quantity.js'

export interface VerticalFlightOptions {
  /** Thrust of all rotors together [N], download included. */
  readonly thrust: Force
  /** Disk area of all rotors together [m^2]. */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** Induced power over its ideal, 1 when left out. */
  readonly inducedFactor?: Ratio
  /** Of all rotors [W], 0 when left out; `rotor.hover` returns it. */
  readonly profilePower?: Power
}

export const knownVertical: readonly string[] = ['thrust', 'diskArea', 'density', 'inducedFactor', 'profilePower']

export interface VerticalFlight {
  readonly thrust: number
  readonly inducedFactor: number
  readonly profilePower: number
  /** v_h^2 [m^2/s^2] */
  readonly loading: number
}

export function readVerticalFlight(method: string, options: VerticalFlightOptions): VerticalFlight {
  const { thrust, diskArea, density, inducedFactor = 1, profilePower = 0 } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireWithin(method, 'inducedFactor', inducedFactor, '1', 1, 10)
  requireNonNegative(method, 'profilePower', profilePower, 'W')
  return { thrust, inducedFactor, profilePower, loading: thrust / (2 * density * diskArea) }
}
