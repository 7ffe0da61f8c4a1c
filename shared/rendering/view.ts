/** What the renderer is given: plain data gathered by the page, the server, an export or the command. */
import type {
  CellId,
  CellKind,
  CellResult,
  Finding,
  Formula,
  NamedValue,
  ResultValue,
  TitleBlock,
} from '../contracts/index.js'
import type { UnitSystem } from './quantity/index.js'
import type { RevisionStanding } from './revisions/standing.js'

/** States in words, never by colour alone. `not computed here`: results came with an import and were not evaluated. */
export type CellState = 'current' | 'out of date' | 'computing' | 'failed' | 'held back' | 'not computed'

export interface CellView {
  readonly id: CellId
  readonly kind: CellKind
  /** Number in the margin: 1, 2, 3, 3a. */
  readonly number: string
  readonly source: string
  readonly state: CellState
  /** The last good values when the state is `out of date` or `computing`. */
  readonly result?: CellResult
  readonly findings: readonly Finding[]
  /** Sizing cells are folded to their heading for readers. */
  readonly folded: boolean
  /** Number of this cell's first figure in the sheet; figures are numbered through the sheet. */
  readonly firstFigure: number
  /** How its names are worked out, of the text shown; absent where the cell could not be read. */
  readonly formulas?: readonly Formula[]
  /** The result is that of a trial, not the document's. */
  readonly trial?: TrialMarks
}

/** What of a result differs from the document's own. */
export interface TrialMarks {
  /** By name, with what the document says where that is known. */
  readonly values: readonly { readonly name: string; readonly said?: ResultValue }[]
  /** By name. */
  readonly requirements: readonly string[]
  readonly figures: boolean
}

export interface SheetView {
  readonly id: string
  readonly title: string
  readonly titleBlock: TitleBlock
  readonly cells: readonly CellView[]
  /** How it stands to the latest revision; absent where none was issued. */
  readonly revision?: RevisionStanding
  /** In words, of what is shown: `4c1f 90ae`; absent while it is not known. */
  readonly fingerprint?: string
  /** The system that its units were put into; absent where they are as written. */
  readonly units?: UnitSystem
}

/** What a cell needs to know of the sheet around it: the number of another cell that a message names. */
export interface SheetContext {
  numberOf(id: CellId): string | undefined
  /** A name of any cell of the sheet, as far as there is a result with it. */
  known(name: string): KnownName | undefined
  /** As in the view. */
  readonly units?: UnitSystem
}

export interface KnownName {
  readonly value: NamedValue
  /** Of the cell that declares it. */
  readonly state: CellState
  /** A trial value is in force in place of the document's. */
  readonly trial: boolean
}
