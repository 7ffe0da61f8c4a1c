/** The problem of a trim in numbers of about 1, and its two steps: least peak, then least sum of squares under that peak. */
import { type Axis, axes, isForce } from './axes.js'
import type { Rows } from './effectiveness.js'
import { correct, independentRows, leastSquares } from './least-squares.js'
import { minimise, precision } from './program.js'

/** What has to be given about each axis: forces [N], moments about the centre of gravity [N m]. */
export type Demand = Readonly<Record<Axis, number>>

export interface Problem {
  /** Places of the rotors that still turn, in the caller's list. */
  readonly alive: readonly number[]
  /** Their columns, axis by axis, scaled. */
  readonly rows: Readonly<Record<Axis, Float64Array>>
  /** Greatest thrusts, scaled. */
  readonly upper: Float64Array
  /** Scaled demand. */
  readonly demand: Demand
  /** One scaled thrust [N]. */
  readonly unit: number
  /** Arm by which the axis is scaled [m], 1 for forces. */
  readonly arm: Readonly<Record<Axis, number>>
  /** Rotors in the caller's list. */
  readonly count: number
}

/** Scales by the mean share of the weight and by the longest arm of the whole layout, lost rotors too. */
export function buildProblem(
  rows: Rows,
  limits: ArrayLike<number>,
  lost: ReadonlySet<number>,
  weight: number,
  demand: Demand,
): Problem {
  const count = limits.length
  const unit = weight / count
  const alive = Array.from({ length: count }, (_, at) => at).filter((at) => !lost.has(at) && (limits[at] as number) > 0)
  // An arm this small against the longest is rounding, and below what the linear program resolves: such a rotor turns nothing.
  const nothing = 1e-9 * Math.max(largest(rows.roll), largest(rows.pitch), largest(rows.yaw))
  const arm = forAxes((axis) => (isForce(axis) || largest(rows[axis]) <= nothing ? 1 : largest(rows[axis])))
  const scaled = (axis: Axis, at: number) => {
    const value = rows[axis][at] as number
    return Math.abs(value) <= (isForce(axis) ? 1e-15 : nothing) ? 0 : value / arm[axis]
  }
  return {
    alive,
    rows: forAxes((axis) => Float64Array.from(alive, (at) => scaled(axis, at))),
    upper: Float64Array.from(alive, (at) => (limits[at] as number) / unit),
    demand: forAxes((axis) => demand[axis] / (unit * arm[axis])),
    unit,
    arm,
    count,
  }
}

/** The least peak at which thrusts hold these axes; undefined where none do. Scaled. */
export function leastPeakAlone(problem: Problem, hold: readonly Axis[]): number | undefined {
  if (problem.alive.length === 0) return asksNothing(problem, hold) ? 0 : undefined
  return underLeastPeak(problem, hold)?.[problem.alive.length]
}

/** Thrusts with the least peak that hold these axes, of least sum of squares among them; undefined where none do. Scaled. */
export function leastPeak(problem: Problem, hold: readonly Axis[]): Float64Array | undefined {
  const { alive, upper } = problem
  const count = alive.length
  if (count === 0) return asksNothing(problem, hold) ? new Float64Array(0) : undefined
  const found = underLeastPeak(problem, hold)
  if (found === undefined) return undefined
  const rows = hold.map((axis) => problem.rows[axis])
  const peak = found[count] as number
  const thrusts = found.slice(0, count)
  const under = upper.map((limit) => Math.min(limit, peak + 2 * precision * Math.max(1, peak)))
  const independent = independentRows(rows)
  leastSquares(thrusts, independent, under)
  correct(
    thrusts,
    independent,
    independent.map((row) => problem.demand[hold[rows.indexOf(row)] as Axis]),
  )
  return thrusts
}

/** Some thrusts with the least peak, and behind them the peak. */
function underLeastPeak(problem: Problem, hold: readonly Axis[]): Float64Array | undefined {
  const { alive, upper } = problem
  const count = alive.length
  const highest = largest(upper)
  return minimise({
    cost: lastOne(count),
    rows: hold.map((axis) => withZero(problem.rows[axis])),
    sums: hold.map((axis) => problem.demand[axis]),
    // A rotor whose limit is the highest is held by the limit of the peak.
    upper: Float64Array.from({ length: count + 1 }, (_, at) =>
      at === count ? highest : (upper[at] as number) < highest ? (upper[at] as number) : Number.POSITIVE_INFINITY,
    ),
    lastIsPeak: true,
  })
}

/** What no rotor at all can hold. */
function asksNothing({ demand }: Problem, hold: readonly Axis[]): boolean {
  return hold.every((axis) => Math.abs(demand[axis]) < 1e-9)
}

/** Greatest of one axis' force or moment with others exactly held; undefined where the others cannot be. Scaled. */
export function greatest(
  problem: Problem,
  along: Float64Array,
  hold: readonly Axis[],
): { readonly value: number; readonly thrusts: Float64Array } | undefined {
  const { upper } = problem
  const sums = hold.map((axis) => problem.demand[axis])
  if (problem.alive.length === 0)
    return sums.every((sum) => Math.abs(sum) < 1e-9) ? { value: 0, thrusts: new Float64Array(0) } : undefined
  const found = minimise({
    cost: along.map((value) => -value),
    rows: hold.map((axis) => problem.rows[axis]),
    sums,
    upper,
  })
  if (found === undefined) return undefined
  let value = 0
  for (let at = 0; at < along.length; at += 1) value += (along[at] as number) * (found[at] as number)
  return { value, thrusts: found }
}

/** Force or moment about an axis with these thrusts, scaled. */
export function given(problem: Problem, axis: Axis, thrusts: Float64Array): number {
  let sum = 0
  for (let at = 0; at < thrusts.length; at += 1) sum += (problem.rows[axis][at] as number) * (thrusts[at] as number)
  return sum
}

/** Thrusts of all rotors in the caller's order [N]. */
export function unscale(problem: Problem, thrusts: Float64Array): number[] {
  const all = new Array<number>(problem.count).fill(0)
  problem.alive.forEach((at, index) => {
    all[at] = (thrusts[index] as number) * problem.unit
  })
  return all
}

export function forAxes<T>(of: (axis: Axis) => T): Record<Axis, T> {
  return Object.fromEntries(axes.map((axis) => [axis, of(axis)])) as Record<Axis, T>
}

function largest(values: ArrayLike<number>): number {
  let most = 0
  for (let at = 0; at < values.length; at += 1) most = Math.max(most, Math.abs(values[at] as number))
  return most
}

function lastOne(count: number): Float64Array {
  const cost = new Float64Array(count + 1)
  cost[count] = 1
  return cost
}

function withZero(row: Float64Array): Float64Array {
  const longer = new Float64Array(row.length + 1)
  longer.set(row)
  return longer
}
