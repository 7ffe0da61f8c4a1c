/**
 * Functions of cells: followed anew for the arguments of each call, and looked at once for their own sake with what their
 * annotations or the place where they are written say of their parameters.
 */
import type ts from 'typescript'
import type { CallMode, Inference, Returned } from './inference.js'
import { matchDeclared } from './matching.js'
import { Scope } from './scope.js'
import {
  type ClosureShape,
  type FunctionNode,
  isPending,
  joinAll,
  other,
  pending,
  type Self,
  type Shape,
  sameShape,
  unknown,
  unknownBecause,
  withoutConstant,
} from './shape.js'

export function defineFunction(inference: Inference, node: FunctionNode, scope: Scope, self?: Self): Shape {
  const closure = { kind: 'closure', node, scope, ...(self === undefined ? {} : { self }) } as const
  if (inference.trying === 0 && inference.reports.loud) inference.pending.push(closure)
  return closure
}

/** Deepest nesting of followed functions. */
const deepestCall = 60

/** Rounds in which the result of a function that calls itself must settle. */
const roundsAllowed = 4

export function followFunction(
  inference: Inference,
  closure: ClosureShape,
  args: readonly (Shape | undefined)[],
  site: ts.Node,
  mode: CallMode,
): readonly Returned[] {
  const { node } = closure
  const assumed = inference.active.get(node)
  if (assumed !== undefined) {
    inference.selfCalls += 1
    return [{ node: site, shape: assumed }]
  }
  if (inference.active.size >= deepestCall)
    return [{ node: site, shape: unknownBecause('functions are nested too deeply') }]
  if (mode === 'in place' && inference.reports.loud && inference.trying === 0) inference.covered.add(node)
  try {
    return settled(inference, closure, args)
  } finally {
    inference.active.delete(node)
  }
}

/** A function that calls itself is followed with what it gave the last time, until it gives the same again. */
function settled(
  inference: Inference,
  closure: ClosureShape,
  args: readonly (Shape | undefined)[],
): readonly Returned[] {
  let assumed: Shape = pending
  for (let round = 1; ; round += 1) {
    const { selfCalls } = inference
    inference.active.set(closure.node, assumed)
    const returned = run(inference, closure, args)
    const result = withoutConstant(joinAll(returned.map((one) => one.shape)))
    if (inference.selfCalls === selfCalls) return returned
    if (round === roundsAllowed || isPending(result))
      return [{ node: closure.node, shape: unknownBecause('a function that calls itself gives no one dimension') }]
    if (sameShape(result, assumed)) return returned
    assumed = result
  }
}

function run(inference: Inference, closure: ClosureShape, args: readonly (Shape | undefined)[]): readonly Returned[] {
  const { node } = closure
  const scope = new Scope(closure.scope, closure.self)
  node.parameters.forEach((parameter, index) => {
    bindParameter(inference, parameter, parameter.dotDotDotToken ? restOf(args, index) : args[index], scope)
  })
  const returned: Returned[] = []
  const { body } = node
  if (body === undefined || node.asteriskToken !== undefined || isAsynchronous(inference, node))
    return [{ node, shape: unknown }]
  if (inference.typescript.isBlock(body)) inference.statements(body.statements, scope, returned)
  else returned.push({ node: body, shape: inference.expression(body, scope) })
  return returned.length === 0 ? [{ node, shape: other }] : held(inference, node, returned)
}

function isAsynchronous(inference: Inference, node: FunctionNode): boolean {
  return node.modifiers?.some((modifier) => modifier.kind === inference.typescript.SyntaxKind.AsyncKeyword) === true
}

function restOf(args: readonly (Shape | undefined)[], index: number): Shape {
  const items = args.slice(index).map((one) => one ?? unknown)
  return items.length === 0 ? { kind: 'list' } : { kind: 'list', items, element: joinAll(items) }
}

function bindParameter(
  inference: Inference,
  parameter: ts.ParameterDeclaration,
  argument: Shape | undefined,
  scope: Scope,
): void {
  const annotated = annotationShape(inference, parameter.type)
  const initial = parameter.initializer === undefined ? undefined : defaultValue(inference, parameter, scope)
  const given = argument === undefined || argument.kind === 'other' ? (initial ?? argument) : argument
  const believed =
    annotated !== undefined && annotated.kind !== 'number' && given !== undefined && saysMore(given)
      ? given
      : (annotated ?? given)
  inference.bind(parameter.name, believed ?? unknownBecause(unsaid(parameter)), scope)
}

/** What was handed over is known better than its declaration puts it: a function, a record with dimensions of its own. */
function saysMore(given: Shape): boolean {
  return given.kind === 'closure' || given.kind === 'record' || given.kind === 'list' || given.kind === 'builtin'
}

function unsaid(parameter: ts.ParameterDeclaration): string {
  const name = parameter.name.getText()
  return `nothing says what ${name} is; give it a type, as in (${name}: Mass)`
}

function defaultValue(inference: Inference, parameter: ts.ParameterDeclaration, scope: Scope): Shape | undefined {
  const { initializer } = parameter
  if (initializer === undefined) return undefined
  const shape = inference.expression(initializer, scope)
  if (parameter.type !== undefined)
    matchDeclared(
      inference,
      { node: initializer, shape },
      inference.checker.getTypeFromTypeNode(parameter.type),
      parameter.name.getText(),
    )
  return shape
}

/** What an annotation says for certain: a dimension, or the form of a record that carries some. */
function annotationShape(inference: Inference, annotation: ts.TypeNode | undefined): Shape | undefined {
  if (annotation === undefined) return undefined
  const shape = inference.fromType(inference.checker.getTypeFromTypeNode(annotation))
  return shape.kind === 'number' || shape.kind === 'typed' || shape.kind === 'list' ? shape : undefined
}

/** Holds what a function returns against what it says it returns. */
function held(inference: Inference, node: FunctionNode, returned: readonly Returned[]): readonly Returned[] {
  if (node.type === undefined) return returned
  const type = inference.checker.getTypeFromTypeNode(node.type)
  const declared = inference.declared(type)
  return returned.map((one) => {
    matchDeclared(inference, one, type, `The result of ${nameOf(node)}`)
    return declared === undefined ? one : { node: one.node, shape: declared }
  })
}

function nameOf(node: FunctionNode): string {
  const parent = node.parent as ts.Node & { readonly name?: ts.Node }
  return (node.name ?? parent.name)?.getText() ?? 'the function'
}

/** Looks at a function for its own sake, once; what is wrong in it is reported where it stands. */
export function coverFunction(inference: Inference, closure: ClosureShape): void {
  if (inference.covered.has(closure.node)) return
  inference.covered.add(closure.node)
  const args = closure.node.parameters.map((parameter) => {
    if (parameter.type !== undefined) return undefined
    const shape = inference.fromType(inference.checker.getTypeAtLocation(parameter))
    if (shape.kind !== 'unknown') return shape
    return parameter.initializer === undefined ? undefined : inference.expression(parameter.initializer, closure.scope)
  })
  const { trying } = inference
  inference.trying = 0
  inference.reports.aloud(() => inference.follow(closure, args, closure.node, 'in place'))
  inference.trying = trying
}
