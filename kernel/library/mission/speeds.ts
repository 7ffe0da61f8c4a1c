import { requireFinite, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Power, Quantity, Ratio, Speed } from '../quantity.js'
import { type ConditionsOptions, knownConditions, readConditions } from './conditions.js'
import { bestRangeSpeed, greatestSpeed, type LevelPower, leastPowerSpeed, setLevelPower } from './level-speed.js'
import type { Moment } from './moment.js'
import { buildTrimPoint, setTrim } from './trim-point.js'

/** Energy per distance [J/m], the dimension of a force. */
export type EnergyPerDistance = Quantity<'kg m s^-2'>

export interface SpeedsOptions extends ConditionsOptions {
  /** From behind positive [m/s]; 0 when left out. */
  readonly tailwind?: Speed
}

export interface LevelSpeed {
  /** True airspeed [m/s]. */
  readonly speed: Speed
  /** True where the floor is above what the rule asks for. */
  readonly floorBinds: boolean
  /** At the terminals of the battery, hotel power included [W]. */
  readonly power: Power
  /** Over ground [J/m]; absent where the wind is not overcome. */
  readonly energyPerDistance?: EnergyPerDistance
  readonly liftToDrag: Ratio
}

export interface Speeds {
  /** [m/s] */
  readonly stall: Speed
  /** Least wing-borne speed [m/s]. */
  readonly floor: Speed
  /** Where the wing takes over [m/s]. */
  readonly conversion: Speed
  readonly bestRange: LevelSpeed
  readonly bestEndurance: LevelSpeed
  /** With the rating of the cruise system; absent where none is stated. Its speed is the floor where the rating does not suffice there. */
  readonly greatest?: LevelSpeed
  /** Rating less the shaft power at the speed of least power [W]; negative where level flight is out of reach. Absent without a rating. */
  readonly ratingMargin?: Power
}

const method = 'mission.speeds'
const known = new Set([...knownConditions, 'tailwind'])

/**
 * The speeds of level wing-borne flight: stall, floor, conversion, best range, best endurance, greatest.
 *
 * @equation P = (rho S C_D0 V^3/2 + 2 K W^2/(rho S V))/(eta_p eta_c) + P_hotel; best range: least P/(V + w); best endurance: least P; each no less than the floor, m_s V_stall
 * @param options - `aircraft`; optional `altitude` [m] (0), `temperatureOffset` [K] (0), `mass` [kg], `tailwind` w [m/s], negative against (0)
 * @returns `stall`, `floor`, `conversion` [m/s]; `bestRange`, `bestEndurance` and, with a rating, `greatest`, each with `speed` [m/s], `floorBinds`, `power` [W] at the terminals, `energyPerDistance` over ground
 * [J/m], `liftToDrag`; `ratingMargin` [W]
 * @throws InvalidInput for an aircraft that is none, an altitude outside the atmosphere, and an unknown option
 * @method True optima of power at the terminals: best range with wind and hotel power by Newton's method on dP/dV (V + w) = P, which has one root; best endurance in closed form. The battery's own
 * losses are not in it.
 * @validity Constant propeller efficiency, parabolic polar. Energy per distance with a headwind beyond the speed has no meaning and is left out.
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, sections 5.3 and 5.4 (from memory); with wind and hotel power: house derivation.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 }, hotelPower: 2 * u.kW,
 * })
 * mission.speeds({ aircraft: craft, altitude: 900 * u.m, tailwind: -10 * u.mps }).bestRange.speed // 49.93
 */
export function speeds(options: SpeedsOptions): Speeds {
  checkOptions(method, options, known)
  const { tailwind = 0 } = options
  requireFinite(method, 'tailwind', tailwind, 'm/s')
  const moment = readConditions(method, options)
  const level: LevelPower = { cubic: 0, inverse: 0, constant: 0 }
  setLevelPower(level, moment)
  const at = (speed: number) => describeSpeed(moment, speed, tailwind)
  const { powerLimit, efficiency } = moment.craft.cruise
  const base = {
    stall: moment.stallSpeed,
    floor: moment.floor,
    conversion: moment.conversion,
    bestRange: at(bestRangeSpeed(level, tailwind)),
    bestEndurance: at(leastPowerSpeed(level)),
  }
  if (powerLimit === undefined) return base
  const greatest = at(greatestSpeed(level, powerLimit / efficiency + level.constant))
  const needed = (base.bestEndurance.power - level.constant) * efficiency
  return { ...base, greatest, ratingMargin: powerLimit - needed }
}

function describeSpeed(moment: Moment, wanted: number, tailwind: number): LevelSpeed {
  const point = buildTrimPoint()
  const speed = Math.max(wanted, moment.floor)
  setTrim(point, moment, speed, 0, moment.craft.maximumLift)
  const { power, drag } = point
  const overGround = speed + tailwind
  const perDistance = overGround > 0 ? power / overGround : 0
  requireRepresentable(method, speed + power + perDistance + moment.weight / drag)
  return {
    speed,
    floorBinds: moment.floor > wanted,
    power,
    ...(overGround > 0 ? { energyPerDistance: perDistance } : {}),
    liftToDrag: moment.weight / drag,
  }
}
