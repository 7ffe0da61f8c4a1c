/** Trial values are kept while this tab of the browser lives, so that a reload loses none. */

/** A value that is tried in place of the document's. */
export interface TrialValue {
  /** SI. */
  readonly value: number
  /** What the document said when it was chosen, where that was known; SI. */
  readonly said?: number
}

export interface TrialMemory {
  read(): ReadonlyMap<string, TrialValue>
  write(values: ReadonlyMap<string, TrialValue>): void
}

export const forgetfulTrials: TrialMemory = { read: () => new Map(), write() {} }

export function trialMemory(notebook: string, storage: Storage | undefined): TrialMemory {
  const key = `hoverfolio trial ${notebook}`
  if (storage === undefined) return forgetfulTrials
  return {
    read: () => new Map(kept(attempt(() => storage.getItem(key)) ?? null)),
    write: (values) =>
      attempt(() => (values.size === 0 ? storage.removeItem(key) : storage.setItem(key, JSON.stringify([...values])))),
  }
}

/** What is there may be of another edition of the program, or from a stranger's hand: what does not fit is passed over. */
function kept(text: string | null): readonly (readonly [string, TrialValue])[] {
  const entries = text === null ? undefined : attempt(() => JSON.parse(text) as unknown)
  if (!Array.isArray(entries)) return []
  return entries.flatMap((entry): [string, TrialValue][] => {
    const [name, held] = Array.isArray(entry) ? (entry as unknown[]) : []
    const { value, said } = typeof held === 'object' && held !== null ? (held as Record<string, unknown>) : {}
    if (typeof name !== 'string' || !isFiniteNumber(value)) return []
    return [[name, isFiniteNumber(said) ? { value, said } : { value }]]
  })
}

const isFiniteNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)

/** Asking for what is stored may throw; what cannot be kept is let go. */
function attempt<T>(make: () => T): T | undefined {
  try {
    return make()
  } catch {
    return undefined
  }
}
