import { requireFinite, requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { type ParabolicPolar, requirePolar } from '../drag/polar.js'
import { checkOptions } from '../errors.js'
import type { Angle, Area, Density, Force, Length, Ratio, Speed, Time } from '../quantity.js'

export interface GlideOptions {
  /** Before the loss. */
  readonly polar: ParabolicPolar
  /** [N] */
  readonly weight: Force
  /** [m^2] */
  readonly wingArea: Area
  /** Mean over the descent [kg/m^3]. */
  readonly density: Density
  /** Above the ground that is to be reached [m]. */
  readonly height: Length
  /** Of the stopped or windmilling cruise propeller [m^2]; 0 when left out. */
  readonly addedDragArea?: Area
  /** Slowest allowed [m/s]; 0 when left out. */
  readonly floor?: Speed
  /** Against the flight [m/s]; negative from behind; 0 when left out. */
  readonly headwind?: Speed
  /** In place of the speed of best glide [m/s]. */
  readonly speed?: Speed
}

export interface Glide {
  /** True airspeed [m/s]. */
  readonly speed: Speed
  readonly liftToDrag: Ratio
  /** Below the horizontal, through the air [rad]. */
  readonly angle: Angle
  /** [m/s] */
  readonly sinkSpeed: Speed
  /** Over the ground [m]; 0 where the wind is stronger than the flight. */
  readonly distance: Length
  /** [s] */
  readonly time: Time
}

const method = 'limits.glide'
const known = new Set([
  'polar',
  'weight',
  'wingArea',
  'density',
  'height',
  'addedDragArea',
  'floor',
  'headwind',
  'speed',
])

/**
 * Glide after the loss of the cruise propulsor: how far the height carries on the wing, with the lift rotors still stopped.
 *
 * @equation tan(gamma) = D/L; V = sqrt(2 W cos(gamma)/(rho S C_L)); best at C_L = sqrt(C_D0/K); distance = h L/D - V_wind t, t = h/(V sin(gamma)); C_D0 with f/S of the dead propeller
 * @param options - `polar`, `weight` W [N], `wingArea` S [m^2], `density` rho [kg/m^3], `height` h [m]; optional `addedDragArea` f [m^2] (0), `floor` [m/s] (0), `headwind` [m/s] (0), `speed` V [m/s] (best glide)
 * @returns `speed` [m/s], `liftToDrag`, `angle` [rad], `sinkSpeed` [m/s], `distance` over the ground [m], `time` [s]
 * @throws InvalidInput for values that are not positive, a negative height or drag area, and an unknown option
 * @method Steady glide at one density. Against a wind a little faster than the best speed goes further; the speed is the author's then.
 * @validity Clean wing, no turns; starting the lift rotors takes height and time besides.
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, section 5.9 (from memory).
 * @example
 * const down = limits.glide({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 }), weight: 16 * u.kN, wingArea: 15 * u.m2, density: 1.1, height: 450 * u.m,
 * })
 * down.distance // 5915.19
 */
export function glide(options: GlideOptions): Glide {
  checkOptions(method, options, known)
  const { polar, weight, wingArea, density, height, addedDragArea = 0, floor = 0, headwind = 0 } = options
  requirePolar(method, polar)
  requirePositive(method, 'weight', weight, 'N')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireNonNegative(method, 'height', height, 'm')
  requireNonNegative(method, 'addedDragArea', addedDragArea, 'm^2')
  requireNonNegative(method, 'floor', floor, 'm/s')
  requireFinite(method, 'headwind', headwind, 'm/s')
  if (options.speed !== undefined) requirePositive(method, 'speed', options.speed, 'm/s')
  const craft = {
    loading: (2 * weight) / (density * wingArea),
    zeroLiftDrag: polar.zeroLiftDrag + addedDragArea / wingArea,
    inducedFactor: polar.inducedFactor,
  }
  const bestLift = Math.sqrt(craft.zeroLiftDrag / craft.inducedFactor)
  const wanted = options.speed ?? speedAt(craft, bestLift)
  const speed = Math.max(wanted, floor)
  const lift = options.speed === undefined && speed === wanted ? bestLift : liftAt(craft, speed)
  const liftToDrag = 1 / dragToLift(craft, lift)
  const angle = Math.atan(1 / liftToDrag)
  const sinkSpeed = speed * Math.sin(angle)
  const time = height / sinkSpeed
  const distance = Math.max(height * liftToDrag - headwind * time, 0)
  requireRepresentable(method, speed + liftToDrag + sinkSpeed + time + distance)
  return { speed, liftToDrag, angle, sinkSpeed, distance, time }
}

interface Craft {
  /** 2 W/(rho S) [m^2/s^2]. */
  readonly loading: number
  readonly zeroLiftDrag: number
  readonly inducedFactor: number
}

function dragToLift({ zeroLiftDrag, inducedFactor }: Craft, lift: number): number {
  return zeroLiftDrag / lift + inducedFactor * lift
}

/** Speed of a steady glide at a lift coefficient [m/s]. */
function speedAt(craft: Craft, lift: number): number {
  return Math.sqrt((craft.loading * Math.cos(Math.atan(dragToLift(craft, lift)))) / lift)
}

/** Lift coefficient at a speed: the wing carries the weight less its part along the path. Settles in a few rounds. */
function liftAt(craft: Craft, speed: number): number {
  const level = craft.loading / (speed * speed)
  let lift = level
  for (let round = 0; round < 8; round += 1) lift = level * Math.cos(Math.atan(dragToLift(craft, lift)))
  return lift
}
