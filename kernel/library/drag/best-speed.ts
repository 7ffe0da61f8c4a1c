/** The two best speeds of a parabolic polar, each with a floor below which it may not fall. */
import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Speed } from '../quantity.js'
import { type ParabolicPolar, requirePolar } from './polar.js'
import { levelFlight, type PowerRequired } from './power-required.js'

export interface BestSpeedOptions {
  readonly polar: ParabolicPolar
  /** Weight carried by the wing [N]. */
  readonly weight: Force
  /** Reference area of the polar [m^2]. */
  readonly wingArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** Least speed allowed [m/s], for instance 1.3 times the stall speed; 0 when left out. */
  readonly floor?: Speed
}

export interface BestSpeed extends PowerRequired {
  /** True airspeed [m/s]. */
  readonly speed: Speed
  /** True where the floor is above the speed of the closed form. */
  readonly floorBinds: boolean
}

const known = new Set(['polar', 'weight', 'wingArea', 'density', 'floor'])

/**
 * Speed at which level flight takes least power, or the floor where that is higher: loiter and reserve.
 *
 * @equation V = sqrt(2 W/(rho S)) (K/(3 C_D0))^(1/4), at C_L = sqrt(3 C_D0/K); the answer is max(V, floor)
 * @param options - `polar` (C_D0 and K), `weight` W [N], `wingArea` S [m^2], `density` rho [kg/m^3], `floor` [m/s] (0 when left out)
 * @returns `speed` [m/s], `floorBinds`, and the fields of `drag.powerRequired` there
 * @throws InvalidInput for a value that is not positive and finite, and for an unknown option
 * @method Closed form. Power has one minimum in speed, so with a floor above it the floor itself takes least power.
 * @validity Without a floor the lift coefficient may lie beyond the stall: give 1.3 stall speeds as the floor.
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, section 5.4 (from memory).
 * @example
 * const reserve = drag.leastPowerSpeed({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency: 0.8 }),
 *   weight: 2000 * u.kg * u.g0, wingArea: 14 * u.m2, density: 1.0580673, floor: 45 * u.mps,
 * })
 * reserve.floorBinds // true
 */
export function leastPowerSpeed(options: BestSpeedOptions): BestSpeed {
  return bestSpeed('drag.leastPowerSpeed', options, 3)
}

/**
 * Speed at which level flight has least drag, or the floor where that is higher: best range of an electric aircraft.
 *
 * @equation V = sqrt(2 W/(rho S)) (K/C_D0)^(1/4), at C_L = sqrt(C_D0/K); the answer is max(V, floor)
 * @param options - `polar` (C_D0 and K), `weight` W [N], `wingArea` S [m^2], `density` rho [kg/m^3], `floor` [m/s] (0 when left out)
 * @returns `speed` [m/s], `floorBinds`, and the fields of `drag.powerRequired` there
 * @throws InvalidInput for a value that is not positive and finite, and for an unknown option
 * @method Closed form; drag has one minimum in speed.
 * @validity Still air, constant propeller efficiency, no power drawn for other uses: a hotel load makes the best range speed higher.
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, section 5.4 (from memory).
 * @example
 * const range = drag.leastDragSpeed({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency: 0.8 }),
 *   weight: 2000 * u.kg * u.g0, wingArea: 14 * u.m2, density: 1.0580673,
 * })
 * range.speed // 51.392
 */
export function leastDragSpeed(options: BestSpeedOptions): BestSpeed {
  return bestSpeed('drag.leastDragSpeed', options, 1)
}

/** `share` is C_D0's multiple that equals the induced drag at the optimum: 3 for least power, 1 for least drag. */
function bestSpeed(method: string, options: BestSpeedOptions, share: 1 | 3): BestSpeed {
  checkOptions(method, options, known)
  const { polar, weight, wingArea, density, floor = 0 } = options
  requirePolar(method, polar)
  requirePositive(method, 'weight', weight, 'N')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireNonNegative(method, 'floor', floor, 'm/s')
  const lift = Math.sqrt((share * polar.zeroLiftDrag) / polar.inducedFactor)
  const best = Math.sqrt((2 * weight) / (density * wingArea * lift))
  requireRepresentable(method, best)
  const speed = Math.max(best, floor)
  const there = levelFlight(method, polar, weight, wingArea, density, speed)
  return {
    speed,
    floorBinds: floor > best,
    power: there.power,
    drag: there.drag,
    liftCoefficient: there.liftCoefficient,
    dragCoefficient: there.dragCoefficient,
    liftToDrag: there.liftToDrag,
  }
}
