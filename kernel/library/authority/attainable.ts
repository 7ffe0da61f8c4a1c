/** The polygon of moments that the rotors can give about two axes while the others are held. */
import { requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Ratio, Torque } from '../quantity.js'
import { buildProblem, greatest } from './allocate.js'
import type { Axis } from './axes.js'
import { knownHover, readHover, readLost, type TrimOptions } from './trim.js'

export interface AttainableOptions extends TrimOptions {
  /** The axes across and up; roll and pitch when left out. */
  readonly plane?: readonly ['roll' | 'pitch' | 'yaw', 'roll' | 'pitch' | 'yaw']
  /** Directions in which the edge is sought, evenly round; 72 when left out. */
  readonly directions?: Ratio
}

export interface Attainable {
  readonly plane: readonly ['roll' | 'pitch' | 'yaw', 'roll' | 'pitch' | 'yaw']
  readonly lost: readonly number[]
  /** Corners in order round the polygon [N m]: across. Empty where the other axes cannot be held. */
  readonly x: readonly Torque[]
  /** Up [N m]. */
  readonly y: readonly Torque[]
  /** What trim asks for [N m]. */
  readonly trim: readonly [Torque, Torque]
}

const method = 'authority.attainable'
const known = new Set([...knownHover, 'lost', 'plane', 'directions'])

/**
 * Moments that the rotors can give about two axes, with lift and the other held axes in trim: the map of what is left to steer with.
 *
 * @equation corners of { (M_1, M_2): B f = trim about the other held axes, 0 <= f_i <= K_i }
 * @param options - as `authority.trim`; `plane`: two of 'roll', 'pitch', 'yaw' (roll and pitch); `directions` in which the edge is sought (72)
 * @returns `x` and `y` [N m], the corners in order, empty where the other axes cannot be held; `trim`, the moments trim asks for; `plane`, `lost`
 * @throws InvalidInput as `authority.trim`, for an axis that is none or twice in `plane`, fewer than 8 or more than 720 directions, and an unknown option
 * @method One linear program per direction gives a corner of the exact polygon; corners between two directions can be missed, never overstated.
 * @validity As `authority.trim`.
 * @source Durham, W. C., Attainable Moments for the Constrained Control Allocation Problem, Journal of Guidance, Control, and Dynamics 17(6), 1994 (from memory).
 * @example
 * const four = [1, -1, 1, -1].map((spin, i) => ({
 *   x: Math.cos((i * Math.PI) / 2), y: Math.sin((i * Math.PI) / 2), spin, maxThrust: 500 * u.N, torqueRatio: 0.1,
 * }))
 * Math.max(...authority.attainable({ rotors: four, weight: 1 * u.kN }).x) // 500
 */
export function attainable(options: AttainableOptions): Attainable {
  checkOptions(method, options, known)
  const hover = readHover(method, options)
  const lost = readLost(method, 'lost', options.lost, hover.rotors.length)
  const { plane = ['roll', 'pitch'] as const, directions = 72 } = options
  const [across] = plane
  requireChoice(method, 'plane[0]', across, ['roll', 'pitch', 'yaw'])
  const rest = (['roll', 'pitch', 'yaw'] as const).filter((axis) => axis !== across)
  const up = requireChoice(method, 'plane[1]', plane[1], rest)
  requireWithin(method, 'directions', directions, '1', 8, 720)
  const problem = buildProblem(hover.rows, hover.limits, lost, hover.weight, hover.demand)
  const others = hover.hold.filter((axis) => axis !== across && axis !== up)
  const scale = (axis: Axis) => problem.unit * problem.arm[axis]
  const corners: [number, number][] = []
  for (let at = 0; at < Math.round(directions); at += 1) {
    const angle = (2 * Math.PI * at) / Math.round(directions)
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    const along = problem.rows[across].map((value, one) => c * value + s * (problem.rows[up][one] as number))
    const found = greatest(problem, along, others)
    if (found === undefined) break
    const moment = (axis: 'roll' | 'pitch' | 'yaw') =>
      scale(axis) * found.thrusts.reduce((sum, thrust, one) => sum + thrust * (problem.rows[axis][one] as number), 0)
    corners.push([moment(across), moment(up)])
  }
  const kept = distinct(corners, 1e-7 * problem.count * Math.max(scale(across), scale(up)))
  const asked = (axis: Axis) => problem.demand[axis] * scale(axis)
  return {
    plane: [across, up],
    lost: [...lost],
    x: kept.map(([x]) => x),
    y: kept.map(([, y]) => y),
    trim: [asked(across), asked(up)],
  }
}

/** Corners that differ from the one before, round the polygon. */
function distinct(corners: readonly [number, number][], apart: number): [number, number][] {
  const far = (one: readonly [number, number], other: readonly [number, number]) =>
    Math.hypot(one[0] - other[0], one[1] - other[1]) > apart
  return corners.filter((corner, at) => {
    const before = corners[at === 0 ? corners.length - 1 : at - 1] as [number, number]
    return far(corner, before) || (at === 0 && corners.every((other) => !far(corner, other)))
  })
}
