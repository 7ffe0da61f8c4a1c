/** What a rotor, its motor and controller must be able to give over normal hover: the peak after a loss with steering on top. */
import { requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'
import { buildProblem, leastPeakAlone } from './allocate.js'
import { isInside } from './authority-index.js'
import type { Axis } from './axes.js'
import {
  type AccelerationDemand,
  attitude,
  type Conditions,
  type ConditionsOptions,
  type ForAttitude,
  type Inertia,
  knownConditions,
  readAcceleration,
  readConditions,
  readInertia,
} from './conditions.js'
import type { Hover } from './trim.js'

export interface RatingOptions extends ConditionsOptions {
  /** To be kept about each axis, either way, in every case [rad/s^2]; with `inertia`. None when left out. */
  readonly acceleration?: AccelerationDemand
  /** [kg m^2] */
  readonly inertia?: Inertia
  /** Share of the greatest thrust that trim and steering may use; 1 when left out. */
  readonly usableShare?: Ratio
  /** How thrust is changed: by speed at fixed pitch, or by pitch at one speed; `'speed'` when left out. */
  readonly control?: 'speed' | 'pitch'
}

export interface RatedCase {
  readonly lost: readonly number[]
  /** Largest thrust over weight that some rotor must be able to give; absent where no thrust is enough. */
  readonly peakShare?: Ratio
  /** Axes about which the rotors cannot do what is asked, however strong. */
  readonly cannotHold: readonly Axis[]
  /** Whether every held axis can still be pushed either way, by rotors that are strong enough. */
  readonly steerable: boolean
}

export interface Rating {
  /** Whether every case can be met by rotors that are strong enough. */
  readonly feasible: boolean
  readonly cases: readonly RatedCase[]
  /** The cases that cannot be met. */
  readonly notMet: readonly RatedCase[]
  /** Greatest peak over weight of the cases that can, the usable share in it. */
  readonly peakShare: Ratio
  /** Over the mean of normal hover. */
  readonly thrustToHover: Ratio
  readonly torqueToHover: Ratio
  readonly powerToHover: Ratio
  /** Of motor and controller: as the torque. */
  readonly currentToHover: Ratio
}

const method = 'authority.rating'
const known = new Set([...knownConditions, 'acceleration', 'inertia', 'usableShare', 'control'])

/**
 * What each lift rotor, motor and controller must be rated for over normal hover: least peak thrust that holds trim after every loss and
 * still turns the aircraft about each axis, either way.
 *
 * @equation t = max over cases, axes and ways of (min t with B f = (W, +-I a), 0 <= f_i <= t); thrust ratio r = n t/(W s); by speed:
 * torque r, power r^(3/2); by pitch at one speed: torque and power r^(3/2)
 * @param options - `rotors` (their `maxThrust` is not used), `weight` [N], `hold`, `centresOfGravity`, `disturbances`, `simultaneous` as
 * `authority.margin`; `acceleration` `{ roll, pitch, yaw }` [rad/s^2] to be kept with `inertia` [kg m^2]; `usableShare` s (1; 0.01 or more); `control` `'speed'` or `'pitch'` (`'speed'`)
 * @returns `thrustToHover`, `torqueToHover`, `powerToHover`, `currentToHover`, `peakShare` (of the weight); `cases` with their `peakShare` or
 * `cannotHold`, and `steerable`; `notMet` those of them that no thrust meets; `feasible` when there are none
 * @throws InvalidInput as `authority.margin`, for an acceleration without inertia, a share that is none, and an unknown option
 * @method One linear program per case, condition, axis and way. Without accelerations and moments from outside the ratios do not depend on the
 * mass: work them out once per layout and give them to the closure; with them they depend on I/m only.
 * @validity Power by momentum theory at one figure of merit and profile share. The motor's speed limit and the blades' stall are apart (`authority.rotorResponse`).
 * @source Linear program as `authority.trim`; the way of adding steering to it is the house's.
 * @example
 * const eight = [1, -1, 1, -1, 1, -1, 1, -1].map((spin, i) => ({
 *   x: 3 * Math.cos((i * Math.PI) / 4), y: 3 * Math.sin((i * Math.PI) / 4), spin, maxThrust: 4 * u.kN, torqueRatio: 0.1,
 * }))
 * const needed = authority.rating({ rotors: eight, weight: 16 * u.kN })
 * needed.thrustToHover // 1.4142
 */
export function rating(options: RatingOptions): Rating {
  checkOptions(method, options, known)
  const conditions = readConditions(method, options)
  const { usableShare = 1, control = 'speed' } = options
  requireWithin(method, 'usableShare', usableShare, '1', 0.01, 1)
  requireChoice(method, 'control', control, ['speed', 'pitch'])
  const acceleration = readAcceleration(method, 'acceleration', options.acceleration)
  const turning = attitude.some((axis) => acceleration[axis] > 0)
  const inertia = turning ? readInertia(method, options.inertia as Inertia) : { roll: 1, pitch: 1, yaw: 1 }
  const moments = Object.fromEntries(
    attitude.map((axis) => [axis, acceleration[axis] * inertia[axis]]),
  ) as unknown as ForAttitude<number>
  const cases = rateCases(conditions, moments)
  const met = cases.flatMap((one) => (one.peakShare === undefined ? [] : [one.peakShare]))
  const peakShare = Math.max(0, ...met) / usableShare
  const ratio = peakShare * conditions.count
  const power = ratio ** 1.5
  requireRepresentable(method, ratio + power)
  const torque = control === 'speed' ? ratio : power
  return {
    feasible: met.length === cases.length,
    cases,
    notMet: cases.filter((one) => one.peakShare === undefined),
    peakShare,
    thrustToHover: ratio,
    torqueToHover: torque,
    powerToHover: power,
    currentToHover: torque,
  }
}

/** Every set of lost rotors with thrusts that are not limited, the intact aircraft first. */
export function rateCases(conditions: Conditions, moments: ForAttitude<number>): RatedCase[] {
  return conditions.sets.map((lost) => rateCase(conditions, new Set(lost), lost, moments))
}

/** No rotor gives a thousand weights: a limit far from every answer, and near enough for the arithmetic. */
const beyond = 1000

function rateCase(
  { hovers, hold, count }: Conditions,
  gone: ReadonlySet<number>,
  lost: readonly number[],
  moments: ForAttitude<number>,
): RatedCase {
  let most = 0
  let steerable = true
  for (const { hover } of hovers) {
    const limits = new Float64Array(count).fill(beyond * hover.weight)
    steerable &&= isSteerable(hover, gone, limits)
    for (const [axis, moment] of turns(hold, moments)) {
      const peak = peakWith(hover, gone, limits, axis, moment)
      if (peak === undefined)
        return { lost, cannotHold: axis === undefined ? notHeld(hover, gone, limits) : [axis], steerable: false }
      most = Math.max(most, peak)
    }
  }
  return { lost, peakShare: most, cannotHold: [], steerable }
}

function isSteerable(hover: Hover, gone: ReadonlySet<number>, limits: Float64Array): boolean {
  return isInside(buildProblem(hover.rows, limits, gone, hover.weight, hover.demand), hover.hold)
}

/** Trim itself where no turning is asked for; else each axis, each way. */
function turns(hold: readonly Axis[], moments: ForAttitude<number>): [Axis | undefined, number][] {
  const asked = attitude.filter((axis) => hold.includes(axis) && moments[axis] > 0)
  return [
    [undefined, 0],
    ...asked.flatMap((axis): [Axis, number][] => [
      [axis, moments[axis]],
      [axis, -moments[axis]],
    ]),
  ]
}

function peakWith(
  hover: Hover,
  gone: ReadonlySet<number>,
  limits: Float64Array,
  axis: Axis | undefined,
  moment: number,
): number | undefined {
  const demand = axis === undefined ? hover.demand : { ...hover.demand, [axis]: hover.demand[axis] + moment }
  const problem = buildProblem(hover.rows, limits, gone, hover.weight, demand)
  const peak = leastPeakAlone(problem, hover.hold)
  return peak === undefined ? undefined : (peak * problem.unit) / hover.weight
}

/** Which single axis stands in the way of trim; all of attitude where it is more than one. */
function notHeld(hover: Hover, gone: ReadonlySet<number>, limits: Float64Array): readonly Axis[] {
  const problem = buildProblem(hover.rows, limits, gone, hover.weight, hover.demand)
  for (const axis of ['yaw', 'pitch', 'roll'] as const)
    if (
      hover.hold.includes(axis) &&
      leastPeakAlone(
        problem,
        hover.hold.filter((one) => one !== axis),
      ) !== undefined
    )
      return [axis]
  return hover.hold.filter((axis) => axis !== 'lift')
}
