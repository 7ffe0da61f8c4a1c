/** An isolate in a child process: text in by its standard input, lines out by its standard output. */
import { type ChildProcess, spawn } from 'node:child_process'
import { type Isolate, type IsolateListener, type Loss, longestLine } from '../evaluate/index.js'
import { childArguments } from './command-line.js'
import { watchMemory } from './memory-watch.js'

/** What Node itself holds before a cell runs [MB]. */
const ownMegabytes = 96
const startMilliseconds = 15_000
/** Longer than any run that the limits of `evaluate` let go on. */
const abandonedMilliseconds = 600_000

export interface ChildSettings {
  readonly sandboxText: string
  readonly childText: string
  readonly megabytes: number
  /** After which a child ends a run by itself, because whoever should have done so is gone [ms]. */
  readonly longestRun?: number
}

/** Starts the child, hands it the sandbox and waits until it is locked down. */
export function openChildIsolate(settings: ChildSettings): Promise<Isolate> {
  const { childText, megabytes, longestRun = abandonedMilliseconds } = settings
  const child = spawn(process.execPath, childArguments(childText, megabytes, longestRun), {
    env: {},
    stdio: ['pipe', 'pipe', 'pipe'],
  })
  const isolate = new ChildIsolate(child, megabytes)
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      isolate.end()
      reject(new Error('the evaluator did not start in time'))
    }, startMilliseconds)
    isolate.listen({
      onLine(line) {
        clearTimeout(timer)
        if (line === 'ready') resolve(isolate)
        else {
          isolate.end()
          reject(new Error(`the kernel cannot be loaded: ${line.slice(0, 400)}`))
        }
      },
      onLost(loss) {
        clearTimeout(timer)
        reject(new Error(loss.code === 'EVALUATOR_LOST' ? loss.reason : 'the kernel needs more memory than there is'))
      },
    })
    isolate.send(JSON.stringify(settings.sandboxText))
  })
}

class ChildIsolate implements Isolate {
  readonly #child: ChildProcess
  readonly #megabytes: number
  #listener: IsolateListener | undefined
  #endWatch: (() => void) | undefined
  #waiting = ''
  #complaint = ''
  #loss: Loss | undefined
  #ended = false

  constructor(child: ChildProcess, megabytes: number) {
    this.#child = child
    this.#megabytes = megabytes
    child.stdout?.setEncoding('utf8').on('data', (chunk: string) => this.#receive(chunk))
    // The tail of the complaint is enough to tell an exhausted heap from other ends.
    child.stderr?.setEncoding('utf8').on('data', (chunk: string) => {
      this.#complaint = (this.#complaint + chunk).slice(-8000)
    })
    // A write to a child that has just ended fails; its end is reported by `close`.
    child.stdin?.on('error', () => {})
    child.on('error', (fault) => this.#lose({ code: 'EVALUATOR_LOST', reason: fault.message }))
    child.on('close', (code, signal) => this.#lose(this.#lossOf(code, signal)))
  }

  send(message: string): void {
    this.#child.stdin?.write(`${message}\n`)
  }

  listen(listener: IsolateListener): void {
    this.#listener = listener
    if (this.#loss !== undefined) listener.onLost(this.#loss)
  }

  watch(active: boolean): void {
    this.#endWatch?.()
    this.#endWatch = undefined
    const { pid } = this.#child
    if (!active || pid === undefined) return
    this.#endWatch = watchMemory(pid, this.#megabytes + ownMegabytes, () => {
      this.#child.kill('SIGKILL')
      this.#lose({ code: 'MEMORY_LIMIT', megabytes: this.#megabytes })
    })
  }

  end(): void {
    this.#ended = true
    this.watch(false)
    this.#child.kill('SIGKILL')
  }

  #receive(chunk: string): void {
    const lines = (this.#waiting + chunk).split('\n')
    this.#waiting = lines.pop() ?? ''
    for (const line of lines) if (!this.#ended) this.#listener?.onLine(line)
    if (this.#waiting.length > longestLine) {
      this.#child.kill('SIGKILL')
      this.#lose({ code: 'EVALUATOR_LOST', reason: 'it sent more than it may' })
    }
  }

  #lossOf(code: number | null, signal: string | null): Loss {
    if (/heap out of memory|allocation failed/i.test(this.#complaint))
      return { code: 'MEMORY_LIMIT', megabytes: this.#megabytes }
    return { code: 'EVALUATOR_LOST', reason: `it ended with ${signal ?? `code ${code}`}` }
  }

  #lose(loss: Loss): void {
    if (this.#ended || this.#loss !== undefined) return
    this.#loss = loss
    this.watch(false)
    this.#listener?.onLost(loss)
  }
}
