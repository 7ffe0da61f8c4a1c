/** Which names of the kernel a text uses: another method for the same quantity is another answer. */
import { parse } from 'acorn'

/** Units, and what states evidence, are no methods. */
const plumbing: ReadonlySet<string> = new Set(['u', 'assumption', 'requirement', 'result', 'table', 'figure'])

/** `rotor.hover`, `sizing.close` ... of these names of the kernel, in the order of the text. */
export function kernelUses(code: string, names: readonly string[]): readonly string[] {
  const methods = new Set(names.filter((name) => !plumbing.has(name)))
  const used = new Set<string>()
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(visit)
    if (!isNode(value)) return
    const path = pathOf(value)
    if (path !== undefined && methods.has(path[0] ?? '')) {
      used.add(path.join('.'))
      return
    }
    // The name of a property is no use of what is called alike.
    for (const [key, child] of Object.entries(value))
      if (value.computed === true || (key !== 'property' && key !== 'key')) visit(child)
  }
  if (methods.size > 0) visit(parse(code, { ecmaVersion: 'latest', sourceType: 'module' }))
  return [...used]
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
