/** The sheet on the page: takes over what the server drew, and keeps it in step with one view after another. */
import type { CellId, Figure } from '../../shared/contracts/index.js'
import {
  type CellView,
  renderColumnHeads,
  renderNoCells,
  renderTitleBlock,
  type SheetContext,
  type SheetView,
  sheetContext,
} from '../../shared/rendering/page.js'
import { openDrawingQueue } from './browser-drawing.js'
import type { CellCommands } from './cell-actions.js'
import { CellSection } from './cell-section.js'
import { listenToDrags } from './drag.js'
import type { DrawingQueue } from './drawing-queue.js'
import { readFigures } from './figure-reader.js'
import { OpenLines } from './open-lines.js'

/** Cells may be drawn at once for so long [ms]; a change that reaches more of them is drawn in turns, what is seen first. */
const share = 16

export class Sheet {
  readonly #main: HTMLElement
  readonly #rows: HTMLElement
  readonly #commands: CellCommands
  readonly #sections = new Map<CellId, CellSection>()
  readonly #drawings: DrawingQueue
  readonly #furnishings: DrawingQueue
  #numbers = ''

  /** `view` is what the server drew into `main`. */
  constructor(main: HTMLElement, view: SheetView, commands: CellCommands) {
    const rows = main.querySelector<HTMLElement>('.cells')
    if (rows === null) throw new Error('The page holds no sheet to take over; load it again.')
    this.#main = main
    this.#rows = rows
    this.#commands = commands
    this.#drawings = openDrawingQueue(window)
    this.#furnishings = openDrawingQueue(window)
    const context = sheetContext(view)
    const drawn = cellsIn(rows)
    for (const cell of view.cells) {
      const element = drawn.get(cell.id)
      if (element !== undefined) this.#sections.set(cell.id, this.#section(cell, context, element))
    }
    this.#numbers = numbersOf(view)
    this.#watchLines(new OpenLines(view.id, storageOf(window)))
    readFigures(rows, { figureOf: (element) => this.#figureOf(element), say: (sentence) => commands.say(sentence) })
    listenToDrags(rows, {
      moveTo: (id, place) => commands.moveTo(id, place),
      onCancelled: () => commands.say('The cell stays where it was.'),
    })
  }

  section(id: CellId): CellSection | undefined {
    return this.#sections.get(id)
  }

  get title(): HTMLElement | null {
    return this.#main.querySelector<HTMLElement>('.title-block .title')
  }

  update(view: SheetView): void {
    const context = sheetContext(view)
    const numbers = numbersOf(view)
    const renumbered = numbers !== this.#numbers
    this.#numbers = numbers
    const present = new Set(view.cells.map((cell) => cell.id))
    for (const [id, section] of this.#sections) if (!present.has(id)) this.#drop(section)
    const end = performance.now() + share
    for (const cell of view.cells) {
      let section = this.#sections.get(cell.id)
      if (section !== undefined && section.view.kind !== cell.kind) {
        // Nothing of a cell of the other kind can stay, its editor least of all; whoever edits it opens it again.
        this.#drop(section)
        section = undefined
      }
      if (section === undefined) this.#sections.set(cell.id, this.#section(cell, context, null))
      else section.update(cell, context, renumbered, performance.now() >= end)
    }
    this.#arrange(view)
    this.#showTitle(view)
    this.#showUnits(view)
  }

  #section(cell: CellView, context: SheetContext, drawn: HTMLElement | null): CellSection {
    return new CellSection(cell, context, drawn, this.#commands, this.#drawings, this.#furnishings)
  }

  #drop(section: CellSection): void {
    if (section.editing) section.endEdit()
    this.#drawings.forget(section.element)
    this.#furnishings.forget(section.element)
    section.element.remove()
    this.#sections.delete(section.view.id)
  }

  /** The data behind a figure on the page: figures stand in the order of their cell's result. */
  #figureOf(element: Element): Figure | undefined {
    const figure = element.closest('figure')
    const id = element.closest<HTMLElement>('[data-cell]')?.dataset.cell as CellId | undefined
    if (figure === null || id === undefined) return undefined
    const index = [...(figure.parentElement?.querySelectorAll(':scope > figure') ?? [])].indexOf(figure)
    return this.#sections.get(id)?.view.result?.figures[index]
  }

  /** Opens the hand calculations that the reader had open, and follows what is opened and folded. */
  #watchLines(open: OpenLines): void {
    for (const [id, section] of this.#sections) if (open.isOpen(id)) section.showLines(true)
    this.#rows.addEventListener(
      'toggle',
      (event) => {
        const fold = event.target
        if (!(fold instanceof HTMLDetailsElement) || !fold.classList.contains('lines-fold')) return
        const id = fold.closest<HTMLElement>('[data-cell]')?.dataset.cell as CellId | undefined
        if (id === undefined) return
        open.note(id, fold.open)
        this.#sections.get(id)?.showLines(fold.open)
      },
      true,
    )
  }

  /** Puts sections in page order, touching only those out of place, so that the focus and the scroll stay. */
  #arrange(view: SheetView): void {
    const focused = document.activeElement
    this.#rows.querySelector(':scope > .empty')?.remove()
    let place: Element | null = this.#rows.firstElementChild
    for (const cell of view.cells) {
      const element = this.#sections.get(cell.id)?.element
      if (element === undefined) continue
      if (element === place) place = place.nextElementSibling
      else this.#rows.insertBefore(element, place)
    }
    if (view.cells.length === 0) this.#rows.append(renderNoCells(document))
    if (focused instanceof HTMLElement && focused !== document.activeElement && this.#rows.contains(focused))
      focused.focus({ preventScroll: true })
  }

  /** Draws the fields of the title block and the question anew. */
  showTitleBlock(view: SheetView): void {
    const fresh = renderTitleBlock(document, view)
    const fields = fresh.querySelector('.title-fields')
    if (fields !== null) this.#main.querySelector('.title-block .title-fields')?.replaceWith(fields)
    const question = fresh.querySelector('.question')
    const old = this.#main.querySelector('.title-block .question')
    if (question === null) old?.remove()
    else if (old === null) this.#main.querySelector('.title-block .subject')?.append(question)
    else old.replaceWith(question)
  }

  showFingerprint(words: string): void {
    const place = this.#main.querySelector('.title-block [data-field="fingerprint"] dd')
    if (place === null) return
    place.textContent = words
    place.classList.remove('missing')
  }

  #showUnits(view: SheetView): void {
    const heads = this.#main.querySelector('.column-heads')
    const fresh = renderColumnHeads(document, view)
    if (heads?.isEqualNode(fresh) === false) heads.replaceWith(fresh)
  }

  #showTitle({ title, cells }: SheetView): void {
    const heading = this.title
    if (heading === null) return
    const shown = title.trim() === '' ? 'Untitled' : title
    if (heading.textContent !== shown) heading.textContent = shown
    const tried = cells.some(({ trial }) => trial !== undefined) ? ' · trial values' : ''
    const pageTitle = `${shown}${tried} · Hoverfolio`
    if (document.title !== pageTitle) document.title = pageTitle
  }
}

/** The cells that the server drew, found in one pass: a search for each would go through them all. */
function cellsIn(rows: HTMLElement): ReadonlyMap<string, HTMLElement> {
  const elements = [...rows.children].filter((child): child is HTMLElement => child instanceof HTMLElement)
  return new Map(
    elements.flatMap((element) => (element.dataset.cell === undefined ? [] : [[element.dataset.cell, element]])),
  )
}

/** Asking for the storage throws where the browser forbids it. */
export function storageOf(from: Window): Storage | undefined {
  try {
    return from.localStorage
  } catch {
    return undefined
  }
}

const numbersOf = (view: SheetView) => view.cells.map((cell) => `${cell.id}=${cell.number}`).join(' ')
