/** Where a cell can be divided: between two lines, never within a bracket, a fence or a displayed formula. DOM-free. */
import type { CellKind } from '../../shared/contracts/index.js'
import { readTokens } from '../../shared/rendering/code/index.js'

/** A place in a text, both counted from 1. */
interface Place {
  readonly line: number
  readonly column: number
}

export type Division =
  | {
      readonly ok: true
      /** Offsets: the upper part ends, the lower part begins. Blank lines between them go. */
      readonly upperEnd: number
      readonly lowerStart: number
      /** Where the caret is afterwards: at the same character, in whichever part that is. */
      readonly caret: Place & { readonly part: 'upper' | 'lower' }
    }
  | { readonly ok: false; readonly message: string }

/** Divides before the line of the caret, or behind it when the caret stands at the line's end. */
export function divide(source: string, kind: CellKind, caret: Place): Division {
  const lines = source.split('\n')
  const line = Math.min(Math.max(caret.line, 1), lines.length)
  const atEnd = caret.column > 1 && caret.column > (lines[line - 1] ?? '').length
  const above = atEnd ? line : line - 1
  const isBlank = (part: readonly string[]) => part.every((each) => each.trim() === '')
  if (isBlank(lines.slice(0, above)) || isBlank(lines.slice(above)))
    return refuse('Put the caret where the lower cell should begin: both cells would need some text.')
  const opener = kind === 'sizing' ? openBracket(lines, above) : openBlock(lines, above)
  if (opener !== null)
    return refuse(`The cell cannot be divided here: line ${opener.line} opens ${opener.what} that ends further down.`)
  let upper = above
  while (isBlank(lines.slice(upper - 1, upper))) upper -= 1
  let lower = above
  while (isBlank(lines.slice(lower, lower + 1))) lower += 1
  const part = line <= above ? 'upper' : 'lower'
  const caretLine = part === 'upper' ? Math.min(line, upper) : Math.max(1, line - lower)
  return {
    ok: true,
    upperEnd: lines.slice(0, upper).join('\n').length,
    lowerStart: lines.slice(0, lower).join('\n').length + 1,
    caret: { line: caretLine, column: caret.column, part },
  }
}

interface Opener {
  readonly line: number
  readonly what: string
}

/** The bracket, comment or text that is open at the end of line `above`. */
function openBracket(lines: readonly string[], above: number): Opener | null {
  const end = lines.slice(0, above).join('\n').length
  const open: number[] = []
  let at = 0
  for (const { kind, text } of readTokens(lines.join('\n'))) {
    if (at >= end) break
    const runsOver = at + text.length > end
    if (runsOver && (kind === 'comment' || kind === 'text'))
      return { line: lineAt(lines, at), what: kind === 'comment' ? 'a comment' : 'a text' }
    if (kind === 'plain')
      for (let index = 0; index < text.length && at + index < end; index += 1) {
        if ('([{'.includes(text[index] ?? '')) open.push(at + index)
        else if (')]}'.includes(text[index] ?? '')) open.pop()
      }
    at += text.length
  }
  const last = open.at(-1)
  return last === undefined ? null : { line: lineAt(lines, last), what: 'a bracket' }
}

/** The fenced block or displayed formula of prose that is open at the end of line `above`. */
function openBlock(lines: readonly string[], above: number): Opener | null {
  let open: (Opener & { readonly mark: string }) | null = null
  lines.slice(0, above).forEach((text, index) => {
    const mark = /^ {0,3}(```|~~~|\$\$)/.exec(text)?.[1]
    // A formula that opens and closes on one line opens nothing.
    if (mark === undefined || (mark === '$$' && /\$\$.*\$\$/.test(text))) return
    if (open === null) open = { mark, line: index + 1, what: mark === '$$' ? 'a formula' : 'a block of code' }
    else if (open.mark === mark) open = null
  })
  return open
}

function lineAt(lines: readonly string[], offset: number): number {
  let rest = offset
  let line = 0
  while (line < lines.length - 1 && rest > (lines[line] ?? '').length) {
    rest -= (lines[line] ?? '').length + 1
    line += 1
  }
  return line + 1
}

const refuse = (message: string): Division => ({ ok: false, message })
