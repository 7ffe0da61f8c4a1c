/** Answers by the set of changes adopted, each worked out once. */
import type { Attempt, Change, ExplainOptions } from './explain.js'

const stopped: Attempt = { ok: false, reason: 'it was stopped.' }

export class Answers {
  readonly #change: Change
  readonly #options: ExplainOptions
  readonly #known: Map<string, Promise<Attempt>>
  readonly #steps: readonly (readonly number[])[]
  #expected = 0

  constructor(
    change: Change,
    options: ExplainOptions = {},
    steps: readonly (readonly number[])[] = Array.from({ length: change.count }, (_, index) => [index]),
    known = new Map<string, Promise<Attempt>>(),
  ) {
    this.#change = change
    this.#options = options
    this.#steps = steps
    this.#known = known
  }

  get count(): number {
    return this.#steps.length
  }

  get asked(): number {
    return this.#known.size
  }

  get isStopped(): boolean {
    return this.#options.isStopped?.() === true
  }

  /** How many answers there will be in all, for whoever watches. */
  expect(inAll: number): void {
    this.#expected = inAll
  }

  /** The same answers, asked for by steps of several changes. */
  over(steps: readonly (readonly number[])[]): Answers {
    return new Answers(this.#change, this.#options, steps, this.#known)
  }

  async of(adopted: Iterable<number>): Promise<Attempt> {
    const places = [...adopted].flatMap((step) => this.#steps[step] ?? []).sort((a, b) => a - b)
    const key = places.join(' ')
    const known = this.#known.get(key)
    if (known !== undefined) return await known
    if (this.isStopped) return stopped
    const answer = this.#change.attempt(new Set(places))
    this.#known.set(key, answer)
    const attempt = await answer
    const checked: Attempt =
      attempt.ok && !Number.isFinite(attempt.value) ? { ok: false, reason: 'the result is no number.' } : attempt
    if (checked !== attempt) this.#known.set(key, Promise.resolve(checked))
    // What was cut off by a stop is no answer to remember.
    if (!attempt.ok && this.isStopped) this.#known.delete(key)
    this.#options.onProgress?.(this.asked, Math.max(this.asked, this.#expected))
    return checked
  }

  /** @throws Error with the reason when there is no answer. */
  async must(adopted: Iterable<number>): Promise<number> {
    const attempt = await this.of(adopted)
    if (!attempt.ok) throw new Error(attempt.reason)
    return attempt.value
  }
}
