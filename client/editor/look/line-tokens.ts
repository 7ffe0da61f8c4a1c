/** The static text's tokens, line by line as an editor wants them: what a line leaves open is the state of the next. */
import { readTokens, type Token } from '../../../shared/rendering/code/index.js'

/** A long comment or a text over lines that goes on in the next line. */
export type OpenAtEnd = '' | '/*' | '`'

export interface LineTokens {
  /** Kind of what begins at each column. */
  readonly tokens: readonly { readonly start: number; readonly kind: Token['kind'] }[]
  readonly open: OpenAtEnd
}

export function lineTokens(line: string, open: OpenAtEnd): LineTokens {
  const pieces = readTokens(open + line)
  const tokens: { start: number; kind: Token['kind'] }[] = []
  let at = -open.length
  for (const { kind, text } of pieces) {
    tokens.push({ start: Math.max(0, at), kind })
    at += text.length
  }
  return { tokens, open: leftOpen(pieces.at(-1)) }
}

function leftOpen(last: Token | undefined): OpenAtEnd {
  if (last?.kind === 'comment' && last.text.startsWith('/*') && !/^\/\*[\s\S]*\*\/$/.test(last.text)) return '/*'
  if (last?.kind === 'text' && last.text.startsWith('`') && !/^`(?:\\[\s\S]|[^`\\])*`$/.test(last.text)) return '`'
  return ''
}
