/**
 * Functions of cells: followed anew for the arguments of each call, and looked at once for their own sake with what their
 * annotations or the place where they are written say of their parameters.
 */
import type ts from 'typescript'
import type { CallMode, Inference, Returned } from './inference.js'
import { matchDeclared } from './matching.js'
import { Scope } from './scope.js'
import { type ClosureShape, type FunctionNode, other, type Shape, unknown } from './shape.js'

export function defineFunction(inference: Inference, node: FunctionNode, scope: Scope): Shape {
  const closure = { kind: 'closure', node, scope } as const
  if (inference.trying === 0 && inference.reports.loud) inference.pending.push(closure)
  return closure
}

/** Deepest nesting of followed functions. */
const deepestCall = 60

export function followFunction(
  inference: Inference,
  closure: ClosureShape,
  args: readonly Shape[],
  site: ts.Node,
  mode: CallMode,
): readonly Returned[] {
  const { node } = closure
  if (inference.active.has(node) || inference.active.size >= deepestCall) return [{ node: site, shape: unknown }]
  if (mode === 'in place' && inference.reports.loud && inference.trying === 0) inference.covered.add(node)
  inference.active.add(node)
  try {
    return run(inference, closure, args)
  } finally {
    inference.active.delete(node)
  }
}

function run(inference: Inference, closure: ClosureShape, args: readonly Shape[]): readonly Returned[] {
  const { node } = closure
  const scope = new Scope(closure.scope)
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

function restOf(args: readonly Shape[], index: number): Shape {
  return { kind: 'list', items: args.slice(index), element: unknown }
}

function bindParameter(
  inference: Inference,
  parameter: ts.ParameterDeclaration,
  argument: Shape | undefined,
  scope: Scope,
): void {
  const annotated = annotationShape(inference, parameter.type)
  const initial = parameter.initializer === undefined ? undefined : inference.expression(parameter.initializer, scope)
  const given = argument === undefined || argument.kind === 'other' ? (initial ?? argument) : argument
  inference.bind(parameter.name, annotated ?? given ?? unknown, scope)
}

/** What an annotation says for certain: a dimension, or the form of a record that carries some. */
function annotationShape(inference: Inference, annotation: ts.TypeNode | undefined): Shape | undefined {
  if (annotation === undefined) return undefined
  const shape = inference.fromType(inference.checker.getTypeFromTypeNode(annotation))
  return shape.kind === 'number' || shape.kind === 'typed' ? shape : undefined
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
    if (parameter.type !== undefined) return unknown
    const shape = inference.fromType(inference.checker.getTypeAtLocation(parameter))
    if (shape.kind !== 'unknown' || parameter.initializer === undefined) return shape
    return inference.expression(parameter.initializer, closure.scope)
  })
  const { trying } = inference
  inference.trying = 0
  inference.reports.aloud(() => inference.follow(closure, args, closure.node, 'in place'))
  inference.trying = trying
}
