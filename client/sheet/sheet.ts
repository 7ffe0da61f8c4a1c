/** The sheet on the page: takes over what the server drew, and keeps it in step with one view after another. */
import type { CellId } from '../../shared/contracts/index.js'
import { type SheetView, sheetContext } from '../../shared/rendering/index.js'
import type { CellCommands } from './cell-actions.js'
import { CellSection } from './cell-section.js'
import { OpenLines } from './open-lines.js'

export class Sheet {
  readonly #main: HTMLElement
  readonly #rows: HTMLElement
  readonly #commands: CellCommands
  readonly #sections = new Map<CellId, CellSection>()
  #numbers = ''

  /** `view` is what the server drew into `main`. */
  constructor(main: HTMLElement, view: SheetView, commands: CellCommands) {
    const rows = main.querySelector<HTMLElement>('.cells')
    if (rows === null) throw new Error('The page holds no sheet to take over; load it again.')
    this.#main = main
    this.#rows = rows
    this.#commands = commands
    const context = sheetContext(view)
    for (const cell of view.cells) {
      const drawn = rows.querySelector<HTMLElement>(`:scope > [data-cell="${CSS.escape(cell.id)}"]`)
      if (drawn !== null) this.#sections.set(cell.id, new CellSection(cell, context, drawn, commands))
    }
    this.#numbers = numbersOf(view)
    this.#watchLines(new OpenLines(view.id, storageOf(window)))
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
    for (const [id, section] of this.#sections)
      if (!present.has(id)) {
        if (section.editing) section.endEdit()
        section.element.remove()
        this.#sections.delete(id)
      }
    for (const cell of view.cells) {
      const section = this.#sections.get(cell.id)
      if (section === undefined) this.#sections.set(cell.id, new CellSection(cell, context, null, this.#commands))
      else section.update(cell, context, renumbered)
    }
    this.#arrange(view)
    this.#showTitle(view.title)
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
    if (view.cells.length === 0) this.#rows.append(emptySheet())
    if (focused instanceof HTMLElement && focused !== document.activeElement && this.#rows.contains(focused))
      focused.focus({ preventScroll: true })
  }

  #showTitle(title: string): void {
    const heading = this.title
    if (heading === null) return
    const shown = title.trim() === '' ? 'Untitled' : title
    if (heading.textContent !== shown) heading.textContent = shown
    const pageTitle = `${shown} · Hoverfolio`
    if (document.title !== pageTitle) document.title = pageTitle
  }
}

function emptySheet(): HTMLElement {
  const note = document.createElement('p')
  note.className = 'empty'
  note.textContent = 'This notebook has no cells yet. Begin with a rationale: what must the aircraft do?'
  return note
}

/** Asking for the storage throws where the browser forbids it. */
function storageOf(from: Window): Storage | undefined {
  try {
    return from.localStorage
  } catch {
    return undefined
  }
}

const numbersOf = (view: SheetView) => view.cells.map((cell) => `${cell.id}=${cell.number}`).join(' ')
