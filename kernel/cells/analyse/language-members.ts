/** `Math` without `random`, `console` with `log` only. */
import type { AnyNode, Program } from 'acorn'
import type { Placer } from './places.js'
import { type Problem, problem } from './problem.js'
import type { Scopes } from './scopes.js'
import { startOf } from './scopes.js'
import { walk } from './tree.js'

export function refusedMembers(program: Program, scopes: Scopes, placer: Placer): Problem[] {
  const free = new Set(scopes.uses.filter((use) => use.variable === undefined).map((use) => use.start))
  const found: Problem[] = []
  walk(program, (node) => {
    if (node.type !== 'MemberExpression' || node.object.type !== 'Identifier') return
    if (!free.has(startOf(node.object))) return
    const member = memberName(node)
    if (member === undefined) return
    const reason = reasonAgainst(node.object.name, member)
    const name = `${node.object.name}.${member}`
    if (reason !== undefined) found.push(problem('NOT_IN_CELLS', { name, reason }, placer.of(node.object), name.length))
  })
  return found
}

function memberName(node: AnyNode): string | undefined {
  if (node.type !== 'MemberExpression') return undefined
  if (!node.computed) return node.property.type === 'Identifier' ? node.property.name : undefined
  return node.property.type === 'Literal' && typeof node.property.value === 'string' ? node.property.value : undefined
}

function reasonAgainst(object: string, member: string): string | undefined {
  if (object === 'Math' && member === 'random')
    return 'the same notebook must give the same numbers each time; a seeded study draws samples.'
  if (object === 'console' && member !== 'log') return 'only console.log writes into the log of a cell.'
  return undefined
}
