/**
 * What a page still had to send when it was left. The browser's database answers later and drops what it has not written when the page
 * goes, so the last words go into the storage that writes at once. One entry for each visit: two tabs never write over each other.
 */
import { fromBase64, toBase64 } from './base64.js'
import type { KeptWork } from './keep.js'

export type HoldingStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

interface HeldEntry {
  readonly epoch: string
  readonly base: string | null
  readonly update: string
}

export class HeldWork {
  readonly #storage: HoldingStorage
  /** Begins the names of all entries of this notebook. */
  readonly #prefix: string
  readonly #own: string

  constructor(storage: HoldingStorage, notebook: string, visit: string) {
    this.#storage = storage
    this.#prefix = `hoverfolio unsaved edits ${notebook} `
    this.#own = this.#prefix + visit
  }

  /** `base` when the database is not known to have it. Storage that is full or switched off holds nothing; the database may still have it. */
  hold(epoch: string, base: Uint8Array | null, update: Uint8Array): void {
    const entry: HeldEntry = { epoch, base: base === null ? null : toBase64(base), update: toBase64(update) }
    for (const each of [entry, { ...entry, base: null }])
      try {
        this.#storage.setItem(this.#own, JSON.stringify(each))
        return
      } catch {
        // Without the base it is smaller, and serves as long as the document lives on.
      }
  }

  /** This visit goes on and the server has all of it. */
  release(): void {
    this.remove(this.#own)
  }

  remove(key: string): void {
    try {
      this.#storage.removeItem(key)
    } catch {
      // Sending it once more at the next opening does no harm.
    }
  }

  /** What earlier visits held. */
  load(): readonly KeptWork[] {
    try {
      const keys = Array.from({ length: this.#storage.length }, (_, index) => this.#storage.key(index) ?? '')
      return keys.filter((key) => key.startsWith(this.#prefix)).flatMap((key) => readEntry(key, this.#storage))
    } catch {
      return []
    }
  }
}

function readEntry(key: string, storage: HoldingStorage): KeptWork[] {
  try {
    const { epoch, base, update } = JSON.parse(storage.getItem(key) ?? '') as HeldEntry
    return [{ epoch, base: base === null ? null : fromBase64(base), edits: [{ key, update: fromBase64(update) }] }]
  } catch {
    return []
  }
}
