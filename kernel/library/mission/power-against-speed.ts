import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Power, Ratio, Speed } from '../quantity.js'
import { type ConditionsOptions, knownConditions, readConditions } from './conditions.js'
import { bestRangeSpeed, greatestSpeed, leastPowerSpeed, setLevelPower } from './level-speed.js'
import type { Moment } from './moment.js'
import { speedAt } from './transition-slice.js'
import { buildTrimPoint, setTrim } from './trim-point.js'

export interface PowerAgainstSpeedOptions extends ConditionsOptions {
  /** Last speed [m/s]; the greatest that the rating gives, or 1.4 times that of best range, when left out. */
  readonly to?: Speed
  /** Number of speeds; 121 when left out. */
  readonly points?: Ratio
}

interface Marks {
  readonly stallSpeed: Speed
  readonly conversionSpeed: Speed
  readonly floorSpeed: Speed
  /** Of least power and of least energy per distance in still air, no less than the floor [m/s]. */
  readonly bestEnduranceSpeed: Speed
  readonly bestRangeSpeed: Speed
  /** Absent without a rating, and where it does not suffice for level flight. */
  readonly greatestSpeed?: Speed
}

export interface PowerAgainstSpeed extends Marks {
  /** From 0 [m/s]. */
  readonly speed: readonly Speed[]
  /** Taken by the lift rotors at the terminals [W]. */
  readonly rotors: readonly Power[]
  /** Taken by the propeller at the terminals [W]. */
  readonly propeller: readonly Power[]
  /** All, hotel power included [W]. */
  readonly power: readonly Power[]
  /** Of the weight, on the rotors. */
  readonly rotorShare: readonly Ratio[]
}

const method = 'mission.powerAgainstSpeed'
const known = new Set([...knownConditions, 'to', 'points'])

/**
 * Power of level flight from hover to the greatest speed, with its shares.
 *
 * @equation as `mission.trim` without acceleration
 * @param options - `aircraft`; optional `altitude` [m], `temperatureOffset` [K], `mass` [kg], `to` [m/s], `points` (121)
 * @returns lists of `speed` [m/s], `rotors`, `propeller`, `power` [W] at the terminals, `rotorShare`; `stallSpeed`, `conversionSpeed`, `floorSpeed`, `bestEnduranceSpeed`, `bestRangeSpeed` and, where the
 * rating suffices, `greatestSpeed` [m/s]
 * @throws InvalidInput for a speed that is not positive, fewer than 8 or more than 2000 points, and an unknown option
 * @method As `mission.trim`; the conversion speed is one of the speeds where the curve goes beyond it.
 * @validity As `mission.trim`.
 * @source As `mission.trim`.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * mission.powerAgainstSpeed({ aircraft: craft }).conversionSpeed // 44.12
 */
export function powerAgainstSpeed(options: PowerAgainstSpeedOptions): PowerAgainstSpeed {
  checkOptions(method, options, known)
  const { points = 121 } = options
  requireWithin(method, 'points', points, '1', 8, 2000)
  const moment = readConditions(method, options)
  const marks = marksOf(moment)
  const { to = marks.greatestSpeed ?? 1.4 * marks.bestRangeSpeed } = options
  requirePositive(method, 'to', to, 'm/s')
  const count = Math.round(points) - 1
  const curve = {
    speed: [] as number[],
    rotors: [] as number[],
    propeller: [] as number[],
    power: [] as number[],
    rotorShare: [] as number[],
  }
  const point = buildTrimPoint()
  const { lift, cruise } = moment.craft
  for (let index = 0; index <= count; index += 1) {
    const speed = speedAt(index, count, moment.conversion, to)
    setTrim(point, moment, speed, 0, moment.sharingLift)
    curve.speed.push(speed)
    curve.rotors.push(point.rotorPower / lift.efficiency)
    curve.propeller.push(point.propellerPower / cruise.efficiency)
    curve.power.push(point.power)
    curve.rotorShare.push(point.rotorLift / moment.weight)
    requireRepresentable(method, point.power)
  }
  return { ...curve, ...marks }
}

function marksOf(moment: Moment): Marks {
  const level = { cubic: 0, inverse: 0, constant: 0 }
  setLevelPower(level, moment)
  const { powerLimit, efficiency } = moment.craft.cruise
  const greatest = powerLimit === undefined ? 0 : greatestSpeed(level, powerLimit / efficiency + level.constant)
  const marks = {
    stallSpeed: moment.stallSpeed,
    conversionSpeed: moment.conversion,
    floorSpeed: moment.floor,
    bestEnduranceSpeed: Math.max(moment.floor, leastPowerSpeed(level)),
    bestRangeSpeed: Math.max(moment.floor, bestRangeSpeed(level, 0)),
  }
  requireRepresentable(method, marks.stallSpeed + marks.bestEnduranceSpeed + marks.bestRangeSpeed + greatest)
  return greatest > moment.floor ? { ...marks, greatestSpeed: greatest } : marks
}
