/** The live document over a WebSocket: text frames of JSON, one message each. */
import type { WebSocket } from 'ws'
import { ClientMessage, describeIssues, limits, type ServerMessage, Trouble } from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { Connection, LiveDocument } from '../live/index.js'
import type { Log } from '../log.js'
import { asTrouble } from '../store/index.js'
import { type App, NotebookParams, type RouteParts } from './parts.js'

/** An update as base64 in its message. */
export const frameBytes = Math.ceil((limits.updateBytes * 4) / 3) + 1024
/** Messages a connection may send within ten seconds; typing sends about a hundred. */
const messagesPerWindow = 2000
const windowLength = 10_000
/** A browser that does not take what it is sent is disconnected before its backlog fills the memory. */
const backlogBytes = 32 * 1024 * 1024
/** Browsers send a ping every 15 s; after three without one the connection counts as lost. */
const silence = 45_000
/** Time to answer a goodbye. */
const farewell = 1000

export function liveRoute(app: App, { documents, clock, log }: RouteParts): void {
  app.get(
    '/api/notebooks/:id/live',
    {
      websocket: true,
      schema: { summary: 'Live document: see messages.ts', params: NotebookParams },
      // Before the upgrade, so that an unknown notebook is an ordinary refusal.
      preHandler: async ({ params }) => {
        await documents.get((params as { id: LiveDocument['id'] }).id)
      },
    },
    (socket, { params }) => {
      const { id } = params as { id: LiveDocument['id'] }
      const session = new SocketSession(socket, clock, log)
      documents.get(id).then(
        (document) => session.attach(document),
        (error: unknown) => session.end(asTrouble(error)),
      )
    },
  )
}

class SocketSession implements Connection {
  readonly #socket: WebSocket
  readonly #clock: Clock
  readonly #log: Log
  /** Messages that came before the document was open. */
  #early: string[] | undefined = []
  #document: LiveDocument | undefined
  #leave: (() => void) | undefined
  #windowEnd = 0
  #inWindow = 0
  #cancelSilence: (() => void) | undefined

  constructor(socket: WebSocket, clock: Clock, log: Log) {
    this.#socket = socket
    this.#clock = clock
    this.#log = log
    socket.on('message', (data, isBinary) => this.#hear(isBinary ? undefined : data.toString()))
    socket.on('close', () => this.#ended())
    socket.on('error', (error) => log.info({ error }, 'a live connection failed'))
    this.#waitForWord()
  }

  attach(document: LiveDocument): void {
    if (this.#socket.readyState !== this.#socket.OPEN) return
    this.#document = document
    this.#leave = document.join(this)
    const early = this.#early ?? []
    this.#early = undefined
    for (const text of early) this.#receive(text, document)
  }

  /** Never throws: what cannot be sent is sent again after the next greeting. */
  send(message: ServerMessage): void {
    if (this.#socket.readyState !== this.#socket.OPEN) return
    if (this.#socket.bufferedAmount > backlogBytes) this.#socket.terminate()
    else this.#socket.send(JSON.stringify(message))
  }

  close(): void {
    this.#sayGoodbye(1001)
  }

  end(trouble: Trouble): void {
    this.send({ type: 'refused', ...trouble.toBody() })
    this.#sayGoodbye(1008)
  }

  /** A browser that does not answer the goodbye is cut off: a server that ends does not wait for it. */
  #sayGoodbye(code: number): void {
    this.#socket.close(code)
    this.#clock.later(farewell, () => this.#socket.terminate())
  }

  #hear(text: string | undefined): void {
    this.#waitForWord()
    const now = this.#clock.now()
    if (now >= this.#windowEnd) {
      this.#windowEnd = now + windowLength
      this.#inWindow = 0
    }
    this.#inWindow += 1
    if (this.#inWindow > messagesPerWindow)
      this.end(new Trouble('TOO_MANY_REQUESTS', { seconds: Math.ceil((this.#windowEnd - now) / 1000) }))
    else if (text === undefined) this.end(invalid('a binary frame came; messages are text frames of JSON'))
    else if (this.#document !== undefined) this.#receive(text, this.#document)
    else if ((this.#early?.length ?? 0) < 100) this.#early?.push(text)
  }

  #receive(text: string, document: LiveDocument): void {
    const message = readMessage(text)
    if (message instanceof Trouble) {
      this.send({ type: 'refused', ...message.toBody() })
      return
    }
    document.receive(this, message).catch((error: unknown) => {
      this.#log.error({ error, id: document.id }, 'a live message could not be handled')
      this.end(new Trouble('SERVER_FAULT', { reference: 'live' }))
    })
  }

  #waitForWord(): void {
    this.#cancelSilence?.()
    this.#cancelSilence = this.#clock.later(silence, () => this.#socket.terminate())
  }

  #ended(): void {
    this.#cancelSilence?.()
    this.#leave?.()
    this.#leave = undefined
    this.#early = undefined
  }
}

function readMessage(text: string): ClientMessage | Trouble {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return invalid('a message is not JSON')
  }
  const parsed = ClientMessage.safeParse(value)
  return parsed.success ? parsed.data : invalid(describeIssues(parsed.error))
}

const invalid = (problems: string) => new Trouble('BODY_INVALID', { problems })
