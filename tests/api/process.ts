/** Starting and killing real server processes, and a browser's side of a real live connection. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { WebSocket } from 'ws'
import * as Y from 'yjs'
import { type Epoch, ServerMessage } from '../../shared/contracts/index.js'

const root = fileURLToPath(new URL('../..', import.meta.url))
/** Inside `.build`, from where the server finds the rest of the build as usual. */
const bundleFolder = join(root, '.build', `lab-${process.pid}`)

/** Bundles the program once, so that the test does not depend on an earlier build. */
export async function bundleServedProcess(): Promise<string> {
  await build({
    root,
    logLevel: 'error',
    configFile: false,
    build: {
      ssr: join(root, 'tests/lab/served-process.ts'),
      outDir: bundleFolder,
      emptyOutDir: true,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'served-process.js' } },
    },
  })
  return join(bundleFolder, 'served-process.js')
}

export const removeBundle = () => rm(bundleFolder, { recursive: true, force: true })
export const temporaryFolder = () => mkdtemp(join(tmpdir(), 'hoverfolio-process-'))

export interface ServedProcess {
  readonly address: string
  readonly child: ChildProcess
  /** kill -9, and waits until it is gone. */
  kill(): Promise<void>
}

export async function startProcess(program: string, dataFolder: string): Promise<ServedProcess> {
  const child = spawn(process.execPath, [program, dataFolder], { stdio: ['ignore', 'pipe', 'inherit'] })
  const [address] = (await once(createInterface({ input: child.stdout }), 'line')) as [string]
  return {
    address,
    child,
    async kill() {
      const gone = once(child, 'exit')
      child.kill('SIGKILL')
      await gone
    },
  }
}

/** A live connection over a real socket. */
export class SocketBrowser {
  readonly doc = new Y.Doc()
  readonly heard: ServerMessage[] = []
  readonly #socket: WebSocket
  #epoch: Epoch | undefined
  #number = 0
  #saved = 0

  constructor(address: string, id: string) {
    const url = new URL(`/api/notebooks/${id}/live`, address)
    this.#socket = new WebSocket(`ws://${url.host}${url.pathname}`, { origin: url.origin })
    this.#socket.on('open', () => this.#say({ type: 'hello', stateVector: encode(Y.encodeStateVector(this.doc)) }))
    this.#socket.on('message', (data) => this.#hear(ServerMessage.parse(JSON.parse(String(data)))))
    this.#socket.on('error', () => undefined)
    this.doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin === 'server' || this.#epoch === undefined) return
      this.#number += 1
      this.#say({ type: 'update', epoch: this.#epoch, number: this.#number, update: encode(update) })
    })
  }

  get title(): string {
    return this.doc.getText('title').toString()
  }

  get allSaved(): boolean {
    return this.#epoch !== undefined && this.#saved === this.#number
  }

  type(at: number, text: string): void {
    this.doc.getText('title').insert(at, text)
  }

  close(): void {
    this.#socket.close()
  }

  sendText(text: string): void {
    this.#socket.send(text)
  }

  #say(message: object): void {
    this.#socket.send(JSON.stringify(message))
  }

  #hear(message: ServerMessage): void {
    this.heard.push(message)
    if (message.type === 'welcome') this.#epoch = message.epoch
    if (message.type === 'welcome' || message.type === 'edited')
      Y.applyUpdate(this.doc, new Uint8Array(Buffer.from(message.update, 'base64')), 'server')
    if (message.type === 'saved') this.#saved = message.number
  }
}

const encode = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')

/** Waits until `condition` holds; says what it waited for when it never does. */
export async function until(what: string, condition: () => boolean | Promise<boolean>): Promise<void> {
  const end = Date.now() + 15_000
  while (!(await condition())) {
    if (Date.now() > end) throw new Error(`waited in vain until ${what}`)
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
}
