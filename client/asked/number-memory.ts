/** Which number was asked what: kept while this tab of the browser lives. */

export const asks = ['trace', 'drivers', 'spread'] as const
export type Ask = (typeof asks)[number]

export function isAsk(word: unknown): word is Ask {
  return asks.some((ask) => ask === word)
}

export interface Question {
  readonly target: string
  readonly ask: Ask
}

export interface NumberMemory {
  read(): Question | undefined
  write(question: Question): void
}

export function numberMemory(notebook: string, storage: Storage | undefined): NumberMemory {
  const key = `hoverfolio number ${notebook}`
  return {
    read: () => readQuestion(attempt(() => storage?.getItem(key))),
    write: (question) => void attempt(() => storage?.setItem(key, JSON.stringify(question))),
  }
}

/** Whatever else may stand under the key is no question. */
function readQuestion(text: string | null | undefined): Question | undefined {
  const parsed: unknown = attempt(() => JSON.parse(text ?? 'null'))
  if (typeof parsed !== 'object' || parsed === null || !('target' in parsed) || !('ask' in parsed)) return undefined
  const { target, ask } = parsed
  return typeof target === 'string' && isAsk(ask) ? { target, ask } : undefined
}

/** A storage that is full or forbidden keeps nothing, and nothing else suffers. */
function attempt<T>(act: () => T): T | undefined {
  try {
    return act()
  } catch {
    return undefined
  }
}
