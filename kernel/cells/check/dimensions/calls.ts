/** Calls: of functions of the kernel, of the cells, of the language. */
import type ts from 'typescript'
import { construct, constructorOf } from './classes.js'
import type { Given } from './given.js'
import type { Inference } from './inference.js'
import { callLibrary, callMember } from './language.js'
import { listMethod } from './lists.js'
import { match, matchDeclared, newMatching } from './matching.js'
import { libraryName } from './members.js'
import { saidWrong, spoken } from './messages.js'
import { signatureOf } from './overloads.js'
import type { Scope } from './scope.js'
import {
  type ClassShape,
  type ClosureShape,
  firstUnknown,
  joinAll,
  other,
  type Shape,
  type TypedShape,
  unknown,
  unknownBecause,
} from './shape.js'
import { checkUnitOptions } from './unit-options.js'

type CallNode = ts.CallExpression | ts.NewExpression

export function inferCall(inference: Inference, node: CallNode, scope: Scope): Shape {
  const t = inference.typescript
  const callee = unwrapped(inference, node.expression)
  if (t.isPropertyAccessExpression(callee)) {
    const receiver = inference.expression(callee.expression, scope)
    const self = callee.expression.kind === t.SyntaxKind.SuperKeyword ? scope.self?.shape : receiver
    const args = argumentsOf(inference, node, scope)
    const method = { call: node, receiver: callee.expression, name: callee.name.text, args, scope }
    if (receiver.kind === 'list') return listMethod(inference, receiver, method)
    if (receiver.kind === 'number') return numberMethod(callee.name.text)
    const member = inference.property(receiver, callee.name.text, callee)
    if (member.kind === 'closure' && self?.kind === 'record' && !t.isArrowFunction(member.node))
      return dispatch(inference, node, { ...member, self: { ...member.self, shape: self } }, args, scope)
    return dispatch(inference, node, member, args, scope)
  }
  if (callee.kind === t.SyntaxKind.SuperKeyword) {
    scope.self?.startParent?.(argumentsOf(inference, node, scope).map((given) => given.shape))
    return other
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
  return (node.arguments ?? []).flatMap((argument) => {
    if (!inference.typescript.isSpreadElement(argument))
      return { node: argument, shape: inference.expression(argument, scope) }
    const list = inference.expression(argument.expression, scope)
    const items = list.kind === 'list' ? list.items : undefined
    return (items ?? [inference.elementOf(list)]).map((shape) => ({ node: argument, shape }))
  })
}

function dispatch(inference: Inference, node: CallNode, shape: Shape, args: readonly Given[], scope: Scope): Shape {
  if (shape.kind === 'closure') return applyFunction(inference, spoken(node.expression), shape, args, node)
  if (shape.kind === 'class') return make(inference, node, shape, args)
  if (shape.kind === 'builtin') return callMember(inference, node, shape, args, scope)
  if (shape.kind !== 'typed') return firstUnknown(shape)
  const library = libraryName(shape.type)
  return (
    (library === undefined ? undefined : callLibrary(inference, library, args)) ??
    callDeclared(inference, node, shape, args)
  )
}

/** `new Part(...)`: arguments are held against what the constructor says of them. */
function make(inference: Inference, node: CallNode, shape: ClassShape, args: readonly Given[]): Shape {
  const made = constructorOf(inference, shape)
  const closure = { kind: 'closure', node: made, scope: shape.scope } as ClosureShape
  const name = `new ${spoken(node.expression)}`
  const shapes = made === undefined ? args.map(({ shape }) => shape) : checkedArguments(inference, name, closure, args)
  return construct(inference, shape, shapes, node)
}

/** A result declared by a name whose own declaration is not read here: a figure, which is no number that lacks a dimension. */
function isOpaque({ typescript }: Inference, signature: ts.Signature, type: ts.Type): boolean {
  const declared = signature.declaration?.type
  return (
    (type.flags & typescript.TypeFlags.Any) !== 0 && declared !== undefined && typescript.isTypeReferenceNode(declared)
  )
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
  if (inference.reports.made > made && matching.bindings.size > 0) return unknownBecause(saidWrong)
  const type = signature.getReturnType()
  const given = inference.fromType(type, matching.bindings)
  if (given.kind !== 'unknown' || isOpaque(inference, signature, type)) return given
  return unknownBecause(`nothing says what ${name} gives`)
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
export function applyFunction(
  inference: Inference,
  name: string,
  closure: ClosureShape,
  args: readonly Given[],
  site: ts.Node,
): Shape {
  if (inference.reports.loud || closure.scope === inference.top) inference.cover(closure)
  const shapes = checkedArguments(inference, name, closure, args)
  const { fresh, shape } = tried(inference, closure, shapes, site)
  if (fresh === undefined) return shape
  inference.reports.add(site, `${name} does not work with these arguments. ${fresh}`)
  return unknownBecause(saidWrong)
}

/** Holds arguments against annotations; one that clashes is not followed further. */
function checkedArguments(
  inference: Inference,
  name: string,
  closure: ClosureShape,
  args: readonly Given[],
): readonly Shape[] {
  return args.map((given, index) => {
    const { parameters } = closure.node
    const parameter = parameters[index] ?? parameters.at(-1)
    const rest = parameter?.dotDotDotToken !== undefined
    if (parameter?.type === undefined || (parameters[index] === undefined && !rest)) return given.shape
    const type = inference.checker.getTypeFromTypeNode(parameter.type)
    const each = rest ? inference.checker.getIndexTypeOfType(type, inference.typescript.IndexKind.Number) : type
    const { made } = inference.reports
    if (each !== undefined) matchDeclared(inference, given, each, `${name}: ${parameter.name.getText()}`)
    return inference.reports.made > made ? unknownBecause(saidWrong) : given.shape
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
  const { selfCalls } = inference
  let shape: Shape = unknown
  inference.trying += 1
  const reports = inference.reports.aside(() => {
    shape = joinAll(inference.follow(closure, shapes, site, 'from elsewhere').map((one) => one.shape))
  })
  inference.trying -= 1
  const fresh = reports.find((report) => report.severity === 'error' && !inference.reports.has(report.node))?.message
  // What was found while a function above is only taken to give something holds for this once.
  if (inference.active.size > 0 && inference.selfCalls > selfCalls) return { shape, fresh }
  return inference.remembered.keep(closure, shapes, { shape, fresh })
}
