/**
 * The store in a folder. Beside each readable `ID.json` lie `ID.live/` (Yjs state, log, known texts), `ID.results.json` and
 * `ID.revisions/`; `bin/` holds the same for what was thrown away. The notebook file decides where a notebook is: it is moved
 * first, and a start moves what a kill left behind after it.
 */
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { type CellResult, type Epoch, NotebookId, Trouble } from '../../shared/contracts/index.js'
import { replaceFile, unfinishedEnding } from './atomic-file.js'
import { asTrouble } from './failure.js'
import type { FileSystem } from './file-system.js'
import { Lease, LeaseHeld, type Processes } from './lease.js'
import { LiveLog } from './live-log.js'
import { freeId } from './names.js'
import {
  liveEnding,
  markOf,
  NotebookFolder,
  notebookEnding,
  resultsEnding,
  revisionsEnding,
} from './notebook-folder.js'
import { NotebookText } from './notebook-text.js'
import { readResultsFile, writeResultsFile } from './results-file.js'
import type { Listing, LiveState, LiveUpdate, Store } from './store.js'
import { Turns } from './turns.js'

export interface FilesStoreOptions {
  readonly files: FileSystem
  readonly folder: string
  readonly processes: Processes
}

const companions = [liveEnding, resultsEnding, revisionsEnding]

export class FilesStore implements Store {
  readonly #files: FileSystem
  readonly #folder: string
  readonly #bin: string
  readonly #processes: Processes
  readonly #shelf: NotebookFolder
  readonly #binned: NotebookFolder
  readonly #logs = new Map<NotebookId, LiveLog>()
  /** For logs closed after a failed append, what may be read of them. */
  readonly #trusted = new Map<NotebookId, number>()
  readonly #turns = new Turns()
  #lease: Lease | undefined

  constructor({ files, folder, processes }: FilesStoreOptions) {
    this.#files = files
    this.#folder = folder
    this.#bin = join(folder, 'bin')
    this.#processes = processes
    this.#shelf = new NotebookFolder(files, folder)
    this.#binned = new NotebookFolder(files, this.#bin)
  }

  get fencingToken(): number {
    return this.#lease?.token ?? 0
  }

  async start(): Promise<void> {
    try {
      await this.#files.makeFolder(this.#bin)
      this.#lease = await Lease.take(this.#files, this.#folder, this.#processes)
      await this.#mend()
    } catch (error) {
      throw error instanceof LeaseHeld ? error : asTrouble(error)
    }
  }

  async close(): Promise<void> {
    for (const id of [...this.#logs.keys()]) await this.closeLive(id)
    await this.#lease?.release()
    this.#lease = undefined
  }

  list(): Promise<Listing> {
    return this.#reading(async () => {
      const [shelf, binned] = [await this.#shelf.list(), await this.#binned.list()]
      return { notebooks: shelf.notebooks, binned: binned.notebooks, refused: shelf.refused }
    })
  }

  create(wish: string, textFor: (id: NotebookId) => string): Promise<NotebookId> {
    return this.#writing('', async () => {
      const id = freeId(wish, await this.#usedIds())
      await replaceFile(this.#files, this.#place(this.#folder, id, notebookEnding), textFor(id))
      return id
    })
  }

  bin(id: NotebookId): Promise<void> {
    return this.#writing('', async () => {
      await this.#mustBeThere(this.#folder, id)
      await this.closeLive(id)
      await this.#move(id, this.#folder, await this.#freeIn(this.#bin, id), this.#bin)
    })
  }

  restore(id: NotebookId): Promise<NotebookId> {
    return this.#writing('', async () => {
      await this.#mustBeThere(this.#bin, id)
      const target = await this.#freeIn(this.#folder, id)
      await this.#move(id, this.#bin, target, this.#folder)
      return target
    })
  }

  /** The notebook file goes first: a start removes from the bin what a kill left behind after it. */
  discard(id: NotebookId): Promise<void> {
    return this.#writing('', async () => {
      await this.#mustBeThere(this.#bin, id)
      await this.#files.remove(this.#place(this.#bin, id, notebookEnding))
      await this.#files.syncFolder(this.#bin)
      for (const ending of companions) await this.#files.remove(this.#place(this.#bin, id, ending))
      await this.#files.syncFolder(this.#bin)
    })
  }

  readText(id: NotebookId): Promise<string | undefined> {
    return this.#reading(() => this.#text(id).read())
  }

  textMark(id: NotebookId): Promise<string | undefined> {
    return this.#reading(() => this.#text(id).mark())
  }

  replaceText(id: NotebookId, expected: string, text: string): Promise<'written' | 'changed outside'> {
    return this.#writing(`${id} text`, () => this.#text(id).replace(expected, text))
  }

  knownTexts(id: NotebookId): Promise<readonly string[]> {
    return this.#reading(() => this.#text(id).known())
  }

  keepKnownText(id: NotebookId, text: string): Promise<void> {
    return this.#writing(`${id} text`, () => this.#text(id).keepKnown(text))
  }

  openLive(id: NotebookId): Promise<LiveState | undefined> {
    return this.#writing(id, async () => {
      await this.closeLive(id)
      const log = new LiveLog(this.#files, this.#place(this.#folder, id, liveEnding), this.#trusted.get(id))
      this.#logs.set(id, log)
      return await log.open()
    })
  }

  beginLive(id: NotebookId, epoch: Epoch, state: LiveUpdate): Promise<void> {
    return this.#writing(id, () => this.#log(id).begin(epoch, state))
  }

  append(id: NotebookId, epoch: Epoch, updates: readonly LiveUpdate[]): Promise<number> {
    return this.#writing(id, () => this.#log(id).append(epoch, updates))
  }

  snapshot(id: NotebookId, epoch: Epoch, state: Uint8Array): Promise<void> {
    return this.#writing(id, () => this.#log(id).snapshot(epoch, state))
  }

  liveSize(id: NotebookId): { readonly bytes: number; readonly updates: number } {
    return this.#log(id).size
  }

  async closeLive(id: NotebookId): Promise<void> {
    const log = this.#logs.get(id)
    if (log === undefined) return
    this.#logs.delete(id)
    if (log.trustedBytes === undefined) this.#trusted.delete(id)
    else this.#trusted.set(id, log.trustedBytes)
    await log.close()
  }

  readResults(id: NotebookId): Promise<readonly CellResult[]> {
    return this.#reading(() => readResultsFile(this.#files, this.#place(this.#folder, id, resultsEnding)))
  }

  writeResults(id: NotebookId, results: readonly CellResult[]): Promise<void> {
    return this.#writing(`${id} results`, () =>
      writeResultsFile(this.#files, this.#place(this.#folder, id, resultsEnding), results),
    )
  }

  revisions(id: NotebookId): Promise<readonly { readonly hash: string; readonly text: string }[]> {
    return this.#reading(async () => {
      const folder = this.#place(this.#folder, id, revisionsEnding)
      const names = await this.#revisionNames(folder)
      const texts = await Promise.all(names.map((name) => this.#files.read(join(folder, name))))
      return texts.map((bytes) => revisionOf(new TextDecoder().decode(bytes)))
    })
  }

  addRevision(id: NotebookId, text: string): Promise<string> {
    return this.#writing(id, async () => {
      const folder = this.#place(this.#folder, id, revisionsEnding)
      await this.#files.makeFolder(folder)
      await this.#files.syncFolder(this.#folder)
      const last = (await this.#revisionNames(folder)).at(-1) ?? '0'
      const number = (Number.parseInt(last, 10) || 0) + 1
      await replaceFile(this.#files, join(folder, `${String(number).padStart(5, '0')}.json`), text)
      return revisionOf(text).hash
    })
  }

  revisionsMark(id: NotebookId): Promise<string> {
    return this.#reading(async () => {
      const folder = this.#place(this.#folder, id, revisionsEnding)
      const marks = (await this.#revisionNames(folder)).map(async (name) => {
        const facts = await this.#files.facts(join(folder, name))
        return `${name} ${facts === undefined ? '' : markOf(facts)}`
      })
      return (await Promise.all(marks)).join('\n')
    })
  }

  async #revisionNames(folder: string): Promise<readonly string[]> {
    if ((await this.#files.facts(folder)) === undefined) return []
    return (await this.#files.list(folder)).filter((name) => /^\d+\.json$/.test(name)).sort()
  }

  #text(id: NotebookId): NotebookText {
    return new NotebookText(this.#files, this.#folder, id)
  }

  #log(id: NotebookId): LiveLog {
    const log = this.#logs.get(id)
    if (log === undefined) throw new Error(`the live state of "${id}" is not open`)
    return log
  }

  #place(folder: string, id: NotebookId, ending: string): string {
    return join(folder, NotebookId.parse(id) + ending)
  }

  async #reading<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work()
    } catch (error) {
      throw asTrouble(error)
    }
  }

  /** One after the other for one notebook (or, under the empty name, for the folder), and only while the lease is ours. */
  #writing<T>(turn: string, work: () => Promise<T>): Promise<T> {
    return this.#turns.take(turn, () =>
      this.#reading(async () => {
        if (this.#lease === undefined) throw new Error('the store is not started')
        await this.#lease.assertHeld()
        return await work()
      }),
    )
  }

  async #usedIds(): Promise<(id: string) => boolean> {
    const names = [...(await this.#files.list(this.#folder)), ...(await this.#files.list(this.#bin)), 'bin']
    const used = new Set(names.map((name) => (name.split('.')[0] ?? name).toLowerCase()))
    return (id) => used.has(id.toLowerCase())
  }

  async #freeIn(folder: string, id: NotebookId): Promise<NotebookId> {
    const taken = await this.#files.facts(this.#place(folder, id, notebookEnding))
    return taken === undefined ? id : freeId(id, await this.#usedIds())
  }

  async #mustBeThere(folder: string, id: NotebookId): Promise<void> {
    if ((await this.#files.facts(this.#place(folder, id, notebookEnding))) === undefined)
      throw new Trouble('NOTEBOOK_UNKNOWN', { id })
  }

  async #move(id: NotebookId, from: string, target: NotebookId, to: string): Promise<void> {
    for (const ending of companions) await this.#files.remove(this.#place(to, target, ending))
    await this.#files.rename(this.#place(from, id, notebookEnding), this.#place(to, target, notebookEnding))
    await this.#files.syncFolder(to)
    await this.#files.syncFolder(from)
    await this.#moveCompanions(id, from, target, to)
  }

  async #moveCompanions(id: NotebookId, from: string, target: NotebookId, to: string): Promise<void> {
    for (const ending of companions) {
      const source = this.#place(from, id, ending)
      if ((await this.#files.facts(source)) !== undefined)
        await this.#files.rename(source, this.#place(to, target, ending))
    }
    await this.#files.syncFolder(to)
    await this.#files.syncFolder(from)
  }

  /**
   * After a kill: unfinished files go, companions follow a notebook file that was moved without them, and those of a notebook deleted
   * for good go after it. Only in the bin: elsewhere a notebook whose file is missing may still be brought back from its log.
   */
  async #mend(): Promise<void> {
    for (const [here, there] of [
      [this.#folder, this.#bin],
      [this.#bin, this.#folder],
    ] as const) {
      const names = await this.#files.list(here)
      for (const name of names) if (name.endsWith(unfinishedEnding)) await this.#files.remove(join(here, name))
      const stray = names.flatMap((name) =>
        companions.filter((end) => name.endsWith(end)).map((end) => name.slice(0, -end.length)),
      )
      for (const name of new Set(stray)) {
        const id = NotebookId.safeParse(name)
        if (!id.success || names.includes(name + notebookEnding)) continue
        const moved = await this.#files.facts(this.#place(there, id.data, notebookEnding))
        const settled = await this.#files.facts(this.#place(there, id.data, liveEnding))
        if (moved !== undefined && settled === undefined) await this.#moveCompanions(id.data, here, id.data, there)
        if (moved === undefined && here === this.#bin)
          for (const ending of companions) await this.#files.remove(this.#place(here, id.data, ending))
      }
    }
  }
}

function revisionOf(text: string): { readonly hash: string; readonly text: string } {
  return { hash: createHash('sha256').update(text).digest('hex'), text }
}
