export { type CellHeading, readHeading } from './heading.js'
export { renderCode } from './render-code.js'
export { readTokens, type Token, type TokenKind, tokenLines } from './tokens.js'
