/** What moves a number, as data: from the engine that varies assumptions to whoever draws it. SI throughout; never stored. */
import type { CellId } from './identifiers.js'

/** The number with one assumption at one value, all else as in the document or on trial. */
export interface DriverEnd {
  /** Of the assumption. */
  readonly at: number
  /** Of the number; absent where it does not compute. */
  readonly value?: number
  /** From the base value of the number; absent where it does not compute. */
  readonly change?: number
  /** Why it does not compute. */
  readonly failure?: string
  /** That failed. */
  readonly cell?: CellId
}

/**
 * Where the ends come from: the stated range, the values that a stated distribution exceeds in 95 % and 5 % of cases, or 10 % either
 * way where nothing is stated.
 */
export type EndsFrom = 'range' | 'distribution' | 'ten percent'

/**
 * Why changes must not be scaled or added up. `failure`: an end, or a value close by, does not compute. `bend`: slopes either side of the
 * value differ however small the step, or a step lies close by. `threshold`: it acts in one part of the range only.
 */
export type Unsteadiness = 'failure' | 'bend' | 'threshold'

/** One assumption that moves a number. */
export interface Driver {
  readonly name: string
  /** Unit text that the author wants it shown in. */
  readonly unit?: string
  /** In force: of the document, or on trial. */
  readonly value: number
  readonly from: EndsFrom
  readonly low: DriverEnd
  readonly high: DriverEnd
  /** Change of the number per 1 % of the assumption [%], by central difference; absent where either is 0 or a step fails. */
  readonly elasticity?: number
  readonly smooth: boolean
  /** Present where it is not smooth. */
  readonly unsteady?: Unsteadiness
}

/** Not varied: there is no telling how far, and no step is invented. */
export interface Unvaried {
  readonly name: string
  readonly reason: 'zero without a range' | 'not finite'
}

export interface Drivers {
  readonly target: string
  /** The number as it stands. */
  readonly base: number
  /** The one with the largest change either way first. */
  readonly drivers: readonly Driver[]
  /** Varied, and moved nothing. */
  readonly without: readonly string[]
  readonly unvaried: readonly Unvaried[]
  /** Evaluations. */
  readonly runs: number
  /** Not varied yet, or ended by the person before these were. */
  readonly left: readonly string[]
}

/** The change of the end that moves the number most [SI], without its sign; 0 where no end computes. */
export function largestChange({ low, high }: Driver): number {
  return Math.max(Math.abs(low.change ?? 0), Math.abs(high.change ?? 0))
}
