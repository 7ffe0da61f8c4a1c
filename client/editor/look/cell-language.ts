/**
 * The language of cells as the editor colours and indents it. Tokens come from the reader that colours the static text, so that
 * opening a cell changes no colour; what a line leaves open (a long comment, a text over lines) goes to the next as its state.
 */
import type { TokenKind } from '../../../shared/rendering/code/index.js'
import { languages } from '../monaco.js'
import { lineTokens, type OpenAtEnd } from './line-tokens.js'

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

/** What the line before left open. */
class LineState implements languages.IState {
  readonly open: OpenAtEnd

  constructor(open: OpenAtEnd) {
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
  const { tokens, open } = lineTokens(line, before instanceof LineState ? before.open : '')
  return {
    tokens: tokens.map(({ start, kind }) => ({ startIndex: start, scopes: scopes[kind] })),
    endState: new LineState(open),
  }
}
