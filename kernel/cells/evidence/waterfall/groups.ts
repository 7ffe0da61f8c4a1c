/** Things that belong together, joined two by two, with the reasons. */
export class Groups {
  readonly #leader: number[]
  readonly #reasons = new Map<number, Set<string>>()

  constructor(count: number) {
    this.#leader = Array.from({ length: count }, (_, index) => index)
  }

  join(one: number, other: number, why: string): void {
    const [a, b] = [this.#find(one), this.#find(other)]
    const [first, second] = [Math.min(a, b), Math.max(a, b)]
    if (first === second && one === other) return
    const reasons = new Set([...(this.#reasons.get(first) ?? []), ...(this.#reasons.get(second) ?? []), why])
    this.#leader[second] = first
    this.#reasons.set(first, reasons)
  }

  /** In the order of their first members. */
  get all(): { readonly members: readonly number[]; readonly why: readonly string[] }[] {
    const members = new Map<number, number[]>()
    this.#leader.forEach((_, index) => {
      const leader = this.#find(index)
      members.set(leader, [...(members.get(leader) ?? []), index])
    })
    return [...members].map(([leader, group]) => ({ members: group, why: [...(this.#reasons.get(leader) ?? [])] }))
  }

  #find(index: number): number {
    let at = index
    for (let up = this.#leader[at] ?? at; up !== at; up = this.#leader[at] ?? at) at = up
    return at
  }
}
