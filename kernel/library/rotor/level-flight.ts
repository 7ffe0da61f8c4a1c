import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { brentMinimum } from '../numerics/index.js'
import { requireChoice } from '../outside.js'
import type { Angle, Area, Force, Power, Ratio, Speed } from '../quantity.js'
import { silently } from '../recorder.js'
import { type Edgewise, type EdgewiseOptions, edgewise } from './edgewise.js'

export interface LevelFlightOptions extends Omit<EdgewiseOptions, 'thrust' | 'speed' | 'diskTilt'> {
  /** [N] */
  readonly weight: Force
  /** Of body, booms, hubs and gear [m^2]. */
  readonly dragArea: Area
  /** Of flight [m/s], or the speed of least energy per distance or per time. */
  readonly speed: Speed | 'best range' | 'best endurance'
  /** Taken beside the rotors, as at their shafts [W]; it makes the best range faster; 0 when left out. */
  readonly otherPower?: Power
}

export interface LevelFlight extends Edgewise {
  /** [m/s] */
  readonly speed: Speed
  /** Of all rotors [N]. */
  readonly thrust: Force
  /** Nose down [rad]. */
  readonly diskTilt: Angle
  /** Of `dragArea` [N]. */
  readonly drag: Force
  /** Weight times speed over the power of the rotors. */
  readonly liftToDrag: Ratio
}

const method = 'rotor.levelFlight'
const known = new Set([
  'weight',
  'dragArea',
  'speed',
  'otherPower',
  'radius',
  'density',
  'tipSpeed',
  'solidity',
  'inducedFactor',
  'profileDrag',
  'count',
  'speedOfSound',
])
/** Advance ratios between which the best speeds are sought. */
const slowest = 0.01
const fastest = 0.5

/**
 * Level flight on rotors alone, which tilt to pull: how a multirotor cruises, and at what speed it does so best.
 *
 * @equation tan a = (D + h)/W, h = (3/8) sigma c_d rho A V_tip V, D = rho V^2 f/2; T = W cos a + D sin a; power as `rotor.edgewise` at T and a; best range: least (P + P_other)/V; best endurance: least P
 * @param options - `weight` W [N], `dragArea` f [m^2], `speed` V [m/s] or `'best range'` or `'best endurance'`, and of the rotors `radius` [m], `density` rho [kg/m^3], `tipSpeed` V_tip [m/s], `solidity` sigma, `inducedFactor`,
 * `profileDrag` c_d; optional `count` (1), `otherPower` P_other [W] (0), `speedOfSound` [m/s]
 * @returns what `rotor.edgewise` returns, with `speed` [m/s], `thrust` T of all rotors [N], `diskTilt` a [rad], `drag` D [N] and `liftToDrag` W V/P
 * @throws InvalidInput for a value that is not positive, a negative drag area, speed or other power, a word for the speed that it does not know, as `rotor.edgewise`, and an unknown option
 * @method Forces across and along the disk; the H-force of `rotor.edgewise` goes with the cosine of the tilt, so that the tilt is a closed form. The best speeds by Brent's minimum between advance ratios of 0.01 and 0.5. `mission.multirotor`
 * flies missions so.
 * @validity As `rotor.edgewise`; all rotors share the thrust evenly and do not blow on each other: those behind fly in the wake of those ahead, which costs 5 to 20 % of induced power (common practice, no source). No lift of the body.
 * @source Trim of a rotor by its tilt, and the best speeds: Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 5 (from memory).
 * @example
 * const away = rotor.levelFlight({
 *   weight: 16 * u.kN, dragArea: 1.2 * u.m2, speed: 25 * u.mps, radius: 1.3 * u.m, count: 8, density: 1.2, tipSpeed: 165 * u.mps, solidity: 0.12, inducedFactor: 1.15, profileDrag: 0.011,
 * })
 * away.diskTilt / u.deg // 1.983
 */
export function levelFlight(options: LevelFlightOptions): LevelFlight {
  checkOptions(method, options, known)
  const { speed, otherPower = 0, tipSpeed } = options
  requirePositive(method, 'weight', options.weight, 'N')
  requireNonNegative(method, 'dragArea', options.dragArea, 'm^2')
  requireNonNegative(method, 'otherPower', otherPower, 'W')
  if (typeof speed === 'number') return flyAt(options, speed)
  requireChoice(method, 'speed', speed, ['best range', 'best endurance'])
  requirePositive(method, 'tipSpeed', tipSpeed, 'm/s')
  const asked = (at: number) => {
    const { power } = flyAt(options, at)
    return speed === 'best range' ? (power + otherPower) / at : power
  }
  const { x } = silently(() => brentMinimum(asked, slowest * tipSpeed, fastest * tipSpeed, 1e-8))
  return flyAt(options, x)
}

function flyAt(options: LevelFlightOptions, speed: number): LevelFlight {
  requireNonNegative(method, 'speed', speed, 'm/s')
  const { weight, dragArea, radius, density, tipSpeed, solidity, inducedFactor, profileDrag } = options
  const { count = 1, speedOfSound } = options
  const drag = 0.5 * density * speed * speed * dragArea
  const alongDisk = 0.375 * solidity * profileDrag * density * count * Math.PI * radius * radius * tipSpeed * speed
  requireRepresentable(method, drag + alongDisk)
  const diskTilt = Math.atan2(drag + alongDisk, weight)
  const thrust = weight * Math.cos(diskTilt) + drag * Math.sin(diskTilt)
  const flown = edgewise({
    ...{ thrust, speed, diskTilt, radius, density, tipSpeed, solidity, inducedFactor, profileDrag, count },
    ...(speedOfSound === undefined ? {} : { speedOfSound }),
  })
  const liftToDrag = (weight * speed) / flown.power
  requireRepresentable(method, liftToDrag)
  return { ...flown, speed, thrust, diskTilt, drag, liftToDrag }
}
