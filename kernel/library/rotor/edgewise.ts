import { requireCount, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Angle, Density, Force, Length, Power, Ratio, Speed } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseEdgewise } from './edgewise-advisories.js'

export interface EdgewiseOptions {
  /** Thrust of all rotors together [N]. */
  readonly thrust: Force
  /** Flight speed [m/s]. */
  readonly speed: Speed
  /** Of one rotor [m]. */
  readonly radius: Length
  /** [kg/m^3] */
  readonly density: Density
  /** Blade tip speed by rotation [m/s]. */
  readonly tipSpeed: Speed
  /** Blade area over disk area. */
  readonly solidity: Ratio
  /** Induced power over its ideal. */
  readonly inducedFactor: Ratio
  /** Mean section drag coefficient. */
  readonly profileDrag: Ratio
  /** Of the disk against the stream [rad]: positive where the stream meets its upper side, which is nose down; 0 when left out. */
  readonly diskTilt?: Angle
  /** Number of equal rotors that share the thrust, 1 when left out. */
  readonly count?: Ratio
  /** [m/s]; with it the advancing tip's Mach number is returned and watched. */
  readonly speedOfSound?: Speed
}

export interface Edgewise {
  /** Normal to the disk [m/s]. */
  readonly inducedVelocity: Speed
  /** Flow through the disk over tip speed. */
  readonly inflowRatio: Ratio
  /** Flow along the disk over tip speed. */
  readonly advanceRatio: Ratio
  /** At the shafts of all rotors [W]. */
  readonly power: Power
  /** All rotors [W]. */
  readonly inducedPower: Power
  /** At the shafts of all rotors [W]; what the H-force takes is not in it. */
  readonly profilePower: Power
  /** Thrust times the stream's part normal to the disk [W]; negative where the stream drives the rotor. */
  readonly axialPower: Power
  /** In the disk, rearward, all rotors [N]: drag that propulsion must overcome. */
  readonly hForce: Force
  /** Along the flight path, all rotors [N]: T sin(tilt) - H cos(tilt). */
  readonly forwardForce: Force
  /** Profile power of shaft and H-force together over that of hover. */
  readonly profileFactor: Ratio
  /** C_T/sigma. */
  readonly bladeLoading: Ratio
  /** Present where `speedOfSound` is given. */
  readonly advancingTipMach?: Ratio
}

const method = 'rotor.edgewise'
const known = new Set([
  'thrust',
  'speed',
  'radius',
  'density',
  'tipSpeed',
  'solidity',
  'inducedFactor',
  'profileDrag',
  'diskTilt',
  'count',
  'speedOfSound',
])
/** Of shaft and H-force together. */
const profileRise = 4.65
/** The H-force's share of it, from drag along the local flow over the disk. */
const hForceRise = 3

/**
 * A rotor that flies edgewise, as a lift rotor does in transition: inflow, shaft power and the drag of its blades.
 *
 * @equation v = v_h^2/sqrt((V cos a)^2 + (V sin a + v)^2), v_h^2 = T/(2 rho A); P = kappa T v + T V sin a + (sigma c_d/8) rho A V_tip^3 (1
 * + 1.65 mu^2); H = (3/8) sigma c_d mu rho A V_tip^2; together the profile power is (sigma c_d/8) rho A V_tip^3 (1 + 4.65 mu^2), mu = V cos
 * a/V_tip
 * @param options - `thrust` T [N] of all rotors, `speed` V [m/s], `radius` [m], `density` rho [kg/m^3], `tipSpeed` V_tip [m/s], `solidity`
 * sigma, `inducedFactor` kappa, `profileDrag` c_d; optional `diskTilt` a [rad], positive nose down (0), `count` (1), `speedOfSound` [m/s]
 * @returns `inducedVelocity` v [m/s], `inflowRatio`, `advanceRatio` mu, `power` [W] at the shafts and its parts `inducedPower`,
 * `profilePower`, `axialPower` [W], `hForce` H [N], `forwardForce` [N], `profileFactor`, `bladeLoading`, and `advancingTipMach` where
 * `speedOfSound` is given
 * @throws InvalidInput for a value that is not positive, a speed below 0, an induced factor outside 1 to 10, a solidity outside 0.0001
 * to 1, a tilt beyond a right angle, and an unknown option
 * @method Glauert's inflow, solved by a bracketed root; with V sin a >= 0 it is `rotor.axial`'s climb as mu goes to 0. The factor 4.65
 * counts torque and H-force with radial flow; the H-force's 3 of it is the leading order of drag along the local flow (c_d constant), so
 * 1.65 is left at the shaft. The induced H-force and reversed flow are left out.
 * @validity Advance ratio up to 0.3 (4.65 then within 0.4 % of a quadrature of the blade's drag, 4 % low at 0.5), blade loading up to 0.12,
 * advancing tip Mach up to 0.8 (from memory), and no steep descent with little forward speed (V sin a > -0.3 v_h, or V cos a > 0.7 v_h). Outside
 * these an advisory.
 * @source Glauert, H., R & M 1111, 1926 (inflow, from memory). Profile power: Bennett, 1940, as used by Stepniewski and Keys, NASA CR-3082, 1979 (4.65,
 * from memory). H-force: house derivation; without radial flow it is sigma c_d mu/4 (Leishman, Principles of Helicopter Aerodynamics, from
 * memory).
 * @example
 * const passing = rotor.edgewise({
 *   thrust: 2 * u.kN, speed: 25, radius: 1.3, density: 1.2, tipSpeed: 165, solidity: 0.14, inducedFactor: 1.15, profileDrag: 0.011,
 * })
 * passing.inducedVelocity // 6.099
 */
export function edgewise(options: EdgewiseOptions): Edgewise {
  checkEdgewise(options)
  const { thrust, speed, radius, density, tipSpeed, solidity, inducedFactor, profileDrag } = options
  const { diskTilt = 0, count = 1, speedOfSound } = options
  const diskArea = count * Math.PI * radius * radius
  const along = speed * Math.cos(diskTilt)
  const normal = speed * Math.sin(diskTilt)
  const hover = Math.sqrt(thrust / (2 * density * diskArea))
  const inducedVelocity = hover * glauertRatio(along / hover, normal / hover)
  const advanceRatio = along / tipSpeed
  const massFlow = density * diskArea * tipSpeed
  const hoverProfile = (massFlow * tipSpeed * tipSpeed * solidity * profileDrag) / 8
  const square = advanceRatio * advanceRatio
  const inducedPower = inducedFactor * thrust * inducedVelocity
  const profilePower = hoverProfile * (1 + (profileRise - hForceRise) * square)
  const axialPower = thrust * normal
  const hForce = (hForceRise * advanceRatio * hoverProfile) / tipSpeed
  const answer = {
    inducedVelocity,
    inflowRatio: (normal + inducedVelocity) / tipSpeed,
    advanceRatio,
    power: inducedPower + profilePower + axialPower,
    inducedPower,
    profilePower,
    axialPower,
    hForce,
    forwardForce: thrust * Math.sin(diskTilt) - hForce * Math.cos(diskTilt),
    profileFactor: 1 + profileRise * square,
    bladeLoading: thrust / (massFlow * tipSpeed * solidity),
  }
  const { power, inflowRatio, forwardForce, profileFactor, bladeLoading } = answer
  const mach = speedOfSound === undefined ? 0 : (tipSpeed + along) / speedOfSound
  requireRepresentable(
    method,
    power + inducedVelocity + inflowRatio + hForce + forwardForce + profileFactor + bladeLoading + mach,
  )
  const withMach: Edgewise = speedOfSound === undefined ? answer : { ...answer, advancingTipMach: mach }
  if (isListening()) adviseEdgewise(method, withMach, normal / hover, along / hover)
  return withMach
}

/** w with w sqrt(a^2 + (b + w)^2) = 1: Glauert's inflow in units of the hover induced velocity; `along` a >= 0, `normal` b. */
export function glauertRatio(along: number, normal: number): number {
  const residual = (ratio: number): number => ratio * Math.hypot(along, normal + ratio) - 1
  // Each of these is above the root, so the least of them brackets it from 0.
  let high = 1 + Math.abs(normal)
  if (along > 0) high = Math.min(high, 1 / along)
  if (normal > 0) high = Math.min(high, 1 / normal)
  const valueHigh = residual(high)
  if (!(valueHigh > 0)) return high
  return brentRoot(residual, 0, high, -1, valueHigh, 1e-14).x
}

function checkEdgewise(options: EdgewiseOptions): void {
  checkOptions(method, options, known)
  requirePositive(method, 'thrust', options.thrust, 'N')
  requireNonNegative(method, 'speed', options.speed, 'm/s')
  requirePositive(method, 'radius', options.radius, 'm')
  requirePositive(method, 'density', options.density, 'kg/m^3')
  requirePositive(method, 'tipSpeed', options.tipSpeed, 'm/s')
  requireWithin(method, 'solidity', options.solidity, '1', 1e-4, 1)
  requireWithin(method, 'inducedFactor', options.inducedFactor, '1', 1, 10)
  requirePositive(method, 'profileDrag', options.profileDrag, '1')
  if (options.diskTilt !== undefined)
    requireWithin(method, 'diskTilt', options.diskTilt, 'rad', -Math.PI / 2, Math.PI / 2)
  if (options.count !== undefined) requireCount(method, 'count', options.count)
  if (options.speedOfSound !== undefined) requirePositive(method, 'speedOfSound', options.speedOfSound, 'm/s')
}
