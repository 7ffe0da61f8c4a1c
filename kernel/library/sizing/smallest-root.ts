/**
 * The smallest gross mass at which a build-up asks for no more than it is given.
 *
 * With excess f(m) = required(m) - m the answer is the first crossing of f from above to below. A build-up in which every item
 * grows at least in proportion is convex in m, and then two points left of the root have a secant that meets zero left of
 * the root again: the march below comes from the light side and cannot pass to the second, heavier root. Whatever does not fit
 * that picture (an overshoot, a slope that turns) is handed to a survey of the whole range.
 */
import { brentMinimum, brentRoot } from '../numerics/index.js'

export type SmallestRoot =
  | { readonly found: true; readonly mass: number; readonly steps: number }
  | {
      readonly found: false
      /** Where the excess is least, and that excess. */
      readonly mass: number
      readonly excess: number
      /** `fold`: a minimum above zero. `light end`, `heavy end`: least at an end of the survey. `jump`: the build-up jumps across. */
      readonly kind: 'fold' | 'light end' | 'heavy end' | 'jump'
      readonly steps: number
    }

type Excess = (mass: number) => number

/** An excess that rounding alone could have made. */
const rounding = 1e-14
/** A residual above this at a "root" means that the build-up jumps across zero there. */
const jump = 1e-7
const marchSteps = 48

/** Finds the smallest root near and above or below `from`, to a relative `tolerance`. */
export function smallestRoot(excess: Excess, from: number, tolerance: number): SmallestRoot {
  let start = from
  let value = excess(start)
  let steps = 1
  // Already past the first root: go towards lighter masses until the build-up asks for more again.
  while (value < -rounding * start && steps < 64) {
    start *= 0.5
    value = excess(start)
    steps += 1
  }
  if (value <= rounding * start && value >= -rounding * start) return { found: true, mass: start, steps }
  if (value < 0) return { found: false, mass: start, excess: value, kind: 'light end', steps }
  return march(excess, start, value, from, tolerance, steps)
}

/** Secant steps from the light side. */
function march(
  excess: Excess,
  start: number,
  startValue: number,
  from: number,
  tolerance: number,
  before: number,
): SmallestRoot {
  let mass = start
  let value = startValue
  // required(m) never falls with m, so no root lies between m and required(m) = m + f: a first step that cannot overshoot.
  let next = mass + Math.max(value, 1e-7 * mass)
  let slopeBefore = Number.NEGATIVE_INFINITY
  let convex = true
  for (let steps = before + 1; steps < before + marchSteps; steps += 1) {
    const nextValue = excess(next)
    if (Math.abs(nextValue) <= rounding * next) return confirm(excess, start, next, tolerance, convex, steps)
    if (nextValue < 0) {
      const crossing = firstCrossing(excess, mass, next, value, nextValue, tolerance, steps)
      return crossing.found ? confirm(excess, start, crossing.mass, tolerance, convex, crossing.steps) : crossing
    }
    const slope = (nextValue - value) / (next - mass)
    if (!(slope < 0)) return survey(excess, from, tolerance, steps)
    if (slope < slopeBefore - 1e-6) convex = false
    slopeBefore = slope
    mass = next
    value = nextValue
    const step = -value / slope
    if (step <= tolerance * mass) return confirm(excess, start, mass + step, tolerance, convex, steps)
    next = mass + Math.min(step, 3 * mass)
  }
  return survey(excess, from, tolerance, before + marchSteps)
}

/** Accepts a root; where the visited points were not convex, looks between start and root for an earlier one. */
function confirm(
  excess: Excess,
  start: number,
  root: number,
  tolerance: number,
  convex: boolean,
  steps: number,
): SmallestRoot {
  if (convex) return { found: true, mass: root, steps }
  const parts = 32
  let mass = start
  let value = excess(mass)
  for (let part = 1; part < parts; part += 1) {
    const next = start + ((root - start) * part) / parts
    const nextValue = excess(next)
    if (nextValue < -rounding * next)
      return firstCrossing(excess, mass, next, value, nextValue, tolerance, steps + part)
    mass = next
    value = nextValue
  }
  return { found: true, mass: root, steps: steps + parts }
}

/** The first crossing between a mass with positive and one with negative excess, to a resolution of an eighth of the gap. */
function firstCrossing(
  excess: Excess,
  low: number,
  high: number,
  valueLow: number,
  valueHigh: number,
  tolerance: number,
  before: number,
): SmallestRoot {
  const parts = high - low > 1e-3 * low ? 8 : 1
  let steps = before
  let a = low
  let fa = valueLow
  let b = high
  let fb = valueHigh
  for (let part = 1; part < parts; part += 1) {
    const middle = low + ((high - low) * part) / parts
    const value = excess(middle)
    steps += 1
    if (value <= 0) {
      b = middle
      fb = value
      break
    }
    a = middle
    fa = value
  }
  const root = brentRoot(excess, a, b, fa, fb, tolerance)
  steps += root.evaluations
  if (Math.abs(root.value) > jump * root.x)
    return { found: false, mass: root.x, excess: Math.abs(root.value), kind: 'jump', steps }
  return { found: true, mass: root.x, steps }
}

/** Ratio of neighbouring masses in the survey, and its reach to either side of `from`. */
const ratio = 1.25
const reach = 16
/** Where no minimum lies inside, the survey doubles on to this factor before it gives up. */
const farReach = 1e6

/** Samples the range, refines every dip from light to heavy, and takes the first crossing or else the least excess. */
function survey(excess: Excess, from: number, tolerance: number, before: number): SmallestRoot {
  const { masses, values } = sample(excess, from)
  let steps = before + masses.length
  if ((values[0] ?? 0) <= 0)
    return { found: false, mass: masses[0] ?? from, excess: values[0] ?? 0, kind: 'light end', steps }
  let least = 0
  let leastMass = masses[0] ?? from
  let leastExcess = values[0] ?? Number.NaN
  for (let i = 1; i < masses.length; i += 1) {
    const [lighter, mass, heavier] = [masses[i - 1] ?? from, masses[i] ?? from, masses[i + 1] ?? from]
    const [valueBefore, value, valueAfter] = [
      values[i - 1] ?? 0,
      values[i] ?? 0,
      values[i + 1] ?? Number.NEGATIVE_INFINITY,
    ]
    if (value <= 0 && valueBefore > 0) return firstCrossing(excess, lighter, mass, valueBefore, value, tolerance, steps)
    let dip = { x: mass, value, evaluations: 0 }
    if (value < valueBefore && value <= valueAfter) dip = brentMinimum(excess, lighter, heavier, 1e-8, 0)
    steps += dip.evaluations
    if (dip.value <= rounding * dip.x) {
      if (dip.value >= 0) return { found: true, mass: dip.x, steps }
      return firstCrossing(excess, lighter, dip.x, valueBefore, dip.value, tolerance, steps)
    }
    if (dip.value >= leastExcess) continue
    least = i
    leastMass = dip.x
    leastExcess = dip.value
  }
  const kind = least === 0 ? 'light end' : least === masses.length - 1 ? 'heavy end' : 'fold'
  return { found: false, mass: leastMass, excess: leastExcess, kind, steps }
}

/** A geometric grid, extended by doubling on a side where the excess is still falling, and to where it is positive. */
function sample(excess: Excess, from: number): { masses: readonly number[]; values: readonly number[] } {
  const masses: number[] = []
  for (let mass = from / reach; mass < from * reach; mass *= ratio) masses.push(mass)
  const values = masses.map(excess)
  const first = () => masses[0] ?? from
  while (((values[0] ?? 0) < (values[1] ?? 0) || (values[0] ?? 0) <= 0) && first() > from / farReach) {
    masses.unshift(first() / 2)
    values.unshift(excess(first()))
  }
  const last = () => masses.length - 1
  while ((values[last()] ?? 0) < (values[last() - 1] ?? 0) && (values[last()] ?? 0) > 0) {
    if ((masses[last()] ?? 0) > from * farReach) break
    masses.push((masses[last()] ?? from) * 2)
    values.push(excess(masses[last()] ?? from))
  }
  return { masses, values }
}
