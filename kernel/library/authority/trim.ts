/** Hover with some of the lift rotors lost: what the others must give, and which axis cannot be held. */
import { requireFinite, requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Force, Ratio, Torque } from '../quantity.js'
import { buildProblem, type Demand, forAxes, given, greatest, leastPeak, type Problem, unscale } from './allocate.js'
import { authorityIndex, isAboveZero } from './authority-index.js'
import { type Axis, axes, isForce, readHold, usualHold } from './axes.js'
import { buildRows, type PlanPoint, readPoint } from './effectiveness.js'
import { type LiftRotor, type ReadRotor, readRotors } from './lift-rotor.js'

/** Moments from outside, of the wind for instance, that the rotors have to balance [N m]; forces [N]. */
export type Disturbance = {
  readonly roll?: Torque
  readonly pitch?: Torque
  readonly yaw?: Torque
  readonly side?: Force
  readonly forward?: Force
}

/** What every question about trim begins with. */
export interface HoverOptions {
  readonly rotors: readonly LiftRotor[]
  /** [N] */
  readonly weight: Force
  /** Forward and right [m]; the origin when left out. */
  readonly centreOfGravity?: PlanPoint
  /** Axes that must be kept; lift, roll, pitch and yaw when left out. */
  readonly hold?: readonly Axis[]
  /** From outside; none when left out. */
  readonly disturbance?: Disturbance
}

export interface TrimOptions extends HoverOptions {
  /** Places in `rotors` of those that stand still, from 0; none when left out. */
  readonly lost?: readonly number[]
}

export interface Trim {
  readonly feasible: boolean
  /** Largest thrust over weight; absent where not feasible. */
  readonly peakShare?: Ratio
  /** Thrust of each rotor in their order [N]; where not feasible, with `cannotHold` given up. */
  readonly thrusts: readonly Force[]
  /** Torque of each rotor [N m]. */
  readonly torques: readonly Torque[]
  /** Axes to be given up, the fewest that will do; empty where feasible. */
  readonly cannotHold: readonly Axis[]
  /** Available control authority index with its sign; N where forces bound it, N m where moments do. */
  readonly index: Ratio
  /** Whether the index is above zero by more than rounding: every held axis can be pushed either way. */
  readonly controllable: boolean
  /** Largest thrust over weight with `cannotHold` given up; `peakShare` where feasible. */
  readonly degradedPeakShare: Ratio
  /** Greatest of thrust over its limit. */
  readonly utilisation: Ratio
  /** What is left over about each axis: zero about those that are held; forces [N], moments [N m]. */
  readonly leftOver: Readonly<Record<Axis, number>>
  /** What is lacking about each axis of `cannotHold` with the others held; forces [N], moments [N m]. */
  readonly shortfall: Readonly<Partial<Record<Axis, number>>>
}

const method = 'authority.trim'
export const knownHover = ['rotors', 'weight', 'centreOfGravity', 'hold', 'disturbance']
const known = new Set([...knownHover, 'lost'])
const knownDisturbance = new Set(['roll', 'pitch', 'yaw', 'side', 'forward'])

/**
 * Trim in hover with some rotors lost: least peak thrust first, then the least sum of squares under that peak, so that it is unique.
 *
 * @equation min t with B f = (W, 0, 0, 0), 0 <= f_i <= min(t, K_i); then min sum f_i^2 under that t. Index: min over planes of the
 * attainable set of (1/2 sum |n b_i| K_i - |n (B K/2 - G)|)
 * @param options - `rotors` (as `authority.effectiveness`), `weight` W [N], `centreOfGravity` `{ x, y }` [m], `hold`: axes that must be kept
 * ('lift', 'roll', 'pitch', 'yaw' when left out; 'side' and 'forward' too), `lost`: places of lost rotors from 0, `disturbance`: `roll`, `pitch`,
 * `yaw` [N m], `side`, `forward` [N] from outside
 * @returns `feasible`, `peakShare` (largest thrust over weight; absent where not feasible), `thrusts` [N] and `torques` [N m] in the order of
 * rotors, `cannotHold` (axes; empty where feasible), `index` and `controllable` (index above zero), `degradedPeakShare` with `cannotHold`
 * given up, `utilisation` (largest thrust over its limit), `leftOver` about every axis, `shortfall` about those of `cannotHold`
 * @throws InvalidInput for a rotor that cannot be, a place that is none or twice in `lost`, an axis that is none, a weight outside 0.001 to 1e9 N, and an unknown option
 * @method The peak by linear program (library), the thrusts under it by an active set. Where not feasible, the fewest moments are given
 * up that make the rest possible, yaw before pitch before roll; lift is named only where no moment given up brings the weight.
 * @validity Hover, thrusts that add up. Feasible is not yet controllable: PNPNPN with one rotor lost trims at W/4 and has index 0, with no
 * authority about one direction. Sources conflict because their requirement differs: Aslansefat et al. let PNPNPN survive any first loss
 * (yaw given up, `hold: ['lift', 'roll', 'pitch']`); Du et al. call it uncontrollable (all four axes, index not above 0). Outside the
 * attainable set the index is the farthest plane's distance. It mixes N and N m: never compare it between aircraft.
 * @source Du, G.-X., Quan, Q., Yang, B., Cai, K.-Y., Controllability Analysis for Multirotor Helicopter Rotor Degradation and Failure, Journal of Guidance, Control, and Dynamics 38(5), 2015, 978-985 (from memory).
 * @example
 * const six = [1, -1, 1, -1, 1, -1].map((spin, i) => ({
 *   x: Math.cos((i * Math.PI) / 3), y: Math.sin((i * Math.PI) / 3), spin, maxThrust: 5 * u.kN, torqueRatio: 0.1,
 * }))
 * authority.trim({ rotors: six, weight: 12 * u.kN, lost: [0] }).peakShare // 0.25
 */
export function trim(options: TrimOptions): Trim {
  checkOptions(method, options, known)
  const hover = readHover(method, options)
  const lost = readLost(method, 'lost', options.lost, hover.rotors.length)
  return trimOf(hover, lost)
}

/** A hover read once and asked many times. */
export interface Hover {
  readonly rotors: readonly ReadRotor[]
  readonly rows: ReturnType<typeof buildRows>
  readonly limits: Float64Array
  readonly weight: number
  readonly hold: readonly Axis[]
  readonly demand: Demand
}

export function readHover(called: string, options: HoverOptions): Hover {
  const rotors = readRotors(called, options.rotors)
  requirePositive(called, 'weight', options.weight, 'N')
  requireWithin(called, 'weight', options.weight, 'N', 1e-3, 1e9)
  const centre = readPoint(called, 'centreOfGravity', options.centreOfGravity)
  const against = readDisturbance(called, 'disturbance', options.disturbance)
  return {
    rotors,
    rows: buildRows(rotors, centre),
    limits: Float64Array.from(rotors, (rotor) => rotor.maxThrust),
    weight: options.weight,
    hold: readHold(called, options.hold ?? usualHold),
    demand: demandOf(options.weight, against),
  }
}

/** The weight, and the opposite of what comes from outside. */
export function demandOf(weight: number, disturbance: Disturbance): Demand {
  return forAxes((axis) => (axis === 'lift' ? weight : 0 - (disturbance[axis] ?? 0)))
}

export function readDisturbance(called: string, argument: string, given: Disturbance | undefined): Disturbance {
  if (given === undefined) return {}
  checkOptions(`${called} ${argument}`, given, knownDisturbance)
  for (const axis of axes) {
    if (axis === 'lift' || given[axis] === undefined) continue
    const unit = isForce(axis) ? 'N' : 'N m'
    requireFinite(called, `${argument}.${axis}`, given[axis], unit)
    requireWithin(called, `${argument}.${axis}`, given[axis], unit, -1e12, 1e12)
  }
  return given
}

export function readLost(
  called: string,
  argument: string,
  lost: readonly number[] | undefined,
  count: number,
): ReadonlySet<number> {
  if (lost === undefined) return new Set()
  if (!Array.isArray(lost))
    throw new InvalidInput({
      method: called,
      argument,
      value: describeValue(lost),
      accepted: 'a list of places of rotors, from 0',
    })
  const places = new Set<number>()
  lost.forEach((place, index) => {
    if (!Number.isInteger(place) || place < 0 || place >= count || places.has(place))
      throw new InvalidInput({
        method: called,
        argument: `${argument}[${index}]`,
        value: describeValue(place),
        accepted: `a place from 0 to ${count - 1}, each once`,
      })
    places.add(place)
  })
  return places
}

/** Trim without checks. `limits` other than the rotors' own where some are weakened rather than lost. */
export function trimOf(hover: Hover, lost: ReadonlySet<number>, limits: Float64Array = hover.limits): Trim {
  const { hold, weight, rotors } = hover
  const problem = buildProblem(hover.rows, limits, lost, weight, hover.demand)
  const index = authorityIndex(problem, hold)
  const whole = leastPeak(problem, hold)
  const { cannotHold, scaled } =
    whole === undefined ? giveUp(problem, hold) : { cannotHold: [] as readonly Axis[], scaled: whole }
  const thrusts = unscale(problem, scaled)
  const peak = Math.max(...thrusts) / weight
  const left = forAxes(
    (axis) => (given(problem, axis, scaled) - problem.demand[axis]) * problem.unit * problem.arm[axis],
  )
  return {
    feasible: whole !== undefined,
    ...(whole === undefined ? {} : { peakShare: peak }),
    thrusts,
    torques: thrusts.map((thrust, at) => thrust * (rotors[at] as ReadRotor).torqueRatio),
    cannotHold,
    index,
    controllable: whole !== undefined && isAboveZero(problem, index),
    degradedPeakShare: peak,
    utilisation: thrusts.reduce((most, thrust, at) => {
      const limit = limits[at] as number
      return limit > 0 ? Math.max(most, thrust / limit) : most
    }, 0),
    leftOver: left,
    shortfall: whole === undefined ? shortfalls(problem, hold, cannotHold) : {},
  }
}

/** In the order in which an axis is missed least. */
const patience: readonly Axis[] = ['side', 'forward', 'yaw', 'pitch', 'roll']

/** The fewest axes that must go for the rest to be held; lift goes only where nothing else helps. */
function giveUp(problem: Problem, hold: readonly Axis[]): { cannotHold: readonly Axis[]; scaled: Float64Array } {
  const moments = patience.filter((axis) => hold.includes(axis))
  for (const gone of subsets(moments)) {
    const scaled = leastPeak(
      problem,
      hold.filter((axis) => !gone.includes(axis)),
    )
    if (scaled !== undefined && gone.length > 0)
      return { cannotHold: hold.filter((axis) => gone.includes(axis)), scaled }
  }
  // The weight is more than the rotors can give: as much lift as there is, with as few other axes lost as may be.
  for (const gone of subsets(moments)) {
    const rest = hold.filter((axis) => axis !== 'lift' && !gone.includes(axis))
    const most = greatest(problem, problem.rows.lift, rest)
    if (most !== undefined)
      return { cannotHold: hold.filter((axis) => axis === 'lift' || gone.includes(axis)), scaled: most.thrusts }
  }
  return { cannotHold: hold, scaled: new Float64Array(problem.alive.length) }
}

/** All subsets, fewest members first, and among equals those that come first in the list. */
function subsets(list: readonly Axis[]): Axis[][] {
  const all: Axis[][] = []
  for (let bits = 0; bits < 2 ** list.length; bits += 1) all.push(list.filter((_, at) => (bits >> at) % 2 === 1))
  return all.sort((one, other) => one.length - other.length)
}

/** How much is lacking about each axis given up, with all that can be held held. */
function shortfalls(
  problem: Problem,
  hold: readonly Axis[],
  cannotHold: readonly Axis[],
): Partial<Record<Axis, number>> {
  const kept = hold.filter((axis) => !cannotHold.includes(axis))
  const lacking: Partial<Record<Axis, number>> = {}
  for (const axis of cannotHold) {
    const row = problem.rows[axis]
    const most = greatest(problem, row, kept)?.value ?? 0
    const least = -(
      greatest(
        problem,
        row.map((value) => -value),
        kept,
      )?.value ?? 0
    )
    const wanted = problem.demand[axis]
    const missing = wanted > most ? wanted - most : wanted < least ? wanted - least : 0
    lacking[axis] = missing * problem.unit * problem.arm[axis]
  }
  return lacking
}
