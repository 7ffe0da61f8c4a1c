import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Area, Density, Force, Power, Ratio, Speed, TemperatureDifference } from '../quantity.js'

export interface CoolingOptions {
  /** Heat that the air must carry away [W]. */
  readonly heat: Power
  /** Rise of the cooling air's temperature [K]. */
  readonly temperatureRise: TemperatureDifference
  /** [m/s] */
  readonly speed: Speed
  /** [kg/m^3] */
  readonly density: Density
  /** Total pressure lost in duct and cooler, in dynamic pressures of flight; 0.7 when left out. */
  readonly pressureLoss?: Ratio
}

export interface Cooling {
  /** [N] */
  readonly drag: Force
  /** D/q [m^2]. */
  readonly dragArea: Area
  /** [W] */
  readonly power: Power
  /** Cooling air [kg/s]. */
  readonly massFlow: number
  /** Cross section of the stream tube that enters, far ahead [m^2]. */
  readonly captureArea: Area
}

const method = 'drag.cooling'
const known = new Set(['heat', 'temperatureRise', 'speed', 'density', 'pressureLoss'])
/** Of air [J/(kg K)]. */
const specificHeat = 1005

/**
 * Drag of cooling air that is taken in, slowed by a cooler and let out backwards.
 *
 * @equation m = Q/(c_p dT); V_out = V sqrt(1 - k); D = m (V - V_out); D/q = 2 m (1 - sqrt(1 - k))/(rho V)
 * @param options - `heat` Q [W], `temperatureRise` dT [K], `speed` V [m/s], `density` rho [kg/m^3]; optional `pressureLoss` k (0.7)
 * @returns `drag` [N], `dragArea` [m^2], `power` [W], `massFlow` [kg/s], `captureArea` [m^2]
 * @throws InvalidInput for a negative heat, values that are not positive, a pressure loss outside 0 to 1, and an unknown option
 * @method Momentum balance of the internal flow, exit at the pressure of the stream, the heat's own thrust left out (1 to 2 % at these
 * temperatures). Spillage and the shape of inlet and outlet come on top.
 * @validity Below Mach 0.4. A temperature rise above 40 K carries an advisory: batteries and motors seldom allow it (common practice, no
 * source). Lossless exits lie at k 0.3, simple louvres near 1.
 * @source Momentum theorem; Hoerner, S. F., Fluid-Dynamic Drag, 1965, chapter on internal flow (from memory).
 * @example
 * const radiator = drag.cooling({ heat: 8 * u.kW, temperatureRise: 20, speed: 58, density: 1.1 })
 * radiator.dragArea // 0.00564
 */
export function cooling(options: CoolingOptions): Cooling {
  checkOptions(method, options, known)
  const { heat, temperatureRise, speed, density, pressureLoss = 0.7 } = options
  requireNonNegative(method, 'heat', heat, 'W')
  requirePositive(method, 'temperatureRise', temperatureRise, 'K')
  requirePositive(method, 'speed', speed, 'm/s')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireWithin(method, 'pressureLoss', pressureLoss, '1', 0, 1)
  adviseOutside(temperatureRise, {
    code: 'COOLING_RISE',
    method,
    quantity: 'temperatureRise',
    high: 40,
    because: 'above 40 K the air leaves hotter than batteries and motors seldom allow',
  })
  const massFlow = heat / (specificHeat * temperatureRise)
  const drag = massFlow * speed * (1 - Math.sqrt(1 - pressureLoss))
  const answer = {
    drag,
    dragArea: drag / (0.5 * density * speed * speed),
    power: drag * speed,
    massFlow,
    captureArea: massFlow / (density * speed),
  }
  requireRepresentable(method, drag + answer.dragArea + answer.power + massFlow + answer.captureArea)
  return answer
}
