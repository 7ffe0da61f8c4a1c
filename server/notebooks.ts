/** What can be done with notebooks as a whole: routes and page forms both call this, so that both behave alike. */
import {
  limits,
  type Notebook,
  type NotebookId,
  type NotebookList,
  type NotebookSummary,
  notebookFormat,
  notebookVersion,
  readNotebook,
  Trouble,
  writeNotebook,
} from '../shared/contracts/index.js'
import type { LiveDocument, LiveDocuments } from './live/index.js'
import { titleOf } from './live/index.js'
import type { Background, ResultShelf } from './results/index.js'
import type { ShippedNotebooks } from './shipped.js'
import type { ListedNotebook, Store } from './store/index.js'

export interface NotebooksParts {
  readonly store: Store
  readonly documents: LiveDocuments
  readonly shelf: ResultShelf
  readonly background: Background
  /** Nothing comes with the program when absent. */
  readonly shipped?: ShippedNotebooks | undefined
}

/** The notebook that leads a newcomer by the hand: the first of these that comes with the program. */
const leading = ['starter', 'worked-sizing'] as const

export interface Guide {
  readonly name: (typeof leading)[number]
  /** Where it lies in the data folder; absent when it was taken away. */
  readonly id?: NotebookId
}

export class Notebooks {
  readonly #parts: NotebooksParts

  constructor(parts: NotebooksParts) {
    this.#parts = parts
  }

  async list(): Promise<NotebookList> {
    const { notebooks, binned, refused } = await this.#parts.store.list()
    const newestFirst = (a: ListedNotebook, b: ListedNotebook) => b.changed - a.changed || (a.id < b.id ? -1 : 1)
    return {
      notebooks: [...notebooks].sort(newestFirst).map(summaryOfListed),
      binned: [...binned].sort(newestFirst).map(summaryOfListed),
      refused: [...refused],
    }
  }

  /** Where to begin, for whoever has nothing of their own yet; `undefined` once there is something, or when nothing comes with the program. */
  async guideFor({ notebooks }: NotebookList): Promise<Guide | undefined> {
    const names = (await this.#parts.shipped?.names()) ?? []
    if (notebooks.some(({ id }) => !names.includes(id))) return undefined
    const name = leading.find((each) => names.includes(each))
    const id = notebooks.find((notebook) => notebook.id === name)?.id
    return name === undefined ? undefined : { name, ...(id === undefined ? {} : { id }) }
  }

  async summary(id: NotebookId): Promise<NotebookSummary> {
    const document = await this.#parts.documents.get(id)
    const listed = (await this.#parts.store.list()).notebooks.find((notebook) => notebook.id === id)
    const { title, titleBlock, cells } = document.notebook
    return {
      id,
      title,
      ...(titleBlock?.question === undefined ? {} : { question: titleBlock.question }),
      cells: cells.length,
      changed: new Date(listed?.changed ?? 0).toISOString(),
    }
  }

  /** An empty notebook. */
  begin(title: string): Promise<NotebookSummary> {
    return this.add({
      format: notebookFormat,
      version: notebookVersion,
      title,
      cells: [],
    })
  }

  /** A whole notebook under a fresh id; it is computed soon, so that its reader finds numbers. */
  async add(notebook: Notebook): Promise<NotebookSummary> {
    const id = await this.#parts.store.create(notebook.title, (id) => writeNotebook({ ...notebook, id }))
    this.#parts.background.ask(id)
    return await this.summary(id)
  }

  /** A notebook from the bytes of a file. */
  addFile(bytes: Uint8Array): Promise<NotebookSummary> {
    if (bytes.length > limits.notebookBytes)
      throw new Trouble('BODY_TOO_LARGE', { bytes: bytes.length, limit: limits.notebookBytes })
    const reading = readNotebook(new TextDecoder().decode(bytes))
    if (!reading.ok) throw new Trouble('NOTEBOOK_REFUSED', { reason: reading.reason })
    return this.add(reading.notebook)
  }

  async copy(id: NotebookId): Promise<NotebookSummary> {
    const { notebook } = await this.#parts.documents.get(id)
    const title = `Copy of ${notebook.title}`.slice(0, limits.titleCharacters)
    return await this.add({ ...notebook, title })
  }

  async rename(id: NotebookId, title: string): Promise<NotebookSummary> {
    const document = await this.#parts.documents.get(id)
    await document.edit((doc) => {
      const text = titleOf(doc)
      if (text.toString() === title) return
      text.delete(0, text.length)
      text.insert(0, title)
    })
    await document.flush()
    return await this.summary(id)
  }

  async bin(id: NotebookId): Promise<void> {
    const { documents, store, shelf } = this.#parts
    await documents.whileClosed(id, () => store.bin(id))
    shelf.forget(id)
  }

  async restore(id: NotebookId): Promise<NotebookSummary> {
    const restored = await this.#parts.store.restore(id)
    return await this.summary(restored)
  }

  /** Deletes for good what lies in the bin. */
  discard(id: NotebookId): Promise<void> {
    return this.#parts.store.discard(id)
  }

  /** A fresh copy of a notebook that comes with the program. */
  async addShipped(name: string): Promise<NotebookSummary> {
    const text = await this.#parts.shipped?.read(name)
    if (text === undefined) throw new Trouble('NOTEBOOK_UNKNOWN', { id: name })
    return await this.addFile(new TextEncoder().encode(text))
  }

  get(id: NotebookId): Promise<LiveDocument> {
    return this.#parts.documents.get(id)
  }
}

function summaryOfListed({ id, title, question, cells, changed }: ListedNotebook): NotebookSummary {
  return {
    id,
    title,
    ...(question === undefined ? {} : { question }),
    cells,
    changed: new Date(changed).toISOString(),
  }
}
