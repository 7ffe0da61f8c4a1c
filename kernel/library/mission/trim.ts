import { requireFinite, requireNonNegative, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Acceleration, Force, Power, Ratio, Speed } from '../quantity.js'
import { type ConditionsOptions, knownConditions, readConditions } from './conditions.js'
import { type Moment, setMoment } from './moment.js'
import { buildTrimPoint, greatestThrust, setTrim, type TrimPoint } from './trim-point.js'

export interface TrimOptions extends ConditionsOptions {
  /** True airspeed [m/s]; 0 is hover. */
  readonly speed: Speed
  /** Along the path [m/s^2]; 0 when left out. */
  readonly acceleration?: Acceleration
  /** Of the wing while rotors help; C_L,max over the square of the conversion margin when left out. */
  readonly liftCoefficient?: Ratio
  /** Lift rotors that do not turn; 0 when left out. */
  readonly stoppedRotors?: Ratio
}

export interface Trim {
  readonly state: 'hover' | 'transition' | 'wing-borne'
  /** Of the weight, on the rotors. */
  readonly rotorShare: Ratio
  /** [N] */
  readonly wingLift: Force
  readonly liftCoefficient: Ratio
  /** Of all lift rotors, download included [N]. */
  readonly rotorThrust: Force
  /** C_T/sigma at the tip speed of hover; absent without a solidity. */
  readonly bladeLoading?: Ratio
  /** Of polar, uncovered rotors and H-force [N]. */
  readonly drag: Force
  /** [N]; negative where the aircraft must be braked. */
  readonly thrustNeeded: Force
  /** At the shafts of all lift rotors [W]. */
  readonly rotorPower: Power
  /** At the shaft [W]. */
  readonly propellerPower: Power
  /** At the terminals of the battery, hotel power included [W]. */
  readonly power: Power
  /** Signed, positive is lacking; absent where no limit is stated. */
  readonly deficits: TrimDeficits
}

export interface TrimDeficits {
  /** At the shafts of the lift rotors [W]. */
  readonly liftPower?: Power
  /** At the shaft of the propeller [W]. */
  readonly cruisePower?: Power
  /** Of the propeller [N]. */
  readonly thrust?: Force
}

const method = 'mission.trim'
const known = new Set([...knownConditions, 'speed', 'acceleration', 'liftCoefficient', 'stoppedRotors'])

/**
 * Level flight at any speed from hover on: lift shared between wing and rotors, thrust against drag and inertia, and the power it takes.
 *
 * @equation L_w = min(W, q S C_L); T_r (1 - d) = W - L_w; P_r = kappa T_r v + P_0(T_r, V); T_p = q S (C_D0 + K C_L^2) + q A_u + H + m a; P = P_r/eta_l + T_p max(V, V_s)/(eta_p eta_c) + P_hotel
 * @param options - `aircraft`, `speed` V [m/s]; optional `acceleration` a [m/s^2] (0), `liftCoefficient` C_L of the wing while rotors help (C_L,max over the square of the conversion margin),
 * `stoppedRotors` (0), `altitude` [m], `temperatureOffset` [K], `mass` [kg]
 * @returns `state`, `rotorShare`, `wingLift` [N], `liftCoefficient`, `rotorThrust` [N], `bladeLoading`, `drag`, `thrustNeeded` [N], `rotorPower`, `propellerPower`, `power` [W] at the terminals, `deficits`: `liftPower`,
 * `cruisePower` [W], `thrust` [N], signed, positive is lacking
 * @throws InvalidInput for a speed below 0, a lift coefficient above the largest, as many stopped rotors as there are, and an unknown option
 * @method Disks level with the stream, wing at one incidence until it carries all: lift goes over with the square of speed. Inflow and blade drag as `rotor.edgewise`, Glauert's equation in closed
 * form. Speed control: tip speed follows the root of rotor thrust; pitch control: constant tip speed, slowed over the last tenth of the lift (house model). Download falls with the
 * skew of the wakes, d = d_0/(1 + V^2/v_h^2) (house model). Braking takes no power: nose-up attitude does it. Continuous in speed.
 * @validity As `rotor.edgewise`: advance ratio to 0.3, blade loading to 0.12; outside these no advisory here, for `bladeLoading` is in the answer and
 * `mission.corridor` draws the limits. Interference of rotor wakes with wing and tail is not in it: several per cent of lift either way.
 * @source Glauert, R & M 1111, 1926 (from memory), and what `rotor.edgewise` names; sharing of lift at constant incidence: house model, the simplest schedule that meets the conversion speed.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * mission.trim({ aircraft: craft, speed: 25 * u.mps, acceleration: 1.5 }).rotorShare // 0.678
 */
export function trim(options: TrimOptions): Trim {
  checkOptions(method, options, known)
  const { speed, acceleration = 0, stoppedRotors = 0 } = options
  requireNonNegative(method, 'speed', speed, 'm/s')
  requireFinite(method, 'acceleration', acceleration, 'm/s^2')
  const moment = readConditions(method, options)
  stopRotors(method, moment, stoppedRotors)
  const { liftCoefficient = moment.sharingLift } = options
  requireWithin(method, 'liftCoefficient', liftCoefficient, '1', 0, moment.craft.maximumLift)
  const point = buildTrimPoint()
  setTrim(point, moment, speed, acceleration, liftCoefficient)
  const thrustNeeded = point.drag + moment.mass * acceleration
  requireRepresentable(method, point.power + point.thrust + thrustNeeded + point.liftCoefficient)
  const share = point.rotorLift / moment.weight
  return {
    state: speed === 0 ? 'hover' : share > 0 ? 'transition' : 'wing-borne',
    rotorShare: share,
    wingLift: point.wingLift,
    liftCoefficient: point.liftCoefficient,
    rotorThrust: point.thrust,
    ...bladeLoadingOf(moment, point),
    drag: point.drag,
    thrustNeeded,
    rotorPower: point.rotorPower,
    propellerPower: point.propellerPower,
    power: point.power,
    deficits: deficitsOf(moment, point, thrustNeeded),
  }
}

/** Sets a moment anew with some of the rotors stopped. */
export function stopRotors(caller: string, moment: Moment, stopped: number): void {
  requireStopped(caller, 'stoppedRotors', moment.craft.lift.count, stopped)
  if (stopped > 0) setMoment(moment, moment.mass, moment.density, stopped)
}

export function requireStopped(caller: string, argument: string, count: number | undefined, stopped: number): void {
  requireNonNegative(caller, argument, stopped, '1')
  if (stopped === 0 || (count !== undefined && stopped < count)) return
  throw new InvalidInput({
    method: caller,
    argument,
    value: stopped,
    accepted:
      count === undefined ? '0 where lift.count is not given' : `less than the ${count} lift rotors of the aircraft`,
  })
}

function bladeLoadingOf(moment: Moment, point: TrimPoint): { readonly bladeLoading?: number } {
  const { solidity } = moment.craft.lift
  if (solidity === undefined) return {}
  const { density, diskArea, tipSpeed } = moment
  return { bladeLoading: point.thrust / (density * diskArea * tipSpeed * tipSpeed * solidity) }
}

function deficitsOf(moment: Moment, point: TrimPoint, thrustNeeded: number): TrimDeficits {
  const { lift, cruise } = moment.craft
  return {
    ...(lift.powerLimit === undefined ? {} : { liftPower: point.rotorPower - lift.powerLimit }),
    ...(cruise.powerLimit === undefined ? {} : { cruisePower: point.propellerPower - cruise.powerLimit }),
    ...(cruise.staticThrust === undefined && (cruise.powerLimit === undefined || point.speed === 0)
      ? {}
      : { thrust: thrustNeeded - greatestThrust(moment, point.speed) }),
  }
}
