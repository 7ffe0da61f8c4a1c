/**
 * The runnable form of a cell: one strict function expression of the names it reads, giving the names it declares.
 *
 *     (function (reads) { "use strict"; const { density, u2 } = reads;
 *     ... the cell's own lines ...
 *     return { power, mass };
 *     })
 *     //# sourceURL=cell:ID
 *
 * The opening takes exactly one line, so a line of the cell's code is its line here less `runnableLineOffset`.
 */
import { parse } from 'acorn'

/** Lines that stand before the first line of a cell's code. */
export const runnableLineOffset = 1

export interface RunnableParts {
  readonly id: string
  /** JavaScript with types erased. */
  readonly code: string
  readonly declares: readonly string[]
  /** Names that other cells own. */
  readonly reads: readonly string[]
}

/**
 * Writes the runnable form, and reads it back before giving it away: a text that is not exactly one function expression with
 * the statements of the cell inside (a cell that closed the function early, a comment that swallowed the end) gives
 * `undefined`. The text that runs is checked, not the text it was made from.
 */
export function writeRunnable(parts: RunnableParts): string | undefined {
  const parameter = freeName('reads', [...parts.declares, ...parts.reads], parts.code)
  const receive = parts.reads.length === 0 ? '' : ` const { ${parts.reads.join(', ')} } = ${parameter};`
  const give = parts.declares.length === 0 ? 'return {};' : `return { ${parts.declares.join(', ')} };`
  const body = parts.code.endsWith('\n') ? parts.code : `${parts.code}\n`
  const text = `(function (${parameter}) { "use strict";${receive}\n${body}${give}\n})`
  if (!isOneFunction(text, parts)) return undefined
  return `${text}\n//# sourceURL=cell:${parts.id}\n`
}

/** A parameter name that the cell's own code does not contain at all, so that it can neither clash nor be read. */
function freeName(base: string, names: readonly string[], code: string): string {
  let name = base
  while (names.includes(name) || code.includes(name)) name += '_'
  return name
}

function isOneFunction(text: string, parts: RunnableParts): boolean {
  try {
    const program = parse(text, { ecmaVersion: 2023, sourceType: 'script' })
    const own = parse(parts.code, { ecmaVersion: 2023, sourceType: 'script' })
    const statement = program.body[0]
    if (program.body.length !== 1 || statement?.type !== 'ExpressionStatement') return false
    const made = statement.expression
    if (made.type !== 'FunctionExpression' || made.end !== text.length - 1) return false
    const around = parts.reads.length === 0 ? 2 : 3
    return made.body.body.length === own.body.length + around && made.body.body.at(-1)?.type === 'ReturnStatement'
  } catch {
    return false
  }
}
