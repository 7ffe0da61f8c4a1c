/**
 * What the sheet needs of whatever edits one cell, so that a plain text area and the code editor can stand in for each other.
 * A surface binds itself to the cell's `Y.Text` both ways, keeps caret and selection through other people's edits, makes its own
 * changes in transactions with the origin `ownEdit`, and undoes through the shared manager. The sheet never touches its inside.
 */
import type * as Y from 'yjs'
import type { CellId, Finding, NameDimension } from '../../shared/contracts/index.js'

/** A place in a cell's source, both counted from 1. */
export interface CaretPlace {
  readonly line: number
  readonly column: number
}

export interface SurfaceOptions {
  /** Empty element that the surface fills, and empties again when disposed. It grows with the text; it never scrolls itself. */
  readonly container: HTMLElement
  readonly cell: CellId
  readonly text: Y.Text
  readonly undo: Y.UndoManager
  /** Accessible name: `Cell 3, sizing`. */
  readonly label: string
  /** Where the caret goes; the start when absent. */
  readonly caret?: CaretPlace
  /** A finding is known already. */
  readonly findings?: readonly Finding[]
  /** Dimensions of names are known already. */
  readonly dimensions?: readonly NameDimension[]
  /**
   * The person leaves the cell from the keyboard: to the next or the previous stop on the page, or up to the cell itself
   * (Escape). The sheet moves focus and disposes the surface if it wants to.
   */
  readonly onLeave: (to: 'next' | 'previous' | 'cell') => void
  /** A change was not taken; the sentence says why. */
  readonly onRefused: (sentence: string) => void
}

export interface EditingSurface {
  focus(caret?: CaretPlace): void
  hasFocus(): boolean
  /** Where the caret stands, so that one surface can follow another in the same place. */
  caret(): CaretPlace
  /** This cell's findings as they now stand: syntax, order, type and dimension alike. */
  setFindings(findings: readonly Finding[]): void
  /** Dimensions of all names of the notebook as they now stand. */
  setDimensions(names: readonly NameDimension[]): void
  /** Ends the binding and empties the container. The text is already in the document; nothing is lost. */
  dispose(): void
}

/** Opens a surface. A promise that rejects means that this kind cannot open here; the sheet then uses the plain text area. */
export type OpenSurface = (options: SurfaceOptions) => EditingSurface | Promise<EditingSurface>
