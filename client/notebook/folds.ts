/** Which sizing cells are folded to their heading, in this browser. The fold itself is a plain `details` element. */
import type { CellId } from '../../shared/contracts/index.js'

export class Folds {
  readonly #open = new Set<string>()

  /** Follows what the reader opens and folds on the page. `toggle` does not bubble, so it is caught on its way down. */
  watch(sheet: HTMLElement): void {
    sheet.addEventListener(
      'toggle',
      (event) => {
        const details = event.target
        if (!(details instanceof HTMLDetailsElement) || !details.classList.contains('source-fold')) return
        const cell = details.closest<HTMLElement>('[data-cell]')?.dataset.cell
        if (cell === undefined) return
        if (details.open) this.#open.add(cell)
        else this.#open.delete(cell)
      },
      true,
    )
    for (const details of sheet.querySelectorAll<HTMLDetailsElement>('.source-fold[open]')) {
      const cell = details.closest<HTMLElement>('[data-cell]')?.dataset.cell
      if (cell !== undefined) this.#open.add(cell)
    }
  }

  open(cell: CellId): void {
    this.#open.add(cell)
  }

  /** Opens or folds these cells on the page; those that are being edited stay open. */
  setAll(sheet: HTMLElement, open: boolean): void {
    for (const details of sheet.querySelectorAll<HTMLDetailsElement>('.source-fold')) {
      details.open = open
      const cell = details.closest<HTMLElement>('[data-cell]')?.dataset.cell
      if (cell === undefined) continue
      if (open) this.#open.add(cell)
      else this.#open.delete(cell)
    }
  }

  /** Opens or folds one cell; false when it has nothing to fold. */
  set(section: HTMLElement, open: boolean): boolean {
    const details = section.querySelector<HTMLDetailsElement>('.source-fold')
    if (details === null) return false
    details.open = open
    return true
  }

  isFolded(cell: CellId): boolean {
    return !this.#open.has(cell)
  }
}
