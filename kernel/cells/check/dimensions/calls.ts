/** Calls: of functions of the kernel, of the cells, of the language. */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import { eachCall, listMethod } from './lists.js'
import { type Given, match, matchDeclared, newMatching } from './matching.js'
import { mathematics } from './mathematics.js'
import { spoken } from './messages.js'
import { signatureOf } from './overloads.js'
import type { Scope } from './scope.js'
import {
  type BuiltinShape,
  type ClosureShape,
  joinAll,
  other,
  pure,
  type Shape,
  type TypedShape,
  unknown,
} from './shape.js'
import { checkUnitOptions } from './unit-options.js'

type CallNode = ts.CallExpression | ts.NewExpression

export function inferCall(inference: Inference, node: CallNode, scope: Scope): Shape {
  const t = inference.typescript
  const callee = unwrapped(inference, node.expression)
  if (t.isPropertyAccessExpression(callee)) {
    const receiver = inference.expression(callee.expression, scope)
    const args = argumentsOf(inference, node, scope)
    const method = { call: node, receiver: callee.expression, name: callee.name.text, args, scope }
    if (receiver.kind === 'list') return listMethod(inference, receiver, method)
    if (receiver.kind === 'number') return numberMethod(callee.name.text)
    return dispatch(inference, node, inference.property(receiver, callee.name.text, callee), args, scope)
  }
  const shape = inference.expression(callee, scope)
  return dispatch(inference, node, shape, argumentsOf(inference, node, scope), scope)
}

function unwrapped(inference: Inference, node: ts.Expression): ts.Expression {
  let at = node
  while (inference.typescript.isParenthesizedExpression(at) || inference.typescript.isNonNullExpression(at))
    at = at.expression
  return at
}

/** `(x / u.kW).toFixed(1)` is text; `valueOf` is the number itself, but nobody writes it. */
function numberMethod(name: string): Shape {
  return name.startsWith('to') ? other : unknown
}

function argumentsOf(inference: Inference, node: CallNode, scope: Scope): readonly Given[] {
  return (node.arguments ?? []).map((argument) => {
    if (!inference.typescript.isSpreadElement(argument))
      return { node: argument, shape: inference.expression(argument, scope) }
    return { node: argument, shape: inference.elementOf(inference.expression(argument.expression, scope)) }
  })
}

function dispatch(inference: Inference, node: CallNode, shape: Shape, args: readonly Given[], scope: Scope): Shape {
  if (shape.kind === 'closure') return callClosure(inference, node, shape, args)
  if (shape.kind === 'builtin') return callBuiltin(inference, node, shape, args, scope)
  if (shape.kind !== 'typed') return unknown
  return callDeclared(inference, node, shape, args)
}

function callBuiltin(
  inference: Inference,
  node: CallNode,
  shape: BuiltinShape,
  args: readonly Given[],
  scope: Scope,
): Shape {
  const { owner, name } = shape
  const [first, second] = args
  if (owner === 'Math') return mathematics(inference, name, args)
  if (owner === 'NumberConstructor') return name.startsWith('is') ? other : unknown
  if (first === undefined) return unknown
  if (owner === 'ArrayConstructor' && name === 'of')
    return { kind: 'list', element: joinAll(args.map((one) => one.shape)) }
  if (owner === 'ArrayConstructor' && name === 'from') {
    const element = inference.elementOf(first.shape)
    if (second === undefined) return { kind: 'list', element }
    return { kind: 'list', element: eachCall(inference, node, second, [element, pure()], scope) }
  }
  if (owner !== 'ObjectConstructor') return unknown
  if (name === 'freeze' || name === 'seal') return first.shape
  if (first.shape.kind !== 'record' && first.shape.kind !== 'typed') return unknown
  const value =
    first.shape.kind === 'record' ? joinAll([...first.shape.fields.values()]) : inference.elementOf(first.shape)
  if (name === 'keys') return { kind: 'list', element: other }
  if (name === 'values') return { kind: 'list', element: value }
  if (name === 'entries') return { kind: 'list', element: { kind: 'list', items: [other, value], element: unknown } }
  return unknown
}

/** A function of the kernel (or anything else that only a declaration describes). */
function callDeclared(inference: Inference, node: CallNode, callee: TypedShape, args: readonly Given[]): Shape {
  const signature = signatureOf(inference, node, callee, args)
  if (signature === undefined) return constructed(inference, node)
  const name = spoken(node.expression)
  const matching = newMatching(name, node)
  const { made } = inference.reports
  args.forEach((given, index) => {
    const parameter = signature.parameters[Math.min(index, signature.parameters.length - 1)]
    if (parameter === undefined) return
    const type = parameterType(inference, parameter, index >= signature.parameters.length - 1)
    match(inference, matching, given, [type], `${name}: ${parameter.name}`)
  })
  for (const follow of matching.later) follow()
  checkUnitOptions(inference, name, args)
  if (inference.reports.made > made && matching.bindings.size > 0) return unknown
  return inference.fromType(signature.getReturnType(), matching.bindings)
}

function constructed(inference: Inference, node: CallNode): Shape {
  return inference.typescript.isNewExpression(node)
    ? inference.fromType(inference.checker.getTypeAtLocation(node))
    : unknown
}

function parameterType(inference: Inference, parameter: ts.Symbol, last: boolean): ts.Type {
  const type = inference.checker.getTypeOfSymbol(parameter)
  const declaration = parameter.valueDeclaration
  const rests =
    last &&
    declaration !== undefined &&
    inference.typescript.isParameter(declaration) &&
    declaration.dotDotDotToken !== undefined
  return (rests ? inference.checker.getIndexTypeOfType(type, inference.typescript.IndexKind.Number) : undefined) ?? type
}

/** A function of a cell: followed with these arguments. What is wrong only with them is reported here. */
function callClosure(inference: Inference, node: CallNode, closure: ClosureShape, args: readonly Given[]): Shape {
  const name = spoken(node.expression)
  if (inference.reports.loud || closure.scope === inference.top) inference.cover(closure)
  const shapes = checkedArguments(inference, name, closure, args)
  const { fresh, shape } = tried(inference, closure, shapes, node)
  if (fresh === undefined) return shape
  inference.reports.add(node, `${name} does not work with these arguments. ${fresh}`)
  return unknown
}

/** Holds arguments against annotations; one that clashes is not followed further. */
function checkedArguments(
  inference: Inference,
  name: string,
  closure: ClosureShape,
  args: readonly Given[],
): readonly Shape[] {
  return args.map((given, index) => {
    const parameter = closure.node.parameters[index]
    if (parameter?.type === undefined || parameter.dotDotDotToken !== undefined) return given.shape
    const type = inference.checker.getTypeFromTypeNode(parameter.type)
    matchDeclared(inference, given, type, `${name}: ${parameter.name.getText()}`)
    return given.shape
  })
}

interface Tried {
  readonly shape: Shape
  /** The first thing that is wrong with these arguments only. */
  readonly fresh: string | undefined
}

function tried(inference: Inference, closure: ClosureShape, shapes: readonly Shape[], site: ts.Node): Tried {
  const known = inference.remembered.read(closure, shapes)
  if (known !== undefined) return known
  let shape: Shape = unknown
  inference.trying += 1
  const reports = inference.reports.aside(() => {
    shape = joinAll(inference.follow(closure, shapes, site, 'from elsewhere').map((one) => one.shape))
  })
  inference.trying -= 1
  const fresh = reports.find((report) => report.severity === 'error' && !inference.reports.has(report.node))?.message
  return inference.remembered.keep(closure, shapes, { shape, fresh })
}
