/** A small server with the evaluator's page and its real policy, a Chromium, and a host in it that is driven from the test. */
import { existsSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild-wasm'
import { type Browser, chromium, type Page } from 'playwright'
import { bundleSandboxText } from '../../kernel/cells/evaluate/bundle.mjs'
import { evaluatorFrame } from '../../kernel/cells/host-browser/index.js'
import type {
  Evaluation,
  EvaluationHost,
  EvaluationOptions,
  NumbersHost,
  NumbersOptions,
  Overrides,
  Program,
  Wanted,
} from '../../kernel/cells/program/index.js'
import type { NumbersOutcome } from '../../shared/contracts/index.js'
import type { RemoteCall } from './browser-page.js'

export interface BrowserBench {
  readonly kernelHash: string
  /** The bundle that the page's evaluator runs. */
  readonly sandboxText: string
  readonly browser: Browser
  /** Address of the page. */
  readonly origin: string
  /** Paths asked of the page's own server since `forget`. */
  readonly asked: readonly string[]
  forget(): void
  /** A page with a host in it. */
  open(): Promise<{ readonly host: EvaluationHost; readonly numbersHost: NumbersHost; readonly page: Page }>
  close(): Promise<void>
}

export async function prepareBrowserBench(): Promise<BrowserBench> {
  const [{ text, hash: kernelHash }, pageScript, browser] = await Promise.all([
    bundleSandboxText(),
    bundlePage(),
    launchBrowser(),
  ])
  const asked: string[] = []
  const server = await serve(text, pageScript, asked)
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  return {
    kernelHash,
    sandboxText: text,
    browser,
    origin,
    asked,
    forget: () => asked.splice(0),
    open: () => openPage(browser, origin, kernelHash),
    async close() {
      await browser.close()
      server.closeAllConnections()
      await new Promise((resolve) => server.close(resolve))
    },
  }
}

async function launchBrowser(): Promise<Browser> {
  const places = [process.env.HOVERFOLIO_BROWSER, '/usr/bin/chromium-headless-shell', '/usr/bin/chromium']
  const executablePath = places.find((path) => path !== undefined && existsSync(path))
  return chromium.launch({
    ...(executablePath === undefined ? {} : { executablePath }),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  })
}

async function bundlePage(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('./browser-page.ts', import.meta.url))],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2023',
  })
  return outputFiles[0]?.text ?? ''
}

function serve(sandboxText: string, pageScript: string, asked: string[]): Promise<Server> {
  const frame = evaluatorFrame()
  const script = { 'content-type': 'text/javascript' }
  const pages = new Map<string, [Record<string, string>, string]>([
    ['/', [{ 'content-type': 'text/html' }, '<!doctype html><body><script src="/page.js"></script></body>']],
    ['/bare', [{ 'content-type': 'text/html' }, '<!doctype html><body></body>']],
    ['/page.js', [script, pageScript]],
    ['/sandbox.js', [script, sandboxText]],
    [frame.path, [{ ...frame.headers }, frame.html]],
  ])
  const server = createServer((request, response) => {
    asked.push(request.url ?? '')
    const [headers, text] = pages.get(request.url ?? '') ?? [{}, '']
    response.writeHead(pages.has(request.url ?? '') ? 200 : 404, headers)
    response.end(text)
  })
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(server)))
}

type Report = (call: number, kind: string, value: never) => void

async function openPage(browser: Browser, origin: string, kernelHash: string) {
  const page = await browser.newPage()
  const listeners = new Map<number, EvaluationOptions & NumbersOptions>()
  const report: Report = (call, kind, value) => {
    const options = listeners.get(call)
    if (kind === 'begin') options?.onBegin?.(value)
    else if (kind === 'progress') options?.onProgress?.(value)
    else options?.onResult?.(value)
  }
  await page.exposeFunction('report', report)
  await page.goto(origin)
  await page.evaluate((hash) => window.bench.open(hash), kernelHash)
  let calls = 0
  function begin(options: EvaluationOptions & NumbersOptions) {
    calls += 1
    const call = calls
    listeners.set(call, options)
    const { signal, timeLimit } = options
    signal?.addEventListener('abort', () => void page.evaluate((number) => window.bench.stop(number), call))
    return { call, aborted: signal?.aborted === true, ...(timeLimit === undefined ? {} : { timeLimit }) }
  }
  async function run(program: Program, overrides: RemoteCall['overrides'], wanted: Wanted, options: EvaluationOptions) {
    const remote: RemoteCall = { program, overrides, wanted, ...begin(options) }
    return page.evaluate((request) => window.bench.run(request), remote)
  }
  const numbersHost: NumbersHost = {
    evaluateNumbers: async (program, points, wanted, options = {}) =>
      (await page.evaluate((request) => window.bench.numbers(request), {
        ...begin(options),
        program,
        points,
        wanted,
      })) as readonly NumbersOutcome[],
    close: async () => {
      await page.evaluate(() => window.bench.close())
      await page.close()
    },
  }
  const host: EvaluationHost = {
    evaluate: async (program, overrides, wanted, options = {}) =>
      (await run(program, overrides, wanted, options)) as Evaluation,
    evaluateBatch: async (program, overrides: readonly Overrides[], wanted, options = {}) =>
      (await run(program, overrides, wanted, options)) as readonly Evaluation[],
    close: async () => {
      await page.evaluate(() => window.bench.close())
      await page.close()
    },
  }
  return { host, numbersHost, page }
}
