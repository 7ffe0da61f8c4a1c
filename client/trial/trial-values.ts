/**
 * Which values are tried in place of the document's. They belong to one tab of one person: they never enter the document or the stored
 * results. DOM-free.
 */
import type { Point } from '../../shared/contracts/index.js'
import type { TrialMemory, TrialValue } from './trial-memory.js'

export interface TrialSources {
  /** What the document says, from a result of its present text; SI. */
  said(name: string): number | undefined
  onChange(): void
}

export class TrialValues {
  readonly #memory: TrialMemory
  readonly #sources: TrialSources
  readonly #held: Map<string, TrialValue>
  /** Assumptions of the cells as they were read last; absent before the first reading. */
  #known: ReadonlySet<string> | undefined
  #point: Point | undefined

  constructor(memory: TrialMemory, sources: TrialSources) {
    this.#memory = memory
    this.#sources = sources
    this.#held = new Map(memory.read())
  }

  /** What is in force, SI; the same object until it changes. Values of what is no assumption at present wait. */
  point(): Point {
    this.#point ??= Object.fromEntries(
      [...this.#held].flatMap(([name, { value }]) => (this.#known?.has(name) === true ? [[name, value]] : [])),
    )
    return this.#point
  }

  /** Names that a value is tried for, in the order in which they were first tried, in force or waiting. */
  get names(): readonly string[] {
    return [...this.#held.keys()]
  }

  get(name: string): TrialValue | undefined {
    return this.#held.get(name)
  }

  /** The value that the document says itself is no trial, and one that is not finite is not taken. */
  set(name: string, value: number): void {
    this.tryPoint({ [name]: value })
  }

  /** Puts a whole point on trial; values of other names stay. */
  readonly tryPoint = (point: Point): void => {
    for (const [name, value] of Object.entries(point)) {
      if (!Number.isFinite(value)) continue
      const said = this.#sources.said(name)
      if (said !== undefined && alike(value, said)) this.#held.delete(name)
      else this.#held.set(name, said === undefined ? { value } : { value, said })
    }
    this.#changed()
  }

  /** In place of everything that was tried before, as a link asks for it. */
  replace(point: Point): void {
    this.#held.clear()
    this.tryPoint(point)
  }

  discard(...names: readonly string[]): void {
    let gone = false
    for (const name of names) gone = this.#held.delete(name) || gone
    if (gone) this.#changed()
  }

  discardAll(): void {
    this.discard(...this.names)
  }

  /** Whoever tries it has been told what the document says by now, so adopting goes over it knowingly. */
  seen(name: string, said: number): void {
    const held = this.#held.get(name)
    if (held === undefined) return
    this.#held.set(name, { ...held, said })
    this.#memory.write(this.#held)
  }

  /**
   * The assumptions of the cells as they were just read. A name that is none any more is forgotten; while some cell cannot be read
   * (`whole` is false) it may only be hidden, and waits. Answers what was forgotten.
   */
  know(names: Iterable<string>, whole: boolean): readonly string[] {
    this.#known = new Set(names)
    this.#point = undefined
    const gone = whole ? this.names.filter((name) => this.#known?.has(name) !== true) : []
    this.discard(...gone)
    return gone
  }

  /** Values that the document has come to say itself, by adopting or by anybody's edit, are no trials any more. */
  settle(): void {
    const settled = [...this.#held].filter(([name, { value }]) => {
      const said = this.#sources.said(name)
      return said !== undefined && alike(value, said)
    })
    this.discard(...settled.map(([name]) => name))
  }

  #changed(): void {
    this.#point = undefined
    this.#memory.write(this.#held)
    this.#sources.onChange()
  }
}

/** Up to the last bits, which a change of unit may move. */
export function alike(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(one), Math.abs(other))
}
