/**
 * `const x = assumption('x', ...)` at the top level: an assumption is named like its constant, so that trial values, `--set`
 * and the register speak of one thing. Every other use of the name is a mistake.
 */
import type { AnyNode, CallExpression, Program } from 'acorn'
import type { Placer } from './places.js'
import { type Problem, problem } from './problem.js'
import type { Scopes } from './scopes.js'
import { startOf } from './scopes.js'

export interface AssumptionReading {
  readonly names: readonly string[]
  /** Count only where `assumption` is the kernel's own. */
  readonly problems: readonly Problem[]
}

export function readAssumptions(program: Program, scopes: Scopes, placer: Placer): AssumptionReading {
  const mentions = scopes.uses.filter((use) => use.name === 'assumption' && use.variable === undefined)
  const uses = new Map(mentions.map((use) => [use.start, use]))
  const names: string[] = []
  const wrong = new Map<number, string>()
  for (const { constant, call } of topLevelConstants(program)) {
    const use = uses.get(startOf(call.callee))
    if (use === undefined) continue
    const first = call.arguments[0]
    if (first?.type === 'Literal' && first.value === constant) {
      names.push(constant)
      uses.delete(use.start)
    } else wrong.set(use.start, constant)
  }
  const problems = [...uses.values()].map((use) =>
    problem('ASSUMPTION_FORM', { name: wrong.get(use.start) ?? 'name' }, placer.of(use.node), use.name.length),
  )
  return { names, problems }
}

function topLevelConstants(program: Program): { constant: string; call: CallExpression }[] {
  return program.body.flatMap((statement) => {
    if (statement.type !== 'VariableDeclaration' || statement.kind !== 'const') return []
    return statement.declarations.flatMap(({ id, init }) => {
      const value: AnyNode | null | undefined = init
      return id.type === 'Identifier' && value?.type === 'CallExpression' ? [{ constant: id.name, call: value }] : []
    })
  })
}
