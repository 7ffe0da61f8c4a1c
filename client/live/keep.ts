/** What this browser keeps until the server has it, so that a reload, a crash or a lost network loses nothing. */

import { HeldWork, type HoldingStorage } from './held-work.js'

/** A number in the database, a name in the storage that writes at once. */
export type KeptKey = number | string

/** Unsaved edits of one epoch: `base` is the document as the server had confirmed it before them. */
export interface KeptWork {
  readonly epoch: string
  readonly base: Uint8Array | null
  readonly edits: readonly { readonly key: KeptKey; readonly update: Uint8Array }[]
}

export interface Keep {
  /** Whether what is kept outlives the page. */
  readonly lasts: boolean
  load(): Promise<readonly KeptWork[]>
  /** Keeps an edit; with the first of several also `base`, the confirmed document that they stand on. */
  add(epoch: string, update: Uint8Array, base: Uint8Array | null): Promise<KeptKey | null>
  remove(keys: readonly KeptKey[]): Promise<void>
  /** The page is being left: keeps all that is unsaved before it answers. */
  hold(epoch: string, base: Uint8Array, update: Uint8Array): void
  /** The page was not left after all, and nothing is unsaved. */
  release(): void
}

interface KeptEdit {
  readonly notebook: string
  readonly epoch: string
  readonly update: Uint8Array
}

/** Keeps nothing: for browsers in which storage is switched off. The page then asks before it is left with unsaved edits. */
export const keepNothing: Keep = {
  lasts: false,
  load: async () => [],
  add: async () => null,
  remove: async () => undefined,
  hold: () => undefined,
  release: () => undefined,
}

/** The keep of one notebook, in IndexedDB and the browser's storage; `keepNothing` when the browser has neither to give. */
export async function openKeep(
  notebook: string,
  factory: IDBFactory | undefined,
  storage: HoldingStorage | undefined,
): Promise<Keep> {
  const database = factory === undefined ? undefined : await openDatabase(factory).catch(() => undefined)
  const held = storage === undefined ? undefined : new HeldWork(storage, notebook, crypto.randomUUID())
  return database === undefined && held === undefined ? keepNothing : new BrowserKeep(notebook, database, held)
}

function openDatabase(factory: IDBFactory): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open('hoverfolio unsaved edits', 1)
    request.onupgradeneeded = () => {
      request.result.createObjectStore('edits', { autoIncrement: true }).createIndex('notebook', 'notebook')
      request.result.createObjectStore('bases')
    }
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}

class BrowserKeep implements Keep {
  readonly lasts = true
  readonly #notebook: string
  readonly #database: IDBDatabase | undefined
  readonly #held: HeldWork | undefined
  /** Epoch of the base that the database has, as far as this visit wrote it. */
  #baseOf: string | undefined

  constructor(notebook: string, database: IDBDatabase | undefined, held: HeldWork | undefined) {
    this.#notebook = notebook
    this.#database = database
    this.#held = held
  }

  async load(): Promise<readonly KeptWork[]> {
    const stored = await this.#loadStored().catch(() => [])
    return mergeWork(stored, this.#held?.load() ?? [])
  }

  /** Base and edit go in one transaction, so that no edit is kept without what it stands on, nor before an earlier one. */
  async add(epoch: string, update: Uint8Array, base: Uint8Array | null): Promise<KeptKey | null> {
    if (this.#database === undefined) return null
    const transaction = this.#database.transaction(['edits', 'bases'], 'readwrite')
    if (base !== null) {
      this.#baseOf = undefined
      transaction.objectStore('bases').put(base, [this.#notebook, epoch])
    }
    const key = answerOf(
      transaction.objectStore('edits').add({ notebook: this.#notebook, epoch, update } satisfies KeptEdit),
    )
    const done = completionOf(transaction)
    // Not left to the browser's next turn, which a page that is being left does not see.
    transaction.commit?.()
    await done
    if (base !== null) this.#baseOf = epoch
    return Number(await key)
  }

  async remove(keys: readonly KeptKey[]): Promise<void> {
    const numbers = keys.filter((key) => typeof key === 'number')
    for (const key of keys) if (typeof key === 'string') this.#held?.remove(key)
    if (numbers.length === 0 || this.#database === undefined) return
    const transaction = this.#database.transaction('edits', 'readwrite')
    for (const key of numbers) transaction.objectStore('edits').delete(key)
    await completionOf(transaction)
  }

  hold(epoch: string, base: Uint8Array, update: Uint8Array): void {
    this.#held?.hold(epoch, this.#baseOf === epoch ? null : base, update)
  }

  release(): void {
    this.#held?.release()
  }

  async #loadStored(): Promise<readonly KeptWork[]> {
    if (this.#database === undefined) return []
    const transaction = this.#database.transaction(['edits', 'bases'])
    const index = transaction.objectStore('edits').index('notebook')
    const [keys, edits] = await Promise.all([
      answerOf(index.getAllKeys(this.#notebook)),
      answerOf<KeptEdit[]>(index.getAll(this.#notebook)),
    ])
    const baseOf = (epoch: string) =>
      answerOf<Uint8Array | undefined>(transaction.objectStore('bases').get([this.#notebook, epoch]))
    const epochs = [...new Set(edits.map((edit) => edit.epoch))]
    return Promise.all(
      epochs.map(async (epoch) => ({
        epoch,
        base: (await baseOf(epoch)) ?? null,
        edits: edits.flatMap((edit, i) =>
          edit.epoch === epoch ? [{ key: Number(keys[i]), update: edit.update }] : [],
        ),
      })),
    )
  }
}

/** Held edits may be stored as well; those of one epoch are taken up together, so that their changes are carried over once. */
export function mergeWork(stored: readonly KeptWork[], held: readonly KeptWork[]): readonly KeptWork[] {
  const merged = new Map<string, KeptWork>()
  for (const { epoch, base, edits } of [...stored, ...held]) {
    const before = merged.get(epoch)
    merged.set(epoch, { epoch, base: base ?? before?.base ?? null, edits: [...(before?.edits ?? []), ...edits] })
  }
  return [...merged.values()]
}

function completionOf(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve()
    transaction.onerror = () => reject(transaction.error)
    transaction.onabort = () => reject(transaction.error)
  })
}

function answerOf<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}
