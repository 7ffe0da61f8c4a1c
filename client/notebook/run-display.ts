/** A run that lasts is shown in the bar, with its progress and its time, and said aloud once. */
import type { CellId } from '../../shared/contracts/index.js'
import type { Bar } from './bar.js'
import { progressWords } from './progress.js'

export interface RunDisplayParts {
  bar(): Pick<Bar, 'setRunning' | 'setProgress'>
  progress(): { readonly done: number; readonly of: number; readonly cell: CellId | undefined }
  /** In the margin. */
  numberOf(cell: CellId): string | undefined
  say(sentence: string): void
}

export class RunDisplay {
  readonly #parts: RunDisplayParts
  #running = false
  /** [ms] */
  #since = 0

  constructor(parts: RunDisplayParts) {
    this.#parts = parts
  }

  get running(): boolean {
    return this.#running
  }

  set(running: boolean): void {
    this.#running = running
    this.#parts.bar().setRunning(running)
    if (!running) return
    this.#watch()
    this.#parts.say('Computing; Escape stops it.')
  }

  /** The sheet was drawn. */
  update(): void {
    if (this.#running) this.#show()
  }

  /** The time goes on also while one cell takes long. */
  #watch(): void {
    this.#since = performance.now()
    this.#show()
    const clock = setInterval(() => {
      if (this.#running) this.#show()
      else clearInterval(clock)
    }, 1000)
  }

  #show(): void {
    const { done, of, cell } = this.#parts.progress()
    const number = cell === undefined ? undefined : this.#parts.numberOf(cell)
    const progress = { done, of, ...(number === undefined ? {} : { cell: number }) }
    this.#parts.bar().setProgress(progressWords(progress, performance.now() - this.#since))
  }
}
