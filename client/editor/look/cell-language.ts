/**
 * The language of cells as the editor colours and indents it. Tokens come from the reader that colours the static text, so that
 * opening a cell changes no colour; what a line leaves open (a long comment, a text over lines) goes to the next as its state.
 */
import { readTokens, type TokenKind } from '../../../shared/rendering/code/index.js'
import { languages } from '../monaco.js'

export const cellLanguage = 'cell'

export function registerCellLanguage(): void {
  languages.register({ id: cellLanguage })
  languages.setTokensProvider(cellLanguage, { getInitialState: () => new LineState(''), tokenize: tokenizeLine })
  languages.setLanguageConfiguration(cellLanguage, {
    comments: { lineComment: '//', blockComment: ['/*', '*/'] },
    brackets: [
      ['{', '}'],
      ['[', ']'],
      ['(', ')'],
    ],
    autoClosingPairs: [
      { open: '{', close: '}' },
      { open: '[', close: ']' },
      { open: '(', close: ')' },
      ...["'", '"', '`'].map((quote) => ({ open: quote, close: quote, notIn: ['string', 'comment'] })),
    ],
    indentationRules: {
      increaseIndentPattern: /(?:=>|[{([])\s*$/,
      decreaseIndentPattern: /^\s*[})\]]/,
    },
    wordPattern: /[\p{ID_Start}$_][\p{ID_Continue}$]*|-?\d*\.\d\w*/u,
  })
}

/** What the line before left open: nothing, a comment or a text. */
class LineState implements languages.IState {
  readonly open: '' | '/*' | '`'

  constructor(open: LineState['open']) {
    this.open = open
  }

  clone(): LineState {
    return this
  }

  equals(other: languages.IState): boolean {
    return other instanceof LineState && other.open === this.open
  }
}

/** The editor knows texts as `string` (quotes are not doubled in them); what has no scope is ink. */
const scopes: Readonly<Record<TokenKind, string>> = {
  comment: 'comment',
  text: 'string',
  number: 'number',
  keyword: 'keyword',
  plain: '',
}

function tokenizeLine(line: string, before: languages.IState): languages.ILineTokens {
  const open = before instanceof LineState ? before.open : ''
  const pieces = readTokens(open + line)
  let at = -open.length
  const tokens: languages.IToken[] = []
  for (const { kind, text } of pieces) {
    tokens.push({ startIndex: Math.max(0, at), scopes: scopes[kind] })
    at += text.length
  }
  return { tokens, endState: new LineState(leftOpen(pieces.at(-1))) }
}

function leftOpen(last: ReturnType<typeof readTokens>[number] | undefined): LineState['open'] {
  if (last?.kind === 'comment' && last.text.startsWith('/*') && !/^\/\*[\s\S]*\*\/$/.test(last.text)) return '/*'
  if (last?.kind === 'text' && last.text.startsWith('`') && !/^`(?:\\[\s\S]|[^`\\])*`$/.test(last.text)) return '`'
  return ''
}
