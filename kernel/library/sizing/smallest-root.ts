/**
 * The smallest gross mass at which a build-up asks for no more than it is given.
 *
 * With excess f(m) = required(m) - m the answer is the first crossing of f from above to below. A build-up in which every item
 * grows at least in proportion is convex in m, and then two points left of the root have a secant that meets zero left of
 * the root again: the march below comes from the light side and cannot pass to the second, heavier root. Whatever does not fit
 * that picture (an overshoot, a slope that turns) is handed to a survey that looks at the lighter masses too.
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
/** An overshoot or a fall of the slope above this is no rounding: the build-up is not convex. */
const bend = 1e-9
const marchSteps = 48
/** Ratio of neighbouring masses in the survey, and its reach to either side of `from`. */
const ratio = 1.25
const reach = 16
/** Where no minimum lies inside, the survey doubles on to this factor before it gives up; the march stops there as well. */
const farReach = 1e6

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
  if (value < -rounding * start) return { found: false, mass: start, excess: value, kind: 'light end', steps }
  if (value <= rounding * start) return { found: true, mass: start, steps }
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
  for (let steps = before + 1; steps < before + marchSteps && next < from * farReach; steps += 1) {
    const nextValue = excess(next)
    if (Math.abs(nextValue) <= rounding * next) return confirm(excess, start, next, tolerance, convex, steps)
    if (nextValue < 0) {
      const crossing = refine(excess, mass, next, value, nextValue, tolerance, steps)
      convex &&= nextValue > -bend * next
      return crossing.found ? confirm(excess, start, crossing.mass, tolerance, convex, crossing.steps) : crossing
    }
    const slope = (nextValue - value) / (next - mass)
    if (!(slope < 0)) return survey(excess, from, tolerance, steps)
    // Chords shorter than this say more about rounding than about the build-up.
    if (slope < slopeBefore - bend && next - mass > 1e-4 * mass) convex = false
    slopeBefore = slope
    mass = next
    value = nextValue
    const step = -value / slope
    if (step <= tolerance * mass) return confirm(excess, start, mass + step, tolerance, convex, steps)
    next = mass + Math.min(step, 3 * mass)
  }
  return survey(excess, from, tolerance, before + marchSteps)
}

/** Accepts a root; where the points on the way were not convex, looks among all lighter masses for an earlier one. */
function confirm(
  excess: Excess,
  start: number,
  root: number,
  tolerance: number,
  convex: boolean,
  steps: number,
): SmallestRoot {
  if (convex) return { found: true, mass: root, steps }
  const earlier = scan(excess, sample(excess, start, root * (1 - 1e-6), 1), tolerance, steps)
  return earlier.found ? earlier : { found: true, mass: root, steps: earlier.steps }
}

/** The crossing between a mass with positive and one with negative excess. */
function refine(
  excess: Excess,
  low: number,
  high: number,
  valueLow: number,
  valueHigh: number,
  tolerance: number,
  before: number,
): SmallestRoot {
  const root = brentRoot(excess, low, high, valueLow, valueHigh, tolerance)
  const steps = before + root.evaluations
  if (Math.abs(root.value) <= jump * root.x) return { found: true, mass: root.x, steps }
  return { found: false, mass: root.x, excess: Math.abs(root.value), kind: 'jump', steps }
}

/** Samples the whole range, refines every dip from light to heavy, and takes the first crossing or else the least excess. */
function survey(excess: Excess, from: number, tolerance: number, before: number): SmallestRoot {
  return scan(excess, sample(excess, from, from * reach, farReach), tolerance, before)
}

interface Sample {
  readonly masses: readonly number[]
  readonly values: readonly number[]
}

function scan(excess: Excess, { masses, values }: Sample, tolerance: number, before: number): SmallestRoot {
  const mass = (i: number): number => masses[i] ?? Number.NaN
  const value = (i: number): number => values[i] ?? Number.NEGATIVE_INFINITY
  let steps = before + masses.length
  if (value(0) <= 0) return { found: false, mass: mass(0), excess: value(0), kind: 'light end', steps }
  let least = { x: mass(0), value: value(0), evaluations: 0 }
  let leastIndex = 0
  for (let i = 1; i < masses.length; i += 1) {
    if (value(i) <= 0) return refine(excess, mass(i - 1), mass(i), value(i - 1), value(i), tolerance, steps)
    let dip = { x: mass(i), value: value(i), evaluations: 0 }
    if (value(i) < value(i - 1) && value(i) <= value(i + 1))
      dip = brentMinimum(excess, mass(i - 1), mass(i + 1), 1e-8, 0)
    steps += dip.evaluations
    if (dip.value < 0) return refine(excess, mass(i - 1), dip.x, value(i - 1), dip.value, tolerance, steps)
    if (dip.value <= rounding * dip.x) return { found: true, mass: dip.x, steps }
    if (dip.value >= least.value) continue
    least = dip
    leastIndex = i
  }
  const kind = leastIndex === 0 ? 'light end' : leastIndex === masses.length - 1 ? 'heavy end' : 'fold'
  return { found: false, mass: least.x, excess: least.value, kind, steps }
}

/**
 * A geometric grid from a sixteenth of `from` to `heaviest`. It is extended by doubling at the light end to where the excess is
 * positive and falls with mass, and at the heavy end while the excess still falls, up to `far` times `from`.
 */
function sample(excess: Excess, from: number, heaviest: number, far: number): Sample {
  const masses: number[] = []
  for (let mass = from / reach; mass < heaviest; mass *= ratio) masses.push(mass)
  masses.push(heaviest)
  const values = masses.map(excess)
  const first = () => masses[0] ?? from
  while (((values[0] ?? 0) < (values[1] ?? 0) || (values[0] ?? 0) <= 0) && first() > from / farReach) {
    masses.unshift(first() / 2)
    values.unshift(excess(first()))
  }
  const last = () => masses[masses.length - 1] ?? from
  const falls = () => (values.at(-1) ?? 0) < (values.at(-2) ?? 0) && (values.at(-1) ?? 0) > 0
  while (falls() && last() < from * far) {
    masses.push(last() * 2)
    values.push(excess(last()))
  }
  return { masses, values }
}
