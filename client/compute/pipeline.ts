/** The cell pipeline as this page uses it: read here by turns (a millisecond or two a cell), erased and checked in workers, evaluated in isolation. */
import {
  type BrowserHostOptions,
  createBrowserHost,
  createBrowserNumbersHost,
} from '../../kernel/cells/host-browser/index.js'
import { createPipeline } from '../../kernel/cells/index.js'
import type { EvaluationHost, NumbersHost } from '../../kernel/cells/program/index.js'
import { eraseAtServer } from '../live/requests.js'
import { type CheckWorker, openCheckWorker } from './check-worker.js'
import { startCompiler } from './compile-worker.js'
import type { ComputationParts } from './computation.js'
import { lateEraser } from './late-eraser.js'
import { pageTurns } from './turns.js'

interface KernelIdentity {
  readonly hash: string
  readonly names: readonly string[]
}

export interface PagePipeline
  extends Pick<ComputationParts, 'read' | 'evaluate' | 'evaluateTrial' | 'pause'>,
    CheckWorker {
  /** Starts the local compiler; called when the page can be read, so that it is in nobody's way. */
  startCompiler(): void
  /** Isolates for what is asked about numbers, beside those that compute the sheet. */
  readonly openNumbers: () => Promise<NumbersHost>
}

/** Opens lazily: the kernel's identity is fetched for the first reading, its bundle for the first evaluation. */
export function openPagePipeline(): PagePipeline {
  const eraser = lateEraser(eraseAtServer, startCompiler)
  const pause = pageTurns()
  const kernel = once(async () => (await fetchJson('/kernel/kernel.json')) as KernelIdentity)
  const pipelineOf = (host: EvaluationHost) =>
    once(async () => createPipeline({ erase: eraser.erase, host, kernel: await kernel(), pause }))
  const pipeline = pipelineOf(lateHost(once(() => openHost())))
  const trials = pipelineOf(lateHost(once(() => openHost({ spare: false }))))
  return {
    read: async (cells) => (await pipeline()).read(cells),
    evaluate: async (reading, overrides, wanted, options) =>
      (await pipeline()).evaluate(reading, overrides, wanted, options),
    evaluateTrial: async (reading, overrides, wanted, options) =>
      (await trials()).evaluate(reading, overrides, wanted, options),
    ...openCheckWorker(),
    pause,
    startCompiler: eraser.start,
    openNumbers: once(async () => createBrowserNumbersHost(await hostOptions())),
  }
}

/** A host that is opened at its first call. */
function lateHost(open: () => Promise<EvaluationHost>): EvaluationHost {
  return {
    evaluate: async (...call) => (await open()).evaluate(...call),
    evaluateBatch: async (...call) => (await open()).evaluateBatch(...call),
    close: async () => (await open()).close(),
  }
}

async function openHost(options: Pick<BrowserHostOptions, 'spare'> = {}): Promise<EvaluationHost> {
  return createBrowserHost({ ...(await hostOptions()), ...options })
}

async function hostOptions(): Promise<BrowserHostOptions> {
  const response = await fetch('/kernel/sandbox.js')
  if (!response.ok) throw new Error(`the kernel could not be fetched (status ${response.status}); load the page again`)
  return { frameUrl: '/sandbox.html', sandboxText: await response.text() }
}

async function fetchJson(path: string): Promise<unknown> {
  const response = await fetch(path)
  if (!response.ok) throw new Error(`${path} could not be fetched (status ${response.status}); load the page again`)
  return response.json()
}

/** Remembers a success; a failure is tried again at the next call. */
function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined
  return () => {
    made ??= make()
    made.catch(() => {
      made = undefined
    })
    return made
  }
}
