/**
 * A light reader of TypeScript for static colouring: comments, texts, numbers, key words, the rest. It never fails and
 * its pieces joined are the source again; finer distinctions are the editor's business.
 */

export type TokenKind = 'comment' | 'text' | 'number' | 'keyword' | 'plain'
export interface Token {
  readonly kind: TokenKind
  readonly text: string
}

const keywords: ReadonlySet<string> = new Set(
  (
    'as break case catch class const continue default do else extends false finally for function if in instanceof ' +
    'interface let new null of readonly return satisfies static super switch this throw true try type typeof ' +
    'undefined var void while with yield'
  ).split(' '),
)

const pattern =
  /(?<comment>\/\/[^\n]*|\/\*[\s\S]*?(?:\*\/|$))|(?<text>"(?:\\.|[^"\\\n])*(?:"|(?=\n)|$)|'(?:\\.|[^'\\\n])*(?:'|(?=\n)|$)|`(?:\\[\s\S]|[^`\\])*(?:`|$))|(?<number>(?<![\w$.])(?:0[xX][\da-fA-F_]+|0[bB][01_]+|(?:\d[\d_]*\.?[\d_]*|\.\d[\d_]*)(?:[eE][+-]?\d+)?)n?)|(?<word>[A-Za-z_$][\w$]*)/g

/** Splits a source into coloured pieces in order; neighbouring plain pieces are one. */
export function readTokens(source: string): Token[] {
  const tokens: Token[] = []
  let at = 0
  for (const match of source.matchAll(pattern)) {
    const kind = kindOf(match.groups ?? {}, source[match.index - 1])
    if (kind === 'plain') continue
    if (match.index > at) tokens.push({ kind: 'plain', text: source.slice(at, match.index) })
    tokens.push({ kind, text: match[0] })
    at = match.index + match[0].length
  }
  if (at < source.length) tokens.push({ kind: 'plain', text: source.slice(at) })
  return tokens
}

function kindOf(groups: Record<string, string | undefined>, before: string | undefined): TokenKind {
  if (groups.comment !== undefined) return 'comment'
  if (groups.text !== undefined) return 'text'
  if (groups.number !== undefined) return 'number'
  return before !== '.' && keywords.has(groups.word ?? '') ? 'keyword' : 'plain'
}

/** The same pieces line by line; a piece that runs over lines is cut at each. */
export function tokenLines(source: string): Token[][] {
  const lines: Token[][] = [[]]
  for (const token of readTokens(source)) {
    token.text.split('\n').forEach((text, index) => {
      if (index > 0) lines.push([])
      if (text !== '') lines.at(-1)?.push({ kind: token.kind, text })
    })
  }
  return lines
}
