/** Walking the syntax tree that acorn gives. */
import type { AnyNode } from 'acorn'

export type { AnyNode }

/** Visits every node below and including `root`, each with its ancestors, outermost first. */
export function walk(root: AnyNode, enter: (node: AnyNode, ancestors: readonly AnyNode[]) => void): void {
  const ancestors: AnyNode[] = []
  const visit = (node: AnyNode): void => {
    enter(node, ancestors)
    ancestors.push(node)
    for (const child of Object.values(node)) {
      if (Array.isArray(child)) {
        for (const item of child) if (isNode(item)) visit(item)
      } else if (isNode(child)) visit(child)
    }
    ancestors.pop()
  }
  visit(root)
}

/** Measures a tree with a list instead of recursion, since its depth is the author's choice. */
export function isDeeperThan(root: AnyNode, limit: number): boolean {
  const waiting: { node: AnyNode; depth: number }[] = [{ node: root, depth: 0 }]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { node, depth } = next
    if (depth > limit) return true
    for (const child of Object.values(node).flat()) if (isNode(child)) waiting.push({ node: child, depth: depth + 1 })
  }
  return false
}

/** True where `this` and `return` belong to a function or a class, not to the cell itself. */
export function insideFunction(node: AnyNode, ancestors: readonly AnyNode[], what: 'this' | 'return'): boolean {
  return ancestors.some((ancestor, index) => {
    if (ancestor.type === 'FunctionDeclaration' || ancestor.type === 'FunctionExpression') return true
    if (ancestor.type === 'ArrowFunctionExpression') return what === 'return'
    if (what === 'return') return false
    const child = ancestors[index + 1] ?? node
    return ancestor.type === 'StaticBlock' || (ancestor.type === 'PropertyDefinition' && ancestor.value === child)
  })
}

function isNode(value: unknown): value is AnyNode {
  return typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string'
}
