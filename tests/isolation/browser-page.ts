/** The page of the browser tests: holds a real browser host and answers the test, which drives it from outside. */
import { createBrowserHost } from '../../kernel/cells/host-browser/index.js'
import type { EvaluationHost, Overrides, Program, Wanted } from '../../kernel/cells/program/index.js'

declare global {
  interface Window {
    bench: Bench
    /** Given by the test. */
    report(call: number, kind: 'begin' | 'result', value: unknown): void
  }
}

export interface RemoteCall {
  readonly call: number
  readonly program: Program
  readonly overrides: Overrides | readonly Overrides[]
  readonly wanted: Wanted
  readonly timeLimit?: number
  readonly aborted: boolean
}

class Bench {
  #host: EvaluationHost | undefined
  readonly #stops = new Map<number, AbortController>()

  async open(kernelHash: string): Promise<void> {
    const sandboxText = await (await fetch('/sandbox.js')).text()
    this.#host = createBrowserHost({ frameUrl: '/sandbox.html', sandboxText, kernelHash })
  }

  async run(remote: RemoteCall): Promise<unknown> {
    const { call, program, overrides, wanted, timeLimit, aborted } = remote
    const stop = new AbortController()
    if (aborted) stop.abort()
    this.#stops.set(call, stop)
    const options = {
      signal: stop.signal,
      onBegin: (cell: unknown) => window.report(call, 'begin', cell),
      onResult: (result: unknown) => window.report(call, 'result', result),
      ...(timeLimit === undefined ? {} : { timeLimit }),
    }
    const host = this.#host as EvaluationHost
    return Array.isArray(overrides)
      ? host.evaluateBatch(program, overrides, wanted, options)
      : host.evaluate(program, overrides as Overrides, wanted, options)
  }

  stop(call: number): void {
    this.#stops.get(call)?.abort()
  }

  async close(): Promise<void> {
    await this.#host?.close()
  }
}

window.bench = new Bench()
