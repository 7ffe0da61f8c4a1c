/**
 * One person's connection to the live document: edits go out in order, one group at a time, and count as saved only when the
 * server acknowledged them; until then they are also kept in this browser. Sending again after a break is harmless, because Yjs
 * updates are. No DOM here: socket, keep and clock are handed in.
 */
import * as Y from 'yjs'
import {
  type CellResult,
  type ClientMessage,
  type Epoch,
  limits,
  type RevisionMark,
  ServerMessage,
  type TitleBlock,
} from '../../shared/contracts/index.js'
import { fromBase64, toBase64 } from './base64.js'
import { fromServer, snapshotOf } from './document.js'
import type { Keep, KeptKey, KeptWork } from './keep.js'
import { carryOver } from './rebase.js'
import type { SavingState } from './saving-state.js'
import { UnsavedEdits } from './unsaved.js'

/** The part of a WebSocket that a session uses. */
export interface Socket {
  send(text: string): void
  close(): void
  onopen: (() => void) | null
  onmessage: ((event: { data: unknown }) => void) | null
  onclose: (() => void) | null
}

export interface Clock {
  /** Calls back after so many milliseconds; the answer cancels it. */
  after(milliseconds: number, call: () => void): () => void
  /** Between 0 and 1, so that many browsers do not return at the same instant. */
  random(): number
}

export interface SessionEvents {
  /** The document is another one now (first welcome, or a new epoch): bind to it afresh. */
  onDocument(doc: Y.Doc): void
  onSaving(state: SavingState): void
  onResults(results: readonly CellResult[]): void
  onTitleBlock(titleBlock: TitleBlock): void
  onRevision(mark: RevisionMark): void
  onPresent(readers: number): void
}

const firstPause = 400
const longestPause = 10_000
/** A connection on which nothing was heard for two of these is taken as lost. */
const heartbeat = 15_000

export class LiveSession {
  readonly #openSocket: () => Socket
  readonly #keep: Keep
  readonly #clock: Clock
  readonly #events: SessionEvents
  readonly #unsaved = new UnsavedEdits()
  #keptWork: readonly KeptWork[]
  #doc = new Y.Doc()
  /** What the server has confirmed: the ground a rebase stands on. */
  #confirmed = new Y.Doc()
  #epoch: Epoch | undefined
  #socket: Socket | undefined
  #connected = false
  #number = 0
  #travelling: Uint8Array | undefined
  #refusal: string | undefined
  #pause = firstPause
  #cancelRetry: (() => void) | undefined
  #cancelHeartbeat: (() => void) | undefined
  #heard = false
  #closed = false

  constructor(
    openSocket: () => Socket,
    keep: Keep,
    keptWork: readonly KeptWork[],
    clock: Clock,
    events: SessionEvents,
  ) {
    this.#openSocket = openSocket
    this.#keep = keep
    this.#keptWork = keptWork
    this.#clock = clock
    this.#events = events
    this.#connect()
  }

  get state(): SavingState {
    return {
      connected: this.#connected,
      ready: this.#epoch !== undefined,
      unsaved: this.#unsaved.count,
      ...(this.#refusal === undefined ? {} : { refusal: this.#refusal }),
    }
  }

  /** The network came back, or the person asks: try at once. */
  retryNow(): void {
    if (this.#connected || this.#closed) return
    this.#pause = firstPause
    this.#drop()
    this.#connect()
  }

  /** The network is known to be gone: do not wait for the socket to notice. */
  lose(): void {
    if (this.#socket !== undefined) this.#lost(this.#socket)
  }

  /** The page is being left, perhaps for good: what is unsaved is kept at once, and sent without waiting for an answer. */
  leave(): void {
    const unsaved = this.#unsaved.all()
    if (unsaved === null || this.#epoch === undefined) return
    this.#keep.hold(this.#epoch, Y.encodeStateAsUpdate(this.#confirmed), unsaved)
    this.#unsaved.turnBack()
    this.#depart()
  }

  close(): void {
    this.#closed = true
    this.#drop()
  }

  #connect(): void {
    this.#cancelRetry?.()
    const socket = this.#openSocket()
    this.#socket = socket
    socket.onopen = () => {
      const stateVector = toBase64(Y.encodeStateVector(this.#doc))
      this.#say({ type: 'hello', stateVector, ...(this.#epoch === undefined ? {} : { epoch: this.#epoch }) })
      this.#beat()
    }
    socket.onmessage = (event) => this.#hear(event.data)
    socket.onclose = () => this.#lost(socket)
  }

  #drop(): void {
    this.#cancelRetry?.()
    this.#cancelHeartbeat?.()
    const socket = this.#socket
    this.#socket = undefined
    this.#connected = false
    this.#unsaved.turnBack()
    if (socket === undefined) return
    socket.onopen = null
    socket.onmessage = null
    socket.onclose = null
    socket.close()
  }

  #lost(socket: Socket): void {
    if (socket !== this.#socket || this.#closed) return
    this.#drop()
    this.#events.onSaving(this.state)
    const pause = this.#pause * (0.75 + this.#clock.random() / 2)
    this.#pause = Math.min(this.#pause * 2, longestPause)
    this.#cancelRetry = this.#clock.after(pause, () => this.#connect())
  }

  #beat(): void {
    this.#cancelHeartbeat = this.#clock.after(heartbeat, () => {
      if (!this.#heard) {
        if (this.#socket !== undefined) this.#lost(this.#socket)
        return
      }
      this.#heard = false
      this.#say({ type: 'ping' })
      this.#beat()
    })
  }

  #say(message: ClientMessage): void {
    this.#socket?.send(JSON.stringify(message))
  }

  #hear(data: unknown): void {
    this.#heard = true
    const message = readMessage(data)
    if (message === null) return
    switch (message.type) {
      case 'welcome':
        this.#welcome(message)
        break
      case 'saved':
        this.#saved(message.number)
        break
      case 'edited':
        this.#edited(message.epoch, fromBase64(message.update))
        break
      case 'results':
        this.#events.onResults(message.results)
        break
      case 'titleBlock':
        this.#events.onTitleBlock(message.titleBlock)
        break
      case 'revision':
        this.#events.onRevision(message.mark)
        break
      case 'present':
        this.#events.onPresent(message.readers)
        break
      case 'refused':
        this.#refused(message.code, message.message)
        break
      case 'pong':
        break
    }
  }

  #welcome(message: Extract<ServerMessage, { type: 'welcome' }>): void {
    const first = this.#epoch === undefined
    const update = fromBase64(message.update)
    this.#connected = true
    this.#pause = firstPause
    this.#number = 0
    this.#refusal = undefined
    if (first || message.rebase || message.epoch !== this.#epoch) this.#beginEpoch(message.epoch, update)
    else {
      Y.applyUpdate(this.#confirmed, update, fromServer)
      Y.applyUpdate(this.#doc, update, fromServer)
      this.#offerMissing(fromBase64(message.stateVector))
    }
    this.#depart()
    this.#events.onSaving(this.state)
  }

  /** A new life of the document: its text from the server, my unsaved work carried over. */
  #beginEpoch(epoch: Epoch, update: Uint8Array): void {
    const mine = this.#unsaved.count > 0 ? { confirmed: snapshotOf(this.#confirmed), doc: snapshotOf(this.#doc) } : null
    const doc = new Y.Doc()
    const confirmed = new Y.Doc()
    Y.applyUpdate(doc, update, fromServer)
    Y.applyUpdate(confirmed, update, fromServer)
    this.#doc.destroy()
    this.#confirmed.destroy()
    this.#doc = doc
    this.#confirmed = confirmed
    this.#epoch = epoch
    const superseded = this.#unsaved.clear()
    doc.on('update', (change: Uint8Array, origin: unknown) => {
      if (origin !== fromServer) this.#made(change)
    })
    if (mine !== null) carryOver(mine.confirmed, mine.doc, doc)
    this.#takeUpKeptWork(epoch)
    void this.#forget(superseded)
    this.#events.onDocument(doc)
  }

  /** Work that an earlier visit could not deliver. */
  #takeUpKeptWork(epoch: Epoch): void {
    for (const work of this.#keptWork) {
      if (work.epoch === epoch) {
        for (const edit of work.edits) this.#unsaved.add({ update: edit.update, kept: Promise.resolve(edit.key) })
        for (const edit of work.edits) Y.applyUpdate(this.#doc, edit.update, fromServer)
        continue
      }
      const before = new Y.Doc()
      if (work.base !== null) Y.applyUpdate(before, work.base)
      const confirmed = snapshotOf(before)
      for (const edit of work.edits) Y.applyUpdate(before, edit.update)
      carryOver(confirmed, snapshotOf(before), this.#doc)
      void this.#keep.remove(work.edits.map((edit) => edit.key))
    }
    this.#keptWork = []
  }

  /** If the server lacks something this browser knows (it was restored from an older copy), it gets it back. */
  #offerMissing(serverVector: Uint8Array): void {
    const theirs = Y.decodeStateVector(serverVector)
    const own = Y.decodeStateVector(Y.encodeStateVector(this.#doc))
    const lacks = [...own].some(([client, clock]) => clock > (theirs.get(client) ?? 0))
    if (!lacks) return
    const missing = Y.encodeStateAsUpdate(this.#doc, serverVector)
    if (missing.length <= limits.updateBytes) this.#unsaved.add({ update: missing, kept: Promise.resolve(null) })
  }

  #made(update: Uint8Array): void {
    const epoch = this.#epoch
    if (epoch === undefined) return
    const base = this.#unsaved.count === 0 ? Y.encodeStateAsUpdate(this.#confirmed) : null
    const kept = this.#keep.add(epoch, update, base).catch(() => null)
    this.#unsaved.add({ update, kept })
    this.#refusal = undefined
    this.#depart()
    this.#events.onSaving(this.state)
  }

  #depart(): void {
    if (!this.#connected || this.#epoch === undefined || this.#refusal !== undefined) return
    const update = this.#unsaved.depart()
    if (update === null) return
    this.#number += 1
    this.#travelling = update
    this.#say({ type: 'update', epoch: this.#epoch, number: this.#number, update: toBase64(update) })
  }

  #saved(number: number): void {
    if (number !== this.#number || this.#travelling === undefined) return
    Y.applyUpdate(this.#confirmed, this.#travelling, fromServer)
    this.#travelling = undefined
    void this.#forget(this.#unsaved.arrived())
    if (this.#unsaved.count === 0) this.#keep.release()
    this.#depart()
    this.#events.onSaving(this.state)
  }

  #edited(epoch: Epoch, update: Uint8Array): void {
    if (epoch !== this.#epoch) {
      // The document began a new life while we were connected: say hello again and be told how to go on.
      if (this.#socket !== undefined) this.#lost(this.#socket)
      return
    }
    Y.applyUpdate(this.#confirmed, update, fromServer)
    Y.applyUpdate(this.#doc, update, fromServer)
  }

  #refused(code: string, message: string): void {
    this.#unsaved.turnBack()
    this.#travelling = undefined
    this.#refusal = message
    this.#events.onSaving(this.state)
    if (code !== 'STORE_UNAVAILABLE' && code !== 'TOO_MANY_REQUESTS' && code !== 'SERVER_FAULT') return
    this.#cancelRetry = this.#clock.after(this.#pause, () => {
      this.#refusal = undefined
      this.#depart()
      this.#events.onSaving(this.state)
    })
    this.#pause = Math.min(this.#pause * 2, longestPause)
  }

  async #forget(edits: readonly { readonly kept: Promise<KeptKey | null> }[]): Promise<void> {
    const keys = await Promise.all(edits.map((edit) => edit.kept))
    await this.#keep.remove(keys.filter((key) => key !== null)).catch(() => undefined)
  }
}

function readMessage(data: unknown): ServerMessage | null {
  try {
    const parsed = ServerMessage.safeParse(JSON.parse(String(data)))
    return parsed.success ? parsed.data : null
  } catch {
    return null
  }
}
