/** Whose hand calculations a reader has opened: remembered in this browser for each notebook, so that the printed sheet carries them again. */

/** The part of the browser's storage that is used; it may refuse, and then nothing is remembered beyond this visit. */
export type LinesMemory = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

export class OpenLines {
  readonly #key: string
  readonly #memory: LinesMemory | undefined
  readonly #open: Set<string>

  constructor(notebook: string, memory: LinesMemory | undefined) {
    this.#key = `hoverfolio hand calculations ${notebook}`
    this.#memory = memory
    this.#open = new Set(this.#read())
  }

  isOpen(cell: string): boolean {
    return this.#open.has(cell)
  }

  note(cell: string, open: boolean): void {
    if (open === this.#open.has(cell)) return
    if (open) this.#open.add(cell)
    else this.#open.delete(cell)
    try {
      if (this.#open.size === 0) this.#memory?.removeItem(this.#key)
      else this.#memory?.setItem(this.#key, [...this.#open].join(' '))
    } catch {
      // A full or forbidden storage: the fold still works, it only is not remembered.
    }
  }

  /** Cell ids hold no spaces. */
  #read(): string[] {
    try {
      return (this.#memory?.getItem(this.#key) ?? '').split(' ').filter((cell) => cell !== '')
    } catch {
      return []
    }
  }
}
