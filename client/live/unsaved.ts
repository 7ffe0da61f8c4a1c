/** Edits the server has not acknowledged yet: one group travels at a time, whatever is made meanwhile waits. */
import * as Y from 'yjs'
import { limits } from '../../shared/contracts/index.js'
import type { KeptKey } from './keep.js'

export interface UnsavedEdit {
  readonly update: Uint8Array
  /** Its key in this browser's keep, known a moment after the edit was made. */
  readonly kept: Promise<KeptKey | null>
}

export class UnsavedEdits {
  readonly #edits: UnsavedEdit[] = []
  #travelling = 0

  get count(): number {
    return this.#edits.length
  }

  get travelling(): boolean {
    return this.#travelling > 0
  }

  add(edit: UnsavedEdit): void {
    this.#edits.push(edit)
  }

  /** All of them as one update, `null` when there is none. */
  all(): Uint8Array | null {
    return this.#edits.length === 0 ? null : Y.mergeUpdates(this.#edits.map(({ update }) => update))
  }

  /** The next group as one update, `null` when nothing waits or a group is on its way. Groups stay under the byte limit. */
  depart(): Uint8Array | null {
    if (this.#travelling > 0 || this.#edits.length === 0) return null
    let bytes = 0
    let count = 0
    for (const { update } of this.#edits) {
      bytes += update.length
      if (count > 0 && bytes > limits.updateBytes * 0.9) break
      count += 1
    }
    this.#travelling = count
    return Y.mergeUpdates(this.#edits.slice(0, count).map((edit) => edit.update))
  }

  /** The group arrived: its edits, which may now leave the keep. */
  arrived(): readonly UnsavedEdit[] {
    const count = this.#travelling
    this.#travelling = 0
    return this.#edits.splice(0, count)
  }

  /** The connection broke or the group was refused: it waits again. Sending it twice does no harm. */
  turnBack(): void {
    this.#travelling = 0
  }

  clear(): readonly UnsavedEdit[] {
    this.#travelling = 0
    return this.#edits.splice(0)
  }
}
