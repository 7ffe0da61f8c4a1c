/**
 * Steps from one version of the notebook file to the next: `migrations[n]` turns version n into n + 1.
 *
 * Version 1 is the first, so the table is empty; a test proves that it has no gap up to the current version and that
 * the walk itself works. A new version adds its step here and its old sample to `tests/notebooks`.
 */
export type NotebookMigration = (document: Readonly<Record<string, unknown>>) => Record<string, unknown>

export const migrations: Readonly<Record<number, NotebookMigration>> = {}

/** Walks a document up to `target`. The caller has checked that `version` is a whole number from 1 to `target`. */
export function migrate(
  document: Readonly<Record<string, unknown>>,
  version: number,
  target: number,
  steps: Readonly<Record<number, NotebookMigration>> = migrations,
): Record<string, unknown> {
  let current: Record<string, unknown> = { ...document }
  for (let from = version; from < target; from += 1) {
    const step = steps[from]
    if (step === undefined) throw new Error(`no step from notebook version ${from} to ${from + 1}`)
    current = { ...step(current), version: from + 1 }
  }
  return current
}
