/** An isolate in the browser: a hidden frame of opaque origin, and in it a worker that speaks with this page by its own port. */
import type { Isolate, IsolateListener, Loss } from '../evaluate/index.js'

const startMilliseconds = 20_000
/** How often a frame is asked whether it lives, and how long it may be silent while a run is on [ms]. */
const askEvery = 500
const silenceAllowed = 4000

export interface FrameSettings {
  readonly frameUrl: string
  readonly workerText: string
  readonly container: HTMLElement
  readonly megabytes: number
}

/** Builds the frame, starts the worker and waits until the sandbox is locked down. */
export async function openFrameIsolate(settings: FrameSettings): Promise<Isolate> {
  const frame = document.createElement('iframe')
  frame.setAttribute('sandbox', 'allow-scripts')
  frame.hidden = true
  frame.title = 'Evaluator'
  frame.src = settings.frameUrl
  const isolate = new FrameIsolate(frame, settings.megabytes)
  const loaded = new Promise<void>((resolve) => frame.addEventListener('load', () => resolve(), { once: true }))
  settings.container.append(frame)
  await Promise.race([loaded, after(startMilliseconds)])
  return new Promise((resolve, reject) => {
    const fail = (reason: string) => {
      isolate.end()
      reject(new Error(reason))
    }
    const timer = setTimeout(() => fail('the evaluator did not start in time'), startMilliseconds)
    isolate.listen({
      onLine(line) {
        clearTimeout(timer)
        if (line === 'ready') resolve(isolate)
        else fail('the kernel cannot be loaded')
      },
      onLost(loss) {
        clearTimeout(timer)
        fail(loss.code === 'EVALUATOR_LOST' ? loss.reason : 'the kernel needs more memory than there is')
      },
    })
    isolate.start(settings.workerText)
  })
}

function after(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds))
}

class FrameIsolate implements Isolate {
  readonly #frame: HTMLIFrameElement
  readonly #megabytes: number
  readonly #workerChannel = new MessageChannel()
  readonly #frameChannel = new MessageChannel()
  #listener: IsolateListener | undefined
  #loss: Loss | undefined
  #ended = false
  #asking: ReturnType<typeof setInterval> | undefined
  #heard = 0

  constructor(frame: HTMLIFrameElement, megabytes: number) {
    this.#frame = frame
    this.#megabytes = megabytes
    this.#workerChannel.port1.onmessage = (event) => this.#receive(event.data)
    this.#frameChannel.port1.onmessage = (event) => this.#hear(event.data)
  }

  /** The target's origin is opaque, so it cannot be named; what is sent is no secret. */
  start(workerText: string): void {
    const ports = [this.#workerChannel.port2, this.#frameChannel.port2]
    this.#frame.contentWindow?.postMessage(workerText, '*', ports)
  }

  send(message: string): void {
    this.#workerChannel.port1.postMessage(message)
  }

  listen(listener: IsolateListener): void {
    this.#listener = listener
    if (this.#loss !== undefined) listener.onLost(this.#loss)
  }

  /** While a run is on, a frame that falls silent (its process died) is taken for lost. */
  watch(active: boolean): void {
    clearInterval(this.#asking)
    if (!active) return
    this.#heard = performance.now()
    this.#asking = setInterval(() => {
      if (performance.now() - this.#heard > silenceAllowed)
        this.#lose({ code: 'EVALUATOR_LOST', reason: 'its process ended, most likely for want of memory' })
      else this.#frameChannel.port1.postMessage('')
    }, askEvery)
  }

  end(): void {
    this.#ended = true
    this.watch(false)
    this.#workerChannel.port1.close()
    this.#frameChannel.port1.close()
    this.#frame.remove()
  }

  #receive(line: unknown): void {
    if (this.#ended || this.#loss !== undefined) return
    if (typeof line === 'string') this.#listener?.onLine(line)
    else this.#lose({ code: 'EVALUATOR_LOST', reason: 'it sent something that is not text' })
  }

  #hear(word: unknown): void {
    this.#heard = performance.now()
    if (typeof word !== 'string' || !word.startsWith('fault')) return
    if (/memory/i.test(word)) this.#lose({ code: 'MEMORY_LIMIT', megabytes: this.#megabytes })
    else this.#lose({ code: 'EVALUATOR_LOST', reason: word.slice('fault '.length, 400) })
  }

  #lose(loss: Loss): void {
    if (this.#ended || this.#loss !== undefined) return
    this.#loss = loss
    this.watch(false)
    this.#listener?.onLost(loss)
  }
}
