import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type {
  Area,
  Current,
  Density,
  Length,
  Mass,
  Power,
  Quantity,
  Ratio,
  Resistance,
  Resistivity,
  Voltage,
} from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface WiringOptions {
  /** [A] */
  readonly current: Current
  /** Of the conductor, there and back [m]. */
  readonly length: Length
  /** Lost along it at that current [V]. */
  readonly voltageDrop: Voltage
  /** [ohm m]; 1.724e-8 (copper) when left out. */
  readonly resistivity?: Resistivity
  /** [kg/m^3]; 8960 (copper) when left out. */
  readonly density?: Density
  /** Mass of insulation, lugs and clips over conductor; 0.3 when left out. */
  readonly insulation?: Ratio
}

export interface Wiring {
  /** [kg] */
  readonly mass: Mass
  /** Of the bare conductor [kg]. */
  readonly conductorMass: Mass
  /** Of the conductor [m^2]. */
  readonly area: Area
  /** There and back [ohm]. */
  readonly resistance: Resistance
  /** At the current [W]. */
  readonly loss: Power
  /** [A/m^2] */
  readonly currentDensity: Quantity<'m^-2 A'>
}

const method = 'mass.wiring'
const known = new Set(['current', 'length', 'voltageDrop', 'resistivity', 'density', 'insulation'])
/** 10 A/mm^2: above, a cable in a bundle overheats when it lasts (from memory). */
const greatestDensity = 10e6

/**
 * Mass and loss of a cable sized by the voltage it may lose.
 *
 * @equation A = I rho_e L/dV; conductor mass = rho A L; R = rho_e L/A; loss = I^2 R = I dV
 * @param options - `current` I [A], `length` L there and back [m], `voltageDrop` dV [V]; optional `resistivity` rho_e (1.724e-8 ohm m), `density` (8960 kg/m^3), `insulation` (0.3 of the conductor)
 * @returns `mass` [kg], `conductorMass` [kg], `area` [m^2], `resistance` [ohm], `loss` [W], `currentDensity` [A/m^2]
 * @throws InvalidInput for a value that is not positive, a negative insulation, and an unknown option
 * @method Exact for a conductor at 20 degrees Celsius; a hot one loses 4 % more per 10 K.
 * @validity Current density up to 10 A/mm^2; above an advisory: heat, not voltage, then sizes the cable. Insulation 15 to 40 % (from memory, low confidence).
 * @source Closed form; resistivity of the International Annealed Copper Standard (from memory).
 * @example
 * mass.wiring({ current: 100 * u.A, length: 10 * u.m, voltageDrop: 8 * u.V }).conductorMass // 0.19309
 */
export function wiring(options: WiringOptions): Wiring {
  checkOptions(method, options, known)
  const { current, length, voltageDrop, resistivity = 1.724e-8, density = 8960, insulation = 0.3 } = options
  requirePositive(method, 'current', current, 'A')
  requirePositive(method, 'length', length, 'm')
  requirePositive(method, 'voltageDrop', voltageDrop, 'V')
  requirePositive(method, 'resistivity', resistivity, 'ohm m')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireNonNegative(method, 'insulation', insulation, '1')
  const area = (current * resistivity * length) / voltageDrop
  const conductorMass = density * area * length
  const currentDensity = current / area
  const answer = {
    mass: conductorMass * (1 + insulation),
    conductorMass,
    area,
    resistance: voltageDrop / current,
    loss: current * voltageDrop,
    currentDensity,
  }
  requireRepresentable(method, answer.mass + area + answer.resistance + answer.loss + currentDensity)
  if (currentDensity > greatestDensity && isListening())
    advise({
      code: 'CURRENT_DENSITY',
      method,
      quantity: 'currentDensity',
      value: currentDensity,
      range: [0, greatestDensity],
      message: `${(currentDensity / 1e6).toPrecision(3)} A/mm^2 is more than a cable bears for long (10 A/mm^2): heat sizes it, not the voltage.`,
    })
  return answer
}
