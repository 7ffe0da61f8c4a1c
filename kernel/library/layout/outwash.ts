import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Area, Density, DiskLoading, Force, Length, Ratio, Speed } from '../quantity.js'

export interface OutwashOptions {
  /** Of all rotors together [N]. */
  readonly thrust: Force
  /** Of all rotors together [m^2]. */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** From the middle of the aircraft, along the ground [m]. */
  readonly distance: Length
  /** Of the disks above the ground [m]; the radius of one disk of the whole area when left out. */
  readonly height?: Length
}

export interface Outwash {
  /** [N/m^2] */
  readonly diskLoading: DiskLoading
  /** At the disks, out of ground effect [m/s]. */
  readonly inducedVelocity: Speed
  /** Of the far wake [m/s]: the most that reaches the ground. */
  readonly farWake: Speed
  /** Greatest speed along the ground at `distance` [m/s]. */
  readonly wallJet: Speed
  /** Distance at which the wall jet falls below the far wake [m]. */
  readonly wakeReach: Length
  /** Height above the ground at which the wall jet has fallen to half of its greatest speed [m]. */
  readonly thickness: Length
}

const method = 'layout.outwash'
const known = new Set(['thrust', 'diskArea', 'density', 'distance', 'height'])
/** Of the radial wall jet: u = c sqrt(K) h^(0.1) r^(-1.1), half thickness = d h^(0.1) r^(0.9). */
const speedFactor = 1.32
const thicknessFactor = 0.098
const decay = 1.1

/**
 * Wind on the ground under and around a hovering aircraft, as advice to those who stand there.
 *
 * @equation v_i = sqrt(T/(2 rho A)); far wake 2 v_i; wall jet u = min(2 v_i, 1.32 sqrt(T/rho)/h (r/h)^(-1.1)), half thickness 0.098 h (r/h)^0.9
 * @param options - `thrust` T [N] and `diskArea` A [m^2] of all rotors, `density` rho [kg/m^3], `distance` r from the middle [m]; optional `height` h of the disks [m] (sqrt(A/pi))
 * @returns `diskLoading` [N/m^2], `inducedVelocity`, `farWake`, `wallJet` [m/s], `wakeReach` [m] up to which the far wake is the estimate, `thickness` [m]
 * @throws InvalidInput for a value that is not positive, a negative distance, and an unknown option
 * @method All wakes as one jet of the whole thrust: its momentum T/rho turns outwards on the ground and spreads as a radial wall jet. The cap at the far wake is momentum theory.
 * @validity House use of a jet measured high above its plate (more than 8 of its widths); rotors are lower, and where two wakes meet the wind between them is up to half as strong again (from memory). Above 15 m/s
 * an advisory: loose objects fly and people cannot work (common practice, no source).
 * @source Far wake: momentum theory, as `rotor.hover`. Wall jet: Poreh, M., Tsuei, Y. G., Cermak, J. E., Investigation of a Turbulent Radial Wall Jet, Journal of Applied Mechanics 34, 1967 (from memory).
 * @example
 * const wind = layout.outwash({ thrust: 17 * u.kN, diskArea: 42.5 * u.m2, density: 1.1, distance: 15 * u.m })
 * wind.farWake // 26.97
 */
export function outwash(options: OutwashOptions): Outwash {
  checkOptions(method, options, known)
  const { thrust, diskArea, density, distance } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireNonNegative(method, 'distance', distance, 'm')
  const { height = Math.sqrt(diskArea / Math.PI) } = options
  requirePositive(method, 'height', height, 'm')
  const inducedVelocity = Math.sqrt(thrust / (2 * density * diskArea))
  const farWake = 2 * inducedVelocity
  const momentum = Math.sqrt(thrust / density)
  const at = (ratio: Ratio): Speed => ((speedFactor * momentum) / height) * ratio ** -decay
  const wakeReach = height * ((speedFactor * momentum) / (height * farWake)) ** (1 / decay)
  const answer = {
    diskLoading: thrust / diskArea,
    inducedVelocity,
    farWake,
    wallJet: distance <= wakeReach ? farWake : at(distance / height),
    wakeReach,
    thickness: thicknessFactor * height * (Math.max(distance, wakeReach) / height) ** 0.9,
  }
  requireRepresentable(
    method,
    answer.diskLoading + farWake + answer.wallJet + answer.wakeReach + answer.thickness + momentum,
  )
  adviseOutside(answer.wallJet, {
    code: 'OUTWASH',
    method,
    quantity: 'wallJet',
    high: 15,
    because: 'above 15 m/s loose objects fly and people cannot work; keep them farther away',
  })
  return answer
}
