/** What esbuild says about unreadable source, put into our coordinates and into words that make sense beside a cell. */

/** Line and column counted from 1, columns in UTF-16 units as editors count them. */
export interface SourceFailure {
  readonly line: number
  readonly column: number
  readonly message: string
}

interface EsbuildMessage {
  readonly text: string
  /** esbuild counts lines from 1 and columns from 0, in bytes of UTF-8. */
  readonly location?: { readonly line: number; readonly column: number; readonly lineText: string } | null
}

/** Reads the first error of a rejected transform; `undefined` when the failure is not about the source. */
export function readTransformFailure(failure: unknown): SourceFailure | undefined {
  const errors = (failure as { errors?: readonly EsbuildMessage[] } | null)?.errors
  const first = Array.isArray(errors) ? (errors as readonly EsbuildMessage[])[0] : undefined
  if (first === undefined || typeof first.text !== 'string') return undefined
  const location = first.location
  if (location === null || location === undefined) return undefined
  const column = utf16Column(location.lineText, location.column)
  return { line: location.line, column: column + 1, message: reword(first.text) }
}

/** Turns a count of UTF-8 bytes into a count of UTF-16 units. */
function utf16Column(line: string, bytes: number): number {
  let seen = 0
  let column = 0
  for (const character of line) {
    if (seen >= bytes) break
    const code = character.codePointAt(0) ?? 0
    seen += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
    column += character.length
  }
  return column
}

const rewordings: readonly (readonly [RegExp, string])[] = [
  [/^Unexpected end of file$/, 'The cell ends too early: a bracket, brace or expression is not finished.'],
  [/^Expected identifier but found end of file$/, 'The cell ends where a name should follow.'],
  [/^Expected (.+) but found end of file$/, 'The cell ends where $1 should follow.'],
  [/^Expected ";" but found (.+)$/, 'Here the statement should end (with ";" or a new line), but $1 follows.'],
  [/^Expected identifier but found (.+)$/, 'A name should stand here, not $1.'],
  [/^Expected (.+) but found (.+)$/, '$1 should stand here, not $2.'],
  [/^Unexpected (.+)$/, '$1 does not fit here.'],
  [/^Syntax error (.+)$/, '$1 does not fit here.'],
  [/^Unterminated string literal$/, 'The text in quotes is not closed.'],
  [/^Unterminated template literal$/, 'The text in backquotes is not closed.'],
  [/^Unterminated regular expression$/, 'The regular expression is not closed by "/".'],
  [/^Expected "\*\/" to terminate multi-line comment$/, 'The comment is not closed by "*/".'],
  [/^The symbol (.+) has already been declared$/, '$1 is declared twice in this cell; give one of them another name.'],
  [/^The constant (.+) must be initialized$/, 'The constant $1 needs a value: const name = value.'],
  [/^"await" can only be used inside.*$/, 'Cells are synchronous: "await" cannot be used.'],
  [/^Cannot use "await" as an identifier here:$/, '"await" cannot be used as a name.'],
  [/^Cannot use "yield" outside a generator function$/, 'Cells are synchronous: "yield" cannot be used.'],
  [/^Cannot use "new\.target" here:$/, '"new.target" has no meaning at the top level of a cell.'],
  [/^Cannot use (.+) here:$/, '$1 cannot be used here.'],
  [/^With statements cannot be used in strict mode$/, '"with" cannot be used; name the values one by one.'],
  [
    /^Top-level return cannot be used.*$/,
    '"return" at the top level cannot be used in a cell. Declare the value instead: const name = ...',
  ],
  [/^Invalid assignment target$/, 'What stands left of "=" cannot be given a value.'],
  [/^(.+) cannot be used in strict mode$/, '$1 cannot be used in cells.'],
]

function reword(text: string): string {
  const known = rewordings.find(([pattern]) => pattern.test(text))
  if (known !== undefined) return text.replace(known[0], known[1])
  return /[.!?]$/.test(text) ? text : `${text}.`
}
