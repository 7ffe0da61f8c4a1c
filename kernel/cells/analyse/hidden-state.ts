/**
 * Hidden state: a top-level function that changes a top-level name of its cell. A callback that adds up while the cell runs
 * (`items.forEach((item) => { total += item.mass })`) is no such thing: nobody can call it later.
 */
import type { Scope } from 'eslint-scope'
import type { Placer } from './places.js'
import { type Problem, problem } from './problem.js'
import type { Scopes } from './scopes.js'

export function hiddenState(scopes: Scopes, placer: Placer): Problem[] {
  return scopes.uses.flatMap((use) => {
    if (!use.writes || use.variable === undefined) return []
    const owner = keptFunction(use.scope, scopes.top)
    if (owner === undefined) return []
    return [problem('HIDDEN_STATE', { name: use.name, by: owner }, placer.of(use.node), use.name.length)]
  })
}

/** How the function is called that holds this scope and that a top-level name keeps; `undefined` when there is none. */
function keptFunction(scope: Scope, top: Scope): string | undefined {
  let outermost = scope
  while (outermost.upper !== null && outermost.upper !== top) outermost = outermost.upper
  if (outermost.type === 'class')
    return `The class "${outermost.block.type === 'ClassDeclaration' ? outermost.block.id?.name : 'here'}"`
  if (outermost.type !== 'function') return undefined
  const block = outermost.block
  if (block.type === 'FunctionDeclaration') return `The function "${block.id?.name}"`
  for (const variable of top.variables) {
    const node = variable.defs[0]?.node as { type?: string; init?: unknown } | undefined
    if (node?.type === 'VariableDeclarator' && node.init === block) return `The function "${variable.name}"`
  }
  return undefined
}
