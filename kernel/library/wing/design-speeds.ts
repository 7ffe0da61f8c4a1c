import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Pressure, Ratio, Speed } from '../quantity.js'

export interface DesignSpeedsOptions {
  /** Weight over wing area [N/m^2]. */
  readonly wingLoading: Pressure
  /** Largest lift coefficient, flaps in. */
  readonly maximumLift: Ratio
  /** Positive limit manoeuvring load factor. */
  readonly loadFactor: Ratio
}

export interface DesignSpeeds {
  /** V_S, equivalent [m/s]. */
  readonly stall: Speed
  /** V_A: up to here a full pull stalls before it overloads [m/s]. */
  readonly manoeuvre: Speed
  /** Least V_C that the rules allow [m/s]; a designer may choose more, and need not exceed 0.9 of the level speed at full power. */
  readonly cruise: Speed
  /** Least V_D that goes with it [m/s]. */
  readonly dive: Speed
}

const method = 'wing.designSpeeds'
const known = new Set(['wingLoading', 'maximumLift', 'loadFactor'])
const knot = 1852 / 3600
const poundPerSquareFoot = 47.880259
const seaLevelDensity = 1.225

/**
 * Stall, manoeuvre, least cruise and least dive speed of the small-aeroplane rules, normal category.
 *
 * @equation V_S = sqrt(2 (W/S)/(rho_0 C_L,max)); V_A = V_S sqrt(n); V_C = k sqrt(W/S [lb/ft^2]) knots, k = 33 to 20 lb/ft^2 falling to
 * 28.6 at 100; V_D = m V_C, m = 1.4 to 20 lb/ft^2 falling to 1.35 at 100
 * @param options - `wingLoading` W/S [N/m^2], `maximumLift` C_L,max, `loadFactor` n
 * @returns `stall`, `manoeuvre`, `cruise`, `dive`, equivalent airspeeds [m/s]
 * @throws InvalidInput for a value that is not positive, a load factor outside 1 to 12, and an unknown option
 * @method As printed. The formula gives knots; taking them for feet per second is a known slip.
 * @validity Wing loadings up to 100 lb/ft^2 (4788 N/m^2); above, the last factors are held and an advisory says so.
 * @source 14 CFR 23.335 before 2017, CS-23 Amendment 4 (formula read second-hand).
 * @example
 * const speeds = wing.designSpeeds({ wingLoading: 2106.7314, maximumLift: 1.5, loadFactor: 3.8 })
 * speeds.cruise / u.kt // 210.14
 */
export function designSpeeds(options: DesignSpeedsOptions): DesignSpeeds {
  checkOptions(method, options, known)
  const { wingLoading, maximumLift, loadFactor } = options
  requirePositive(method, 'wingLoading', wingLoading, 'N/m^2')
  requirePositive(method, 'maximumLift', maximumLift, '1')
  requireWithin(method, 'loadFactor', loadFactor, '1', 1, 12)
  const loading = wingLoading / poundPerSquareFoot
  adviseOutside(wingLoading, {
    code: 'DESIGN_SPEED_WING_LOADING',
    method,
    quantity: 'wingLoading',
    high: 100 * poundPerSquareFoot,
    because: 'above 4788 N/m^2 the rules give no factor; the last one is held',
  })
  const along = Math.min(1, Math.max(0, (loading - 20) / 80))
  const stall = Math.sqrt((2 * wingLoading) / (seaLevelDensity * maximumLift))
  const cruise = (33 - 4.4 * along) * Math.sqrt(loading) * knot
  const answer = { stall, manoeuvre: stall * Math.sqrt(loadFactor), cruise, dive: (1.4 - 0.05 * along) * cruise }
  requireRepresentable(method, answer.manoeuvre + answer.dive)
  return answer
}
