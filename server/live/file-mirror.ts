/**
 * The readable file follows the live document: written shortly after an edit, and read again when someone else changed it.
 *
 * The file is never the only copy of an edit (the log is), so a write that fails is tried again later and nobody waits.
 * Before each write the store compares the file with the text last known; a file changed outside is taken in first.
 */
import { createHash } from 'node:crypto'
import { type Notebook, type NotebookId, readNotebook, writeNotebook } from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { Log } from '../log.js'
import type { Store } from '../store/index.js'

export interface FileMirrorOptions {
  readonly id: NotebookId
  readonly store: Store
  readonly clock: Clock
  readonly log: Log
  /** The file's text as last written or taken in. */
  readonly known: string
  readonly notebook: () => Notebook
  /** Carries the change from the known notebook to the outside one into the live document; resolves when that is on disk. */
  readonly takeIn: (known: Notebook, outside: Notebook, textHash: string) => Promise<void>
}

export const writeDelay = 300
const retryDelay = 2000
export const watchInterval = 1000

export const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex')

/** Of the texts we know, the one with fewest lines to add or take away: the one the outside change was made on. */
export function nearestText(text: string, known: readonly string[]): string | undefined {
  return known
    .filter((candidate) => readNotebook(candidate).ok)
    .map((candidate) => ({ candidate, distance: lineDistance(text, candidate) }))
    .sort((a, b) => a.distance - b.distance)[0]?.candidate
}

/** Lines of one text that the other lacks, repeated lines counted as often as they come. */
function lineDistance(a: string, b: string): number {
  const surplus = new Map<string, number>()
  for (const line of a.split('\n')) surplus.set(line, (surplus.get(line) ?? 0) + 1)
  for (const line of b.split('\n')) surplus.set(line, (surplus.get(line) ?? 0) - 1)
  return [...surplus.values()].reduce((sum, count) => sum + Math.abs(count), 0)
}

export class FileMirror {
  readonly #options: FileMirrorOptions
  #known: string
  #mark: string | undefined
  #cancelWrite: (() => void) | undefined
  #cancelWatch: (() => void) | undefined
  #work: Promise<void> = Promise.resolve()
  #closed = false
  /** The document holds something that the file does not. A file nobody edits is not rewritten, whatever its spelling. */
  #dirty = false
  #complained: string | undefined

  constructor(options: FileMirrorOptions) {
    this.#options = options
    this.#known = options.known
    this.#watch()
  }

  /** An edit was accepted: write soon. Later edits do not put it off further. */
  schedule(delay: number = writeDelay): void {
    this.#dirty = true
    if (this.#closed) return
    this.#cancelWrite ??= this.#options.clock.later(delay, () => {
      void this.flush().catch((error: unknown) => {
        this.#options.log.warn({ error, id: this.#options.id }, 'the notebook file could not be written; trying again')
        this.schedule(retryDelay)
      })
    })
  }

  /** Writes now if anything changed; false when it has to wait for a file that nobody can read. Rejects when it could not be written. */
  flush(): Promise<boolean> {
    this.#cancelWrite?.()
    this.#cancelWrite = undefined
    return this.#next(() => this.#write())
  }

  /** As `flush`, for what is kept nowhere but in the file. */
  writeThrough(): Promise<boolean> {
    this.#dirty = true
    return this.flush()
  }

  /** Reads the file if it was changed outside. */
  look(): Promise<void> {
    return this.#next(async () => {
      const mark = await this.#options.store.textMark(this.#options.id)
      if (mark === this.#mark) return
      this.#mark = mark
      await this.#takeIn()
      if (this.#dirty) this.schedule()
    })
  }

  async close(): Promise<void> {
    this.#closed = true
    this.#cancelWatch?.()
    await this.flush()
  }

  #watch(): void {
    this.#cancelWatch = this.#options.clock.later(watchInterval, () => {
      const again = () => {
        if (!this.#closed) this.#watch()
      }
      this.look().then(again, again)
    })
  }

  async #write(): Promise<boolean> {
    const { store, id } = this.#options
    // Twice at most: an outside change taken in is part of the second text. If the file changes again meanwhile, next time.
    for (let attempt = 0; this.#dirty && attempt < 2; attempt += 1) {
      this.#dirty = false
      const text = writeNotebook(this.#options.notebook())
      if (text === this.#known) return true
      try {
        const outcome = await store.replaceText(id, this.#known, text)
        if (outcome === 'written') {
          this.#known = text
          this.#mark = await store.textMark(id)
          return true
        }
        const isReadable = await this.#takeIn()
        this.#dirty = true
        if (!isReadable) return false
      } catch (error) {
        this.#dirty = true
        throw error
      }
    }
    if (this.#dirty) this.schedule()
    return !this.#dirty
  }

  /** False when the file cannot be read as a notebook: then it is left alone until someone mends it. */
  async #takeIn(): Promise<boolean> {
    const { store, id, log } = this.#options
    const text = await store.readText(id).catch((error: unknown) => this.#complain(String(error)))
    if (text === undefined || text === this.#known) return text !== undefined
    const written = await store.knownTexts(id)
    if (written.includes(text)) {
      // A write of ours that was reported as failed, but did reach the file. Taking it in would type everything twice.
      this.#known = text
      return true
    }
    const outside = readNotebook(text)
    // After a write that was reported as failed the change may have been made on that text, not on the one before.
    const known = readNotebook(nearestText(text, [this.#known, ...written]) ?? this.#known)
    if (!outside.ok || !known.ok) {
      this.#complain(outside.ok ? 'the text last written cannot be read' : outside.reason)
      return false
    }
    await this.#options.takeIn(known.notebook, outside.notebook, hashOf(text))
    this.#known = text
    this.#complained = undefined
    await store.keepKnownText(id, text)
    log.info({ id }, 'the notebook file was changed outside; the change was taken in')
    this.schedule()
    return true
  }

  #complain(reason: string): undefined {
    if (this.#complained === reason) return
    this.#complained = reason
    this.#options.log.warn({ id: this.#options.id, reason }, 'the notebook file was changed outside and is left alone')
  }

  #next<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#work.then(work)
    this.#work = mine.then(
      () => undefined,
      () => undefined,
    )
    return mine
  }
}
