/** A cell without what its assumptions state: two cells with the same skeleton differ in assumptions (and comments) only. */
import { type CallExpression, type Expression, type Program, parse, type SpreadElement, tokenizer } from 'acorn'

export interface Skeleton {
  /** Its tokens, with a mark where an assumption states its value and options. */
  readonly tokens: string
  /** Assumptions whose value is written as plain numbers and units, with the tokens of that value. */
  readonly plain: ReadonlyMap<string, string>
}

const options = { ecmaVersion: 'latest', sourceType: 'module' } as const

/** `code` is JavaScript that was read before. Values worked out from other names stay in the skeleton: they follow those names. */
export function skeletonOf(code: string, assumptions: readonly string[]): Skeleton {
  const plain = new Map<string, string>()
  const gaps: { readonly start: number; readonly end: number }[] = []
  for (const { name, call } of assumptionCalls(parse(code, options), assumptions)) {
    const [, value, last = value] = call.arguments
    if (value === undefined || last === undefined) continue
    const words = tokensOf(code.slice(value.start, value.end))
    const isPlain = isPlainValue(value)
    if (isPlain) plain.set(name, words)
    gaps.push({ start: isPlain ? value.start : value.end, end: last.end })
  }
  let bare = ''
  let at = 0
  for (const { start, end } of gaps) {
    bare += `${code.slice(at, start)} 0 `
    at = Math.max(at, end)
  }
  return { tokens: tokensOf(bare + code.slice(at)), plain }
}

function assumptionCalls(program: Program, assumptions: readonly string[]): { name: string; call: CallExpression }[] {
  return program.body.flatMap((statement) => {
    if (statement.type !== 'VariableDeclaration') return []
    return statement.declarations.flatMap(({ id, init }) =>
      id.type === 'Identifier' && init?.type === 'CallExpression' && assumptions.includes(id.name)
        ? [{ name: id.name, call: init }]
        : [],
    )
  })
}

/** Numbers, units and arithmetic: `400 * u.kg`, `-(1 / 3)`. */
function isPlainValue(value: Expression | SpreadElement): boolean {
  switch (value.type) {
    case 'Literal':
      return true
    case 'UnaryExpression':
      return isPlainValue(value.argument)
    case 'BinaryExpression':
      return value.left.type !== 'PrivateIdentifier' && isPlainValue(value.left) && isPlainValue(value.right)
    case 'MemberExpression':
      return value.object.type === 'Identifier' && (value.object.name === 'u' || value.object.name === 'Math')
    default:
      return false
  }
}

/** Tokens apart, so that neither spaces nor comments nor line breaks count. */
function tokensOf(code: string): string {
  const words: string[] = []
  for (const token of tokenizer(code, options)) words.push(code.slice(token.start, token.end))
  return JSON.stringify(words)
}
