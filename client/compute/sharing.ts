/** Sends results to the server once it has the text they belong to: sent earlier they would be refused as stale. */
import type { CellId, CellResult } from '../../shared/contracts/index.js'

export class Sharing {
  readonly #waiting = new Map<CellId, CellResult>()
  readonly #post: (results: readonly CellResult[]) => Promise<void>
  #saved = false
  #busy = false

  constructor(post: (results: readonly CellResult[]) => Promise<void>) {
    this.#post = post
  }

  add(results: readonly CellResult[]): void {
    for (const result of results) this.#waiting.set(result.cell, result)
    void this.#flush()
  }

  /** True while the server has every edit of this browser. */
  setSaved(saved: boolean): void {
    this.#saved = saved
    void this.#flush()
  }

  async #flush(): Promise<void> {
    if (!this.#saved || this.#busy || this.#waiting.size === 0) return
    const results = [...this.#waiting.values()]
    this.#waiting.clear()
    this.#busy = true
    try {
      await this.#post(results)
    } catch {
      // Results are only a convenience for others: they can be computed again, so a failed post is let go.
    } finally {
      this.#busy = false
    }
    void this.#flush()
  }
}
