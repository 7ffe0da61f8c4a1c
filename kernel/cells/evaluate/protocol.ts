/**
 * What crosses the wall, in both directions: text, never an object.
 *
 * Into the isolation go two messages, as JSON: `ProgramMessage` once per program, then a `RunMessage` per evaluation.
 * Out of it come lines, in this order for each needed cell:
 *
 *     begin ID            the cell starts (not sent for a cell that is remembered)
 *     result BODY         it finished: a `CellResult` as JSON without `cell` and `fingerprint`, which the outside adds itself
 *     kept BODY           the same for a remembered cell
 *     held ID BY          it does not run because BY, somewhere above it, failed
 *     end                 the run is over
 *
 * A `NumbersMessage` is answered by one line for each of its points, and `end`:
 *
 *     numbers BODY        `NumbersBody` of the contracts, as JSON
 *
 * A program message is answered by `loaded`, and a message the sandbox cannot make sense of by `fault`.
 *
 * The outside knows which cell must come next, so a line can only speak about the cell whose turn it is.
 *
 * Lines are *pulled*: the code around the sandbox calls `step` until it gives `end`. So no function of the outside ever
 * enters. Between two lines the sandbox may ask with `compile CODE` for a text to be turned into a function; the caller
 * compiles it in the sandbox's own realm and passes the function in with the next step.
 */
import type { CellId } from '../../../shared/contracts/index.js'
import type { Overrides, RunnableCell } from '../program/index.js'

export interface ProgramMessage {
  readonly type: 'program'
  readonly cells: readonly RunnableCell[]
}

export interface RunMessage {
  readonly type: 'run'
  /** Cells to finish, in evaluation order, with everything upstream of them that is not blocked. */
  readonly needed: readonly CellId[]
  /** Cells that ended an earlier attempt (time, memory): whatever reads them is held back. */
  readonly blocked: readonly CellId[]
  readonly overrides: Overrides
}

/** Many points at once, of which only numbers are wanted. */
export interface NumbersMessage {
  readonly type: 'numbers'
  /** Cells to run, in evaluation order. */
  readonly needed: readonly CellId[]
  readonly names: readonly { readonly name: string; readonly cell: CellId }[]
  /** Cells whose requirements are wanted. */
  readonly requirements: readonly CellId[]
  readonly points: readonly Overrides[]
}

export type MessageIn = ProgramMessage | RunMessage | NumbersMessage

/**
 * The one entry of the sandbox. Called with a message it starts on it; called with `undefined` it goes on. `compiled` answers a
 * `compile` line. Never throws; always gives a primitive string.
 */
export type Step = (message: string | undefined, compiled?: unknown) => string

/** Sizes that inside and outside agree on. */
export const bounds = {
  /** Items of a list and entries of a record that a result shows. */
  items: 100,
  /** Nesting that a result shows. */
  depth: 4,
  /** A text result by itself; inside lists and records it is cut to `nestedText`. */
  text: 20_000,
  nestedText: 400,
  figures: 100,
  /** Points of one series; the contract of figures says the same. */
  series: 20_000,
  logLines: 1000,
  logLineCharacters: 2000,
  logCharacters: 200_000,
  /** Objects and list items that may cross from one cell to others in one cell's names. */
  crossing: 4_000_000,
  /** Memory of remembered cells, in crossing items (about 8 bytes each). */
  remembered: 4_000_000,
  rememberedCells: 4000,
  message: 2000,
  /** Points of one message, and requirements of one point. */
  points: 64,
  requirements: 1000,
} as const
