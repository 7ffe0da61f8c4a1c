import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type {
  AbsoluteTemperature,
  HeatCapacity,
  Power,
  TemperatureDifference,
  ThermalConductance,
  Time,
} from '../quantity.js'

export interface HeatingOptions {
  /** Made inside, constant [W]. */
  readonly heat: Power
  /** [s] */
  readonly duration: Time
  /** Mass times specific heat [J/K]. */
  readonly heatCapacity: HeatCapacity
  /** At the start [K]; 298.15 when left out. */
  readonly temperature?: AbsoluteTemperature
  /** To the ambient [W/K]; 0 (adiabatic) when left out. */
  readonly conductance?: ThermalConductance
  /** [K]; the temperature at the start when left out. */
  readonly ambient?: AbsoluteTemperature
}

export interface Heating {
  /** At the end [K]. */
  readonly temperature: AbsoluteTemperature
  /** End less start [K]. */
  readonly rise: TemperatureDifference
}

const method = 'battery.heating'
const known = new Set(['heat', 'duration', 'heatCapacity', 'temperature', 'conductance', 'ambient'])

/**
 * Temperature of a lump (a pack, a motor) after a time of constant heat.
 *
 * @equation C dT/dt = H - G (T - T_a); T = T_end + (T_0 - T_end) exp(-G t/C), T_end = T_a + H/G; adiabatic T = T_0 + H t/C
 * @param options - `heat` H [W], `duration` t [s], `heatCapacity` C [J/K], `temperature` T_0 (298.15 K), `conductance` G (0 W/K), `ambient` T_a (T_0)
 * @returns `temperature` [K], `rise` [K]
 * @throws InvalidInput for a negative heat, duration or conductance, a heat capacity that is not positive, a temperature
 * outside 100 to 2000 K, and an unknown option
 * @method Closed form, written so that it passes into the adiabatic one without a jump.
 * @validity One temperature throughout: a cell whose heat leaves slowly through its case has a hotter core. Published specific heats spread by 15 %.
 * @source Textbook (from memory). Specific heats: batterydesign.net, Specific Heat Capacity of Lithium Ion Cells (read).
 * @example
 * const hover = battery.heating({ heat: 4 * u.W, duration: 75 * u.s, heatCapacity: 48.5 })
 * hover.rise // 6.186
 */
export function heating(options: HeatingOptions): Heating {
  checkOptions(method, options, known)
  const { heat, duration, heatCapacity, temperature = 298.15, conductance = 0, ambient = temperature } = options
  requireNonNegative(method, 'heat', heat, 'W')
  requireNonNegative(method, 'duration', duration, 's')
  requirePositive(method, 'heatCapacity', heatCapacity, 'J/K')
  requireWithin(method, 'temperature', temperature, 'K', 100, 2000)
  requireNonNegative(method, 'conductance', conductance, 'W/K')
  requireWithin(method, 'ambient', ambient, 'K', 100, 2000)
  const decay = (conductance * duration) / heatCapacity
  // (1 - exp(-x))/x, which is 1 without cooling.
  const weight = decay === 0 ? 1 : -Math.expm1(-decay) / decay
  const drive = heat - conductance * (temperature - ambient)
  const rise = (drive * duration * weight) / heatCapacity
  requireRepresentable(method, rise + decay)
  return { temperature: temperature + rise, rise }
}
