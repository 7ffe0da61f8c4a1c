/** Computes notebooks on the server so that a first reader finds numbers; one at a time, never in the way of a request. */
import { type NotebookId, Trouble } from '../../shared/contracts/index.js'
import type { ServerKernel } from '../kernel.js'
import type { LiveDocuments } from '../live/index.js'
import type { Log } from '../log.js'
import { type ResultShelf, sizingCells } from './result-shelf.js'

export interface BackgroundOptions {
  readonly documents: LiveDocuments
  readonly shelf: ResultShelf
  readonly kernel: ServerKernel
  readonly log: Log
}

export class Background {
  readonly #options: BackgroundOptions
  readonly #waiting = new Set<NotebookId>()
  #work: Promise<void> | undefined
  #closed = false

  constructor(options: BackgroundOptions) {
    this.#options = options
  }

  /** Puts a notebook in the queue if this server computes at all. */
  ask(id: NotebookId): void {
    if (this.#options.kernel.compute === undefined || this.#closed) return
    this.#waiting.add(id)
    this.#work ??= this.#drain()
  }

  /** Resolves when the queue is empty. */
  async idle(): Promise<void> {
    await this.#work
  }

  /** Stops asking for more; what is being computed is let go, since whoever closes ends the evaluator next. */
  close(): void {
    this.#closed = true
    this.#waiting.clear()
  }

  async #drain(): Promise<void> {
    for (const id of this.#waiting) {
      this.#waiting.delete(id)
      await this.#compute(id).catch((error: unknown) => {
        // One that was moved to the bin while it waited is no trouble.
        const isGone = error instanceof Trouble && error.code === 'NOTEBOOK_UNKNOWN'
        if (!this.#closed && !isGone)
          this.#options.log.warn({ error, id }, 'a notebook could not be computed on the server; browsers will')
      })
    }
    this.#work = undefined
  }

  async #compute(id: NotebookId): Promise<void> {
    const { documents, shelf, kernel } = this.#options
    const document = await documents.get(id)
    const cells = sizingCells(document)
    const { current } = await shelf.read(document)
    if (kernel.compute === undefined || current.length === cells.length) return
    const results = await kernel.compute(cells)
    if (this.#closed) return
    const { accepted } = await shelf.add(document, results)
    document.shareResults(accepted)
  }
}
