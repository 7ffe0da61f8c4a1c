/** How sure a number is, as data: from the engine that samples to whoever draws it. SI throughout; never stored. */
import type { Point } from './evidence.js'
import type { CellId } from './identifiers.js'

type Between = readonly [low: number, high: number]

export interface Percentile {
  /** 0.9 for P90: this share of the samples lies at or below the value. */
  readonly share: number
  readonly value: number
  /** Where it lies with 95 %, had the samples been drawn independently. */
  readonly between: Between
}

/** One number over the samples at which it was computed. */
export interface Summary {
  readonly count: number
  readonly mean: number
  readonly deviation: number
  readonly least: number
  readonly greatest: number
  /** P5, P10, P50, P90, P95. */
  readonly percentiles: readonly Percentile[]
  /** Values at the shares 0, 1/100 ... 1: the empirical distribution, thinned. */
  readonly curve: readonly number[]
}

/** The answer after so many samples, those that did not compute counted with them. */
export interface ConvergenceRow {
  readonly count: number
  readonly mean: number
  readonly p10: number
  readonly p50: number
  readonly p90: number
}

export interface Convergence {
  /** Counts double. */
  readonly rows: readonly ConvergenceRow[]
  /** The count at which two doublings in a row had moved nothing to speak of, and nothing did after. */
  readonly settledAt: number | undefined
}

/** Points that did not compute, by reason. */
export interface FailureReason {
  readonly code: string
  /** As the first of them said it. */
  readonly message: string
  readonly cell?: CellId
  readonly count: number
  /** How many of them left the number itself without a value; the others failed beside it. */
  readonly lost: number
  /** The first of them, to be tried. */
  readonly example: Point
}

/** How probable it is that a requirement is met. */
export interface RequirementSpread {
  readonly name: string
  readonly met: number
  /** Samples at which it was computed. */
  readonly computed: number
  /** Samples at which it was not; whether it would be met there nobody knows. */
  readonly failed: number
  /** Of the samples that computed. */
  readonly probability: number
  /** Where that lies with 95 %, had the samples been drawn independently. */
  readonly between: Between
  /** If every failure counts as not met, and if every failure counts as met. */
  readonly bounds: Between
  /** The margin that 90 % of the samples that computed have at least: its P10. */
  readonly marginKept90: number
  readonly marginP50: number
}

/** A bare range: it says how far a value may lie, not how likely any of it is. */
export interface Interval {
  readonly name: string
  readonly low: number
  readonly high: number
}

export interface Spread {
  readonly target: string
  readonly seed: number
  /** Samples asked for at most. */
  readonly asked: number
  /** Samples evaluated. */
  readonly done: number
  readonly sampled: readonly string[]
  /** Held at the document's value although they have a range. */
  readonly intervals: readonly Interval[]
  readonly correlated: boolean
  /** Absent where nothing computed. */
  readonly summary: Summary | undefined
  readonly requirements: readonly RequirementSpread[]
  /** Most frequent first. */
  readonly failures: readonly FailureReason[]
  readonly convergence: Convergence
  /** Ended before its count by the person. */
  readonly stopped: boolean
}

/** A share of the variance with its 95 % interval. */
export interface Estimate {
  readonly value: number
  readonly low: number
  readonly high: number
}

export interface Share {
  readonly name: string
  /** Share of the variance that would go if this alone were known (first order); independent assumptions only. */
  readonly alone?: Estimate
  /** Share that would stay if all else were known (total); independent assumptions only. */
  readonly withOthers?: Estimate
  /** Share when what several have in common is divided fairly (Shapley effect); correlated assumptions only. */
  readonly fair?: Estimate
}

export interface Shares {
  readonly target: string
  readonly method: 'Sobol indices' | 'Shapley effects'
  /** Largest first. */
  readonly shares: readonly Share[]
  /** Rows of the design that were evaluated. */
  readonly rows: number
  /** Evaluations beyond those of the spread. */
  readonly runs: number
  /** Evaluations that gave no number: the estimates rest on the others. */
  readonly missing: number
  /** Every interval is as narrow as was asked for. */
  readonly settled: boolean
  readonly stopped: boolean
}

/** A spread with bare ranges at given ends. */
export interface SpreadAtEnds {
  readonly ends: Point
  readonly summary: Summary | undefined
  readonly requirements: readonly RequirementSpread[]
  readonly failed: number
}

export interface EndValues extends Interval {
  /** The number at either end, all else as in the document; absent where it does not compute. */
  readonly atLow: number | undefined
  readonly atHigh: number | undefined
}

export interface IntervalEffect extends EndValues {
  /** The spread at either end, for those that move the number most. */
  readonly spreads?: { readonly low: SpreadAtEnds; readonly high: SpreadAtEnds }
}

/** What bare ranges do to a number. */
export interface Envelope {
  readonly target: string
  /** The number with everything as in the document. */
  readonly nominal: number | undefined
  /** Samples behind each spread. */
  readonly count: number
  /** Those that move the number most first; one that fails at an end before all. */
  readonly effects: readonly IntervalEffect[]
  /** All ranges as in the document, at the ends that lower the number, at those that raise it. */
  readonly held: SpreadAtEnds | undefined
  readonly lowest: SpreadAtEnds | undefined
  readonly highest: SpreadAtEnds | undefined
  /** For each requirement, all ranges at the ends that take most from its margin. */
  readonly worst: readonly { readonly requirement: string; readonly probability: number; readonly ends: Point }[]
  readonly runs: number
  readonly stopped: boolean
}

/** A percentile of a summary by its share: 0.9 for P90. */
export function percentileOf({ percentiles }: Summary, share: 0.05 | 0.1 | 0.5 | 0.9 | 0.95): number {
  return percentiles.find((one) => one.share === share)?.value ?? Number.NaN
}

/** The estimate that shares are ranked and judged by: the total one, or the fair one. */
export function headlineShare({ withOthers, fair }: Share): Estimate {
  return withOthers ?? fair ?? { value: 0, low: 0, high: 0 }
}
