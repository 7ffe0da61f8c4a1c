/** Climb with one unit lost, on the wing and on the rotors. */
import { requireCount, requireNonNegative, requirePositive, requireRepresentable, requireShare } from '../check.js'
import { leastPowerSpeed } from '../drag/best-speed.js'
import { type ParabolicPolar, requirePolar } from '../drag/polar.js'
import { levelFlight } from '../drag/power-required.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Area, Density, Force, Power, Ratio, Speed } from '../quantity.js'
import { silently } from '../recorder.js'
import { climb } from '../rotor/climb.js'
import { requireList } from '../shapes.js'

export interface ClimbAfterLossOptions {
  readonly polar: ParabolicPolar
  /** [N] */
  readonly weight: Force
  /** [m^2] */
  readonly wingArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** Of the cruise propulsion with all units [W]. */
  readonly shaftPower: Power
  /** That share it: motors, windings or packs. */
  readonly units: Ratio
  /** Of them; 1 when left out. */
  readonly lost?: Ratio
  readonly propellerEfficiency: Ratio
  /** True airspeed [m/s]; that of least power, or the floor where that is higher, when left out. */
  readonly speed?: Speed
  /** Slowest allowed [m/s]; 0 when left out. */
  readonly floor?: Speed
  /** Added drag area of what has failed: a stopped propeller [m^2]; 0 when left out. */
  readonly addedDragArea?: Area
}

export interface ClimbAfterLoss {
  /** Vertical [m/s]; negative sinks. */
  readonly climbSpeed: Speed
  /** Climb over path speed. */
  readonly gradient: Ratio
  /** [m/s] */
  readonly speed: Speed
  /** Shaft power left [W]. */
  readonly shaftPower: Power
  /** Shaft power of level flight less what is left [W]: positive is lacking. */
  readonly deficit: Power
}

export interface VerticalClimbAfterLossOptions {
  /** Of each lift rotor after the loss [N], as `authority.trim` gives it. */
  readonly thrusts: readonly Force[]
  /** Of one rotor [m^2]. */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
  readonly figureOfMerit: Ratio
  /** That one lift motor can give [W]. */
  readonly unitPower: Power
}

export interface VerticalClimbAfterLoss {
  /** That the weakest rotor allows [m/s]; 0 where it cannot even hover. */
  readonly climbSpeed: Speed
  /** Hover power of the rotor that is asked most, less `unitPower` [W]: positive is lacking. */
  readonly deficit: Power
  /** Place of that rotor, from 0. */
  readonly rotor: Ratio
  /** In hover, of all rotors [W]. */
  readonly hoverPower: Power
}

const method = 'limits.climbAfterLoss'
const verticalMethod = 'limits.verticalClimbAfterLoss'
const known = new Set([
  'polar',
  'weight',
  'wingArea',
  'density',
  'shaftPower',
  'units',
  'lost',
  'propellerEfficiency',
  'speed',
  'floor',
  'addedDragArea',
])
const knownVertical = new Set(['thrusts', 'diskArea', 'density', 'figureOfMerit', 'unitPower'])

/**
 * Climb on the wing after the loss of one unit of the cruise propulsion.
 *
 * @equation P_left = P (n - k)/n; V_climb = (eta P_left - D V)/W; gradient = V_climb/V; D with C_D0 + f/S
 * @param options - `polar`, `weight` W [N], `wingArea` S [m^2], `density` [kg/m^3], `shaftPower` P [W] of all `units` n, `propellerEfficiency` eta; optional `lost` k (1), `speed` V [m/s] (least power), `floor` [m/s]
 * (0), `addedDragArea` f [m^2] (0)
 * @returns `climbSpeed` [m/s] (negative sinks), `gradient`, `speed` [m/s], `shaftPower` left [W], `deficit` [W] against level flight
 * @throws InvalidInput for more units lost than there are, values that are not positive, and an unknown option
 * @method Energy balance at small angles. Too little power is an answer, not an error. With every unit lost the climb is the glide.
 * @validity The units left give what they gave before; what is lost takes no propeller with it unless `addedDragArea` says so.
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, section 5.10 (from memory).
 * @example
 * const left = limits.climbAfterLoss({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 }), weight: 16 * u.kN, wingArea: 15 * u.m2, density: 1.1,
 *   shaftPower: 150 * u.kW, units: 2, propellerEfficiency: 0.8, floor: 47 * u.mps,
 * })
 * left.climbSpeed // 0.11608
 */
export function climbAfterLoss(options: ClimbAfterLossOptions): ClimbAfterLoss {
  checkOptions(method, options, known)
  const { weight, wingArea, density, units, lost = 1, propellerEfficiency, floor = 0, addedDragArea = 0 } = options
  requireCount(method, 'units', units)
  requireNonNegative(method, 'lost', lost, '1')
  if (!Number.isInteger(lost) || lost > units)
    throw new InvalidInput({
      method,
      argument: 'lost',
      value: lost,
      accepted: `a whole number up to the ${units} units`,
    })
  requirePositive(method, 'shaftPower', options.shaftPower, 'W')
  requireShare(method, 'propellerEfficiency', propellerEfficiency)
  requireNonNegative(method, 'addedDragArea', addedDragArea, 'm^2')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePolar(method, options.polar)
  const { zeroLiftDrag, inducedFactor } = options.polar
  const polar = { zeroLiftDrag: zeroLiftDrag + addedDragArea / wingArea, inducedFactor }
  const best = silently(() => leastPowerSpeed({ polar, weight, wingArea, density, floor }))
  const { speed = best.speed } = options
  requirePositive(method, 'speed', speed, 'm/s')
  const { power } = silently(() => levelFlight(method, polar, weight, wingArea, density, speed))
  const shaftPower = (options.shaftPower * (units - lost)) / units
  const climbSpeed = (propellerEfficiency * shaftPower - power) / weight
  const gradient = climbSpeed / speed
  const deficit = power / propellerEfficiency - shaftPower
  requireRepresentable(method, climbSpeed + gradient + speed + deficit)
  return { climbSpeed, gradient, speed, shaftPower, deficit }
}

/**
 * Vertical climb on the lift rotors after a loss, with the thrusts of a trim: what the rotor that is asked most still allows.
 *
 * @equation each rotor: P = T (V + v) + P_0 <= P_unit, v (V + v) = T/(2 rho A), P_0 = T v_h (1/FM - 1); V = least over the rotors
 * @param options - `thrusts` T of each rotor [N] (as `authority.trim` gives them), `diskArea` A of one [m^2], `density` [kg/m^3], `figureOfMerit` FM, `unitPower` [W] of one motor
 * @returns `climbSpeed` [m/s], `deficit` [W] (signed: positive is lacking), the `rotor` that is asked most, `hoverPower` of all [W]
 * @throws InvalidInput for no thrusts, none above 0, a negative one, values that are not positive, and an unknown option
 * @method Momentum theory of `rotor.climb` for each rotor; the trim is kept, so that all climb as the weakest does.
 * @validity Steady axial climb; the pack's power is another limit. Too little power to hover gives climb speed 0 and the deficit.
 * @source As `rotor.climb`.
 * @example
 * const left = limits.verticalClimbAfterLoss({
 *   thrusts: [0, 2600, 2000, 2600, 2600, 2000, 2600, 1900], diskArea: 5.3, density: 1.098, figureOfMerit: 0.72, unitPower: 60 * u.kW,
 * })
 * left.climbSpeed // 4.3252
 */
export function verticalClimbAfterLoss(options: VerticalClimbAfterLossOptions): VerticalClimbAfterLoss {
  checkOptions(verticalMethod, options, knownVertical)
  const { thrusts, diskArea, density, figureOfMerit, unitPower } = options
  requireList(verticalMethod, 'thrusts', thrusts, 'thrust per rotor')
  thrusts.forEach((thrust, index) => {
    requireNonNegative(verticalMethod, `thrusts[${index}]`, thrust, 'N')
  })
  requirePositive(verticalMethod, 'diskArea', diskArea, 'm^2')
  requirePositive(verticalMethod, 'density', density, 'kg/m^3')
  requireShare(verticalMethod, 'figureOfMerit', figureOfMerit)
  requirePositive(verticalMethod, 'unitPower', unitPower, 'W')
  const hoverPowerOf = (thrust: number) => (thrust / figureOfMerit) * Math.sqrt(thrust / (2 * density * diskArea))
  const most = thrusts.reduce((greatest, thrust) => Math.max(greatest, thrust), 0)
  requirePositive(verticalMethod, 'the greatest thrust', most, 'N')
  const hoverPower = thrusts.reduce((sum, thrust) => sum + hoverPowerOf(thrust), 0)
  const deficit = hoverPowerOf(most) - unitPower
  requireRepresentable(verticalMethod, hoverPower + deficit)
  // A rotor with more thrust climbs less on the same power, so the one that is asked most decides.
  const profilePower = hoverPowerOf(most) * (1 - figureOfMerit)
  const power = Math.max(unitPower, hoverPowerOf(most))
  const climbSpeed = deficit >= 0 ? 0 : climb({ power, thrust: most, diskArea, density, profilePower }).climbSpeed
  return { climbSpeed, deficit, rotor: thrusts.indexOf(most), hoverPower }
}
