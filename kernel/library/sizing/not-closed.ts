/**
 * The answer for a design that does not close: data that says why, without the numbers of a design.
 *
 * Whoever reads `grossMass` all the same is told the reason instead of getting nothing: a missing number would go on as NaN. So
 * `const { grossMass } = sizing.close(...)` needs no question first, and a study may ask `closed` and go on.
 */
import { DoesNotClose } from '../errors.js'
import type { Mass } from '../quantity.js'
import type { Deficit } from './deficits.js'
import type { Fold } from './fold.js'

/** Why, as data. */
export interface WhyNotClosed {
  readonly closed: false
  /** Why, as sentences. */
  readonly reason: string
  /** The item that grows fastest with gross mass where the shortfall is least; `total` where there are no items. */
  readonly runsAway: string
  /** Least excess of required over gross mass [kg]; 0 where the masses close and another limit is lacking. */
  readonly shortfall: Mass
  /** Gross mass at which the shortfall is least [kg]. */
  readonly atGrossMass: Mass
  /** The limits there, what lacks most first; empty where none were asked for. */
  readonly deficits: readonly Deficit[]
  /** Times the build-up was evaluated, the search for folds apart. */
  readonly iterations: number
  /** The fold along the first variable that has one. */
  readonly fold?: Fold
  /** One per variable that has one. */
  readonly folds: readonly Fold[]
}

export interface NotClosed extends WhyNotClosed {
  /** There is none: reading it throws `DoesNotClose` with the reason. */
  readonly grossMass: never
  /** There are none: reading them throws `DoesNotClose` with the reason. */
  readonly masses: never
  /** There is none: reading it throws `DoesNotClose` with the reason. */
  readonly growthFactor: never
}

/** One for all answers: it speaks of the answer that it is read from, a copy too. Frozen, since a cell can reach it. */
const failing = {
  enumerable: false,
  get(this: WhyNotClosed): never {
    throw errorFor(this)
  },
}
Object.freeze(failing.get)
const absent: Readonly<Record<Exclude<keyof NotClosed, keyof WhyNotClosed>, PropertyDescriptor>> = {
  grossMass: failing,
  masses: failing,
  growthFactor: failing,
}

/** Gives the answer its traps; they are no fields to list, so the answer is shown, compared and written as what it knows. */
export function notClosed(why: WhyNotClosed): NotClosed {
  return Object.defineProperties(why, absent) as NotClosed
}

function errorFor({ reason, runsAway, shortfall, atGrossMass, fold }: WhyNotClosed): DoesNotClose {
  return new DoesNotClose({
    method: 'sizing.close',
    reason,
    runsAway,
    shortfall,
    atGrossMass,
    ...(fold === undefined ? {} : { limitName: fold.name, limitValue: fold.value, foldGrossMass: fold.grossMass }),
    ...(fold?.unit === undefined ? {} : { limitUnit: fold.unit }),
  })
}
