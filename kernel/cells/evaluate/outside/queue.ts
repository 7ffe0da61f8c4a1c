/** Calls in a line. */
import type { StopSignal } from '../../program/index.js'

/** Runs tasks one after another. A call that is stopped while it waits does not wait on: its task, seeing the stop, runs nothing. */
export class Queue {
  #last: Promise<unknown> = Promise.resolve()

  inTurn<T>(signal: StopSignal | undefined, task: () => Promise<T>): Promise<T> {
    const before = this.#last
    const turn = signal === undefined ? before : Promise.race([before, aborted(signal)])
    const outcome = turn.then(task)
    this.#last = Promise.allSettled([before, outcome])
    return outcome
  }
}

function aborted(signal: StopSignal): Promise<void> {
  if (signal.aborted) return Promise.resolve()
  return new Promise((resolve) => signal.addEventListener('abort', () => resolve(), { once: true }))
}
