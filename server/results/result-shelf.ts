/**
 * Results of the open notebooks. A result is taken only if its fingerprint is that of the live text: whatever a browser says,
 * it cannot put a number beside a text that did not give it a fingerprint.
 */
import type { SizingCell } from '../../kernel/cells/program/index.js'
import {
  type CellId,
  type CellResult,
  type Fingerprint,
  limits,
  type NotebookId,
} from '../../shared/contracts/index.js'
import type { ServerKernel } from '../kernel.js'
import type { LiveDocument } from '../live/index.js'
import { type Store, Turns } from '../store/index.js'

/** Results of earlier texts that are kept so that undo finds its numbers again. */
const olderKept = 100

export interface Shelved {
  /** One per cell whose text has one, by fingerprint. */
  readonly current: readonly CellResult[]
  /** The latest result of cells whose text has none. */
  readonly outOfDate: readonly CellResult[]
}

export class ResultShelf {
  readonly #store: Store
  readonly #kernel: ServerKernel
  readonly #books = new Map<NotebookId, Map<Fingerprint, CellResult>>()
  readonly #turns = new Turns()

  constructor(store: Store, kernel: ServerKernel) {
    this.#store = store
    this.#kernel = kernel
  }

  async read(document: LiveDocument): Promise<Shelved> {
    const [live, book] = await Promise.all([this.#fingerprints(document), this.#book(document.id)])
    const current: CellResult[] = []
    const outOfDate: CellResult[] = []
    for (const [cell, fingerprint] of live) {
      const result = book.get(fingerprint)
      if (result !== undefined) current.push(result.cell === cell ? result : { ...result, cell })
      else {
        const older = [...book.values()].findLast((candidate) => candidate.cell === cell)
        if (older !== undefined) outOfDate.push(older)
      }
    }
    return { current, outOfDate }
  }

  /** Keeps the results that belong to the live text; names those that do not. */
  async add(
    document: LiveDocument,
    results: readonly CellResult[],
  ): Promise<{ accepted: CellResult[]; stale: CellId[] }> {
    const live = await this.#fingerprints(document)
    const accepted: CellResult[] = []
    const stale: CellId[] = []
    for (const result of results) {
      const fits = live.get(result.cell) === result.fingerprint && JSON.stringify(result).length <= limits.resultBytes
      if (fits) accepted.push(result)
      else stale.push(result.cell)
    }
    if (accepted.length > 0) await this.#keep(document.id, accepted, live)
    return { accepted, stale }
  }

  /** Forgets what is in memory for a notebook that left the shelf. */
  forget(id: NotebookId): void {
    this.#books.delete(id)
  }

  #keep(id: NotebookId, accepted: readonly CellResult[], live: ReadonlyMap<CellId, Fingerprint>): Promise<void> {
    return this.#turns.take(id, async () => {
      const book = await this.#book(id)
      for (const result of accepted) {
        // Taken out first, so that the newest are last.
        book.delete(result.fingerprint)
        book.set(result.fingerprint, result)
      }
      const wanted = new Set(live.values())
      let surplus = [...book.keys()].filter((fingerprint) => !wanted.has(fingerprint)).length - olderKept
      for (const fingerprint of book.keys()) {
        if (surplus <= 0) break
        if (wanted.has(fingerprint)) continue
        book.delete(fingerprint)
        surplus -= 1
      }
      await this.#store.writeResults(id, [...book.values()])
    })
  }

  async #book(id: NotebookId): Promise<Map<Fingerprint, CellResult>> {
    const present = this.#books.get(id)
    if (present !== undefined) return present
    const read = new Map((await this.#store.readResults(id)).map((result) => [result.fingerprint, result]))
    const book = this.#books.get(id) ?? read
    this.#books.set(id, book)
    return book
  }

  #fingerprints(document: LiveDocument): Promise<ReadonlyMap<CellId, Fingerprint>> {
    return this.#kernel.fingerprints(sizingCells(document))
  }
}

export function sizingCells(document: LiveDocument): readonly SizingCell[] {
  return document.content.cells.filter((cell) => cell.kind === 'sizing').map(({ id, source }) => ({ id, source }))
}
