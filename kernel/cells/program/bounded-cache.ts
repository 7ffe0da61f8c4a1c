/** A map that forgets what was used longest ago, so that a long session of typing does not grow without end. */
export class BoundedCache<K, V> {
  readonly #entries = new Map<K, V>()
  readonly #capacity: number

  constructor(capacity: number) {
    this.#capacity = capacity
  }

  get(key: K): V | undefined {
    const value = this.#entries.get(key)
    if (value === undefined) return undefined
    this.#entries.delete(key)
    this.#entries.set(key, value)
    return value
  }

  set(key: K, value: V): void {
    this.#entries.delete(key)
    this.#entries.set(key, value)
    if (this.#entries.size <= this.#capacity) return
    const oldest = this.#entries.keys().next()
    if (oldest.done !== true) this.#entries.delete(oldest.value)
  }

  delete(key: K): void {
    this.#entries.delete(key)
  }

  get size(): number {
    return this.#entries.size
  }
}
