/** What trace, drivers and spread ask of an evaluation: numbers alone, at many points, quickly. Never stored. */
import type { CellId } from './identifiers.js'

/** Values of assumptions that differ from those in the document, by name; SI. */
export type Point = Readonly<Record<string, number>>

/** A requirement at one point; SI. Its bound may move with the assumptions, so the margin decides: met when it is 0 or more. */
export interface RequirementNumbers {
  readonly actual: number
  readonly margin: number
}

/** Named numbers and requirements at one point; SI. */
export interface Numbers {
  readonly numbers: Readonly<Record<string, number>>
  readonly requirements: Readonly<Record<string, RequirementNumbers>>
}

/** What the margin of a requirement is called wherever a number has a name: no name of a cell has spaces in it. */
export function marginName(requirement: string): string {
  return `${marginOf}${requirement}`
}

/** The requirement whose margin is called so; undefined for any other name. */
export function requirementOf(name: string): string | undefined {
  return name.startsWith(marginOf) ? name.slice(marginOf.length) : undefined
}

const marginOf = 'margin of '

/**
 * One point evaluated. A point at which a wanted cell failed says why, and still has whatever was computed beside the
 * failure: a number that does not depend on it is as good as any.
 */
export type NumbersOutcome =
  | ({ readonly ok: true } & Numbers)
  | ({ readonly ok: false; readonly code: string; readonly message: string; readonly cell?: CellId } & Numbers)

/** Outcomes in the order of the points; fewer than points when it was stopped. */
export type EvaluateMany<Signal> = (points: readonly Point[], signal?: Signal) => Promise<readonly NumbersOutcome[]>
