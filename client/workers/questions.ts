/** Questions to a worker and its answers, matched by number. */

export interface Question<T> {
  readonly number: number
  readonly question: T
}

export type Answer<T> =
  | { readonly number: number; readonly ok: true; readonly answer: T }
  | { readonly number: number; readonly ok: false; readonly message: string }

/** In the page: asks the worker. A worker that dies fails all open questions and every later one. */
export function asker<Q, A>(worker: Worker): (question: Q) => Promise<A> {
  const open = new Map<number, { resolve(answer: A): void; reject(error: Error): void }>()
  let number = 0
  let dead: Error | undefined
  worker.onmessage = (event: MessageEvent<Answer<A>>) => {
    const asked = open.get(event.data.number)
    open.delete(event.data.number)
    if (event.data.ok) asked?.resolve(event.data.answer)
    else asked?.reject(new Error(event.data.message))
  }
  worker.onerror = (event) => {
    event.preventDefault()
    dead = new Error(`a background worker could not run (${event.message || 'it did not load'})`)
    for (const asked of open.values()) asked.reject(dead)
    open.clear()
  }
  return (question) =>
    new Promise((resolve, reject) => {
      if (dead !== undefined) return reject(dead)
      number += 1
      open.set(number, { resolve, reject })
      worker.postMessage({ number, question } satisfies Question<Q>)
    })
}

/** The scope of a dedicated worker, as far as answering needs it. */
interface AnsweringScope {
  onmessage: ((event: MessageEvent) => void) | null
  postMessage(message: unknown): void
}

/** In the worker: answers every question. */
export function answerer<Q, A>(scope: AnsweringScope, answer: (question: Q) => Promise<A>): void {
  scope.onmessage = (event: MessageEvent<Question<Q>>) => {
    const { number, question } = event.data
    answer(question).then(
      (value) => scope.postMessage({ number, ok: true, answer: value } satisfies Answer<A>),
      (error: unknown) =>
        scope.postMessage({
          number,
          ok: false,
          message: error instanceof Error ? error.message : String(error),
        } satisfies Answer<A>),
    )
  }
}
