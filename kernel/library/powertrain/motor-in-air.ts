import { dynamicViscosity } from '../air/viscosity.js'
import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type {
  AbsoluteTemperature,
  Density,
  DynamicViscosity,
  Power,
  Pressure,
  Ratio,
  Speed,
  Torque,
} from '../quantity.js'
import { silently } from '../recorder.js'
import { type Motor, requireMotor } from './motor.js'

export interface MotorInAirOptions {
  /** As its data page rates it. */
  readonly motor: Motor
  /** Of the cooling air [kg/m^3]. */
  readonly density: Density
  /** Of the cooling air [K]. */
  readonly temperature: AbsoluteTemperature
  /** Speed of the cooling air over that of the rating; 1 when left out. */
  readonly airSpeedRatio?: Ratio
  /** Of the Reynolds number in the heat transfer: 0.8 turbulent (when left out), 0.5 laminar, 0 where a liquid takes the heat. */
  readonly exponent?: Ratio
  /** Of the air of the rating [kg/m^3]; 1.225 when left out. */
  readonly ratedDensity?: Density
  /** Of the air of the rating [K]; 313.15 when left out. */
  readonly ratedTemperature?: AbsoluteTemperature
  /** That the windings may reach [K]; 428.15 when left out. */
  readonly windingLimit?: AbsoluteTemperature
  /** Not read: so that `...air.standard(2000)` can be given whole. */
  readonly pressure?: Pressure
  readonly speedOfSound?: Speed
  readonly dynamicViscosity?: DynamicViscosity
}

export interface MotorInAir {
  /** Heat transfer over that of the rating. */
  readonly coolingRatio: Ratio
  /** Heat that may last over that of the rating. */
  readonly heatRatio: Ratio
  /** Loss that may last [W]. */
  readonly continuousLoss: Power
  /** At the rated speed [N m]; 0 where turning alone is too much. */
  readonly continuousTorque: Torque
  /** At the rated speed [W]. */
  readonly continuousPower: Power
  /** Loss without torque at the rated speed less the loss that may last [W]: positive is lacking. */
  readonly lossDeficit: Power
  /** The motor with these limits, for `powertrain.motorAt`, `overload` and `chain`. */
  readonly motor: Motor
}

const method = 'powertrain.motorInAir'
const known = new Set([
  'motor',
  'density',
  'temperature',
  'airSpeedRatio',
  'exponent',
  'ratedDensity',
  'ratedTemperature',
  'windingLimit',
  'pressure',
  'speedOfSound',
  'dynamicViscosity',
])

/**
 * What a motor cooled by air may give for ever in other air than that of its rating: thin, hot, or blown at another speed.
 *
 * @equation h/h_0 = (rho V/(rho_0 V_0))^m (mu/mu_0)^(1-m); loss that lasts = loss_0 (h/h_0) (T_max - T)/(T_max - T_0); Q = sqrt((loss that lasts - C_0 - C_1 w - C_2 w^3)/C_3); tau = tau_0 h_0/h
 * @param options - `motor`, `density` rho [kg/m^3], `temperature` T [K] of the air (`...air.standard(2000 * u.m, 20 * u.K)` will do); optional `airSpeedRatio` V/V_0 (1), `exponent` m (0.8 turbulent; 0.5 laminar; 0
 * cooled by a liquid), `ratedDensity` rho_0 (1.225 kg/m^3), `ratedTemperature` T_0 (313.15 K), `windingLimit` T_max (428.15 K)
 * @returns `coolingRatio` h/h_0, `heatRatio`, `continuousLoss` [W], `continuousTorque` [N m], `continuousPower` [W] at the rated speed, `lossDeficit` [W] (signed: positive where turning alone is too much), and `motor`, the
 * record with these limits for the other methods
 * @throws InvalidInput for values that are not positive, an exponent outside 0 to 1, air as hot as the windings may be, a motor that is none, and an unknown option
 * @method Nu = const Re^m Pr^n; air's conductivity goes as its viscosity (constant Prandtl number: within 2 % from -10 to 60 degrees Celsius). Steady heat balance of one lump, as in `powertrain.overload`. In hover V follows the rotor's own wash: sqrt of thrust over density.
 * @validity Forced convection by air, Reynolds number of the same regime as in the rating; density 0.6 to 1.3 kg/m^3, outside an advisory. Inner resistance of the windings is taken to be small beside that to the air, so that the
 * fall is the most it can be. Copper at its mean temperature; radiation left out.
 * @source Exponent 0.8: Dittus, F. W., Boelter, L. M. K., University of California Publications in Engineering 2, 1930, 443 (turbulent flow in ducts); 0.5: Pohlhausen's laminar plate (both from memory). 155 degrees
 * Celsius: thermal class 155 of IEC 60085; ratings at 40 degrees: IEC 60034-1 (both from memory).
 * @example
 * const lift = powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 })
 * powertrain.motorInAir({ motor: lift, ...air.standard(2000 * u.m, 20 * u.K) }).continuousTorque // 230.7
 */
export function motorInAir(options: MotorInAirOptions): MotorInAir {
  const { motor, coolingRatio, heatRatio } = readCooling(options)
  const continuousLoss = heatRatio * motor.continuousLoss
  const speed = motor.ratedSpeed
  const turning = motor.constant + speed * (motor.iron + motor.windage * speed * speed)
  const continuousTorque = Math.min(Math.sqrt(Math.max(continuousLoss - turning, 0) / motor.copper), motor.peakTorque)
  const continuousPower = continuousTorque * speed
  const thermalTime = motor.thermalTime / coolingRatio
  requireRepresentable(method, continuousLoss + continuousPower + thermalTime + 1 / continuousLoss)
  return {
    ...{ coolingRatio, heatRatio, continuousLoss, continuousTorque, continuousPower },
    lossDeficit: turning - continuousLoss,
    motor: Object.freeze({ ...motor, continuousLoss, continuousTorque, continuousPower, thermalTime }),
  }
}

function readCooling(options: MotorInAirOptions) {
  checkOptions(method, options, known)
  const motor = requireMotor(method, options.motor)
  const { density, temperature, airSpeedRatio = 1, exponent = 0.8 } = options
  const { ratedDensity = 1.225, ratedTemperature = 313.15, windingLimit = 428.15 } = options
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'airSpeedRatio', airSpeedRatio, '1')
  requireWithin(method, 'exponent', exponent, '1', 0, 1)
  requirePositive(method, 'ratedDensity', ratedDensity, 'kg/m^3')
  requireWithin(method, 'ratedTemperature', ratedTemperature, 'K', 150, 999)
  requireWithin(method, 'windingLimit', windingLimit, 'K', ratedTemperature + 1, 1000)
  requireWithin(method, 'temperature', temperature, 'K', 150, windingLimit - 1)
  const viscosityRatio = silently(() => dynamicViscosity(temperature) / dynamicViscosity(ratedTemperature))
  const flowRatio = (density * airSpeedRatio) / ratedDensity
  const coolingRatio = flowRatio ** exponent * viscosityRatio ** (1 - exponent)
  const heatRatio = (coolingRatio * (windingLimit - temperature)) / (windingLimit - ratedTemperature)
  requireRepresentable(method, flowRatio + coolingRatio + heatRatio + 1 / coolingRatio)
  adviseOutside(density, {
    ...{ code: 'COOLING_AIR', method, quantity: 'density', low: 0.6, high: 1.3 },
    because: 'cooling is carried over from the air of the rating, from 0.6 to 1.3 kg/m^3',
  })
  return { motor, coolingRatio, heatRatio }
}
