/**
 * Fields of the title block that the server does not have yet: kept in this browser, so that neither a lost network nor a reload loses
 * them. `from` stays what the server was last known to have, however often a field is written meanwhile.
 */
import { z } from 'zod'
import { TitleBlock, type TitleBlockField } from '../../shared/contracts/index.js'
import type { FieldStep } from '../live/undo.js'

const Steps = z.array(z.object({ field: TitleBlock.keyof(), from: z.string(), to: z.string() }))

export type FieldStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

export class WaitingFields {
  readonly #storage: FieldStorage | undefined
  readonly #key: string
  readonly #steps = new Map<TitleBlockField, FieldStep>()

  constructor(notebook: string, storage: FieldStorage | undefined) {
    this.#storage = storage
    this.#key = `hoverfolio unsaved fields ${notebook}`
    for (const step of this.#read()) this.#steps.set(step.field, step)
  }

  get all(): readonly FieldStep[] {
    return [...this.#steps.values()]
  }

  /** Keeps a step; answers what is to be sent, `null` when the field is back to what the server has. */
  put({ field, from, to }: FieldStep): FieldStep | null {
    const step = { field, from: this.#steps.get(field)?.from ?? from, to }
    if (step.from === to) this.#steps.delete(field)
    else this.#steps.set(field, step)
    this.#write()
    return step.from === to ? null : step
  }

  /** The server has this step; what was written since goes on from it. */
  sent({ field, to }: FieldStep): void {
    const now = this.#steps.get(field)
    if (now === undefined) return
    if (now.to === to) this.#steps.delete(field)
    else this.#steps.set(field, { ...now, from: to })
    this.#write()
  }

  remove(field: TitleBlockField): void {
    if (this.#steps.delete(field)) this.#write()
  }

  /** The block as this person sees it. */
  over(block: TitleBlock): TitleBlock {
    return { ...block, ...Object.fromEntries(this.all.map(({ field, to }) => [field, to])) }
  }

  #read(): readonly FieldStep[] {
    try {
      return Steps.parse(JSON.parse(this.#storage?.getItem(this.#key) ?? '[]'))
    } catch {
      return []
    }
  }

  #write(): void {
    try {
      if (this.#steps.size === 0) this.#storage?.removeItem(this.#key)
      else this.#storage?.setItem(this.#key, JSON.stringify(this.all))
    } catch {
      // Storage is full or switched off: they wait as long as the page is open.
    }
  }
}
