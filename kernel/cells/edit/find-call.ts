/** Where an assumption is stated in the TypeScript of a cell. */
import { type AnyNode, type CallExpression, parseExpressionAt } from 'acorn'
import { codeOf } from './mask.js'

/** The call as a syntax tree, with places in the source. */
export function findAssumption(source: string, name: string): CallExpression | undefined {
  const code = codeOf(source)
  for (const { index, 0: head, 1: types = '' } of code.matchAll(/(?<![\w$.])assumption(\s*<[^()]*>)?\s*\(/g)) {
    const end = closingBracket(code, index + head.length - 1)
    if (end === undefined) continue
    // Types of a call mean nothing to acorn; blanked, everything else keeps its place.
    const typesAt = index + 'assumption'.length
    const text = `${source.slice(0, typesAt)}${' '.repeat(types.length)}${source.slice(typesAt + types.length, end)}`
    const call = parseAt(text, index)
    if (call?.type !== 'CallExpression') continue
    const first = call.arguments[0]
    if (first?.type === 'Literal' && first.value === name) return call
  }
  return undefined
}

/** The tree of an expression at a place, absent where acorn cannot read it (types inside it, for instance). */
function parseAt(text: string, at: number): AnyNode | undefined {
  try {
    return parseExpressionAt(text, at, { ecmaVersion: 2023, preserveParens: true })
  } catch {
    return undefined
  }
}

/** After the bracket that closes the one at `open`. */
function closingBracket(code: string, open: number): number | undefined {
  let depth = 0
  for (let at = open; at < code.length; at += 1) {
    if ('([{'.includes(code[at] ?? '')) depth += 1
    if (')]}'.includes(code[at] ?? '')) depth -= 1
    if (depth === 0) return at + 1
  }
  return undefined
}

/** The line of a place, counted from 1. */
export function lineOf(source: string, at: number): number {
  return source.slice(0, at).split('\n').length
}
