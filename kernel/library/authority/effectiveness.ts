/** What each rotor's thrust does to the aircraft: the columns of the control effectiveness. */
import { requireFinite, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Length, Ratio } from '../quantity.js'
import { type Axis, axes } from './axes.js'
import { type LiftRotor, type ReadRotor, readRotors } from './lift-rotor.js'

/** Where the centre of gravity is: forward, right and, 0 when left out, down [m]. */
export interface PlanPoint {
  readonly x: Length
  readonly y: Length
  readonly z?: Length
}

export interface EffectivenessOptions {
  readonly rotors: readonly LiftRotor[]
  /** The origin when left out. */
  readonly centreOfGravity?: PlanPoint
}

/** One number per rotor: force per thrust, or moment per thrust [m]. */
export interface Effectiveness {
  readonly lift: readonly Ratio[]
  readonly side: readonly Ratio[]
  readonly forward: readonly Ratio[]
  readonly roll: readonly Length[]
  readonly pitch: readonly Length[]
  readonly yaw: readonly Length[]
}

const method = 'authority.effectiveness'
const known = new Set(['rotors', 'centreOfGravity'])
const knownPoint = new Set(['x', 'y', 'z'])

/**
 * Force and moment about the centre of gravity per newton of each rotor's thrust.
 *
 * @equation F = T e; M = r x T e + s k T (-e), with e the direction of thrust, r the place from the centre of gravity, s the spin and
 * k the torque ratio. Upright: lift 1, roll -y, pitch x, yaw s k
 * @param options - `rotors`: list of `x`, `y` [m] (forward, right), `spin` (1 or -1), `maxThrust` [N], `torqueRatio` [m], optional `z` [m]
 * (down), `cant` [rad] (to the right, or `{ lateral, longitudinal }`); `centreOfGravity` `{ x, y, z }` [m] (the origin when left out)
 * @returns `lift`, `side`, `forward` (per thrust) and `roll`, `pitch`, `yaw` [m], one entry per rotor
 * @throws InvalidInput for no rotors or more than 24, a spin that is neither 1 nor -1, a cant beyond 1.2 rad, and an unknown option
 * @method Exact. Spin 1 turns anticlockwise seen from above and its torque yaws the aircraft nose right; the axis of the torque leans with the thrust.
 * @validity Rotors in hover: no wake of one on another, no hub moment, torque in proportion to thrust.
 * @source Mechanics: textbook. Rows as in Du, G.-X., Quan, Q., Yang, B., Cai, K.-Y., Journal of Guidance, Control, and Dynamics 38(5), 2015 (from memory), cant added.
 * @example
 * const pair = authority.effectiveness({
 *   rotors: [{ x: 1, y: 2, spin: 1, maxThrust: 100, torqueRatio: 0.1 }, { x: 1, y: -2, spin: -1, maxThrust: 100, torqueRatio: 0.1 }],
 * })
 * pair.roll[1] // 2
 */
export function effectiveness(options: EffectivenessOptions): Effectiveness {
  checkOptions(method, options, known)
  const rows = buildRows(
    readRotors(method, options.rotors),
    readPoint(method, 'centreOfGravity', options.centreOfGravity),
  )
  return Object.fromEntries(axes.map((axis) => [axis, [...(rows[axis] as Float64Array)]])) as unknown as Effectiveness
}

export type Rows = Readonly<Record<Axis, Float64Array>>

/** The rows for rotors already read. */
export function buildRows(rotors: readonly ReadRotor[], centre: PlanPoint): Rows {
  const row = (of: (rotor: ReadRotor, x: number, y: number, z: number) => number) =>
    Float64Array.from(rotors, (rotor) => of(rotor, rotor.x - centre.x, rotor.y - centre.y, rotor.z - (centre.z ?? 0)))
  return {
    lift: row((r) => -r.direction[2]),
    side: row((r) => r.direction[1]),
    forward: row((r) => r.direction[0]),
    roll: row((r, _, y, z) => y * r.direction[2] - z * r.direction[1] - r.spin * r.torqueRatio * r.direction[0]),
    pitch: row((r, x, _, z) => z * r.direction[0] - x * r.direction[2] - r.spin * r.torqueRatio * r.direction[1]),
    yaw: row((r, x, y) => x * r.direction[1] - y * r.direction[0] - r.spin * r.torqueRatio * r.direction[2]),
  }
}

export function readPoint(called: string, argument: string, point: PlanPoint | undefined): PlanPoint {
  if (point === undefined) return { x: 0, y: 0 }
  checkOptions(`${called} ${argument}`, point, knownPoint)
  for (const [name, place] of [
    ['x', point.x],
    ['y', point.y],
    ['z', point.z ?? 0],
  ] as const) {
    requireFinite(called, `${argument}.${name}`, place, 'm')
    requireWithin(called, `${argument}.${name}`, place, 'm', -1e4, 1e4)
  }
  return point
}
