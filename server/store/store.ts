/**
 * What keeps notebooks: asynchronous from the first day, so that a database can take the place of files. Every
 * implementation passes the suite in `tests/unit/server/store/conformance.ts`.
 *
 * A promise that resolves means "on disk": the caller may acknowledge. A promise that rejects means "perhaps not": the
 * caller must not acknowledge, and may send the same again.
 */
import type { CellResult, Epoch, NotebookId } from '../../shared/contracts/index.js'

/** One edit of a live document, as Yjs encodes it. */
export interface LiveUpdate {
  readonly update: Uint8Array
  /** Hash of the notebook text that this update brought in from outside, so that a restart does not bring it in twice. */
  readonly broughtIn?: string
}

export interface LiveState {
  readonly epoch: Epoch
  /** Number of updates since the epoch began. */
  readonly sequence: number
  /** Encoded state, then the updates since, in order. */
  readonly updates: readonly Uint8Array[]
  readonly broughtIn?: string
}

export interface ListedNotebook {
  readonly id: NotebookId
  /** Milliseconds since 1970. */
  readonly changed: number
  readonly title: string
  readonly question?: string
  readonly cells: number
}

/** A file that is in the folder but is no notebook this version can open. It is named, never touched. */
export interface RefusedFile {
  readonly file: string
  readonly reason: string
}

export interface Listing {
  readonly notebooks: readonly ListedNotebook[]
  readonly binned: readonly ListedNotebook[]
  readonly refused: readonly RefusedFile[]
}

export interface Store {
  /** Takes the lease and mends what a kill left half done. Rejects when another process holds the lease. */
  start(): Promise<void>
  /** Gives the lease back. */
  close(): Promise<void>
  /** Grows with every holder; a write by an older holder is refused. */
  readonly fencingToken: number

  list(): Promise<Listing>
  /** Makes an id from `wish` (a title or a file name), different from all ids in use, and stores what `textFor` gives. */
  create(wish: string, textFor: (id: NotebookId) => string): Promise<NotebookId>
  bin(id: NotebookId): Promise<void>
  /** Takes the notebook out of the bin, under another id when its own was given away meanwhile. */
  restore(id: NotebookId): Promise<NotebookId>
  /** Deletes for good what is in the bin under that id, with all that belongs to it. */
  discard(id: NotebookId): Promise<void>

  /** The notebook's text as it stands; `undefined` when there is none. Throws NOTEBOOK_REFUSED for what cannot be text. */
  readText(id: NotebookId): Promise<string | undefined>
  /** Cheap mark that changes whenever the text may have changed. */
  textMark(id: NotebookId): Promise<string | undefined>
  /**
   * Replaces the text if it still is `expected`; otherwise leaves it alone and says `changed outside`. A missing text is
   * written: a notebook that is open is not lost because its file was.
   */
  replaceText(id: NotebookId, expected: string, text: string): Promise<'written' | 'changed outside'>
  /** Texts that this store last wrote or took in, newest last: what an outside change is compared with. */
  knownTexts(id: NotebookId): Promise<readonly string[]>
  /** Records that `text`, found in the store, is what the live document now holds. */
  keepKnownText(id: NotebookId, text: string): Promise<void>

  openLive(id: NotebookId): Promise<LiveState | undefined>
  /** Begins an epoch with an encoded state, in place of any earlier one. */
  beginLive(id: NotebookId, epoch: Epoch, state: LiveUpdate): Promise<void>
  /**
   * Appends and flushes; all updates of one call share one flush. Resolves with the sequence of the last, when that one and
   * all before it are on disk; so with no updates it makes sure of those that `openLive` gave.
   */
  append(id: NotebookId, epoch: Epoch, updates: readonly LiveUpdate[]): Promise<number>
  /** Puts an encoded state in place of the updates it holds. */
  snapshot(id: NotebookId, epoch: Epoch, state: Uint8Array): Promise<void>
  /** Bytes kept for the live document and updates since its last snapshot, to decide on the next one. */
  liveSize(id: NotebookId): { readonly bytes: number; readonly updates: number }
  closeLive(id: NotebookId): Promise<void>

  readResults(id: NotebookId): Promise<readonly CellResult[]>
  writeResults(id: NotebookId, results: readonly CellResult[]): Promise<void>

  /** Immutable texts by hash, oldest first. One that is taken away leaves its place empty: none is written over. */
  revisions(id: NotebookId): Promise<readonly { readonly hash: string; readonly text: string }[]>
  addRevision(id: NotebookId, text: string): Promise<string>
  /** Cheap mark that changes whenever these texts may have changed. */
  revisionsMark(id: NotebookId): Promise<string>
}
