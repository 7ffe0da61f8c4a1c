/** Results of trials, by text and by the values that reach the cell. They are known to this page alone. */
import type { CellResult } from '../../shared/contracts/index.js'

/** Results remembered at most: those of a drag are many, and figures weigh. */
const mostRemembered = 300

export class TrialBook {
  readonly #results = new Map<string, CellResult>()

  /** STOPPED is no result. */
  note(key: string, result: CellResult): void {
    if (result.error?.code === 'STOPPED') return
    this.#results.delete(key)
    this.#results.set(key, result)
    for (const oldest of this.#results.keys()) {
      if (this.#results.size <= mostRemembered) return
      this.#results.delete(oldest)
    }
  }

  get(key: string): CellResult | undefined {
    return this.#results.get(key)
  }

  /** Before computing everything: failures are forgotten. */
  forgetFailures(): void {
    for (const [key, { outcome }] of this.#results) if (outcome !== 'computed') this.#results.delete(key)
  }
}
