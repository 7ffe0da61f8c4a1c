/** Which cells are being edited: opens them, leaves them, goes from one to another, and turns all of them to text for paper. */
import type * as Y from 'yjs'
import type { CellId, CellKind, NameDimension } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/index.js'
import type { CaretPlace, OpenSurface } from '../editor/editing-surface.js'
import { sourceOf } from '../live/document.js'
import type { NotebookUndo } from '../live/undo.js'
import type { CellSection } from '../sheet/cell-section.js'

export interface CellEditingParts {
  /** Absent before the server has answered. */
  live(): { readonly doc: Y.Doc; readonly undo: NotebookUndo } | undefined
  view(): SheetView
  section(id: CellId): CellSection | undefined
  /** Dimensions of all names, as far as they are known. */
  names(): readonly NameDimension[]
  surfaceFor(kind: CellKind): OpenSurface
  unfold(id: CellId): void
  draw(): void
  /** Aloud and on the page. */
  tell(sentence: string): void
}

export class CellEditing {
  readonly #parts: CellEditingParts

  constructor(parts: CellEditingParts) {
    this.#parts = parts
  }

  /** Opens the editor of a cell, at a place if one is given. */
  open(id: CellId, caret?: CaretPlace): void {
    const section = this.#parts.section(id)
    if (section === undefined) return
    const live = this.#parts.live()
    const text = live === undefined ? undefined : sourceOf(live.doc, id)
    if (live === undefined || text === undefined) {
      this.#parts.tell('The notebook is not connected yet; it can be edited in a moment.')
      return
    }
    const { undo } = live
    undo.stopCapturing()
    this.#endOtherSizing(section)
    const { kind, number, findings } = section.view
    void section.edit(
      (container) =>
        this.#parts.surfaceFor(kind)({
          container,
          cell: id,
          text,
          undo,
          label: `Cell ${number}, ${kind}`,
          findings,
          dimensions: this.#parts.names(),
          ...(caret === undefined ? {} : { caret }),
          onLeave: (to) => this.leave(section, to),
          onRefused: (sentence) => this.#parts.tell(sentence),
        }),
      caret,
    )
  }

  /** Shows a place in another cell and edits there. */
  goTo(id: CellId, caret: CaretPlace): void {
    this.#parts.unfold(id)
    this.open(id, caret)
    this.#parts.section(id)?.element.scrollIntoView({ block: 'nearest' })
  }

  leave(section: CellSection, to: 'next' | 'previous' | 'cell'): void {
    this.#parts.unfold(section.view.id)
    section.endEdit()
    this.#parts.draw()
    const { cells } = this.#parts.view()
    const index = cells.findIndex((cell) => cell.id === section.view.id)
    const target = to === 'cell' ? undefined : cells[index + (to === 'next' ? 1 : -1)]
    const goal = target === undefined ? section : this.#parts.section(target.id)
    goal?.element.focus()
  }

  /** On paper every cell is text, also the one that is being edited. */
  leaveAll(): void {
    for (const section of this.#open()) this.leave(section, 'cell')
  }

  /** Ends all editing, and answers how it is taken up again where it was. */
  suspend(): () => void {
    const open = this.#open().map((section) => ({ id: section.view.id, section, caret: section.surface?.caret() }))
    for (const { section } of open) section.endEdit()
    return () => {
      for (const { id, caret } of open) this.open(id, caret)
    }
  }

  /** Code is edited in one cell at a time; the others show it as text. */
  #endOtherSizing(section: CellSection): void {
    for (const other of this.#open()) {
      if (other === section || other.view.kind !== 'sizing') continue
      this.#parts.unfold(other.view.id)
      other.endEdit()
    }
  }

  #open(): readonly CellSection[] {
    return this.#parts
      .view()
      .cells.map(({ id }) => this.#parts.section(id))
      .filter((section) => section !== undefined)
      .filter(({ editing }) => editing)
  }
}
