/**
 * Sends results to the server once it has the text they belong to: sent earlier they would be refused as stale. What it does not take
 * all the same is given back, to be offered again when its text is there again.
 */
import type { CellId, CellResult } from '../../shared/contracts/index.js'

export class Sharing {
  readonly #waiting = new Map<CellId, CellResult>()
  readonly #post: (results: readonly CellResult[]) => Promise<readonly CellId[]>
  readonly #giveBack: (results: readonly CellResult[]) => void
  #saved = false
  #busy = false

  /** `post` answers the cells whose results were stale. */
  constructor(
    post: (results: readonly CellResult[]) => Promise<readonly CellId[]>,
    giveBack: (results: readonly CellResult[]) => void,
  ) {
    this.#post = post
    this.#giveBack = giveBack
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
      const stale = await this.#post(results)
      this.#giveBack(results.filter(({ cell }) => stale.includes(cell)))
    } catch {
      this.#giveBack(results)
    } finally {
      this.#busy = false
    }
    void this.#flush()
  }
}
