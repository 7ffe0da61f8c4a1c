/**
 * Finished cells, remembered by fingerprint and by the overrides that can reach them, so that an edit runs only what depends on
 * it. What was used longest ago goes first once there are too many or they hold too much.
 */
import type { CellId } from '../../../../shared/contracts/index.js'
import type { Overrides, RunnableCell } from '../../program/index.js'
import { bounds } from '../protocol.js'
import type { Crossing } from './crossing.js'

interface Weighed {
  readonly weight: number
}

export interface FinishedCell extends Weighed {
  /** The reply's body, ready to be sent again. */
  readonly body: string
  readonly failed: boolean
  /** What other cells may read. */
  readonly exports: ReadonlyMap<string, Crossing>
}

export class Memory<Finished extends Weighed = FinishedCell> {
  readonly #cells = new Map<string, Finished>()
  #weight = 0

  recall(key: string): Finished | undefined {
    const found = this.#cells.get(key)
    if (found === undefined) return undefined
    this.#cells.delete(key)
    this.#cells.set(key, found)
    return found
  }

  remember(key: string, cell: Finished): void {
    if (cell.weight > bounds.remembered / 4) return
    this.#cells.set(key, cell)
    this.#weight += cell.weight
    for (const [oldKey, old] of this.#cells) {
      if (this.#weight <= bounds.remembered && this.#cells.size <= bounds.rememberedCells) break
      this.#cells.delete(oldKey)
      this.#weight -= old.weight
    }
  }
}

/** For each cell, the key under which it is remembered: its fingerprint and the overrides of assumptions in it and upstream. */
export function memoryKeys(cells: readonly RunnableCell[], overrides: Overrides): ReadonlyMap<CellId, string> {
  const reaching = new Map<CellId, ReadonlySet<string>>()
  const keys = new Map<CellId, string>()
  for (const cell of cells) {
    const names = new Set<string>()
    for (const name of cell.assumptions) if (Object.hasOwn(overrides, name)) names.add(name)
    for (const { from } of cell.reads) for (const name of reaching.get(from) ?? []) names.add(name)
    reaching.set(cell.id, names)
    const trials = [...names].sort().map((name) => `${name}=${overrides[name]}`)
    keys.set(cell.id, `${cell.fingerprint} ${trials.join(' ')}`)
  }
  return keys
}
