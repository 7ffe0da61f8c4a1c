/** Work under one name is done one after the other, in the order in which it was asked for. */
export class Turns {
  readonly #last = new Map<string, Promise<unknown>>()

  async take<T>(name: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(name) ?? Promise.resolve()
    const mine = before.then(work, work)
    const settled = mine.then(
      () => undefined,
      () => undefined,
    )
    this.#last.set(name, settled)
    try {
      return await mine
    } finally {
      if (this.#last.get(name) === settled) this.#last.delete(name)
    }
  }
}
