/** What a platform (a child process, a worker in a frame) has to offer so that programs can be run in isolation on it. */

/** Why an isolate is gone: by itself, or because it was over its memory. */
export type Loss =
  | { readonly code: 'MEMORY_LIMIT'; readonly megabytes: number }
  | { readonly code: 'EVALUATOR_LOST'; readonly reason: string }

/** One sandbox, ready to take messages. */
export interface Isolate {
  /** Hands a message of `protocol.ts` in. Its lines come by `onLine`, one by one and as they arise, even before an endless loop. */
  send(message: string): void
  /** Receives lines and the loss of the isolate; one listener at a time. */
  listen(listener: IsolateListener): void
  /** A run begins or ends: lets a platform watch memory only while there is something to watch. */
  watch(active: boolean): void
  /** Ends it at once, whatever it is doing. */
  end(): void
}

export interface IsolateListener {
  onLine(line: string): void
  onLost(loss: Loss): void
}

export interface Platform {
  /** Resolves when the sandbox is locked down and waits for messages; rejects with a sentence when it cannot be had. */
  openIsolate(): Promise<Isolate>
  /** Calls `action` after a time [ms]; the function returned takes the call back. */
  startTimer(milliseconds: number, action: () => void): () => void
  /** Keep one more isolate ready, so that a stop costs the next run nothing. */
  readonly spare: boolean
  /** SHA-256 of the sandbox text, to be compared with the program's; not compared when absent. */
  readonly kernelHash?: string
}
