/** One cell of the page: adopts the section that the server drew, replaces only the parts that change, hosts the editor. */
import {
  type CellView,
  lateParts,
  renderCalculation,
  renderCell,
  renderFigures,
  renderFindings,
  renderLines,
  renderNumber,
  renderReference,
  renderResult,
  type SheetContext,
} from '../../shared/rendering/page.js'
import { offerQuestions } from '../asked/foot-questions.js'
import type { CaretPlace, EditingSurface } from '../editor/editing-surface.js'
import { loadLateParts } from './browser-drawing.js'
import { type CellCommands, makeActions, takeTabOrder } from './cell-actions.js'
import { makeGrip } from './drag.js'
import type { DrawingQueue } from './drawing-queue.js'
import { offerDownloads } from './figure-downloads.js'
import { replacePart } from './replace-part.js'
import { changedParts, type PartName } from './sheet-view.js'

export class CellSection {
  readonly element: HTMLElement
  readonly #commands: CellCommands
  readonly #drawings: DrawingQueue
  #view: CellView
  #context: SheetContext
  /** Parts that show an older view and wait for their turn. */
  readonly #late = new Set<PartName>()
  /** The hand calculation is folded and shows older numbers. */
  #linesLate = false
  /** It has its grip and buttons. */
  #furnished = false
  /** Holds the editing surface while the cell is edited. */
  #container: HTMLElement | undefined
  #surface: EditingSurface | undefined

  /**
   * Adopts `drawn` as showing `view`, or draws it when there is none. What a reader does not see at once, grip, buttons and downloads, takes
   * its turn in `furnishings`; a cell that is entered before has it at once.
   */
  constructor(
    view: CellView,
    context: SheetContext,
    drawn: HTMLElement | null,
    commands: CellCommands,
    drawings: DrawingQueue,
    furnishings: DrawingQueue,
  ) {
    this.#view = view
    this.#context = context
    this.#commands = commands
    this.#drawings = drawings
    this.element = drawn ?? renderCell(document, view, context)
    this.element.tabIndex = 0
    this.element.addEventListener('focusin', () => {
      this.#furnish()
      takeTabOrder(this.element, true)
    })
    this.element.addEventListener('focusout', (event) => {
      const next = event.relatedTarget
      if (!(next instanceof Node && this.element.contains(next))) takeTabOrder(this.element, false)
    })
    this.element.addEventListener('pointerenter', () => this.#furnish(), { once: true })
    furnishings.later(this.element, () => this.#furnish())
    this.#noteKept()
    if (drawn === null) this.#whenPartsAreHere()
  }

  get view(): CellView {
    return this.#view
  }

  get editing(): boolean {
    return this.#container !== undefined
  }

  get surface(): EditingSurface | undefined {
    return this.#surface
  }

  /**
   * Shows another view. `inTurn`: the sheet changes in many places, so that a cell nobody works in may wait for its turn; its state then
   * changes with the numbers it is told of.
   */
  update(view: CellView, context: SheetContext, renumbered: boolean, inTurn: boolean): void {
    const parts = changedParts(this.#view, view, renumbered)
    const otherUnits = this.#context.units !== context.units
    this.#view = view
    this.#context = context
    if (parts.includes('calculation')) this.#surface?.setFindings(view.findings)
    if (parts.includes('number')) this.element.setAttribute('aria-label', `Cell ${view.number}`)
    for (const part of parts) this.#late.add(part)
    // A hand calculation also shows numbers of other cells.
    if (otherUnits && !parts.includes('calculation')) this.#late.add('lines')
    if (this.#late.size === 0) return
    if (inTurn && !this.editing && !this.element.contains(document.activeElement)) this.#drawInTurn()
    else this.#drawAtOnce()
  }

  /** Opens or folds the hand calculation; one that was folded while numbers changed is drawn before it is seen. */
  showLines(open: boolean): void {
    const fold = this.#linesFold()
    if (fold === null) return
    if (open && this.#linesLate) this.#replaceLines()
    const now = this.#linesFold()
    if (now !== null && now.open !== open) now.open = open
  }

  /** Opens `open` in place of the drawn text. */
  async edit(
    open: (container: HTMLElement) => EditingSurface | Promise<EditingSurface>,
    caret?: CaretPlace,
  ): Promise<void> {
    if (this.#container !== undefined) {
      this.#surface?.focus(caret)
      return
    }
    const container = document.createElement('div')
    container.className = 'surface'
    this.#container = container
    this.element.dataset.editing = ''
    this.#replaceCalculation()
    const surface = await open(container)
    if (this.#container !== container) {
      surface.dispose()
      return
    }
    this.#surface = surface
    surface.focus(caret)
  }

  endEdit(): void {
    this.#surface?.dispose()
    this.#surface = undefined
    this.#container = undefined
    delete this.element.dataset.editing
    this.#replaceCalculation()
  }

  #furnish(): void {
    if (this.#furnished) return
    this.#furnished = true
    this.element.append(makeGrip(document), makeActions(document, this.#view.id, this.#view.kind, this.#commands))
    const figures = this.element.querySelector(':scope > .figures')
    if (figures !== null) this.#withDownloads(figures)
    this.#offerQuestions()
  }

  #offerQuestions(): void {
    const column = this.element.querySelector(':scope > .result')
    if (column !== null) offerQuestions(column, this.#view)
    if (this.element.contains(document.activeElement)) takeTabOrder(this.element, true)
  }

  /** Draws what is late; figures, which cost most, only in their turn. */
  #drawAtOnce(): void {
    const figures = this.#late.delete('figures')
    this.#drawLate()
    if (figures) this.#drawInTurn('figures')
  }

  #drawInTurn(...parts: readonly PartName[]): void {
    for (const part of parts) this.#late.add(part)
    this.#drawings.later(this.element, () => this.#drawLate())
  }

  #drawLate(): void {
    // The calculation holds its lines.
    if (this.#late.has('calculation')) this.#late.delete('lines')
    const parts = [...this.#late]
    this.#late.clear()
    this.element.dataset.state = this.#view.state
    for (const part of parts) this.#draw(part)
    if (!parts.includes('result')) return
    this.#noteKept()
    if (this.#furnished) this.#offerQuestions()
  }

  #draw(part: PartName): void {
    if (part === 'calculation') {
      this.#replaceCalculation()
      return
    }
    if (part === 'lines') {
      // Nobody reads a folded one, and a long sheet has many.
      this.#linesLate = this.#linesFold()?.open === false
      if (!this.#linesLate) this.#replaceLines()
      return
    }
    if (part === 'figures') {
      this.#replaceFigures()
      return
    }
    const old = this.element.querySelector(`:scope > .${part}`)
    const fresh = {
      number: () => renderNumber(document, this.#view),
      reference: () => renderReference(document, this.#view, this.#context),
      result: () => renderResult(document, this.#view, this.#context),
    }[part]()
    if (old === null) this.element.append(fresh)
    else replacePart(old, fresh)
  }

  #replaceFigures(): void {
    const old = this.element.querySelector(':scope > .figures')
    const fresh = this.#withDownloads(renderFigures(document, this.#view))
    if (old === null) this.element.append(fresh)
    else replacePart(old, fresh)
    this.#whenPartsAreHere()
  }

  /** Figures and prose that were drawn without the large libraries are drawn again with them. */
  #whenPartsAreHere(): void {
    if (lateParts() !== undefined) return
    loadLateParts().then(
      () => this.#drawInTurn('calculation', ...(this.#view.result?.figures.length ? (['figures'] as const) : [])),
      () =>
        this.#commands.say(
          'Figures and formulas cannot be drawn now: what draws them did not load. Load the page again.',
        ),
    )
  }

  #withDownloads<E extends Element>(column: E): E {
    offerDownloads(column, this.#view.result?.figures ?? [], (sentence) => this.#commands.say(sentence))
    return column
  }

  #linesFold(): HTMLDetailsElement | null {
    return this.element.querySelector<HTMLDetailsElement>(':scope > .calculation > .lines-fold')
  }

  #replaceLines(): void {
    this.#linesLate = false
    const old = this.#linesFold()
    const fresh = renderLines(document, this.#view, this.#context)
    if (old !== null && fresh !== null) replacePart(old, withOpen(fresh, old.open))
    else if (fresh !== null) this.element.querySelector(':scope > .calculation')?.append(fresh)
    else old?.remove()
  }

  /** While the editor is open it stands in for the drawn text, with the findings below it. */
  #replaceCalculation(): void {
    this.#linesLate = false
    const linesOpen = this.#linesFold()?.open === true
    const old = this.element.querySelector(':scope > .calculation')
    if (old === null) return
    const container = this.#container
    if (container === undefined) {
      const fresh = renderCalculation(document, this.#view, this.#context)
      const fold = fresh.querySelector<HTMLElement>(':scope > .lines-fold')
      if (fold !== null) withOpen(fold, linesOpen)
      replacePart(old, fresh)
      this.#whenPartsAreHere()
      return
    }
    const findings = renderFindings(document, this.#view)
    const lines = this.#view.kind === 'sizing' ? renderLines(document, this.#view, this.#context) : null
    const after = [...(findings === null ? [] : [findings]), ...(lines === null ? [] : [withOpen(lines, linesOpen)])]
    if (container.parentElement === old) {
      for (const part of old.querySelectorAll(':scope > :is(.findings, .lines-fold)')) part.remove()
      old.append(...after)
      return
    }
    const column = document.createElement('div')
    column.className = 'calculation'
    column.append(container, ...after)
    old.replaceWith(column)
  }

  /** Values under a failure are the last good ones; the sheet says so in words. */
  #noteKept(): void {
    const { state, result } = this.#view
    const kept =
      (state === 'failed' || state === 'held back' || state === 'computing') && (result?.values.length ?? 0) > 0
    this.element.toggleAttribute('data-kept', kept)
    const column = this.element.querySelector(':scope > .result')
    column?.querySelector(':scope > .kept')?.remove()
    if (!kept || column === null) return
    const note = document.createElement('p')
    note.className = 'kept'
    note.textContent = 'Values are the last good ones, out of date.'
    column.append(note)
  }
}

function withOpen<E extends HTMLElement>(fold: E, open: boolean): E {
  fold.toggleAttribute('open', open)
  return fold
}
