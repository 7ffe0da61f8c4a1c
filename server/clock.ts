/** Time as the server sees it, handed in so that tests can hold it still and move it. */

export interface Clock {
  /** Milliseconds since 1970. */
  now(): number
  /** Calls `action` after `milliseconds`; the returned function calls it off. */
  later(milliseconds: number, action: () => void): () => void
}

/** The machine's clock. Its timers never keep a finished process alive. */
export const systemClock: Clock = {
  now: () => Date.now(),
  later(milliseconds, action) {
    const timer = setTimeout(action, milliseconds)
    timer.unref()
    return () => clearTimeout(timer)
  },
}
