/** What a person can do with cells: each is one step of undo, and each says aloud what became of it. */
import type * as Y from 'yjs'
import { type CellId, type CellKind, type KeyCommand, limits } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/index.js'
import type { CaretPlace } from '../editor/editing-surface.js'
import {
  addCell,
  changeKind,
  duplicateCell,
  joinSeam,
  joinWithNext,
  moveCellTo,
  removeCell,
  renumber,
  splitCell,
} from '../live/cell-operations.js'
import { divide } from '../live/divide.js'
import { snapshotOf, sourceOf, tooLong } from '../live/document.js'
import type { NotebookUndo } from '../live/undo.js'
import { placeOfOffset } from '../sheet/caret-place.js'
import type { CellCommands } from '../sheet/cell-actions.js'
import type { CellSection } from '../sheet/cell-section.js'

/** What the commands need of the open notebook. */
export interface SheetAtHand {
  /** Absent until the live document has answered. */
  live(): { readonly doc: Y.Doc; readonly undo: NotebookUndo } | undefined
  view(): SheetView
  section(id: CellId): CellSection | undefined
  /** Draws now, so that what was changed can take the focus. */
  draw(): void
  edit(id: CellId, caret?: CaretPlace): void
  unfold(id: CellId): void
  /** Opens or folds a cell on the page; false when it has nothing to fold. */
  fold(section: HTMLElement, open: boolean): boolean
  /** Aloud. */
  say(sentence: string): void
  /** Aloud, and in a note on the page. */
  tell(sentence: string): void
}

type Live = NonNullable<ReturnType<SheetAtHand['live']>>

export class NotebookCommands implements CellCommands {
  readonly #sheet: SheetAtHand

  constructor(sheet: SheetAtHand) {
    this.#sheet = sheet
  }

  edit(id: CellId): void {
    this.#sheet.edit(id)
  }

  say(sentence: string): void {
    this.#sheet.say(sentence)
  }

  #tell(sentence: string): void {
    this.#sheet.tell(sentence)
  }

  add(kind: CellKind, beside: CellId | null, where: 'above' | 'below'): void {
    this.#withLive((live) => {
      if (!this.#hasRoom(live.doc)) return
      const cells = snapshotOf(live.doc).cells
      const index = cells.findIndex((cell) => cell.id === beside)
      const above = cells[where === 'above' ? index - 1 : index]?.id ?? null
      const id = live.undo.step(
        'adding a cell',
        () => addCell(live.doc, kind, above),
        (id) => ({ id, text: '' }),
      )
      this.#showOpen(id)
      this.#sheet.edit(id)
      this.say(`Cell ${this.#number(id)} added.`)
    })
  }

  move(id: CellId, by: -1 | 1): void {
    const from = this.#sheet.view().cells.findIndex((cell) => cell.id === id)
    const to = from + by
    if (to < 0 || to >= this.#sheet.view().cells.length)
      this.#tell(by < 0 ? 'This is the first cell already.' : 'This is the last cell already.')
    else this.moveTo(id, to)
  }

  moveTo(id: CellId, place: number): void {
    this.#withLive((live) => {
      const number = this.#number(id)
      if (!live.undo.step(`moving cell ${number}`, () => moveCellTo(live.doc, id, place))) return
      this.#show(id)
      const above = this.#sheet.view().cells[place - 1]
      this.say(`Cell ${number} is now ${above === undefined ? 'the first' : `below cell ${above.number}`}.`)
    })
  }

  duplicate(id: CellId): void {
    this.#withLive((live) => {
      if (!this.#hasRoom(live.doc)) return
      const text = sourceOf(live.doc, id)?.toString() ?? ''
      const number = this.#number(id)
      const copy = live.undo.step(
        `duplicating cell ${number}`,
        () => duplicateCell(live.doc, id),
        (copy) => (copy === null ? undefined : { id: copy, text }),
      )
      if (copy === null) return
      this.#showOpen(copy)
      this.#focus(copy)
      this.say(`Cell ${this.#number(copy)} is a copy of cell ${number}.`)
    })
  }

  split(id: CellId): void {
    this.#withLive((live) => {
      const section = this.#sheet.section(id)
      const caret = section?.surface?.caret()
      const source = sourceOf(live.doc, id)?.toString()
      if (section === undefined || source === undefined || caret === undefined)
        return this.#tell('Edit the cell first, and put the caret where the lower cell should begin.')
      if (!this.#hasRoom(live.doc)) return
      const division = divide(source, section.view.kind, caret)
      if (!division.ok) return this.#tell(division.message)
      const number = this.#number(id)
      const lower = live.undo.step(`splitting cell ${number}`, () =>
        splitCell(live.doc, id, division.upperEnd, division.lowerStart),
      )
      if (lower === null) return
      this.#sheet.unfold(id)
      this.#showOpen(lower)
      const { part, ...place } = division.caret
      this.#sheet.edit(part === 'upper' ? id : lower, place)
      this.say(`Cell ${number} is split; what was below is cell ${this.#number(lower)}.`)
    })
  }

  joinWithNext(id: CellId): void {
    this.#withLive((live) => {
      const { cells } = this.#sheet.view()
      const index = cells.findIndex((cell) => cell.id === id)
      const [cell, next] = [cells[index], cells[index + 1]]
      if (cell === undefined || next === undefined) return this.#tell('There is no cell below to join with.')
      if (cell.kind !== next.kind)
        return this.#tell(
          `Cell ${cell.number} is ${cell.kind} and cell ${next.number} is ${next.kind}; only cells of one kind can be joined.`,
        )
      const refusal = tooLong(
        cell.source + joinSeam(cell.source, next.source) + next.source,
        limits.sourceCharacters - 1,
      )
      if (refusal !== null) return this.#tell(refusal)
      const section = this.#sheet.section(id)
      const nextSection = this.#sheet.section(next.id)
      const wasEditing = section?.editing === true || nextSection?.editing === true
      const caret = section?.surface?.caret()
      const joined = live.undo.step(`joining cells ${cell.number} and ${next.number}`, () => joinWithNext(live.doc, id))
      if (joined === null) return
      this.#showOpen(id)
      const seam = placeOfOffset(sourceOf(live.doc, id)?.toString() ?? '', joined.at)
      if (wasEditing) this.#sheet.edit(id, caret ?? seam)
      else this.#focus(id)
      this.say(`Cell ${next.number} is now the end of cell ${cell.number}.`)
    })
  }

  changeKind(id: CellId): void {
    this.#withLive((live) => {
      const view = this.#sheet.section(id)?.view
      if (view === undefined) return
      const kind = view.kind === 'rationale' ? 'sizing' : 'rationale'
      const wasEditing = this.#sheet.section(id)?.editing === true
      live.undo.step(`changing the kind of cell ${view.number}`, () => changeKind(live.doc, id, kind))
      this.#showOpen(id)
      if (!wasEditing) this.#focus(id)
      this.say(`Cell ${view.number} is ${kind} now.`)
    })
  }

  remove(id: CellId): void {
    this.#withLive((live) => {
      const { cells } = this.#sheet.view()
      const index = cells.findIndex((cell) => cell.id === id)
      const next = cells[index + 1] ?? cells[index - 1]
      const number = cells[index]?.number
      live.undo.step(`removing cell ${number}`, () => removeCell(live.doc, id))
      this.#sheet.draw()
      if (next !== undefined) this.#focus(next.id)
      this.#tell(`Cell ${number} removed; Undo brings it back.`)
    })
  }

  renumber(): void {
    this.#withLive((live) => {
      const changed = live.undo.step('renumbering', () => renumber(live.doc))
      this.#sheet.draw()
      const count = this.#sheet.view().cells.length
      this.say(changed ? `Cells are numbered 1 to ${count}.` : 'The numbers are in order already.')
    })
  }

  /** What a key on a cell, or while writing in it, stands for; false when it is not for the cell. */
  obey(command: KeyCommand, id: CellId): boolean {
    const section = this.#sheet.section(id)
    if (section === undefined) return false
    if (command === 'open' || command === 'fold') return this.#sheet.fold(section.element, command === 'open')
    const { kind } = section.view
    const acts: Partial<Record<KeyCommand, () => void>> = {
      edit: () => this.edit(id),
      'add below': () => this.add(kind, id, 'below'),
      'add above': () => this.add(kind, id, 'above'),
      'move up': () => this.move(id, -1),
      'move down': () => this.move(id, 1),
      remove: () => this.remove(id),
      split: () => this.split(id),
      join: () => this.joinWithNext(id),
    }
    acts[command]?.()
    return acts[command] !== undefined
  }

  #withLive(act: (live: Live) => void): void {
    const live = this.#sheet.live()
    if (live === undefined) this.#tell('The notebook is not connected yet; it can be edited in a moment.')
    else act(live)
  }

  #hasRoom(doc: Y.Doc): boolean {
    if (snapshotOf(doc).cells.length < limits.cells) return true
    this.#tell(`A notebook holds at most ${limits.cells} cells; remove one before adding another.`)
    return false
  }

  #number(id: CellId): string {
    return this.#sheet.section(id)?.view.number ?? ''
  }

  #showOpen(id: CellId): void {
    this.#sheet.unfold(id)
    this.#show(id)
  }

  #show(id: CellId): void {
    this.#sheet.draw()
    this.#sheet.section(id)?.element.scrollIntoView({ block: 'nearest' })
  }

  #focus(id: CellId): void {
    this.#sheet.section(id)?.element.focus({ preventScroll: true })
  }
}
