/** The top-level statements of a cell: what each declares, reads and changes, so that a part of a cell can be run. */
import { type AnyNode, type CallExpression, type ModuleDeclaration, parse, type Statement as Tree } from 'acorn'
import { requirementOf } from '../../../shared/contracts/evidence.js'
import { languageNames } from '../program/index.js'
import { firstFrom, resolveScopes, type Scopes, startOf, type Use, usesIn } from './scopes.js'
import { walk } from './tree.js'

export interface Statement {
  /** Offsets in the code. */
  readonly start: number
  readonly end: number
  /** Line of the code, counted from 1. */
  readonly line: number
  /** `report`: a call of its own that only tells the reader something (`requirement`, `result`, `table`, `console.log`). */
  readonly kind: 'declaration' | 'report' | 'other'
  readonly declares: readonly string[]
  /** Names of the cell, of other cells and of the kernel. */
  readonly reads: readonly string[]
  /** Names that it assigns, or whose members it assigns or changes by a method. */
  readonly changes: readonly string[]
  /** It holds a function that changes such names: whoever calls the function does. */
  readonly changesLater: boolean
  /** Names given as text to `result(...)`. */
  readonly results: readonly string[]
  /** Names given as text to `requirement(...)`. */
  readonly requirements: readonly string[]
  /** It states requirements, under whatever names. */
  readonly requires: boolean
}

/**
 * Whether it states a number under this name by `result(...)`, or the requirement whose margin is called so. Of requirements whose names
 * are no text nothing is known, so they may be the one.
 */
export function statesName({ results, requirements, requires }: Statement, name: string): boolean {
  if (results.includes(name)) return true
  const requirement = requirementOf(name)
  if (requirement === undefined) return false
  return requirements.includes(requirement) || (requires && requirements.length === 0)
}

const reporters: ReadonlySet<string> = new Set(['requirement', 'result', 'table', 'console'])

/** Methods of the language that change what they are called on. */
const changingMethods: ReadonlySet<string> = new Set([
  ...['push', 'pop', 'shift', 'unshift', 'splice', 'sort', 'reverse', 'fill', 'copyWithin'],
  ...['set', 'add', 'delete', 'clear'],
])

/** Of the code of a cell that analysis has read; in its order. */
export function readStatements(code: string): readonly Statement[] {
  const program = parse(code, { ecmaVersion: 2023, sourceType: 'script', locations: true, ranges: true })
  const scopes = resolveScopes(program)
  const declared = scopes.variables
    .flatMap(({ name, identifiers }) => identifiers.map((one) => ({ name, start: startOf(one) })))
    .sort((a, b) => a.start - b.start)
  return program.body.map((node) => readStatement(node, scopes, declared))
}

/** The place of a name's declaration. */
interface Declared {
  readonly name: string
  readonly start: number
}

function readStatement(node: Tree | ModuleDeclaration, scopes: Scopes, declared: readonly Declared[]): Statement {
  const inside = usesIn(node, scopes.uses)
  const named = inside.filter((use) => use.variable !== undefined || !languageNames.has(use.name))
  const changed = changedIn(node, named)
  return {
    start: node.start,
    end: node.end,
    line: node.loc?.start.line ?? 1,
    kind: kindOf(node, inside),
    declares: namesOf(declared.slice(firstFrom(node.start, declared), firstFrom(node.end, declared))),
    reads: namesOf(named.filter((use) => use.reads)),
    changes: namesOf(changed),
    changesLater: changed.some((use) => use.scope !== scopes.top && insideFunction(use, scopes)),
    results: textsGiven(node, inside, 'result'),
    requirements: textsGiven(node, inside, 'requirement'),
    requires: inside.some((use) => use.name === 'requirement' && use.variable === undefined),
  }
}

function kindOf(node: Tree | ModuleDeclaration, inside: readonly Use[]): Statement['kind'] {
  if (/Declaration$/.test(node.type)) return 'declaration'
  if (node.type !== 'ExpressionStatement' || node.expression.type !== 'CallExpression') return 'other'
  let { callee } = node.expression
  while (callee.type === 'MemberExpression' && callee.object.type !== 'Super') callee = callee.object as typeof callee
  if (callee.type !== 'Identifier' || !reporters.has(callee.name)) return 'other'
  const use = inside.find(({ start }) => start === startOf(callee))
  return use !== undefined && use.variable === undefined ? 'report' : 'other'
}

/** Uses that are assigned to, or whose members are assigned or changed by a method of the language. */
function changedIn(node: AnyNode, uses: readonly Use[]): Use[] {
  const starts = new Set<number>()
  walk(node, (one) => {
    const target =
      one.type === 'AssignmentExpression'
        ? one.left
        : one.type === 'UpdateExpression' || (one.type === 'UnaryExpression' && one.operator === 'delete')
          ? one.argument
          : one.type === 'CallExpression' && isChangingCall(one)
            ? one.callee
            : undefined
    let object: AnyNode | undefined = target
    while (object?.type === 'MemberExpression') object = object.object
    if (object?.type === 'Identifier' && object !== target) starts.add(startOf(object))
  })
  return uses.filter((use) => use.writes || starts.has(use.start))
}

function isChangingCall({ callee }: CallExpression): boolean {
  if (callee.type !== 'MemberExpression') return false
  return callee.computed || (callee.property.type === 'Identifier' && changingMethods.has(callee.property.name))
}

function insideFunction(use: Use, { top }: Scopes): boolean {
  for (let scope: typeof use.scope | null = use.scope; scope !== null && scope !== top; scope = scope.upper)
    if (scope.type === 'function') return true
  return false
}

function textsGiven(node: AnyNode, uses: readonly Use[], to: 'result' | 'requirement'): string[] {
  const starts = new Set(uses.filter((use) => use.name === to && use.variable === undefined).map((use) => use.start))
  const texts: string[] = []
  walk(node, (one) => {
    if (one.type !== 'CallExpression' || !starts.has(startOf(one.callee))) return
    const first = one.arguments[0]
    if (first?.type === 'Literal' && typeof first.value === 'string') texts.push(first.value)
  })
  return texts
}

function namesOf(uses: readonly { readonly name: string }[]): string[] {
  return [...new Set(uses.map((use) => use.name))]
}
