/** The fold: the value of a variable beyond which the two gross masses that close have met and vanished. */
import { requireFinite, requirePositive, requireText, requireUnit } from '../check.js'
import { checkOptions, describeValue, InvalidInput, NoFold } from '../errors.js'
import { writeQuantity } from '../number-text.js'
import { brentMinimum, brentRoot, type Minimum } from '../numerics/index.js'
import type { Mass } from '../quantity.js'
import { silently } from '../recorder.js'
import { type MassItems, totalMass } from './build-up.js'

/** A variable along which the build-up is followed. */
export interface Along {
  /** What the variable is called in sentences. */
  readonly name: string
  /** Its value in the design at hand [SI]. */
  readonly value: number
  /** Unit text for sentences. */
  readonly unit?: string
  /** The build-up at a gross mass [kg] and a value of the variable [SI]. */
  readonly requiredMass: (grossMass: Mass, value: number) => Mass | MassItems
  /** Where to look, towards greater or smaller values; whichever brings the fold nearer when left out. */
  readonly direction?: 'up' | 'down'
}

export interface FoldOptions extends Along {
  /** A gross mass to start from [kg]. */
  readonly from: Mass
}

export interface Fold {
  readonly name: string
  /** Value of the variable at the fold [SI]. */
  readonly value: number
  readonly unit?: string
  /** Gross mass at the fold [kg]. */
  readonly grossMass: Mass
  /** On which side of the value the design closes. */
  readonly closes: 'up to' | 'from'
}

export const knownAlong: ReadonlySet<string> = new Set(['name', 'value', 'unit', 'requiredMass', 'direction'])
const known = new Set([...knownAlong, 'from'])

/**
 * Value of a variable at the fold, where the smallest gross mass that closes ceases to exist.
 *
 * @equation min over m of (required(m, x) - m) = 0
 * @param options - `requiredMass` (gross mass [kg], value [SI]) to mass [kg] or a record of masses, `from` a gross mass [kg],
 * `value` of the variable at hand [SI], its `name`, its `unit` (text), `direction` `'up'` or `'down'` (found when left out)
 * @returns `value` [SI] and `grossMass` [kg] at the fold, `closes` (`'up to'` or `'from'` that value), `name`, `unit`
 * @throws InvalidInput for arguments that cannot be; NoFold where the design closes, or fails to close, at every value tried
 * (from a hundredth to a thousand times the value)
 * @method Brent's root of Brent's minimum over gross mass; value to about 1e-10, gross mass to about 1e-6 (the minimum is flat).
 * @validity A build-up that is continuous in both arguments. The search ends where `requiredMass` refuses a value as invalid.
 * @source Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973 (from memory); the fold itself is elementary.
 * @example
 * const limit = sizing.fold({
 *   name: 'payload', value: 400 * u.kg, unit: 'kg', from: 1000 * u.kg,
 *   requiredMass: (grossMass, payload) => payload + 0.5 * grossMass + 1e-4 * grossMass ** 2,
 * })
 * limit.value // 625, at a gross mass of 2500
 */
export function fold(options: FoldOptions): Fold {
  const method = 'sizing.fold'
  checkOptions(method, options, known)
  requirePositive(method, 'from', options.from, 'kg')
  requireAlong(method, '', options)
  const found = silently(() => findFold(method, options, options.from))
  if (found !== undefined) return found
  const { name, value, unit } = options
  throw new NoFold({
    method,
    variable: name,
    reason: `there is no fold along ${name} within a hundredth to a thousand times ${writeQuantity(value, unit)}`,
  })
}

/** Checks a variable; `prefix` says where it stands in the caller's options. */
export function requireAlong(method: string, prefix: string, along: Along): void {
  requireText(method, `${prefix}name`, along.name)
  requireFinite(method, `${prefix}value`, along.value, '1')
  if (along.unit !== undefined) requireUnit(method, `${prefix}unit`, along.unit)
  if (typeof along.requiredMass !== 'function')
    throw new InvalidInput({
      method,
      argument: `${prefix}requiredMass`,
      value: describeValue(along.requiredMass),
      accepted: 'a function of gross mass and the variable',
    })
  if (along.direction !== undefined && along.direction !== 'up' && along.direction !== 'down')
    throw new InvalidInput({
      method,
      argument: `${prefix}direction`,
      value: describeValue(along.direction),
      accepted: '"up" or "down"',
    })
}

/** The fold along a variable, or nothing where no sign changes. */
export function findFold(method: string, along: Along, from: number): Fold | undefined {
  const { name, value, unit, requiredMass } = along
  let at = from
  const leastExcess = (x: number): number => {
    const least = leastOverMass((mass) => totalMass(method, requiredMass(mass, x), mass) - mass, at, from)
    at = least.x
    return least.value
  }
  const here = leastExcess(value)
  const bracket = bracketSignChange(leastExcess, value, here, along)
  if (bracket === undefined) return undefined
  const root = brentRoot(leastExcess, bracket.near, bracket.far, bracket.valueNear, bracket.valueFar, 1e-11)
  leastExcess(root.x)
  const closesBelow = here > 0 === bracket.far < bracket.near
  return {
    name,
    value: root.x,
    ...(unit === undefined ? {} : { unit }),
    grossMass: at,
    closes: closesBelow ? 'up to' : 'from',
  }
}

/** Least excess over gross mass, starting from a guess: walks downhill to a bracket, then refines it. */
function leastOverMass(excess: (mass: number) => number, guess: number, from: number): Minimum {
  const ratio = 1.5
  let [a, b, c] = [guess / ratio, guess, guess * ratio]
  let [fa, fb, fc] = [excess(a), excess(b), excess(c)]
  while (fc < fb && c < from * 1e6) {
    ;[a, b, c] = [b, c, c * ratio]
    ;[fa, fb, fc] = [fb, fc, excess(c)]
  }
  while (fa < fb && a > from * 1e-6) {
    ;[a, b, c] = [a / ratio, a, b]
    ;[fa, fb, fc] = [excess(a), fa, fb]
  }
  return brentMinimum(excess, a, c, 1e-8)
}

interface Bracket {
  readonly near: number
  readonly far: number
  readonly valueNear: number
  readonly valueFar: number
}

const upward = [1.01, 1.03, 1.1, 1.2, 1.35, 1.6, 2, 3, 5, 10, 30, 100, 1000]
const downward = [0.99, 0.97, 0.9, 0.8, 0.7, 0.55, 0.4, 0.25, 0.15, 0.1, 0.05, 0.02, 0.01]

/** Steps away from the value at hand until the least excess changes sign. */
function bracketSignChange(
  leastExcess: (x: number) => number,
  value: number,
  here: number,
  along: Along,
): Bracket | undefined {
  if (value === 0) return undefined
  const sides = along.direction === undefined ? (['down', 'up'] as const) : ([along.direction] as const)
  for (const side of sides) {
    // Greater values of a negative variable are those nearer to zero.
    const factors = (side === 'up') === value > 0 ? upward : downward
    let near = value
    let valueNear = here
    for (const factor of factors) {
      const far = value * factor
      const valueFar = orEndOfDomain(() => leastExcess(far))
      if (valueFar === undefined) break
      if (valueFar > 0 !== here > 0) return { near, far, valueNear, valueFar }
      // The wrong way when both sides are open: the excess moves away from zero, so the other side is tried first.
      if (sides.length === 2 && Math.abs(valueFar) > Math.abs(valueNear) * (1 + 1e-9)) break
      near = far
      valueNear = valueFar
    }
  }
  return undefined
}

/** A value that the build-up refuses as impossible (a share above 1) is the end of the search, not a failure of it. */
function orEndOfDomain(evaluate: () => number): number | undefined {
  try {
    return evaluate()
  } catch (error) {
    if (error instanceof InvalidInput) return undefined
    throw error
  }
}
