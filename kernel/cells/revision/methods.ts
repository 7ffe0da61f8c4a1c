/** Which names of the kernel the cells use: another method for the same quantity is a choice that a signature covers. */
import { parse } from 'acorn'
import type { Graph } from '../program/index.js'

/** Units, and what states evidence, are no methods. */
const plumbing = new Set(['u', 'assumption', 'requirement', 'result', 'table', 'figure'])

/** `rotor.hover`, `sizing.close` ... in alphabetical order, over all cells that can be read. */
export function methodsOf({ cells, owner }: Graph): readonly string[] {
  const used = new Set<string>()
  for (const { code, reads } of cells) {
    const kernel = new Set(reads.filter((name) => !owner.has(name) && !plumbing.has(name)))
    if (code === undefined || kernel.size === 0) continue
    for (const name of usesOf(code, kernel)) used.add(name)
  }
  return [...used].sort()
}

function usesOf(code: string, names: ReadonlySet<string>): Set<string> {
  const used = new Set<string>()
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(visit)
    if (!isNode(value)) return
    const path = pathOf(value)
    if (path !== undefined && names.has(path[0] ?? '')) {
      used.add(path.join('.'))
      return
    }
    // The name of a property is no use of what is called alike.
    for (const [key, child] of Object.entries(value))
      if (value.computed === true || (key !== 'property' && key !== 'key')) visit(child)
  }
  visit(parse(code, { ecmaVersion: 'latest', sourceType: 'module' }))
  return used
}

interface Node {
  readonly type: string
  readonly [part: string]: unknown
}

/** `['rotor', 'hover']` of `rotor.hover`; what is read of an answer (`rotor.hover(...).power`) is no part of it. */
function pathOf(node: Node): readonly string[] | undefined {
  if (node.type === 'Identifier') return [String(node.name)]
  const { object, property } = node
  if (node.type !== 'MemberExpression' || node.computed === true || !isNode(object) || !isNode(property))
    return undefined
  return object.type === 'Identifier' ? [String(object.name), String(property.name)] : undefined
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string'
}
