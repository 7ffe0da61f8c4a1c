/** Control margin on top of trim: the angular acceleration that is left about each axis. */
import { checkOptions } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { buildProblem, greatest, type Problem } from './allocate.js'
import {
  type AccelerationDemand,
  type AngularAcceleration,
  attitude,
  type ConditionsOptions,
  type ForAttitude,
  type Inertia,
  knownConditions,
  readAcceleration,
  readConditions,
  readInertia,
} from './conditions.js'
import type { PlanPoint } from './effectiveness.js'
import type { Disturbance } from './trim.js'

export interface MarginOptions extends ConditionsOptions {
  /** About the body's axes [kg m^2]: `mass.properties` gives Ixx, Iyy, Izz. */
  readonly inertia: Inertia
  /** What must be left about each axis, either way [rad/s^2]; 0 when left out. */
  readonly required?: AccelerationDemand
}

/** What is left about one axis in the worst condition. */
export interface AxisMargin {
  /** The lesser of the two ways; below 0 where even trim lacks so much [rad/s^2]. */
  readonly acceleration: AngularAcceleration
  readonly required: AngularAcceleration
  /** Whether more than rounding is left, and no less than required. */
  readonly met: boolean
  /** Where it is least. */
  readonly centreOfGravity: PlanPoint
  readonly disturbance: Disturbance
}

export interface LossMargin extends ForAttitude<AxisMargin> {
  readonly lost: readonly number[]
  /** Whether the weight is carried in trim under every condition. */
  readonly feasible: boolean
  readonly met: boolean
}

export interface Margin {
  readonly intact: LossMargin
  readonly cases: readonly LossMargin[]
  /** Cases, the intact one among them, that meet what is required. */
  readonly meets: Ratio
  /** Least over all cases [rad/s^2]. */
  readonly least: ForAttitude<AngularAcceleration>
  readonly met: boolean
}

const method = 'authority.margin'
const known = new Set([...knownConditions, 'inertia', 'required'])

/**
 * Angular acceleration left about roll, pitch and yaw after trim: at the worst centre of gravity and in the worst wind, intact and after
 * each loss, against what is required.
 *
 * @equation a = (max over f of +-M_axis - +-M_trim)/I with lift and the other held axes in trim and 0 <= f_i <= K_i
 * @param options - `rotors`, `weight` [N], `hold` as `authority.trim`; `inertia` `{ roll, pitch, yaw }` [kg m^2]; `required` accelerations [rad/s^2]
 * (0); `centresOfGravity`: corners of its travel; `disturbances`: list of moments from outside (`authority.windMoments`); `simultaneous`: rotors lost, 0, 1 or 2 (1)
 * @returns `intact` and `cases`: for `roll`, `pitch` and `yaw` the `acceleration` left in the worse way [rad/s^2] with the `centreOfGravity` and
 * `disturbance` where it is least, `required` and `met` (of a case: about every held axis); `feasible`; the number of cases that meet (`meets`), the `least` of all, `met` of all
 * @throws InvalidInput as `authority.trim`, for an inertia that is not positive, a negative requirement, and an unknown option
 * @method One linear program per axis and way. Corners suffice: what is left is concave in place and wind. An axis with nothing left is never
 * "met", whatever is required: PNPNPN after a loss trims and still has none.
 * @validity Steady thrusts within their limits: the time that rotors take to change (`authority.rotorResponse`) is apart. Products of inertia left out.
 * @source Attainable moments over inertia: textbook mechanics. Wind of 17 kt from any side as in CS 27.143 (number from memory); acceptable accelerations are the user's.
 * @example
 * const eight = [1, -1, 1, -1, 1, -1, 1, -1].map((spin, i) => ({
 *   x: 3 * Math.cos((i * Math.PI) / 4), y: 3 * Math.sin((i * Math.PI) / 4), spin, maxThrust: 4 * u.kN, torqueRatio: 0.1,
 * }))
 * const left = authority.margin({ rotors: eight, weight: 16 * u.kN, inertia: { roll: 4000, pitch: 4000, yaw: 7000 } })
 * left.intact.yaw.acceleration // 0.22857
 */
export function margin(options: MarginOptions): Margin {
  checkOptions(method, options, known)
  const { hovers, sets, hold } = readConditions(method, options)
  const inertia = readInertia(method, options.inertia)
  const required = readAcceleration(method, 'required', options.required)
  const all = sets.map((lost) => {
    const gone = new Set(lost)
    const left = hovers.map(({ hover, centre, disturbance }) => ({
      centre,
      disturbance,
      ...accelerationsLeft(
        buildProblem(hover.rows, hover.limits, gone, hover.weight, hover.demand),
        hover.hold.filter((axis) => axis !== 'side' && axis !== 'forward'),
        inertia,
      ),
    }))
    const about = (axis: keyof ForAttitude<number>): AxisMargin => {
      const least = left.reduce((one, other) => (other[axis] < one[axis] ? other : one))
      const { centre, disturbance } = least
      const acceleration = least[axis]
      const met = acceleration > 1e-9 && acceleration >= required[axis]
      return { acceleration, required: required[axis], met, centreOfGravity: centre, disturbance }
    }
    const [roll, pitch, yaw] = [about('roll'), about('pitch'), about('yaw')]
    const feasible = left.every((one) => one.feasible)
    const kept = attitude.filter((axis) => hold.includes(axis))
    return { lost, roll, pitch, yaw, feasible, met: feasible && kept.every((axis) => ({ roll, pitch, yaw })[axis].met) }
  })
  const leastAbout = (axis: keyof ForAttitude<number>) => Math.min(...all.map((one) => one[axis].acceleration))
  const [intact, ...cases] = all as [LossMargin, ...LossMargin[]]
  return {
    intact,
    cases,
    meets: all.filter((one) => one.met).length,
    least: { roll: leastAbout('roll'), pitch: leastAbout('pitch'), yaw: leastAbout('yaw') },
    met: all.every((one) => one.met),
  }
}

/** Below zero by what trim lacks about the axis; where the other axes cannot be held, by all that trim asks for. */
function accelerationsLeft(
  problem: Problem,
  hold: ReturnType<typeof readConditions>['hold'],
  inertia: Inertia,
): ForAttitude<number> & { readonly feasible: boolean } {
  const about = (axis: keyof ForAttitude<number>) => {
    const row = problem.rows[axis]
    const others = hold.filter((one) => one !== axis)
    const up = greatest(problem, row, others)
    const down = greatest(
      problem,
      row.map((value) => -value),
      others,
    )
    if (up === undefined || down === undefined) return { left: 0, reached: false }
    const wanted = problem.demand[axis]
    const left = Math.min(up.value - wanted, down.value + wanted)
    const scale = (problem.unit * problem.arm[axis]) / inertia[axis]
    // The library rounds: what is below its precision is nothing.
    return { left: Math.abs(left) < 1e-8 * problem.count ? 0 : left * scale, reached: true }
  }
  const found = attitude.map(about) as [ReturnType<typeof about>, ReturnType<typeof about>, ReturnType<typeof about>]
  return {
    roll: found[0].left,
    pitch: found[1].left,
    yaw: found[2].left,
    feasible: found.every((one, at) => one.reached && (one.left >= 0 || !hold.includes(attitude[at] as 'roll'))),
  }
}
