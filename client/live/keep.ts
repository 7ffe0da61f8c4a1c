/** What this browser keeps until the server has it, so that a reload, a crash or a lost network loses nothing. */

/** Unsaved edits of one epoch: `base` is the document as the server had confirmed it before them. */
export interface KeptWork {
  readonly epoch: string
  readonly base: Uint8Array | null
  readonly edits: readonly { readonly key: number; readonly update: Uint8Array }[]
}

export interface Keep {
  load(): Promise<readonly KeptWork[]>
  /** Remembers the confirmed document that the edits to come stand on. */
  begin(epoch: string, base: Uint8Array): Promise<void>
  add(epoch: string, update: Uint8Array): Promise<number | null>
  remove(keys: readonly number[]): Promise<void>
}

interface KeptEdit {
  readonly notebook: string
  readonly epoch: string
  readonly update: Uint8Array
}

/** Keeps nothing: for browsers in which storage is switched off. The page then says so by its saving state alone. */
export const keepNothing: Keep = {
  load: async () => [],
  begin: async () => undefined,
  add: async () => null,
  remove: async () => undefined,
}

/** The keep of one notebook in IndexedDB; `keepNothing` when the browser has none to give. */
export async function openKeep(notebook: string, factory: IDBFactory | undefined): Promise<Keep> {
  if (factory === undefined) return keepNothing
  try {
    return keepIn(await openDatabase(factory), notebook)
  } catch {
    return keepNothing
  }
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

function keepIn(database: IDBDatabase, notebook: string): Keep {
  const baseKey = (epoch: string) => [notebook, epoch]
  return {
    async load() {
      const transaction = database.transaction(['edits', 'bases'])
      const index = transaction.objectStore('edits').index('notebook')
      const [keys, edits] = await Promise.all([
        answerOf(index.getAllKeys(notebook)),
        answerOf<KeptEdit[]>(index.getAll(notebook)),
      ])
      const epochs = [...new Set(edits.map((edit) => edit.epoch))]
      return Promise.all(
        epochs.map(async (epoch) => ({
          epoch,
          base: (await answerOf<Uint8Array | undefined>(transaction.objectStore('bases').get(baseKey(epoch)))) ?? null,
          edits: edits.flatMap((edit, i) =>
            edit.epoch === epoch ? [{ key: Number(keys[i]), update: edit.update }] : [],
          ),
        })),
      )
    },
    async begin(epoch, base) {
      const store = database.transaction('bases', 'readwrite').objectStore('bases')
      await answerOf(store.put(base, baseKey(epoch)))
    },
    async add(epoch, update) {
      const store = database.transaction('edits', 'readwrite').objectStore('edits')
      return Number(await answerOf(store.add({ notebook, epoch, update } satisfies KeptEdit)))
    },
    async remove(keys) {
      if (keys.length === 0) return
      const store = database.transaction('edits', 'readwrite').objectStore('edits')
      await Promise.all(keys.map((key) => answerOf(store.delete(key))))
    },
  }
}

function answerOf<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}
