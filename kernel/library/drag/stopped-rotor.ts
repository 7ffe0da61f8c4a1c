import {
  requireCount,
  requireFinite,
  requireNonNegative,
  requirePositive,
  requireRepresentable,
  requireWithin,
} from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Area, Density, DynamicViscosity, Length, Ratio, Speed } from '../quantity.js'
import { advise } from '../recorder.js'
import { frictionOf } from './friction-lines.js'
import { bladeDragArea, type StoppedBlade } from './stopped-blade.js'

/** A lift rotor as the stream of cruise sees it. */
export interface StoppedRotorGeometry {
  /** Blades of the rotor. */
  readonly blades: Ratio
  /** [m] */
  readonly radius: Length
  /** Mean chord of a blade [m]. */
  readonly chord: Length
  /** Share of the radius without blade, 0.15 when left out. */
  readonly rootCutout?: Ratio
  /** Thickness over chord of the blades, 0.12 when left out. */
  readonly thickness?: Ratio
  /** Section drag at no lift, 0.012 when left out. */
  readonly sectionDrag?: Ratio
  /** Mean pitch of the blades against the plane of the rotor [rad], 0.1 when left out. */
  readonly pitch?: Angle
  /** Of the hub with its grips, seen from the side [m]. */
  readonly hubDiameter: Length
  /** [m] */
  readonly hubHeight: Length
  /** Of the motor's can above or below the boom [m]; 0 where the boom hides it. */
  readonly podDiameter?: Length
  /** What of it stands in the stream [m]. */
  readonly podHeight?: Length
  /** [m/s] */
  readonly speed: Speed
  /** [kg/m^3] */
  readonly density: Density
  /** [Pa s] */
  readonly dynamicViscosity: DynamicViscosity
}

export interface StoppedRotorOptions extends StoppedRotorGeometry {
  /** Of the first blade from downstream in the sense of rotation [rad]; 0, in line with the stream, when left out. */
  readonly azimuth?: Angle
}

export interface StoppedRotor {
  /** D/q of the whole rotor [m^2]. */
  readonly dragArea: Area
  /** Ends of the band of 40 %. */
  readonly low: Area
  readonly high: Area
  /** Parts of it [m^2]. */
  readonly blades: Area
  readonly hub: Area
  readonly pod: Area
}

/** On d h, a short cylinder with grips (house value between 0.63 of a plain can of equal sides and 1.2 of a rough hub). */
const hubCoefficient = 0.8
/** On d h, a can partly faired into its boom (house value between 0.15 faired and 0.65 bare). */
const podCoefficient = 0.4
/** Nothing is published on lift rotors that stand still: the band that every number here carries. */
export const houseBand = 0.4

const method = 'drag.stoppedRotor'
export const geometryNames = [
  'blades',
  'radius',
  'chord',
  'rootCutout',
  'thickness',
  'sectionDrag',
  'pitch',
  'hubDiameter',
  'hubHeight',
  'podDiameter',
  'podHeight',
  'speed',
  'density',
  'dynamicViscosity',
] as const
const known = new Set<string>([...geometryNames, 'azimuth'])

/**
 * Drag of a lift rotor that stands still in cruise: blades at their azimuth, hub and motor pod.
 *
 * @equation D/q = sum over blades of [R (1 - x_0) c (c_d |sin^3 t| + 2 C_f cos^2 t) + 0.4 c^2 (t/c + |sin p|) cos^2 t] + 0.8 d_h h_h +
 * 0.4 d_p h_p; c_d = c_d0 (1, or 2 with the trailing edge forward) + (C_N^2/(pi AR) + C_N sin p)/2, C_N = min(2 pi AR/(AR + 2) sin p,
 * 1.11 + 0.018 AR), AR = R (1 - x_0)/c
 * @param options - `blades`, `radius` R, `chord` c [m], `hubDiameter` d_h, `hubHeight` h_h [m], `speed` [m/s], `density` [kg/m^3],
 * `dynamicViscosity` [Pa s]; optional `azimuth` t of the first blade from downstream [rad] (0, in line), `rootCutout` x_0 (0.15),
 * `thickness` t/c (0.12), `sectionDrag` c_d0 (0.012), `pitch` p [rad] (0.1), `podDiameter` d_p, `podHeight` h_p [m] (0)
 * @returns `dragArea`, its band `low` and `high`, and the parts `blades`, `hub`, `pod` [m^2]
 * @throws InvalidInput for values that are not positive, a chord longer than the radius, a pitch beyond 1 rad, a Reynolds number outside
 * 1e4 to 1e12, and an unknown option
 * @method House model. Cross-flow principle for the blades: the stream across a blade makes its section's drag, the stream along it
 * friction; the blade whose trailing edge leads has twice the drag at no lift, so that a pair across the stream has D/q = c R (c_d0 + 2
 * c_d0). Reasonable because each part is measured by itself, and hubs of helicopters (0.11 to 1.3 m^2 for 1.2 to 15 t, Prouty) bound it
 * from above.
 * @validity No test of stopped lift rotors was found in print: every call carries an advisory with the band of 40 %. Blade tips in the
 * wake of another rotor or of the wing are not in it. Fixed pitch up to 0.3 rad; beyond an advisory.
 * @source House model. Blade across the stream: Critzos, Heyson and Boswinkle, NACA TN 3361, 1955 (summary read). Plate: Viterna and
 * Corrigan, 1982 (from memory). Hub check: Prouty, R. W., Helicopter Performance, Stability, and Control, table 4.3 (read second-hand).
 * @example
 * const still = drag.stoppedRotor({
 *   blades: 2, radius: 1.3 * u.m, chord: 0.14 * u.m, hubDiameter: 0.25 * u.m, hubHeight: 0.1 * u.m,
 *   speed: 58, density: 1.1, dynamicViscosity: 1.79e-5,
 * })
 * still.dragArea // 0.0255
 */
export function stoppedRotor(options: StoppedRotorOptions): StoppedRotor {
  checkOptions(method, options, known)
  const { azimuth = 0, blades } = options
  requireFinite(method, 'azimuth', azimuth, 'rad')
  const blade = readBlade(method, options)
  const parts = { blades: bladesAt(blade, blades, azimuth), ...hubAndPod(method, options) }
  const dragArea = parts.blades + parts.hub + parts.pod
  requireRepresentable(method, dragArea)
  adviseBand(method, dragArea)
  return { dragArea, low: (1 - houseBand) * dragArea, high: (1 + houseBand) * dragArea, ...parts }
}

/** Checks the rotor and gives one blade of it. */
export function readBlade(caller: string, options: StoppedRotorGeometry): StoppedBlade {
  const { blades, radius, chord, speed, density, dynamicViscosity } = options
  const { rootCutout = 0.15, thickness = 0.12, sectionDrag = 0.012, pitch = 0.1 } = options
  requireCount(caller, 'blades', blades)
  requireWithin(caller, 'blades', blades, '1', 1, 12)
  requirePositive(caller, 'radius', radius, 'm')
  requirePositive(caller, 'chord', chord, 'm')
  requireWithin(caller, 'chord over radius', chord / radius, '1', 0, 1)
  requireWithin(caller, 'rootCutout', rootCutout, '1', 0, 0.6)
  requireWithin(caller, 'thickness', thickness, '1', 0.02, 0.4)
  requireWithin(caller, 'sectionDrag', sectionDrag, '1', 0.002, 0.2)
  requireWithin(caller, 'pitch', pitch, 'rad', -1, 1)
  requirePositive(caller, 'speed', speed, 'm/s')
  requirePositive(caller, 'density', density, 'kg/m^3')
  requirePositive(caller, 'dynamicViscosity', dynamicViscosity, 'Pa s')
  adviseOutside(Math.abs(pitch), {
    code: 'STOPPED_PITCH',
    method: caller,
    quantity: 'pitch',
    high: 0.3,
    because: 'beyond 0.3 rad a stopped blade stalls and its drag depends on how',
  })
  const reynolds = (density * speed * radius) / dynamicViscosity
  requireWithin(caller, 'Reynolds number on the radius', reynolds, '1', 1e4, 1e12)
  const skinFriction = frictionOf('Prandtl-Schlichting', reynolds)
  return { radius, chord, rootCutout, thickness, sectionDrag, pitch, skinFriction }
}

/** Blades evenly round the hub. */
export function bladesAt(blade: StoppedBlade, count: number, azimuth: number): number {
  let sum = 0
  for (let index = 0; index < count; index += 1) sum += bladeDragArea(blade, azimuth + (2 * Math.PI * index) / count)
  return sum
}

export function hubAndPod(
  caller: string,
  options: StoppedRotorGeometry,
): { readonly hub: number; readonly pod: number } {
  const { hubDiameter, hubHeight, podDiameter = 0, podHeight = 0 } = options
  requirePositive(caller, 'hubDiameter', hubDiameter, 'm')
  requirePositive(caller, 'hubHeight', hubHeight, 'm')
  requireNonNegative(caller, 'podDiameter', podDiameter, 'm')
  requireNonNegative(caller, 'podHeight', podHeight, 'm')
  return { hub: hubCoefficient * hubDiameter * hubHeight, pod: podCoefficient * podDiameter * podHeight }
}

/** Says that the number is a house model with its band. */
export function adviseBand(caller: string, dragArea: number): void {
  advise({
    code: 'HOUSE_MODEL',
    method: caller,
    quantity: 'dragArea',
    value: dragArea,
    range: [(1 - houseBand) * dragArea, (1 + houseBand) * dragArea],
    message:
      'Drag of stopped lift rotors is a house model with a band of 40 %: no test of them was found in print. A test report of your own can replace it.',
  })
}
