/** Work for a number, one piece at a time: a new piece ends the one before. With progress, time left and a stop. DOM-free. */

export interface Running<Part extends string> {
  readonly part: Part
  readonly done: number
  readonly asked: number
  /** Still to go [s]; absent until it can be told. */
  readonly secondsLeft?: number
}

/** What a piece of work is given. */
export interface Turn {
  readonly signal: AbortSignal
  readonly onProgress: (done: number, asked: number) => void
  /** No other piece has begun since; what is found otherwise is nobody's. */
  mine(): boolean
}

export interface OneAtATimeEvents {
  /** [ms] */
  now(): number
  /** Something began, went on or ended. */
  onState(): void
}

export class OneAtATime<Part extends string> {
  readonly #events: OneAtATimeEvents
  #running: Running<Part> | undefined
  #stop: AbortController | undefined

  constructor(events: OneAtATimeEvents) {
    this.#events = events
  }

  get running(): Running<Part> | undefined {
    return this.#running
  }

  /** Ends what runs; what it has found so far stays. */
  stop(): void {
    this.#stop?.abort()
  }

  /** Ends what runs, and hears no more of it. */
  drop(): void {
    this.stop()
    this.#stop = undefined
    this.#running = undefined
  }

  async run(part: Part, work: (turn: Turn) => Promise<void>, onFault: (fault: unknown) => void): Promise<void> {
    this.drop()
    const { now, onState } = this.#events
    const stop = new AbortController()
    const began = now()
    this.#stop = stop
    this.#running = { part, done: 0, asked: 0 }
    onState()
    const mine = () => this.#stop === stop
    const onProgress = (done: number, asked: number) => {
      if (!mine()) return
      this.#running = { part, done, asked, ...timeLeft(now() - began, done, asked) }
      onState()
    }
    try {
      await work({ signal: stop.signal, onProgress, mine })
    } catch (fault) {
      if (mine()) onFault(fault)
    } finally {
      if (mine()) {
        this.#running = undefined
        this.#stop = undefined
        onState()
      }
    }
  }
}

/** Told once it has run for a moment, from the pace so far. */
function timeLeft(elapsed: number, done: number, asked: number): { secondsLeft?: number } {
  if (elapsed < 1000 || done === 0) return {}
  return { secondsLeft: Math.ceil(((elapsed / done) * (asked - done)) / 1000) }
}
