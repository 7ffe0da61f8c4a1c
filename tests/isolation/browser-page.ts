/** The page of the browser tests: holds a real browser host and answers the test, which drives it from outside. */
import { createBrowserHost, createBrowserNumbersHost } from '../../kernel/cells/host-browser/index.js'
import type {
  EvaluationHost,
  NumbersHost,
  Overrides,
  Program,
  Wanted,
  WantedNumbers,
} from '../../kernel/cells/program/index.js'

declare global {
  interface Window {
    bench: Bench
    /** Given by the test. */
    report(call: number, kind: 'begin' | 'result' | 'progress', value: unknown): void
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

export interface RemoteNumbers {
  readonly call: number
  readonly program: Program
  readonly points: readonly Overrides[]
  readonly wanted: WantedNumbers
  readonly timeLimit?: number
  readonly aborted: boolean
}

class Bench {
  #host: EvaluationHost | undefined
  #numbersHost: NumbersHost | undefined
  readonly #stops = new Map<number, AbortController>()

  async open(kernelHash: string): Promise<void> {
    const sandboxText = await (await fetch('/sandbox.js')).text()
    const options = { frameUrl: '/sandbox.html', sandboxText, kernelHash }
    this.#host = createBrowserHost(options)
    this.#numbersHost = createBrowserNumbersHost({ ...options, spare: false })
  }

  async run(remote: RemoteCall): Promise<unknown> {
    const { call, program, overrides, wanted, timeLimit } = remote
    const options = {
      signal: this.#signalOf(remote),
      onBegin: (cell: unknown) => window.report(call, 'begin', cell),
      onResult: (result: unknown) => window.report(call, 'result', result),
      ...(timeLimit === undefined ? {} : { timeLimit }),
    }
    const host = this.#host as EvaluationHost
    return Array.isArray(overrides)
      ? host.evaluateBatch(program, overrides, wanted, options)
      : host.evaluate(program, overrides as Overrides, wanted, options)
  }

  async numbers(remote: RemoteNumbers): Promise<unknown> {
    const { call, program, points, wanted, timeLimit } = remote
    return this.#numbersHost?.evaluateNumbers(program, points, wanted, {
      signal: this.#signalOf(remote),
      onProgress: (done) => window.report(call, 'progress', done),
      ...(timeLimit === undefined ? {} : { timeLimit }),
    })
  }

  #signalOf({ call, aborted }: Pick<RemoteCall, 'call' | 'aborted'>): AbortSignal {
    const stop = new AbortController()
    if (aborted) stop.abort()
    this.#stops.set(call, stop)
    return stop.signal
  }

  stop(call: number): void {
    this.#stops.get(call)?.abort()
  }

  async close(): Promise<void> {
    await this.#host?.close()
    await this.#numbersHost?.close()
  }
}

window.bench = new Bench()
