/** A program: cells in an order in which each comes after what it reads, ready to run. */
import type { CellError, CellId, Fingerprint } from '../../../shared/contracts/index.js'

export interface RunnableCell {
  readonly id: CellId
  readonly fingerprint: Fingerprint
  /**
   * One parenthesised strict function expression of one argument, a record of the names it reads from other cells; it
   * returns a record of the names it declares. It ends in a `//# sourceURL=cell:ID` comment so that stacks name the cell.
   */
  readonly code: string
  readonly declares: readonly string[]
  /** Names read from other cells, with the cell that owns each. */
  readonly reads: readonly { readonly name: string; readonly from: CellId }[]
  /** Assumptions declared in this cell; an override of one makes this cell and all downstream run anew. */
  readonly assumptions: readonly string[]
}

/** A cell that cannot run because of what it is: unreadable, two owners, a cycle. Whatever reads it is held back. */
export interface FailedCell {
  readonly id: CellId
  readonly fingerprint: Fingerprint
  readonly error: CellError
}

export interface HeldBackCell {
  readonly id: CellId
  readonly fingerprint: Fingerprint
  readonly by: CellId
}

export interface Program {
  /** Hash over the kernel that must run it. */
  readonly kernelHash: string
  /** In evaluation order. */
  readonly cells: readonly RunnableCell[]
  readonly failed: readonly FailedCell[]
  readonly heldBack: readonly HeldBackCell[]
}

/** Trial values and `--set`: SI by name of an assumption. */
export type Overrides = Readonly<Record<string, number>>

/** Which cells the caller wants; what they read runs as well. */
export type Wanted = 'all' | readonly CellId[]
