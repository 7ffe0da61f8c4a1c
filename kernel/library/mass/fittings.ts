/** Items that no published regression covers: stowage mechanism, cooling, recovery parachute. House models, each from what the item must do. */
import { requireCount, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, ArealDensity, Density, Mass, Power, Ratio, SpecificPower, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { u } from '../units.js'

export interface StowageMechanismOptions {
  /** What is folded or drawn in, of one rotor [kg]; 0 where only doors move. */
  readonly movedMass: Mass
  /** Doors of one rotor [m^2]; 0 when left out. */
  readonly doorArea?: Area
  /** Rotors stowed. */
  readonly count: Ratio
  /** Mechanism per moved mass: 0.15 to fold, 0.4 to draw in; 0.15 when left out (house values, 30 to 50 % either way). */
  readonly perMovedMass?: Ratio
  /** Doors with hinges, latches and actuators per area [kg/m^2]; 8 when left out (house value). */
  readonly perDoorArea?: ArealDensity
  /** Actuator, lock and sensor of one rotor, whatever its size [kg]; 1 when left out (house value). */
  readonly each?: Mass
}

export interface CoolingOptions {
  /** Taken away at the worst instant that lasts [W]. */
  readonly heat: Power
  /** Heat per mass of pumps, coolant, lines and radiator [W/kg]; 1.5 kW/kg when left out. */
  readonly specificHeatFlow?: SpecificPower
}

export interface ParachuteOptions {
  /** [kg] */
  readonly grossMass: Mass
  /** On touching down [m/s]; 7.5 when left out. */
  readonly descentSpeed?: Speed
  /** [kg/m^3]; 1.225 when left out. */
  readonly density?: Density
  /** Of the canopy; 0.8 when left out. */
  readonly dragCoefficient?: Ratio
  /** Canopy fabric with its tapes and lines [kg/m^2]; 0.06 when left out. */
  readonly canopyDensity?: ArealDensity
  /** Rocket, container, risers and attachments over canopy; 0.5 when left out. */
  readonly share?: Ratio
}

export interface Parachute {
  /** [kg] */
  readonly mass: Mass
  /** [m^2] */
  readonly canopyArea: Area
  /** Of gross mass. */
  readonly massShare: Ratio
}

const knownStowage = new Set(['movedMass', 'doorArea', 'count', 'perMovedMass', 'perDoorArea', 'each'])
const knownCooling = new Set(['heat', 'specificHeatFlow'])
const knownParachute = new Set(['grossMass', 'descentSpeed', 'density', 'dragCoefficient', 'canopyDensity', 'share'])

/**
 * Mass of what stows the lift rotors in cruise.
 *
 * @equation m = n (m_each + k m_moved + w S_doors)
 * @param options - `movedMass` of one rotor [kg], `count` n; optional `doorArea` S of one rotor [m^2] (0), `perMovedMass` k (0.15), `perDoorArea` w (8 kg/m^2), `each` m_each (1 kg)
 * @returns mass [kg]
 * @throws InvalidInput for a negative value, a count that is not whole, and an unknown option
 * @method House model: the mechanism carries what it moves and shuts what it opens, so it grows with both.
 * @validity Guesses, 30 to 50 % either way until a mechanism is drawn: show both ends. What the holes cost in structure is not here.
 * @source House model, no publication.
 * @example
 * mass.stowageMechanism({ movedMass: 12 * u.kg, count: 8 }) // 22.4
 */
export function stowageMechanism(options: StowageMechanismOptions): Mass {
  const method = 'mass.stowageMechanism'
  checkOptions(method, options, knownStowage)
  const { movedMass, doorArea = 0, count, perMovedMass = 0.15, perDoorArea = 8, each = 1 } = options
  requireNonNegative(method, 'movedMass', movedMass, 'kg')
  requireNonNegative(method, 'doorArea', doorArea, 'm^2')
  requireCount(method, 'count', count)
  requireNonNegative(method, 'perMovedMass', perMovedMass, '1')
  requireNonNegative(method, 'perDoorArea', perDoorArea, 'kg/m^2')
  requireNonNegative(method, 'each', each, 'kg')
  const mass = count * (each + perMovedMass * movedMass + perDoorArea * doorArea)
  requireRepresentable(method, mass)
  return mass
}

/**
 * Mass of a liquid cooling system.
 *
 * @equation m = H/h
 * @param options - `heat` H to be taken away [W], `specificHeatFlow` h (1.5 kW/kg)
 * @returns mass [kg]
 * @throws InvalidInput for a negative heat, a heat flow that is not positive, and an unknown option
 * @method House model: loops are scaled by the heat they carry. Hover heat of a minute may be stored instead: `battery.heating`.
 * @validity 1 to 2 kW/kg on a hot day (from memory, low confidence). Drag and fan power of the radiator are not here.
 * @source House model, no publication.
 * @example
 * mass.cooling({ heat: 30 * u.kW }) // 20
 */
export function cooling(options: CoolingOptions): Mass {
  const method = 'mass.cooling'
  checkOptions(method, options, knownCooling)
  const { heat, specificHeatFlow = 1500 } = options
  requireNonNegative(method, 'heat', heat, 'W')
  requirePositive(method, 'specificHeatFlow', specificHeatFlow, 'W/kg')
  const mass = heat / specificHeatFlow
  requireRepresentable(method, mass)
  return mass
}

/**
 * Mass of a recovery parachute for the whole aircraft.
 *
 * @equation A = 2 m g/(rho V^2 C_D); m_parachute = w A (1 + share)
 * @param options - `grossMass` m [kg]; optional `descentSpeed` V (7.5 m/s), `density` rho (1.225 kg/m^3), `dragCoefficient` C_D (0.8), `canopyDensity` w (0.06 kg/m^2), `share` (0.5)
 * @returns `mass` [kg], `canopyArea` [m^2], `massShare` of gross mass
 * @throws InvalidInput for a value that is not positive, and an unknown option
 * @method House model: canopy from the speed of descent, the rest in proportion.
 * @validity Systems built weigh 2 to 4 % of gross mass (from memory); outside an advisory. No parachute opens from a low hover.
 * @source Drag balance: textbook. Weights: common practice, from memory.
 * @example
 * mass.parachute({ grossMass: 2000 * u.kg }).mass // 64.05
 */
export function parachute(options: ParachuteOptions): Parachute {
  const method = 'mass.parachute'
  checkOptions(method, options, knownParachute)
  const { grossMass, descentSpeed = 7.5, density = 1.225, dragCoefficient = 0.8 } = options
  const { canopyDensity = 0.06, share = 0.5 } = options
  requirePositive(method, 'grossMass', grossMass, 'kg')
  requirePositive(method, 'descentSpeed', descentSpeed, 'm/s')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireWithin(method, 'dragCoefficient', dragCoefficient, '1', 0.1, 3)
  requirePositive(method, 'canopyDensity', canopyDensity, 'kg/m^2')
  requireNonNegative(method, 'share', share, '1')
  const canopyArea = (2 * grossMass * u.g0) / (density * descentSpeed * descentSpeed * dragCoefficient)
  const mass = canopyDensity * canopyArea * (1 + share)
  const massShare = mass / grossMass
  requireRepresentable(method, mass + canopyArea + massShare)
  if ((massShare < 0.02 || massShare > 0.04) && isListening())
    advise({
      code: 'PARACHUTE_SHARE',
      method,
      quantity: 'massShare',
      value: massShare,
      range: [0.02, 0.04],
      message: `A parachute of ${(100 * massShare).toFixed(1)} % of the gross mass is outside systems built (2 to 4 %).`,
    })
  return { mass, canopyArea, massShare }
}
