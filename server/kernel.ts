/** What the server needs of the cell pipeline, handed in so that the application can be tested without building a kernel. */
import type { Eraser, SizingCell } from '../kernel/cells/program/index.js'
import type { CellId, CellResult, Fingerprint, Formula } from '../shared/contracts/index.js'

export interface ServerKernel {
  /** Hash over the kernel that results are keyed by. */
  readonly hash: string
  readonly erase: Eraser
  /** The fingerprint of each cell as it stands. */
  fingerprints(cells: readonly SizingCell[]): Promise<ReadonlyMap<CellId, Fingerprint>>
  /** How the names of each cell are worked out; absent where the sheet shows no hand calculation. */
  readonly formulas?: (cells: readonly SizingCell[]) => Promise<ReadonlyMap<CellId, readonly Formula[]>>
  /** Names of the kernel that the cells use, which a revision records. */
  readonly methods?: (cells: readonly SizingCell[]) => Promise<readonly string[]>
  /** Which cells read a name; absent where the register does not say where an assumption is used. */
  readonly readers?: (cells: readonly SizingCell[]) => Promise<(name: string) => readonly CellId[]>
  /** Evaluates in isolation on this machine; absent where the server does not compute. */
  readonly compute?: (cells: readonly SizingCell[]) => Promise<readonly CellResult[]>
}
