import { requirePositive, requireRepresentable } from '../check.js'
import type { AbsoluteTemperature, DynamicViscosity } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

/**
 * Dynamic viscosity of air by Sutherland's formula.
 *
 * @equation mu = 1.458e-6 T^1.5 / (T + 110.4)
 * @param temperature - T [K]
 * @returns mu [Pa s]
 * @throws InvalidInput for a temperature that is not positive
 * @method Closed form; pressure has no influence at these altitudes.
 * @validity 150 to 500 K (range from memory); outside it an advisory.
 * @source ISO 2533:1975, Standard Atmosphere, formula for dynamic viscosity (constants from memory, checked against table values).
 * @example
 * air.dynamicViscosity(288.15 * u.K) // 1.7894e-5
 */
export function dynamicViscosity(temperature: AbsoluteTemperature): DynamicViscosity {
  requirePositive('air.dynamicViscosity', 'temperature', temperature, 'K')
  if (isListening() && (temperature < 150 || temperature > 500))
    advise({
      code: 'VISCOSITY_RANGE',
      method: 'air.dynamicViscosity',
      quantity: 'temperature',
      value: temperature,
      range: [150, 500],
      message: "Sutherland's formula is used outside 150 to 500 K.",
    })
  const viscosity = (1.458e-6 * temperature * Math.sqrt(temperature)) / (temperature + 110.4)
  requireRepresentable('air.dynamicViscosity', viscosity)
  return viscosity
}
