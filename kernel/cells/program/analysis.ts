/** What a cell declares and reads, and how the cells depend on each other. */
import type { CellError, CellId, Finding } from '../../../shared/contracts/index.js'

/** A top-level name of a cell. Lines and columns are of the cell's own TypeScript, counted from 1. */
export interface Declaration {
  readonly name: string
  readonly form: 'const' | 'let' | 'function' | 'class'
  readonly line: number
  readonly column: number
  /** Top-level names (of this cell, of other cells, of the kernel) that the value of this one is made from. */
  readonly reads: readonly string[]
}

export interface AnalysedCell {
  readonly id: CellId
  readonly source: string
  /** JavaScript with types erased; absent when the cell cannot be read. */
  readonly code?: string
  /** Source map from `code` back to `source`, version 3 as JSON text. */
  readonly map?: string
  /** Of an unreadable cell: the names it seems to declare, so that what reads them is held back instead of puzzled. */
  readonly declares: readonly Declaration[]
  /** Free names the cell reads: names of other cells and of the kernel. */
  readonly reads: readonly string[]
  /** Names declared as `const x = assumption('x', ...)`. */
  readonly assumptions: readonly string[]
}

export interface Graph {
  /** All sizing cells in page order. */
  readonly cells: readonly AnalysedCell[]
  /** Which cell owns a name; a name that two cells declare has no owner. */
  readonly owner: ReadonlyMap<string, CellId>
  /** Cells whose names a cell reads, directly, in page order; of a name with two owners both. */
  readonly upstream: ReadonlyMap<CellId, readonly CellId[]>
  /** Kernel names that a cell of this notebook owns, so that the kernel's gives way. */
  readonly shadowed: readonly string[]
  /** Syntax and order findings. A cell with an error here does not run, and holds back what reads it. */
  readonly findings: readonly Finding[]
  /** The first error of each cell that does not run. */
  readonly failed: ReadonlyMap<CellId, CellError>
}
