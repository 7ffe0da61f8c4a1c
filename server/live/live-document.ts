/**
 * One open notebook: the accepted document, the people connected to it, its file. Speaks the messages of
 * `shared/contracts/messages.ts` through any connection that can send; sockets are elsewhere.
 */
import * as Y from 'yjs'
import {
  type CellResult,
  type ChangeTitleBlock,
  type ClientMessage,
  type Epoch,
  limits,
  type Notebook,
  type NotebookId,
  type ServerMessage,
  type TitleBlock,
  Trouble,
  writeNotebook,
} from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { Log } from '../log.js'
import { asTrouble, type Store } from '../store/index.js'
import { fromBase64, toBase64 } from './base64.js'
import { type LiveContent, readContent } from './document.js'
import { FileMirror } from './file-mirror.js'
import { carryLateWords, hasLateWords } from './late-words.js'
import {
  beyondLimits,
  contentOfNotebook,
  mergeRest,
  notebookOf,
  type RestOfNotebook,
  restOf,
} from './notebook-content.js'
import { applyOutsideChange } from './outside-change.js'
import { changedTitleBlock, withField } from './title-block.js'
import { UpdateQueue } from './update-queue.js'

/** A person's browser, as far as a live document knows it. */
export interface Connection {
  send(message: ServerMessage): void
  close(): void
}

export interface LiveDocumentOptions {
  readonly id: NotebookId
  readonly store: Store
  readonly clock: Clock
  readonly log: Log
  readonly epoch: Epoch
  readonly sequence: number
  readonly accepted: Y.Doc
  readonly rest: RestOfNotebook
  /** Text of the notebook file as last written or taken in. */
  readonly known: string
}

export class LiveDocument {
  readonly id: NotebookId
  readonly epoch: Epoch
  readonly #accepted: Y.Doc
  readonly #queue: UpdateQueue
  readonly #file: FileMirror
  readonly #log: Log
  readonly #connections = new Set<Connection>()
  #titleTurn: Promise<unknown> = Promise.resolve()
  #rest: RestOfNotebook
  #restBytes: number
  #content: LiveContent | undefined
  #reported = ''

  constructor({ id, store, clock, log, epoch, sequence, accepted, rest, known }: LiveDocumentOptions) {
    this.id = id
    this.epoch = epoch
    this.#accepted = accepted
    this.#log = log
    this.#rest = rest
    this.#restBytes = bytesOfRest(rest)
    const objection = (content: LiveContent) => beyondLimits(content, this.#restBytes)
    this.#queue = new UpdateQueue({ id, epoch, sequence, store, log, accepted, objection })
    this.#file = new FileMirror({
      id,
      store,
      clock,
      log,
      known,
      notebook: () => {
        this.#reportIgnored()
        return this.notebook
      },
      takeIn: (base, outside, hash) => this.takeIn(base, outside, hash),
    })
  }

  get content(): LiveContent {
    this.#content ??= readContent(this.#accepted)
    return this.#content
  }

  /** The notebook as it stands, everything in it acknowledged. */
  get notebook(): Notebook {
    return { ...notebookOf(this.content, this.#rest), id: this.id }
  }

  get readers(): number {
    return this.#connections.size
  }

  /** Adds a browser; the returned function takes it out. */
  join(connection: Connection): () => void {
    this.#connections.add(connection)
    this.#sayWhoIsHere()
    return () => {
      if (this.#connections.delete(connection)) this.#sayWhoIsHere()
    }
  }

  async receive(connection: Connection, message: ClientMessage): Promise<void> {
    if (message.type === 'ping') connection.send({ type: 'pong' })
    else if (message.type === 'hello') this.#welcome(connection, message)
    else await this.#update(connection, message)
  }

  /** Shares accepted results with every browser but the one that sent them. */
  shareResults(results: readonly CellResult[], from?: Connection): void {
    if (results.length > 0) this.#broadcast({ type: 'results', results: [...results] }, from)
  }

  /** Says something to every browser that has the notebook open. */
  announce(message: ServerMessage): void {
    this.#broadcast(message)
  }

  /** A change made on the server's side (a new title); resolves when it is on disk. */
  async edit(change: (doc: Y.Doc) => void, broughtIn?: string): Promise<void> {
    await this.#queue.edit(change, broughtIn, (update, sequence) => this.#announce(update, sequence))
  }

  /** Brings a file that someone else changed into the document. */
  async takeIn(base: Notebook, outside: Notebook, textHash: string): Promise<void> {
    const before = contentOfNotebook(base)
    const after = contentOfNotebook(outside)
    await this.edit((doc) => applyOutsideChange(doc, before, after), textHash)
    const titleBlock = JSON.stringify(this.#rest.titleBlock)
    this.#setRest(mergeRest(restOf(base), restOf(outside), this.#rest))
    if (JSON.stringify(this.#rest.titleBlock) !== titleBlock) this.#broadcast(this.#titleBlockMessage())
  }

  /**
   * Changes one field of the title block, which is kept in the file alone: resolves when that is on disk, with the block as it then
   * stands. Throws TITLE_BLOCK_CHANGED, BODY_INVALID, or STORE_UNAVAILABLE after taking the change back.
   */
  changeTitleBlock(change: ChangeTitleBlock): Promise<TitleBlock> {
    const mine = this.#titleTurn.then(() => this.#changeTitleBlock(change))
    this.#titleTurn = mine.catch(() => undefined)
    return mine
  }

  async #changeTitleBlock(change: ChangeTitleBlock): Promise<TitleBlock> {
    const before = this.#rest.titleBlock?.[change.field]
    this.#setRest({ ...this.#rest, titleBlock: changedTitleBlock(this.#rest.titleBlock ?? {}, change) })
    try {
      if (!(await this.#file.writeThrough()))
        throw new Trouble('STORE_UNAVAILABLE', { reason: 'the notebook file was changed outside and cannot be read' })
    } catch (error) {
      this.#setRest({ ...this.#rest, titleBlock: withField(this.#rest.titleBlock ?? {}, change.field, before) })
      throw asTrouble(error)
    }
    this.#broadcast(this.#titleBlockMessage())
    return this.#rest.titleBlock ?? {}
  }

  #titleBlockMessage(): ServerMessage {
    return { type: 'titleBlock', titleBlock: this.#rest.titleBlock ?? {} }
  }

  #setRest(rest: RestOfNotebook): void {
    this.#rest = rest
    this.#restBytes = bytesOfRest(rest)
    // A new object also when only the title block changed: what is drawn from it is drawn again.
    this.#content = undefined
  }

  /** Brings the file up to date now; rejects with STORE_UNAVAILABLE when it cannot be written. */
  async flush(): Promise<void> {
    await this.#queue.idle()
    await this.#file.flush().catch((error: unknown) => {
      throw asTrouble(error)
    })
  }

  scheduleFile(): void {
    this.#file.schedule()
  }

  /** Looks whether the file was changed outside. */
  async lookAtFile(): Promise<void> {
    await this.#file.look()
  }

  /** Sends everyone away and writes what is left. The log already holds everything acknowledged, whatever happens here. */
  async close(): Promise<void> {
    for (const connection of this.#connections) connection.close()
    this.#connections.clear()
    await this.#queue.idle()
    await this.#file.close().catch((error: unknown) => {
      this.#log.warn(
        { error, id: this.id },
        'the notebook file could not be written at closing; its log holds everything',
      )
    })
    await this.#queue.idle()
  }

  #welcome(connection: Connection, message: Extract<ClientMessage, { type: 'hello' }>): void {
    const rebase = message.epoch !== undefined && message.epoch !== this.epoch
    try {
      // A stale client starts from nothing, so it gets everything.
      const update = rebase
        ? Y.encodeStateAsUpdate(this.#accepted)
        : Y.encodeStateAsUpdate(this.#accepted, fromBase64(message.stateVector))
      connection.send({
        type: 'welcome',
        epoch: this.epoch,
        sequence: this.#queue.sequence,
        update: toBase64(update),
        stateVector: toBase64(Y.encodeStateVector(this.#accepted)),
        rebase,
      })
      connection.send(this.#titleBlockMessage())
    } catch {
      const trouble = new Trouble('UPDATE_REFUSED', { reason: 'the state vector of the greeting cannot be decoded' })
      connection.send({ type: 'refused', ...trouble.toBody() })
    }
  }

  async #update(connection: Connection, message: Extract<ClientMessage, { type: 'update' }>): Promise<void> {
    const { number } = message
    try {
      if (message.epoch !== this.epoch)
        throw new Trouble('UPDATE_REFUSED', {
          reason: `it belongs to epoch "${message.epoch}", the document is in epoch "${this.epoch}"; say hello again`,
        })
      const update = fromBase64(message.update)
      if (update.length > limits.updateBytes)
        throw new Trouble('UPDATE_REFUSED', {
          reason: `it has ${update.length} bytes; at most ${limits.updateBytes} are accepted`,
        })
      await this.#queue.submit(update, (accepted, sequence) => {
        connection.send({ type: 'saved', epoch: this.epoch, sequence, number })
        this.#announce(accepted, sequence, connection)
      })
    } catch (error) {
      const trouble = asTrouble(error)
      connection.send({ type: 'refused', ...trouble.toBody(), number })
    }
  }

  /** On disk and in the document: tell the others, and bring the file up to date soon. */
  #announce(update: Uint8Array | null, sequence: number, from?: Connection): void {
    if (update === null) return
    this.#content = undefined
    this.#broadcast({ type: 'edited', epoch: this.epoch, sequence, update: toBase64(update) }, from)
    this.#file.schedule()
    if (hasLateWords(this.#accepted))
      this.edit(carryLateWords).catch((error: unknown) =>
        this.#log.warn({ error, id: this.id }, 'late words stay in a cell that was joined with another'),
      )
  }

  /** What an update put into the document beside title and cells is kept in its history, read by nobody, and named once. */
  #reportIgnored(): void {
    const ignored = this.content.ignored.join(', ')
    if (ignored !== this.#reported && ignored !== '')
      this.#log.warn({ id: this.id, ignored }, 'parts of the live document have no meaning here and are passed over')
    this.#reported = ignored
  }

  #sayWhoIsHere(): void {
    this.#broadcast({ type: 'present', readers: this.#connections.size })
  }

  #broadcast(message: ServerMessage, except?: Connection): void {
    for (const connection of this.#connections) if (connection !== except) connection.send(message)
  }
}

function bytesOfRest(rest: RestOfNotebook): number {
  return Buffer.byteLength(writeNotebook({ ...rest, title: '', cells: [] })) + 2000
}
