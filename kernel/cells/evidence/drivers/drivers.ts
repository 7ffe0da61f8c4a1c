/** What moves a number: each assumption varied alone, all else as it stands. */
import {
  type AssumptionRecord,
  type Driver,
  type DriverEnd,
  type Drivers,
  largestChange,
  type NumbersOutcome,
  type Point,
  type Unsteadiness,
} from '../../../../shared/contracts/index.js'
import { evaluateInBatches, numberAt, type Tools } from '../evaluation.js'
import { EvidenceTrouble } from '../trouble.js'
import { readVaried, type Varied, valuesTried } from './ends.js'
import { bends, centralChange, moved, type Near } from './slopes.js'

export interface DriversRequest {
  /** The number asked about. */
  readonly target: string
  /** Those that can reach it. */
  readonly assumptions: readonly AssumptionRecord[]
  /** Trial values in force. */
  readonly base?: Point
}

export interface DriversTools extends Tools {
  /** The answer so far, after each batch. */
  readonly onDrivers?: (drivers: Drivers) => void
}

/**
 * Evaluates the number as it stands and, for each assumption, at both ends and at 1 % and 0.5 % either side.
 *
 * @equation change = f(end) - f(value); elasticity = (x / f) (f(x + h) - f(x - h)) / (2 h), h = 0.01 |x|
 * @throws EvidenceTrouble where the number does not compute as it stands
 */
export async function runDrivers(request: DriversRequest, tools: DriversTools): Promise<Drivers> {
  const { target, assumptions, base: trials = {} } = request
  const question = { target, ...readVaried(assumptions, trials) }
  const points = [
    trials,
    ...question.varied.flatMap((one) => valuesTried(one).map((value) => ({ ...trials, [one.name]: value }))),
  ]
  const found: NumbersOutcome[] = []
  await evaluateInBatches(points, tools, (_, outcomes) => {
    found.push(...outcomes)
    const drivers = describe(question, found)
    tools.onDrivers?.(drivers)
    tools.onProgress?.(found.length, points.length)
  })
  return describe(question, found)
}

interface Question {
  readonly target: string
  readonly varied: readonly Varied[]
  readonly unvaried: Drivers['unvaried']
}

const runsEach = 6

/** What the outcomes say so far: the number as it stands, then those of each assumption in turn. */
function describe({ target, varied, unvaried }: Question, [standing, ...outcomes]: readonly NumbersOutcome[]): Drivers {
  const all = varied.map(({ name }) => name)
  const nothing = { target, drivers: [], without: [], unvaried, left: all }
  if (standing === undefined) return { ...nothing, base: Number.NaN, runs: 0 }
  const base = numberAt(standing, target)
  if (base === undefined) throw new EvidenceTrouble('NO_BASE', { target, reason: failureOf(standing, target) })
  const tried = varied.slice(0, Math.floor(outcomes.length / runsEach))
  const read = tried.map((one, at) => readDriver(one, target, base, outcomes.slice(at * runsEach, (at + 1) * runsEach)))
  const drivers = read.filter((one) => one !== undefined)
  return {
    ...nothing,
    base,
    drivers: drivers.sort((one, other) => largestChange(other) - largestChange(one)),
    without: tried.filter((_, at) => read[at] === undefined).map(({ name }) => name),
    runs: outcomes.length + 1,
    left: all.slice(tried.length),
  }
}

/** Undefined where it moved nothing; outcomes are those of `valuesTried`. */
function readDriver(
  varied: Varied,
  target: string,
  base: number,
  outcomes: readonly NumbersOutcome[],
): Driver | undefined {
  const numbers = outcomes.map((outcome) => numberAt(outcome, target))
  if (numbers.every((value) => value !== undefined && !moved(value, base))) return undefined
  const { name, unit, value, from } = varied
  const [low, high] = outcomes as [NumbersOutcome, NumbersOutcome]
  const near = nearOf(base, numbers)
  const ends = { low: endOf(varied.low, low, target, base), high: endOf(varied.high, high, target, base) }
  const unsteady = unsteadiness(near, ends, base)
  return {
    name,
    ...(unit === undefined ? {} : { unit }),
    value,
    from,
    ...ends,
    // One step is 1 % of the value, so the change over it in per cent of the number is the elasticity.
    ...(near === undefined || value === 0 || base === 0
      ? {}
      : { elasticity: ((100 * centralChange(near)) / base) * Math.sign(value) }),
    smooth: unsteady === undefined,
    ...(unsteady === undefined ? {} : { unsteady }),
  }
}

function nearOf(base: number, numbers: readonly (number | undefined)[]): Near | undefined {
  const [, , below, above, halfBelow, halfAbove] = numbers
  if (below === undefined || above === undefined || halfBelow === undefined || halfAbove === undefined) return undefined
  return { base, below, above, halfBelow, halfAbove }
}

function endOf(at: number, outcome: NumbersOutcome, target: string, base: number): DriverEnd {
  const value = numberAt(outcome, target)
  if (value !== undefined) return { at, value, change: value - base }
  const cell = outcome.ok ? undefined : outcome.cell
  return { at, failure: failureOf(outcome, target), ...(cell === undefined ? {} : { cell }) }
}

function failureOf(outcome: NumbersOutcome, target: string): string {
  return outcome.ok ? `"${target}" is no finite number there.` : outcome.message
}

function unsteadiness(
  near: Near | undefined,
  { low, high }: Pick<Driver, 'low' | 'high'>,
  base: number,
): Unsteadiness | undefined {
  if (near === undefined || low.value === undefined || high.value === undefined) return 'failure'
  if (bends(near)) return 'bend'
  const flat = [near.below, near.above, near.halfBelow, near.halfAbove].every((value) => !moved(value, base))
  return flat ? 'threshold' : undefined
}
