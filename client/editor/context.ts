/** What the code editor needs of the page around one cell. */
import type * as Y from 'yjs'
import type { CellId } from '../../shared/contracts/index.js'
import type { CaretPlace } from './editing-surface.js'
import type { AskLanguage } from './language/protocol.js'

export interface EditorContext {
  /** Answers about the cells as they are now. */
  readonly ask: AskLanguage
  /** The text of any sizing cell, absent when it was removed. */
  textOf(cell: CellId): Y.Text | undefined
  /** Number in the margin, as messages name a cell to people. */
  numberOf(cell: CellId): string | undefined
  /** Shows another cell and opens it for editing with the caret there. */
  goTo(cell: CellId, caret: CaretPlace): void
}
