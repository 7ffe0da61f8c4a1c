/**
 * Where advisories, assumptions, requirements and results go while a cell runs.
 *
 * The evaluator sets a recorder before each cell and takes it away after; without one the kernel works the same and says
 * nothing. Solvers run silent and then replay the accepted point, so that a reader sees what holds at the answer and not what
 * held at the guesses on the way there. This is the kernel's only state, and it never changes a number except that an
 * assumption's value in force is asked for here.
 */
import type { Advisory, Distribution } from '../../shared/contracts/results.js'

/** An assumption as its author stated it; values in SI. */
export interface AssumptionStatement {
  readonly name: string
  readonly value: number
  readonly unit?: string
  readonly low?: number
  readonly high?: number
  readonly distribution?: Distribution
  /** Rank correlation by name of the other assumption. */
  readonly correlated?: Readonly<Record<string, number>>
  readonly source?: string
  readonly note?: string
  readonly owner?: string
  /** TeX. */
  readonly symbol?: string
  readonly label?: string
}

/** A requirement with its margin; values in SI. */
export interface RequirementStatement {
  readonly name: string
  readonly actual: number
  readonly atLeast?: number
  readonly atMost?: number
  /** Signed distance to the nearest bound, positive when met. */
  readonly margin: number
  readonly met: boolean
  readonly unit?: string
  readonly source?: string
  readonly paragraph?: string
  readonly means?: string
  readonly owner?: string
}

/** A number stated for the Result column, or the records of a table; SI. */
export interface ResultStatement {
  readonly name: string
  readonly value: number | readonly object[]
  readonly unit?: string
  /** Of a table: unit texts by field. */
  readonly units?: Readonly<Record<string, string>>
  /** TeX. */
  readonly symbol?: string
  readonly label?: string
}

export interface Recorder {
  advisory(advisory: Advisory): void
  /** Records the assumption and returns the value in force: the trial value if there is one. Asked in silence too, so it is idempotent by name. */
  assumption(statement: AssumptionStatement): number
  requirement(statement: RequirementStatement): void
  result(statement: ResultStatement): void
}

let current: Recorder | undefined
let silent = 0

/** Sets the recorder of the cell about to run, or none; returns the one before, to be put back. */
export function setRecorder(recorder: Recorder | undefined): Recorder | undefined {
  const previous = current
  current = recorder
  silent = 0
  return previous
}

/** True when someone listens: lets a method skip building an advisory in a solver's inner loop. */
export function isListening(): boolean {
  return current !== undefined && silent === 0
}

/** Records an advisory, unless a solver is on its way to an answer. */
export function advise(advisory: Advisory): void {
  if (isListening()) current?.advisory(advisory)
}

/** The value in force of an assumption. */
export function assume(statement: AssumptionStatement): number {
  return current === undefined ? statement.value : current.assumption(statement)
}

export function recordRequirement(statement: RequirementStatement): void {
  if (isListening()) current?.requirement(statement)
}

export function recordResult(statement: ResultStatement): void {
  if (isListening()) current?.result(statement)
}

/** Runs a search without recording what it passes through. */
export function silently<T>(search: () => T): T {
  silent += 1
  try {
    return search()
  } finally {
    // A cell may set another recorder inside (never in practice); the count then starts anew and must not go below zero.
    if (silent > 0) silent -= 1
  }
}
