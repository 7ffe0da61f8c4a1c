/** Names that are given another value after their declaration: no single formula works them out. */
import type { AnyNode } from 'acorn'

/** Whatever function or block the assignment stands in: a name that is shadowed there loses its formula too, which is harmless. */
export function namesAssigned(root: AnyNode): ReadonlySet<string> {
  const names = new Set<string>()
  const waiting: unknown[] = [root]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (!isNode(next)) continue
    if (next.type === 'AssignmentExpression') noteTargets(next.left, names)
    if (next.type === 'UpdateExpression') noteTargets(next.argument, names)
    if ((next.type === 'ForInStatement' || next.type === 'ForOfStatement') && next.left.type !== 'VariableDeclaration')
      noteTargets(next.left, names)
    for (const child of Object.values(next).flat()) if (isNode(child)) waiting.push(child)
  }
  return names
}

/** `total`, `[a, b]`, `{ a, b: c }`; of `rows[0]` the name is not given another value. */
function noteTargets(target: AnyNode, names: Set<string>): void {
  if (target.type === 'Identifier') names.add(target.name)
  else if (target.type === 'AssignmentPattern') noteTargets(target.left, names)
  else if (target.type === 'RestElement') noteTargets(target.argument, names)
  else if (target.type === 'ArrayPattern')
    for (const element of target.elements) {
      if (element !== null) noteTargets(element, names)
    }
  else if (target.type === 'ObjectPattern')
    for (const property of target.properties)
      noteTargets(property.type === 'Property' ? property.value : property.argument, names)
}

function isNode(value: unknown): value is AnyNode {
  return typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string'
}
