/** Computing on a thread of its own, started when first needed and ended when idle. One question at a time. */
import { once } from 'node:events'
import { Worker } from 'node:worker_threads'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import type { CellResult } from '../../shared/contracts/index.js'
import { Turns } from '../store/index.js'

export type ComputingAnswer = { readonly results: readonly CellResult[] } | { readonly error: string }

/** [ms] After this long without a question the thread and its memory are given back. */
const idleTime = 30_000

export class Computing {
  readonly #program: URL
  readonly #folder: string
  readonly #turns = new Turns()
  #thread: Worker | undefined
  #idle: NodeJS.Timeout | undefined

  /** `program` is the built `computing-thread.js`, `folder` the built kernel. */
  constructor(program: URL, folder: string) {
    this.#program = program
    this.#folder = folder
  }

  compute(cells: readonly SizingCell[]): Promise<readonly CellResult[]> {
    return this.#turns.take('', async () => {
      clearTimeout(this.#idle)
      const reply = await this.#ask(cells)
      this.#idle = setTimeout(() => void this.close(), idleTime).unref()
      if ('error' in reply) throw new Error(reply.error)
      return reply.results
    })
  }

  async close(): Promise<void> {
    clearTimeout(this.#idle)
    const thread = this.#thread
    this.#thread = undefined
    // The evaluator's child processes end with the pipes that this thread holds.
    await thread?.terminate()
  }

  async #ask(cells: readonly SizingCell[]): Promise<ComputingAnswer> {
    this.#thread ??= new Worker(this.#program, { workerData: { folder: this.#folder } })
    const thread = this.#thread
    thread.unref()
    thread.postMessage(cells)
    const ended = new AbortController()
    const { signal } = ended
    try {
      const answered = once(thread, 'message', { signal }).then(([reply]) => reply as ComputingAnswer)
      const gone = once(thread, 'exit', { signal }).then(() => {
        this.#thread = undefined
        return { error: 'the computing thread has ended' }
      })
      gone.catch(() => undefined)
      return await Promise.race([answered, gone])
    } catch (error) {
      this.#thread = undefined
      return { error: error instanceof Error ? error.message : String(error) }
    } finally {
      ended.abort()
    }
  }
}
