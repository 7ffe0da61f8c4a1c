/** The top-level names of a cell, and for each what its value is made from. */
import type { AnyNode, Pattern, Program } from 'acorn'
import type { Variable } from 'eslint-scope'
import { type Declaration, languageNames } from '../program/index.js'
import type { Placer } from './places.js'
import type { Scopes, Use } from './scopes.js'
import { startOf, usesIn } from './scopes.js'
import { walk } from './tree.js'

interface Range {
  readonly start: number
  readonly end: number
}

/** In the order of the code. Imported names are left out: an import is an error of its own. */
export function readDeclarations(program: Program, scopes: Scopes, placer: Placer): Declaration[] {
  const changes = changesByName(program, scopes)
  return scopes.variables.flatMap((variable) => {
    const definition = variable.defs[0]
    const form = formOf(definition)
    if (definition === undefined || form === undefined) return []
    const sources = [...rangesOf(variable), ...(changes.get(variable.name) ?? [])]
    return [
      { name: variable.name, form, ...placer.of(definition.name), reads: namesRead(sources, variable.name, scopes) },
    ]
  })
}

function formOf(definition: Variable['defs'][number] | undefined): Declaration['form'] | undefined {
  if (definition?.type === 'FunctionName') return 'function'
  if (definition?.type === 'ClassName') return 'class'
  if (definition?.type !== 'Variable') return undefined
  return definition.parent.kind === 'const' ? 'const' : 'let'
}

/** The stretches of code in which a declaration gives a variable its value. */
function rangesOf(variable: Variable): Range[] {
  return variable.defs.flatMap((definition) => {
    const node = definition.node as unknown as AnyNode
    if (node.type !== 'VariableDeclarator') return [node]
    const inPattern = patternRanges(node.id, variable.name) ?? []
    return node.init === null || node.init === undefined ? inPattern : [node.init, ...inPattern]
  })
}

/** Defaults and computed keys on the way to one name of a destructuring pattern; `undefined` when it is not in there. */
function patternRanges(pattern: Pattern, name: string): Range[] | undefined {
  switch (pattern.type) {
    case 'Identifier':
      return pattern.name === name ? [] : undefined
    case 'AssignmentPattern': {
      const inner = patternRanges(pattern.left, name)
      return inner === undefined ? undefined : [pattern.right, ...inner]
    }
    case 'RestElement':
      return patternRanges(pattern.argument, name)
    case 'ArrayPattern':
      return firstOf(pattern.elements, (element) => (element === null ? undefined : patternRanges(element, name)))
    case 'ObjectPattern':
      return firstOf(pattern.properties, (property) => {
        if (property.type === 'RestElement') return patternRanges(property, name)
        const inner = patternRanges(property.value, name)
        return inner !== undefined && property.computed ? [property.key, ...inner] : inner
      })
    default:
      return undefined
  }
}

function firstOf<T, R>(items: readonly T[], read: (item: T) => R | undefined): R | undefined {
  for (const item of items) {
    const found = read(item)
    if (found !== undefined) return found
  }
  return undefined
}

/**
 * Top-level statements that change a name after its declaration: by assignment, or by a call or assignment on a member
 * (`rows.push(x)`). What such a statement reads counts as what the name is made from, conditions of loops included.
 */
function changesByName(program: Program, scopes: Scopes): Map<string, Range[]> {
  const changes = new Map<string, Range[]>()
  const add = (name: string, range: Range) => {
    const known = changes.get(name)
    if (known === undefined) changes.set(name, [range])
    else known.push(range)
  }
  for (const statement of program.body) {
    const inside = usesIn(statement, scopes.uses).filter((use) => use.variable !== undefined)
    for (const use of inside) if (use.writes) add(use.name, statement)
    if (/Declaration$/.test(statement.type)) continue
    const changed = membersChanged(statement)
    for (const use of inside) if (changed.has(use.start)) add(use.name, statement)
  }
  return changes
}

/** Where the identifiers stand whose members a statement assigns or calls. */
function membersChanged(statement: AnyNode): ReadonlySet<number> {
  const starts = new Set<number>()
  walk(statement, (node) => {
    const target =
      node.type === 'AssignmentExpression'
        ? node.left
        : node.type === 'UpdateExpression'
          ? node.argument
          : node.type === 'CallExpression'
            ? node.callee
            : undefined
    let object: AnyNode | undefined = target
    while (object?.type === 'MemberExpression') object = object.object
    if (object?.type === 'Identifier' && object !== target) starts.add(startOf(object))
  })
  return starts
}

function namesRead(ranges: readonly Range[], self: string, scopes: Scopes): string[] {
  const names = usesWithin(ranges, scopes.uses)
    .filter((use) => use.reads && (use.variable !== undefined || !languageNames.has(use.name)))
    .map((use) => use.name)
  return [...new Set(names)].filter((name) => name !== self)
}

/** In the order of the code, each once, also where ranges overlap. */
function usesWithin(ranges: readonly Range[], uses: readonly Use[]): readonly Use[] {
  const [first] = ranges
  if (first !== undefined && ranges.length === 1) return usesIn(first, uses)
  return [...new Set(ranges.flatMap((range) => usesIn(range, uses)))].sort((a, b) => a.start - b.start)
}
