/** Closing the sizing loop: the gross mass at which the build-up asks for exactly what it is given. */
import { requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Mass, Ratio } from '../quantity.js'
import { advise, silently } from '../recorder.js'
import { requireFunction } from '../shapes.js'
import { fastestItem, type MassItems, totalMass } from './build-up.js'
import { type Deficit, type Deficits, lacksAny, readDeficits } from './deficits.js'
import { type Along, type Fold, findFold, knownAlong, requireAlong } from './fold.js'
import { type NotClosed, notClosed, type WhyNotClosed } from './not-closed.js'
import { explain, explainDeficits } from './reason.js'
import { type SmallestRoot, smallestRoot } from './smallest-root.js'

export interface CloseOptions<Answer extends Mass | MassItems> {
  /** The build-up: mass [kg], or masses by item [kg], that an aircraft of the given gross mass [kg] needs. */
  readonly requiredMass: (grossMass: Mass) => Answer
  /** A gross mass to start from [kg]; any positive one will do, one below the answer is quickest. */
  readonly from: Mass
  /** Relative, 1e-12 when left out. */
  readonly tolerance?: Ratio
  /** Variables along which the fold is sought when it does not close. */
  readonly along?: Along | readonly Along[]
  /** What the aircraft of a gross mass lacks besides mass, by limit: pack power, motor torque, span. Signed: positive is lacking. */
  readonly deficits?: (grossMass: Mass) => Deficits
}

/** Masses by item where the build-up gives items; absent where it gives one mass. */
export type ClosedMasses<Answer> = Answer extends number ? undefined : { readonly [Item in keyof Answer]: Mass }

export interface Closed<Answer extends Mass | MassItems = Mass | MassItems> {
  readonly closed: true
  /** [kg] */
  readonly grossMass: Mass
  /** Times the build-up was evaluated on the way. */
  readonly iterations: number
  /** The build-up at the gross mass [kg]. */
  readonly masses: ClosedMasses<Answer>
  /** Gross mass gained per fixed mass added, 1/(1 - d required/d gross); without bound towards the fold, given as 1e9 at most. */
  readonly growthFactor: Ratio
  /** The limits at the gross mass, none of them lacking, the tightest first; empty where none were asked for. */
  readonly deficits: readonly Deficit[]
}

/** What `sizing.close` answers; `closed` tells which of the two it is. */
export type Closure<Answer extends Mass | MassItems = Mass | MassItems> = Closed<Answer> | NotClosed

const method = 'sizing.close'
const known = new Set(['requiredMass', 'from', 'tolerance', 'along', 'deficits'])

/**
 * Gross mass at which the build-up asks for exactly what it is given; the smaller one where two do.
 *
 * @equation m = required(m), smallest m > 0
 * @param options - `requiredMass` (gross mass [kg]) to mass [kg] or a record of masses by item [kg], `from` a gross mass [kg] to
 * start from, `tolerance` relative (1e-12), `along` a variable or a list of them for the fold: `{ name, value [SI], unit, requiredMass: (grossMass, value) => ... }`, `deficits` (gross
 * mass [kg]) to a record by limit of what is lacking: a number [SI] or `{ lacking [SI], of [SI], unit }`, negative where there is room
 * @returns `closed` true, `grossMass` [kg], `iterations`, `masses` [kg] by item, `growthFactor`, `deficits`; or `closed` false with the `reason` (masses that never meet, or a limit that lacks
 * at the mass where they do), `runsAway`, `shortfall` [kg], `atGrossMass` [kg], `deficits`, `iterations`, and `fold` and `folds` where `along` is given
 * @throws DoesNotClose with the reason, where `grossMass`, `masses` or `growthFactor` of a design that does not close is read: ask `closed` first where there is another way on. InvalidInput
 * for a build-up that gives something else than masses, naming the gross mass at which it did
 * @method Secant steps from the light side, which for a convex build-up cannot pass the first root; Brent's bracketed root and
 * minimum behind them. Relative accuracy 1e-12, near a fold limited by rounding to the square root of 1e-15 over the distance from it.
 * Runs silent; the accepted point is evaluated once more, with its advisories.
 * @validity A build-up that does not fall as gross mass rises. Where it is not convex, lighter masses are searched on a grid of
 * 25 % steps with every dip refined; two roots that make no dip on that grid may be missed.
 * @source Fixed-point sizing: Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on initial sizing (from memory). Numerics: Brent,
 * R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973 (from memory).
 * @example
 * const sized = sizing.close({
 *   from: 500 * u.kg,
 *   requiredMass: (grossMass) => ({ payload: 400 * u.kg, structure: 0.32 * grossMass, battery: 0.28 * grossMass }),
 * })
 * sized.grossMass // 1000
 * const heavy = sizing.close({ from: 500 * u.kg, requiredMass: (grossMass) => 400 * u.kg + 1.1 * grossMass })
 * heavy.closed ? 'it closes' : heavy.runsAway // 'total'
 */
export function close<Answer extends Mass | MassItems>(options: CloseOptions<Answer>): Closure<Answer> {
  const { requiredMass, from, tolerance, alongs, deficits } = readOptions(options)
  const excess = (mass: number): number => totalMass(method, requiredMass(mass), mass) - mass
  const root = silently(() => smallestRoot(excess, from, tolerance))
  const limits = deficits === undefined ? [] : readDeficits(method, deficits(root.mass), root.mass)
  if (root.found && !lacksAny(limits)) return accept(requiredMass, excess, root, limits)
  return notClosed(root.found ? lack(root, limits) : silently(() => giveUp(requiredMass, root, alongs, limits)))
}

function readOptions<Answer extends Mass | MassItems>(options: CloseOptions<Answer>) {
  checkOptions(method, options, known)
  const { requiredMass, from, tolerance = 1e-12, along } = options
  if (typeof requiredMass !== 'function')
    throw new InvalidInput({
      method,
      argument: 'requiredMass',
      value: describeValue(requiredMass),
      accepted: 'a function that gives the required mass at a gross mass',
    })
  if (options.deficits !== undefined)
    requireFunction(method, 'deficits', options.deficits, 'a function that gives what is lacking at a gross mass')
  requirePositive(method, 'from', from, 'kg')
  requireWithin(method, 'tolerance', tolerance, '1', 1e-15, 0.1)
  const alongs: readonly Along[] = along === undefined ? [] : isList(along) ? along : [along]
  for (const one of alongs) {
    checkOptions(method, one, knownAlong)
    requireAlong(method, 'along.', one)
  }
  return { requiredMass, from, tolerance, alongs, deficits: options.deficits }
}

function isList(along: Along | readonly Along[]): along is readonly Along[] {
  return Array.isArray(along)
}

/** Evaluates the accepted point aloud, so that its advisories reach the reader. */
function accept<Answer extends Mass | MassItems>(
  requiredMass: (grossMass: Mass) => Answer,
  excess: (mass: number) => number,
  root: SmallestRoot & { found: true },
  deficits: readonly Deficit[],
): Closed<Answer> {
  const grossMass = root.mass
  const step = 1e-5 * grossMass
  const slope = silently(() => (excess(grossMass + step) - excess(grossMass - step)) / (2 * step))
  const answer = requiredMass(grossMass)
  totalMass(method, answer, grossMass)
  adviseNegative(answer)
  // The record is the build-up's own, fresh from this call: a frozen copy cost a fifth of a closure.
  const masses = (typeof answer === 'number' ? undefined : answer) as ClosedMasses<Answer>
  return {
    closed: true,
    grossMass,
    iterations: root.steps,
    masses,
    growthFactor: slope < -1e-9 ? -1 / slope : 1e9,
    deficits,
  }
}

function adviseNegative(answer: Mass | MassItems): void {
  if (typeof answer === 'number') return
  for (const item in answer) {
    const mass = answer[item] ?? 0
    if (mass < 0)
      advise({
        code: 'NEGATIVE_MASS',
        method,
        quantity: item,
        value: mass,
        range: [0, null],
        message: `${item} has a negative mass of ${mass.toPrecision(4)} kg in the closed design.`,
      })
  }
}

/** The masses meet, but the aircraft at that mass lacks something else. */
function lack(root: SmallestRoot & { found: true }, deficits: readonly Deficit[]): WhyNotClosed {
  return {
    closed: false,
    reason: explainDeficits(root.mass, deficits),
    runsAway: deficits[0]?.limit ?? '',
    shortfall: 0,
    atGrossMass: root.mass,
    deficits,
    iterations: root.steps,
    folds: [],
  }
}

function giveUp(
  requiredMass: (grossMass: Mass) => Mass | MassItems,
  root: SmallestRoot & { found: false },
  alongs: readonly Along[],
  deficits: readonly Deficit[],
): WhyNotClosed {
  const fastest = fastestItem(requiredMass, root.mass)
  const folds: Fold[] = []
  for (const along of alongs) {
    const found = findFold(method, along, root.mass)
    if (found !== undefined) folds.push(found)
  }
  const [first] = folds
  return {
    closed: false,
    reason: explain(root, fastest, alongs, folds),
    runsAway: fastest.item,
    shortfall: root.excess,
    atGrossMass: root.mass,
    deficits,
    iterations: root.steps,
    ...(first === undefined ? {} : { fold: first }),
    folds,
  }
}
