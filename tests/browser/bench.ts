/** A built server on a free port with a data folder of its own, and a browser: what every journey needs. */
import { existsSync } from 'node:fs'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright'
import type { RunningServer } from '../../server/serve.js'

/** The server as the build left it: a journey tests what a user starts. */
const builtServer = pathToFileURL(join(import.meta.dirname, '../../.build/server/serve.js')).href

export interface Journey {
  readonly page: Page
  readonly context: BrowserContext
  /** Errors and warnings of the page's console, and scripts that failed. */
  readonly complaints: string[]
}

/** What journeys look at of a notebook's file. */
export interface StoredNotebook {
  readonly title: string
  readonly titleBlock?: Readonly<Record<string, string>>
  readonly cells: readonly { readonly id: string; readonly source: readonly string[] }[]
}

export class Bench {
  readonly #browser: Browser
  readonly #folder: string
  #server: RunningServer
  readonly #contexts: BrowserContext[] = []

  constructor(browser: Browser, folder: string, server: RunningServer) {
    this.#browser = browser
    this.#folder = folder
    this.#server = server
  }

  get address(): string {
    return this.#server.address
  }

  /** Another person: nothing is shared with the other journeys but the server. */
  async visit(path: string, options: { readonly javaScriptEnabled?: boolean } = {}): Promise<Journey> {
    const context = await this.#browser.newContext({ viewport: { width: 1280, height: 1000 }, ...options })
    this.#contexts.push(context)
    const page = await context.newPage()
    const complaints: string[] = []
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text())
    })
    page.on('pageerror', (error) => complaints.push(error.message))
    await page.goto(new URL(path, this.address).href)
    return { page, context, complaints }
  }

  /** A notebook of the given cells by id; answers its path. */
  async notebook(
    title: string,
    cells: Readonly<Record<string, string>>,
    kind: 'sizing' | 'rationale' = 'sizing',
  ): Promise<string> {
    const notebook = {
      format: 'hoverfolio notebook',
      version: 1,
      title,
      cells: Object.entries(cells).map(([id, source]) => ({ id, kind, source: source.split('\n') })),
    }
    const response = await fetch(new URL('/api/notebooks', this.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ notebook }),
    })
    const { id } = (await response.json()) as { id: string }
    return `/notebooks/${id}`
  }

  /** The notebook as the server has it. */
  async stored(path: string): Promise<StoredNotebook> {
    const response = await fetch(new URL(`/api${path}`, this.address))
    return (await response.json()) as StoredNotebook
  }

  /** Waits until the server holds a result for the cell's present text. */
  async untilStored(path: string, cell: string): Promise<void> {
    for (let tries = 0; tries < 900; tries += 1) {
      const response = await fetch(new URL(`/api${path}/results`, this.address))
      const { results } = (await response.json()) as { results: { cell: string }[] }
      if (results.some((result) => result.cell === cell)) return
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
    throw new Error(`the server has no result for the cell "${cell}"`)
  }

  /** Takes the server away, and brings it back at the same address with the same data. */
  async stopServer(): Promise<() => Promise<void>> {
    const port = Number(new URL(this.address).port)
    await this.#server.close()
    return async () => {
      this.#server = await serveBuilt(this.#folder, port)
    }
  }

  async leaveAll(): Promise<void> {
    await Promise.all(this.#contexts.splice(0).map((context) => context.close()))
  }

  async close(): Promise<void> {
    await this.leaveAll()
    await this.#browser.close()
    await this.#server.close()
    await rm(this.#folder, { recursive: true, force: true })
  }
}

/** Other notebooks that come with the program: a new server computes them at once, and most journeys would only wait for that. */
const others = ['common-practice', 'how-many-rotors', 'starter', 'tern-watch', 'units'].map((name) => `${name}.json`)

/** With the worked sizing alone, as on a server whose other notebooks were binned; `everything` as on a new one. */
export async function openBench(ships: 'worked sizing' | 'everything' = 'worked sizing'): Promise<Bench> {
  const folder = await mkdtemp(join(tmpdir(), 'hoverfolio-journey-'))
  if (ships === 'worked sizing') await writeFile(join(folder, '.shipped.json'), JSON.stringify({ shipped: others }))
  const [browser, server] = await Promise.all([launch(), serveBuilt(folder, 0)])
  return new Bench(browser, folder, server)
}

async function serveBuilt(dataFolder: string, port: number): Promise<RunningServer> {
  const { serve } = (await import(builtServer)) as typeof import('../../server/serve.js')
  return serve({ port, dataFolder })
}

function launch(): Promise<Browser> {
  const places = [process.env.HOVERFOLIO_BROWSER, '/usr/bin/chromium-headless-shell', '/usr/bin/chromium']
  const executablePath = places.find((path) => path !== undefined && existsSync(path))
  return chromium.launch({
    ...(executablePath === undefined ? {} : { executablePath }),
    // A page lives for seconds here: optimising the compiler's WebAssembly costs each page six seconds of a processor and comes too late.
    args: ['--js-flags=--liftoff-only', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  })
}
