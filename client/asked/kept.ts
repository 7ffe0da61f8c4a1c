/** Answers by number: going back to one shows it at once. The ones kept longest go first. */

const most = 8

export class Kept<Answer> {
  readonly #answers = new Map<string, Answer>()

  get(target: string): Answer | undefined {
    return this.#answers.get(target)
  }

  put(target: string, answer: Answer): void {
    this.#answers.delete(target)
    this.#answers.set(target, answer)
    for (const oldest of [...this.#answers.keys()].slice(0, -most)) this.#answers.delete(oldest)
  }
}
