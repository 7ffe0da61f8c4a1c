/**
 * Syntax that the language has and cells have not, found in the tree of the erased code. Some forms of TypeScript leave code
 * behind that looks like something else (`enum` becomes `var`); the source text at the mapped place tells what was written.
 */
import { linesOf } from './lines.js'
import type { Place, Placer } from './places.js'
import { type Problem, problem } from './problem.js'
import { type AnyNode, insideFunction, walk } from './tree.js'

type Form = readonly [form: string, remedy: string]

const forms = {
  import: ['"import"', 'Everything of the kernel is preloaded, and the names of other cells are seen without it.'],
  export: ['"export"', 'Other cells see every top-level name without it.'],
  enum: ['An enum', "Use a union of texts, type Kind = 'a' | 'b', or a record."],
  namespace: ['A namespace', 'Declare its names at the top level, or put them into a record.'],
  var: ['"var"', 'Use const, or let for a name that changes.'],
  blockFunction: ['A function declared inside a block', 'Write const name = () => ... instead.'],
  decorator: ['A decorator', 'Call the function yourself.'],
  using: ['"using"', 'Nothing in a cell needs to be released; use const.'],
  accessor: ['"accessor"', 'Write a getter and a setter.'],
  parameterProperty: ['A constructor parameter with an access word', 'Declare the field and assign it.'],
  await: ['"await"', 'Cells are synchronous: call the function directly.'],
  async: ['An async function', 'Cells are synchronous: leave "async" out.'],
  generator: ['A generator', 'Cells are synchronous: return a list.'],
  return: ['"return" at the top level', 'Declare the value instead: const name = ...'],
  this: ['"this" at the top level', 'It has no meaning there; use the names themselves.'],
} as const satisfies Record<string, Form>

type FormName = keyof typeof forms

export function refuse(name: FormName, place: Place, length = 1): Problem {
  const [form, remedy] = forms[name]
  return problem('FORM_REFUSED', { form, remedy }, place, length)
}

/** Every refused form in a tree, in the order of the code. */
export function refusedForms(root: AnyNode, source: string, placer: Placer): Problem[] {
  const found: Problem[] = []
  const lines = linesOf(source)
  walk(root, (node, ancestors) => {
    const place = placer.of(node)
    const name = refusedForm(node, ancestors, () => writtenAround(lines, place))
    if (name !== undefined) found.push(refuse(name, stepBack(lines, place, keywords[name])))
    if (node.type === 'MethodDefinition' && node.kind === 'constructor')
      found.push(...parameterProperties(node, lines, placer))
  })
  return found
}

function refusedForm(node: AnyNode, ancestors: readonly AnyNode[], written: () => Written): FormName | undefined {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ImportExpression':
      return 'import'
    case 'MetaProperty':
      return node.meta.name === 'import' ? 'import' : undefined
    case 'ExportNamedDeclaration':
    case 'ExportDefaultDeclaration':
    case 'ExportAllDeclaration':
      return 'export'
    case 'VariableDeclaration':
      return refusedDeclaration(node.kind, written())
    case 'AwaitExpression':
      return 'await'
    case 'ForOfStatement':
      return node.await ? 'await' : undefined
    case 'FunctionDeclaration':
    case 'FunctionExpression':
    case 'ArrowFunctionExpression':
      return node.generator ? 'generator' : node.async ? 'async' : undefined
    case 'ReturnStatement':
      return insideFunction(node, ancestors, 'return') ? undefined : 'return'
    case 'ThisExpression':
      return insideFunction(node, ancestors, 'this') ? undefined : 'this'
    default:
      return undefined
  }
}

function refusedDeclaration(kind: string, { before, from }: Written): FormName | undefined {
  if (/^(const\s+)?enum\b/.test(from)) return 'enum'
  if (/^(namespace|module)\b/.test(from)) return 'namespace'
  if (/^import\b/.test(from)) return 'import'
  if (kind !== 'var') return undefined
  return /\bfunction\s+$/.test(before) ? 'blockFunction' : 'var'
}

/** `constructor(private x: number)` is erased to a parameter and an assignment; the word stands before it in the source. */
function parameterProperties(node: AnyNode, lines: readonly string[], placer: Placer): Problem[] {
  if (node.type !== 'MethodDefinition') return []
  return node.value.params.flatMap((parameter) => {
    const place = placer.of(parameter)
    const { before } = writtenAround(lines, place)
    return /(?:^|[(,\s])(?:private|public|protected|readonly|override)[ \t]+$/.test(before)
      ? [refuse('parameterProperty', place)]
      : []
  })
}

/** The source line around a place. */
interface Written {
  readonly before: string
  readonly from: string
}

function writtenAround(lines: readonly string[], place: Place): Written {
  const line = lines[place.line - 1] ?? ''
  return { before: line.slice(0, place.column - 1), from: line.slice(place.column - 1) }
}

/** The compiler maps `export const a` to `const` and a function to its name; the word before is what is refused. */
const keywords: Partial<Record<FormName, string>> = { export: 'export', blockFunction: 'function' }

function stepBack(lines: readonly string[], place: Place, keyword: string | undefined): Place {
  const match = keyword === undefined ? null : /\b(\w+)\s+$/.exec(writtenAround(lines, place).before)
  return match === null || match[1] !== keyword ? place : { line: place.line, column: match.index + 1 }
}
