/** Which cells trial values reach, and under which key their results are known: by text and by every value that reaches them. */
import type { Overrides, Program } from '../../kernel/cells/program/index.js'
import type { CellId } from '../../shared/contracts/index.js'

/** A key for each cell that is reached; the others show the document's results. */
export function trialKeys(program: Program, overrides: Overrides): ReadonlyMap<CellId, string> {
  const reaching = new Map<CellId, ReadonlySet<string>>()
  const keys = new Map<CellId, string>()
  // Program order puts each cell after what it reads, so one pass is enough.
  for (const { id, fingerprint, assumptions, reads } of program.cells) {
    const names = new Set(assumptions.filter((name) => Object.hasOwn(overrides, name)))
    for (const { from } of reads) for (const name of reaching.get(from) ?? []) names.add(name)
    reaching.set(id, names)
    if (names.size > 0) keys.set(id, JSON.stringify([fingerprint, [...names].sort().map((n) => [n, overrides[n]])]))
  }
  return keys
}

/** Only what is an assumption of a cell that can run: another name would be refused by whoever evaluates. */
export function fittingOverrides(program: Program, overrides: Overrides): Overrides {
  const known = new Set(program.cells.flatMap(({ assumptions }) => assumptions))
  return Object.fromEntries(Object.entries(overrides).filter(([name]) => known.has(name)))
}
