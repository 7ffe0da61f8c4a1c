/** The isolate in use and the spare behind it. */

import type { Program } from '../../program/index.js'
import type { Isolate, Platform } from './platform.js'

export class Isolates {
  readonly #platform: Platform
  #current: Isolate | undefined
  #spare: Promise<Isolate | undefined> | undefined
  #closed = false
  /** The program that the isolate in use was given last, so that a batch sends it once. */
  #loaded: Program['cells'] | undefined

  constructor(platform: Platform) {
    this.#platform = platform
  }

  /** An isolate that holds the program. */
  async take(cells: Program['cells']): Promise<Isolate> {
    const isolate = this.#current ?? (await this.#spare) ?? (await this.#platform.openIsolate())
    if (this.#closed) {
      isolate.end()
      throw new Error('The evaluator was closed.')
    }
    if (isolate !== this.#current) {
      this.#current = isolate
      this.#spare = undefined
    }
    if (this.#loaded !== cells) {
      isolate.send(JSON.stringify({ type: 'program', cells }))
      this.#loaded = cells
    }
    return isolate
  }

  /** Opens the spare in the background; called after a run, so that it never competes with one. */
  prepareSpare(): void {
    if (!this.#platform.spare || this.#closed || this.#spare !== undefined) return
    // A spare that cannot be opened is no failure yet: the next run opens one itself and reports.
    this.#spare = this.#platform.openIsolate().catch(() => undefined)
  }

  /** Ends the isolate in use. */
  discard(): void {
    this.#current?.end()
    this.#current = undefined
    this.#loaded = undefined
  }

  close(): void {
    this.#closed = true
    this.discard()
    this.#spare?.then((isolate) => isolate?.end())
  }
}
