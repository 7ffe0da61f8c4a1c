/** The part of a cell that some of its names need. */
import { type Statement, statesName } from '../../analyse/index.js'

export interface CellNeeds {
  /** Names of the cell that are read elsewhere or wanted. */
  readonly names: ReadonlySet<string>
  /** All its requirements are wanted. */
  readonly requirements: boolean
}

/**
 * Statements that are needed: those that declare a needed name, change it, or may change it through a function; and what these
 * read, in turn. What only shows something to the reader is left out.
 *
 * @param shared - names that statements may change for each other: the cell's own and those read from other cells
 */
export function neededStatements(
  statements: readonly Statement[],
  shared: ReadonlySet<string>,
  { names, requirements }: CellNeeds,
): readonly Statement[] {
  const needed = new Set(names)
  const changers = new Set<string>()
  const kept = new Set<Statement>()
  const has = (some: readonly string[], set: ReadonlySet<string>) => some.some((name) => set.has(name))
  const wants = (statement: Statement) =>
    has(statement.declares, needed) ||
    has(statement.changes, needed) ||
    [...names].some((name) => statesName(statement, name)) ||
    has(statement.reads, changers) ||
    (requirements && statement.requires) ||
    (statement.kind === 'other' && statement.reads.some((name) => needed.has(name) && shared.has(name)))
  for (let more = true; more; ) {
    more = false
    for (const statement of statements) {
      if (kept.has(statement) || !wants(statement)) continue
      kept.add(statement)
      more = true
      for (const name of [...statement.declares, ...statement.reads, ...statement.changes]) needed.add(name)
      if (statement.changesLater) for (const name of statement.declares) changers.add(name)
    }
  }
  return statements.filter((statement) => kept.has(statement))
}

/** The code with everything but these statements blanked out, so that lines stay where they are. */
export function codeOf(code: string, statements: readonly Statement[], kept: readonly Statement[]): string {
  const keep = new Set(kept)
  let text = ''
  let at = 0
  for (const statement of statements) {
    if (keep.has(statement)) continue
    const { start, end } = statement
    // A semicolon in its place, so that what stands before and after cannot join into one.
    text += `${code.slice(at, start)};${code.slice(start + 1, end).replace(/[^\n]/g, ' ')}`
    at = end
  }
  return text + code.slice(at)
}
