/** A clock that stands still until told to move. */
import type { Clock } from '../../server/clock.js'

export class LabClock implements Clock {
  #now = Date.UTC(2030, 0, 1)
  #timers: { readonly at: number; readonly action: () => void }[] = []

  now(): number {
    return this.#now
  }

  later(milliseconds: number, action: () => void): () => void {
    const timer = { at: this.#now + milliseconds, action }
    this.#timers.push(timer)
    return () => {
      this.#timers = this.#timers.filter((other) => other !== timer)
    }
  }

  /** Moves on, running what falls due in order of time; work that a timer starts is not waited for. */
  advance(milliseconds: number): void {
    const end = this.#now + milliseconds
    for (;;) {
      const due = this.#timers.filter((timer) => timer.at <= end).sort((a, b) => a.at - b.at)[0]
      if (due === undefined) break
      this.#timers = this.#timers.filter((other) => other !== due)
      this.#now = Math.max(this.#now, due.at)
      due.action()
    }
    this.#now = end
  }
}

/** Lets promises that are ready run: a few turns of the event loop. */
export async function settle(turns = 50): Promise<void> {
  for (let turn = 0; turn < turns; turn += 1) await new Promise((resolve) => setImmediate(resolve))
}
