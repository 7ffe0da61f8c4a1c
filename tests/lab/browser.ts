/**
 * A person's browser as the live document sees it, with a network in between: messages wait until they are delivered. Edits
 * stay pending until acknowledged and are sent again after a break, as the page does.
 */
import * as Y from 'yjs'
import type { Connection, LiveDocument } from '../../server/live/index.js'
import type { CellId, Epoch, ServerMessage } from '../../shared/contracts/index.js'

const toText = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')
const toBytes = (text: string) => new Uint8Array(Buffer.from(text, 'base64'))

export class LabBrowser {
  readonly doc = new Y.Doc()
  epoch: Epoch | undefined
  readonly heard: ServerMessage[] = []
  /** What the server has acknowledged, as one document. */
  readonly acknowledged = new Y.Doc()
  #inbox: ServerMessage[] = []
  /** A fresh one per connection: what the server still says to an earlier one is lost, as on a network. */
  #connection: Connection | undefined
  #unacknowledged: Uint8Array[] = []
  readonly #sent = new Map<number, Uint8Array>()
  #number = 0
  #server: LiveDocument | undefined
  #leave: (() => void) | undefined
  readonly #work: Promise<void>[] = []

  constructor() {
    this.doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin === 'server') return
      this.#unacknowledged.push(update)
      this.#sendUpdate(update)
    })
  }

  get pending(): number {
    return this.#unacknowledged.length
  }

  get title(): string {
    return this.doc.getText('title').toString()
  }

  connect(server: LiveDocument): void {
    this.#server = server
    this.#number = 0
    this.#sent.clear()
    const connection: Connection = {
      send: (message) => {
        if (this.#connection === connection) this.#inbox.push(message)
      },
      close: () => {
        if (this.#connection === connection) this.disconnect()
      },
    }
    this.#connection = connection
    this.#leave = server.join(connection)
    const stateVector = toText(Y.encodeStateVector(this.doc))
    this.#say({ type: 'hello', stateVector, ...(this.epoch === undefined ? {} : { epoch: this.epoch }) })
  }

  disconnect(): void {
    this.#leave?.()
    this.#server = undefined
    this.#connection = undefined
    this.#inbox = []
  }

  /** Delivers up to `count` waiting messages. */
  deliver(count = Number.POSITIVE_INFINITY): void {
    for (let delivered = 0; delivered < count && this.#inbox.length > 0; delivered += 1) {
      const message = this.#inbox.shift()
      if (message !== undefined) this.#hear(message)
    }
  }

  /** Resolves when the server has answered everything sent so far. */
  async answered(): Promise<void> {
    await Promise.allSettled(this.#work.splice(0))
  }

  type(at: number, text: string): void {
    this.doc.getText('title').insert(Math.min(at, this.title.length), text)
  }

  source(id: CellId | string): Y.Text {
    const cell = this.doc.getMap<Y.Map<unknown>>('cells').get(id)
    const source = cell?.get('source')
    if (!(source instanceof Y.Text)) throw new Error(`no cell ${id}`)
    return source
  }

  /** Sends everything not acknowledged once more. */
  resend(): void {
    const waiting = this.#unacknowledged
    if (waiting.length === 0) return
    const merged = Y.mergeUpdates(waiting)
    this.#unacknowledged = [merged]
    this.#sendUpdate(merged)
  }

  #sendUpdate(update: Uint8Array): void {
    if (this.#server === undefined || this.epoch === undefined) return
    this.#number += 1
    this.#sent.set(this.#number, update)
    this.#say({ type: 'update', epoch: this.epoch, number: this.#number, update: toText(update) })
  }

  #say(message: Parameters<LiveDocument['receive']>[1]): void {
    if (this.#server !== undefined && this.#connection !== undefined)
      this.#work.push(this.#server.receive(this.#connection, message))
  }

  #hear(message: ServerMessage): void {
    this.heard.push(message)
    if (message.type === 'welcome') {
      if (message.rebase) throw new Error('the lab browser does not rebase')
      this.epoch = message.epoch
      Y.applyUpdate(this.doc, toBytes(message.update), 'server')
      Y.applyUpdate(this.acknowledged, toBytes(message.update))
      this.resend()
    } else if (message.type === 'edited') {
      Y.applyUpdate(this.doc, toBytes(message.update), 'server')
      Y.applyUpdate(this.acknowledged, toBytes(message.update))
    } else if (message.type === 'saved') {
      const update = this.#sent.get(message.number)
      if (update === undefined) return
      Y.applyUpdate(this.acknowledged, update)
      this.#unacknowledged = this.#unacknowledged.filter((other) => other !== update)
    }
  }
}
