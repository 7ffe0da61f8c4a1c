/** The open notebooks. Each is opened once, by whoever asks first, and closed a while after the last reader left. */
import type { NotebookId } from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { Log } from '../log.js'
import { type Store, Turns } from '../store/index.js'
import type { LiveDocument } from './live-document.js'
import { openDocument } from './open-document.js'

export interface LiveDocumentsOptions {
  readonly store: Store
  readonly clock: Clock
  readonly log: Log
  /** [ms] without readers after which a document is closed. */
  readonly idleTime?: number
}

export class LiveDocuments {
  readonly #options: LiveDocumentsOptions
  readonly #open = new Map<NotebookId, LiveDocument>()
  readonly #cancelIdle = new Map<NotebookId, () => void>()
  readonly #turns = new Turns()

  constructor(options: LiveDocumentsOptions) {
    this.#options = options
  }

  /** The open document; opening takes its turn with closing and binning of the same notebook. */
  get(id: NotebookId): Promise<LiveDocument> {
    return this.#turns.take(id, async () => {
      const present = this.#open.get(id)
      const document = present ?? (await openDocument(id, this.#options))
      this.#open.set(id, document)
      this.#watchIdle(document)
      return document
    })
  }

  /** Those open now. */
  get all(): readonly LiveDocument[] {
    return [...this.#open.values()]
  }

  /** Closes a notebook with its file up to date, does `work` on the closed one, and lets nobody open it meanwhile. */
  whileClosed<T>(id: NotebookId, work: () => Promise<T>): Promise<T> {
    return this.#turns.take(id, async () => {
      const document = this.#open.get(id)
      await document?.flush()
      await this.#close(id)
      return await work()
    })
  }

  async close(): Promise<void> {
    for (const id of [...this.#open.keys()]) await this.#turns.take(id, () => this.#close(id))
  }

  async #close(id: NotebookId): Promise<void> {
    this.#cancelIdle.get(id)?.()
    this.#cancelIdle.delete(id)
    const document = this.#open.get(id)
    if (document === undefined) return
    await document.close()
    this.#open.delete(id)
    await this.#options.store.closeLive(id)
  }

  #closeIdle(document: LiveDocument): void {
    const { log } = this.#options
    this.#turns
      .take(document.id, async () => {
        if (document.readers === 0) await this.#close(document.id)
      })
      .catch((error: unknown) => log.warn({ error, id: document.id }, 'a notebook could not be closed'))
  }

  #watchIdle(document: LiveDocument): void {
    this.#cancelIdle.get(document.id)?.()
    const check = () => {
      if (document.readers > 0) this.#watchIdle(document)
      else this.#closeIdle(document)
    }
    this.#cancelIdle.set(document.id, this.#options.clock.later(this.#options.idleTime ?? 60_000, check))
  }
}
