/**
 * Append, flush, then acknowledge. Updates that arrive while a flush is under way share the next one.
 *
 * There are two documents. `accepted` holds what is on disk: all that is read, served and broadcast comes from it. `tried`
 * runs ahead of it by the group being written; an update is applied there first, so that one which cannot be decoded or
 * breaks a limit is refused before it touches anything, and a group that could not be written leaves no trace.
 */
import * as Y from 'yjs'
import { type Epoch, limits, type NotebookId, Trouble } from '../../shared/contracts/index.js'
import type { Log } from '../log.js'
import { asTrouble, type LiveUpdate, type Store } from '../store/index.js'
import { documentFrom, type LiveContent, readContent } from './document.js'

/** Called once per update after it is on disk and in `accepted`. `update` is null when it held nothing new. */
export type OnAccepted = (update: Uint8Array | null, sequence: number) => void

/** What the state and log of one document may hold. Beyond it only a fresh epoch helps; text never gets near it. */
export const stateBytesLimit = 8 * limits.notebookBytes
const updatesBetweenSnapshots = 500
const bytesBetweenSnapshots = 1024 * 1024

interface Waiting {
  readonly make: (tried: Y.Doc) => LiveUpdate | null
  readonly onAccepted: OnAccepted
  readonly settle: (trouble?: Trouble) => void
}

export interface UpdateQueueOptions {
  readonly id: NotebookId
  readonly epoch: Epoch
  readonly sequence: number
  readonly store: Store
  readonly log: Log
  readonly accepted: Y.Doc
  /** Why the content may not become this, or `undefined`. */
  readonly objection: (content: LiveContent) => string | undefined
}

export class UpdateQueue {
  readonly #options: UpdateQueueOptions
  #tried: Y.Doc
  #waiting: Waiting[] = []
  #draining: Promise<void> | undefined
  #sequence: number
  #snapshotAt = 2 * bytesBetweenSnapshots

  constructor(options: UpdateQueueOptions) {
    this.#options = options
    this.#sequence = options.sequence
    this.#tried = documentFrom([Y.encodeStateAsUpdate(options.accepted)])
  }

  get sequence(): number {
    return this.#sequence
  }

  /** Takes an update from outside. Resolves when it is on disk; rejects with a Trouble when it is refused or could not be kept. */
  submit(update: Uint8Array, onAccepted: OnAccepted): Promise<void> {
    return this.#enter((tried) => {
      let grew = false
      const notice = () => {
        grew = true
      }
      tried.on('update', notice)
      try {
        Y.applyUpdate(tried, update)
      } catch {
        throw refused('it cannot be decoded')
      } finally {
        tried.off('update', notice)
      }
      if (tried.store.pendingStructs !== null || tried.store.pendingDs !== null)
        throw refused('it builds on an edit that was not saved; send that one as well')
      return grew ? { update } : null
    }, onAccepted)
  }

  /** Makes an edit on the server's side, as one update; nothing is written when `change` changed nothing. */
  edit(change: (doc: Y.Doc) => void, broughtIn: string | undefined, onAccepted: OnAccepted): Promise<void> {
    return this.#enter((tried) => {
      const made: Uint8Array[] = []
      const notice = (update: Uint8Array) => {
        made.push(update)
      }
      tried.on('update', notice)
      try {
        tried.transact(() => change(tried))
      } finally {
        tried.off('update', notice)
      }
      if (made.length === 0 && broughtIn === undefined) return null
      // A text brought in that changes nothing is still recorded as brought in.
      const update = made.length === 0 ? Y.encodeStateAsUpdate(new Y.Doc()) : Y.mergeUpdates(made)
      return { update, ...(broughtIn === undefined ? {} : { broughtIn }) }
    }, onAccepted)
  }

  /** Resolves when nothing waits any more. */
  async idle(): Promise<void> {
    while (this.#draining !== undefined) await this.#draining
  }

  /** Puts one encoded state in place of the log, to keep the next start quick. */
  async snapshot(): Promise<void> {
    const { store, id, epoch, accepted } = this.#options
    await store.snapshot(id, epoch, Y.encodeStateAsUpdate(accepted))
  }

  #enter(make: Waiting['make'], onAccepted: OnAccepted): Promise<void> {
    return new Promise((resolve, reject) => {
      const settle = (trouble?: Trouble) => (trouble === undefined ? resolve() : reject(trouble))
      this.#waiting.push({ make, onAccepted, settle })
      this.#draining ??= this.#drain()
    })
  }

  async #drain(): Promise<void> {
    // One turn of the event loop, so that what arrived together is flushed together.
    await Promise.resolve()
    while (this.#waiting.length > 0) await this.#writeGroup(this.#waiting.splice(0))
    this.#draining = undefined
  }

  async #writeGroup(group: readonly Waiting[]): Promise<void> {
    const made: { readonly waiting: Waiting; readonly made: LiveUpdate | null }[] = []
    for (const waiting of group) {
      const outcome = this.#try(
        waiting,
        made.flatMap(({ made }) => made ?? []),
      )
      if (outcome instanceof Trouble) waiting.settle(outcome)
      else made.push({ waiting, made: outcome })
    }
    const updates = made.flatMap(({ made }) => made ?? [])
    const { store, id, epoch } = this.#options
    try {
      const first = this.#sequence
      // Also when there is nothing new: an update sent twice is acknowledged only if the first one really is on disk.
      if (made.length > 0) this.#sequence = await store.append(id, epoch, updates)
      this.#accept(made, first)
    } catch (error) {
      this.#rebuild([])
      for (const { waiting } of made) waiting.settle(asTrouble(error))
      return
    }
    await this.#maybeSnapshot()
  }

  #try(waiting: Waiting, before: readonly LiveUpdate[]): LiveUpdate | null | Trouble {
    try {
      const made = waiting.make(this.#tried)
      if (made === null) return null
      const objection = this.#options.objection(readContent(this.#tried)) ?? this.#tooMuchState(made)
      if (objection === undefined) return made
      throw refused(objection)
    } catch (error) {
      this.#rebuild(before)
      if (error instanceof Trouble) return error
      this.#options.log.error({ error }, 'an edit made on the server failed')
      return refused('the server could not make it')
    }
  }

  #tooMuchState({ update }: LiveUpdate): string | undefined {
    const bytes = this.#options.store.liveSize(this.#options.id).bytes + update.length
    return bytes > stateBytesLimit
      ? `the history of this notebook would have ${bytes} bytes; at most ${stateBytesLimit} are kept. Export it and import the copy`
      : undefined
  }

  #accept(made: readonly { readonly waiting: Waiting; readonly made: LiveUpdate | null }[], first: number): void {
    let sequence = first
    for (const { waiting, made: update } of made) {
      if (update !== null) {
        sequence += 1
        Y.applyUpdate(this.#options.accepted, update.update)
      }
      waiting.onAccepted(update?.update ?? null, sequence)
      waiting.settle()
    }
  }

  /** Takes `tried` back to what is on disk and the updates of this group that were admitted so far. */
  #rebuild(admitted: readonly LiveUpdate[]): void {
    this.#tried.destroy()
    this.#tried = documentFrom([Y.encodeStateAsUpdate(this.#options.accepted), ...admitted.map(({ update }) => update)])
  }

  async #maybeSnapshot(): Promise<void> {
    const { store, id, log } = this.#options
    const { updates, bytes } = store.liveSize(id)
    const isDue = updates >= updatesBetweenSnapshots || (updates > 0 && bytes > this.#snapshotAt)
    if (!isDue) return
    try {
      await this.snapshot()
      this.#snapshotAt = store.liveSize(id).bytes * 2 + bytesBetweenSnapshots
    } catch (error) {
      log.warn({ error, id }, 'the live state could not be condensed; the log goes on')
    }
  }
}

const refused = (reason: string) => new Trouble('UPDATE_REFUSED', { reason })
