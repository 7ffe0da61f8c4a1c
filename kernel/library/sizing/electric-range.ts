import { requireNonNegative, requirePositive, requireRepresentable, requireShare } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Force, Length, Mass, Ratio, SpecificEnergy, Speed, Time } from '../quantity.js'

export interface ElectricRangeOptions {
  /** [kg] */
  readonly grossMass: Mass
  /** [kg] */
  readonly batteryMass: Mass
  /** That may be used, per mass of pack [J/kg]: `battery.massForMission` gives it. */
  readonly usableSpecificEnergy: SpecificEnergy
  readonly liftToDrag: Ratio
  /** From the terminals of the pack to thrust times speed. */
  readonly efficiency: Ratio
  /** Of cruise [m/s]; needed for a reserve and for the endurance. */
  readonly speed?: Speed
  /** Flown at the same speed after the range [s]; 0 when left out. */
  readonly reserveTime?: Time
}

export interface ElectricRange {
  /** With the reserve left [m]; 0 where the reserve alone takes the whole battery. */
  readonly range: Length
  /** At the terminals per distance [J/m]. */
  readonly energyPerDistance: Force
  /** Aloft with the reserve left [s]; absent without a speed. */
  readonly endurance?: Time
  /** Of the usable energy that the reserve takes. */
  readonly reserveShare: Ratio
}

const method = 'sizing.electricRange'
const known = new Set([
  'grossMass',
  'batteryMass',
  'usableSpecificEnergy',
  'liftToDrag',
  'efficiency',
  'speed',
  'reserveTime',
])
const standardGravity = 9.80665

/**
 * Range of a battery aircraft in level flight: the closed form against which a flown mission is held.
 *
 * @equation R = (e/g) (L/D) eta m_b/m - V t_reserve; energy per distance = m g/(eta L/D)
 * @param options - `grossMass` m, `batteryMass` m_b [kg], `usableSpecificEnergy` e [J/kg], `liftToDrag` L/D, `efficiency` eta (pack to thrust power); optional `speed` V [m/s],
 * `reserveTime` t_reserve [s] (0)
 * @returns `range` [m], `energyPerDistance` [J/m], `endurance` [s] where a speed is given, `reserveShare` of the usable energy
 * @throws InvalidInput for values that are not positive, a battery heavier than the aircraft, an efficiency above 1, a reserve without a speed, and an unknown option
 * @method Constant mass, so nothing is gained by growing lighter as with fuel: distance is in proportion to energy. Speed matters only through the ratio of lift to drag.
 * @validity Cruise alone, in still air: no hover, climb or hotel power. Those come off the energy first, or the mission is flown.
 * @source Hepperle, M., Electric Flight - Potential and Limitations, NATO STO-MP-AVT-209, paper 9, 2012 (equation from memory).
 * @example
 * const reach = sizing.electricRange({
 *   grossMass: 1000 * u.kg, batteryMass: 300 * u.kg, usableSpecificEnergy: (200 * u.Wh) / u.kg, liftToDrag: 15, efficiency: 0.75,
 * })
 * reach.range / u.km // 247.79
 */
export function electricRange(options: ElectricRangeOptions): ElectricRange {
  checkOptions(method, options, known)
  const { grossMass, batteryMass, usableSpecificEnergy, liftToDrag, efficiency, speed, reserveTime = 0 } = options
  requirePositive(method, 'grossMass', grossMass, 'kg')
  requirePositive(method, 'batteryMass', batteryMass, 'kg')
  requirePositive(method, 'usableSpecificEnergy', usableSpecificEnergy, 'J/kg')
  requirePositive(method, 'liftToDrag', liftToDrag, '1')
  requireShare(method, 'efficiency', efficiency)
  requireNonNegative(method, 'reserveTime', reserveTime, 's')
  if (speed !== undefined) requirePositive(method, 'speed', speed, 'm/s')
  else if (reserveTime > 0)
    throw new InvalidInput({ method, argument: 'speed', value: 'missing', accepted: 'given where there is a reserve' })
  if (batteryMass > grossMass)
    throw new InvalidInput({
      method,
      argument: 'batteryMass',
      value: batteryMass,
      unit: 'kg',
      accepted: 'at most the gross mass',
    })
  const energyPerDistance = (grossMass * standardGravity) / (efficiency * liftToDrag)
  const whole = (usableSpecificEnergy * batteryMass) / energyPerDistance
  const reserve = reserveTime > 0 ? (speed as number) * reserveTime : 0
  const range = Math.max(whole - reserve, 0)
  const reserveShare = reserve / whole
  requireRepresentable(method, energyPerDistance + whole + reserveShare + (speed === undefined ? 0 : range / speed))
  return {
    range,
    energyPerDistance,
    ...(speed === undefined ? {} : { endurance: range / speed }),
    reserveShare,
  }
}
