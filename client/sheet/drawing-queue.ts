/**
 * Draws what costs much (figures) only when a reader can see it soon: near the screen in the next frames, elsewhere when the page is idle,
 * all of it before printing. What is asked for twice before its turn is drawn once. DOM-free: the page's clockwork is handed in.
 */

export interface DrawingClockwork {
  /** Tells which elements come near the screen and which leave. */
  observe(onChange: (element: Element, near: boolean) => void): {
    watch(element: Element): void
    leave(element: Element): void
  }
  /** Calls in the next frame. */
  nextFrame(call: () => void): void
  /** Calls when nothing else is to do; the argument says how long that may last [ms]. */
  whenIdle(call: (remaining: () => number) => void): void
  now(): number
}

/** Drawing may take this much of a frame [ms]; what remains has to scroll and answer. */
const share = 8
/** An idle moment shorter than a figure takes is left alone [ms]. */
const worthwhile = 5

export class DrawingQueue {
  readonly #clockwork: DrawingClockwork
  readonly #waiting = new Map<Element, () => void>()
  readonly #near = new Set<Element>()
  readonly #watcher: ReturnType<DrawingClockwork['observe']>
  #frameAsked = false
  #idleAsked = false

  constructor(clockwork: DrawingClockwork) {
    this.#clockwork = clockwork
    this.#watcher = clockwork.observe((element, near) => {
      if (near) this.#near.add(element)
      else this.#near.delete(element)
      if (near) this.#askFrame()
    })
  }

  /** Calls `draw` when its turn comes; a call for the same element that still waits is forgotten. */
  later(element: Element, draw: () => void): void {
    this.#waiting.set(element, draw)
    this.#watcher.watch(element)
    if (this.#near.has(element)) this.#askFrame()
    this.#askIdle()
  }

  /** What waits for an element that left the page is forgotten. */
  forget(element: Element): void {
    this.#waiting.delete(element)
    this.#near.delete(element)
    this.#watcher.leave(element)
  }

  /** Everything at once: for paper. */
  drawAll(): void {
    for (const element of [...this.#waiting.keys()]) this.#draw(element)
  }

  #draw(element: Element): void {
    const draw = this.#waiting.get(element)
    this.#waiting.delete(element)
    this.#near.delete(element)
    this.#watcher.leave(element)
    draw?.()
  }

  #askFrame(): void {
    if (this.#frameAsked) return
    this.#frameAsked = true
    this.#clockwork.nextFrame(() => {
      this.#frameAsked = false
      const end = this.#clockwork.now() + share
      for (const element of [...this.#near]) {
        if (this.#clockwork.now() >= end) break
        this.#draw(element)
      }
      if (this.#near.size > 0) this.#askFrame()
    })
  }

  #askIdle(): void {
    if (this.#idleAsked || this.#waiting.size === 0) return
    this.#idleAsked = true
    this.#clockwork.whenIdle((remaining) => {
      this.#idleAsked = false
      for (const element of [...this.#waiting.keys()]) {
        if (remaining() < worthwhile) break
        this.#draw(element)
      }
      this.#askIdle()
    })
  }
}
