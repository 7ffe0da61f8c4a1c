/** Dimensions of expressions. */
import type ts from 'typescript'
import { binary } from './binary.js'
import { declareClass } from './classes.js'
import { defineFunction } from './functions.js'
import type { Inference } from './inference.js'
import { arrayLiteral, objectLiteral } from './literals.js'
import { matchDeclared } from './matching.js'
import { readElement } from './members.js'
import { branchesClash, saidWrong, wants } from './messages.js'
import { readName } from './names.js'
import { negated } from './operators.js'
import type { Scope } from './scope.js'
import {
  agree,
  firstUnknown,
  isPure,
  join,
  nothing,
  other,
  pure,
  type Shape,
  type UnknownShape,
  unknown,
  unknownBecause,
} from './shape.js'
import { alternatives } from './state.js'

/** Deepest nesting that is followed; TypeScript's own parser holds a few times more. */
const deepest = 250

export function inferExpression(inference: Inference, node: ts.Expression, scope: Scope): Shape {
  if (inference.steps <= 0 || inference.depth > deepest) return unknown
  inference.steps -= 1
  inference.depth += 1
  try {
    return note(inference, node, infer(inference, node, scope))
  } finally {
    inference.depth -= 1
  }
}

/** Keeps what was found, for the editor. What several passes over a loop or several calls find must agree. */
export function note(inference: Inference, node: ts.Node, shape: Shape): Shape {
  const before = inference.found.get(node)
  if (before === undefined || before.kind === 'unknown') inference.found.set(node, shape)
  else if (before !== shape && shape.kind !== 'unknown') inference.found.set(node, join(before, shape))
  return shape
}

function infer(inference: Inference, node: ts.Expression, scope: Scope): Shape {
  const t = inference.typescript
  if (t.isNumericLiteral(node)) return pure(Number(node.text))
  if (t.isStringLiteralLike(node)) return { kind: 'other', text: node.text }
  if (t.isIdentifier(node)) return readName(inference, node, scope)
  if (t.isParenthesizedExpression(node) || t.isNonNullExpression(node))
    return inference.expression(node.expression, scope)
  if (t.isBinaryExpression(node)) return binary(inference, node, scope)
  if (t.isPropertyAccessExpression(node))
    return inference.property(inference.expression(node.expression, scope), node.name.text, node)
  if (t.isElementAccessExpression(node)) return readElement(inference, node, scope)
  if (t.isCallExpression(node) || t.isNewExpression(node)) return inference.call(node, scope)
  if (t.isArrowFunction(node) || t.isFunctionExpression(node)) return defineFunction(inference, node, scope)
  if (t.isObjectLiteralExpression(node)) return objectLiteral(inference, node, scope)
  if (t.isArrayLiteralExpression(node)) return arrayLiteral(inference, node, scope)
  if (t.isConditionalExpression(node)) return conditional(inference, node, scope)
  if (t.isPrefixUnaryExpression(node) || t.isPostfixUnaryExpression(node)) return unary(inference, node, scope)
  if (node.kind === t.SyntaxKind.ThisKeyword) return scope.self?.shape ?? unknown
  if (node.kind === t.SyntaxKind.SuperKeyword) return scope.self?.parent ?? unknown
  if (t.isClassExpression(node)) return declareClass(inference, node, scope)
  if (t.isAsExpression(node) || t.isTypeAssertionExpression(node)) return assertion(inference, node, scope)
  if (t.isSatisfiesExpression(node)) return satisfies(inference, node, scope)
  return anythingElse(inference, node, scope)
}

function conditional(inference: Inference, node: ts.ConditionalExpression, scope: Scope): Shape {
  inference.expression(node.condition, scope)
  let yes: Shape = unknown
  let no: Shape = unknown
  alternatives(inference, node, scope, [
    () => {
      yes = inference.expression(node.whenTrue, scope)
      return false
    },
    () => {
      no = inference.expression(node.whenFalse, scope)
      return false
    },
  ])
  return joinBranches(inference, node, yes, no)
}

function joinBranches(inference: Inference, node: ts.ConditionalExpression, yes: Shape, no: Shape): Shape {
  if (yes.kind === 'number' && no.kind === 'number' && !agree(yes, no))
    inference.reports.add(node, branchesClash(node.whenTrue, yes, node.whenFalse, no))
  return join(yes, no)
}

function unary(inference: Inference, node: ts.PrefixUnaryExpression | ts.PostfixUnaryExpression, scope: Scope): Shape {
  const { SyntaxKind } = inference.typescript
  const shape = inference.expression(node.operand, scope)
  if (node.operator === SyntaxKind.MinusToken) return negated(shape)
  if (node.operator === SyntaxKind.PlusToken) return shape.kind === 'number' ? shape : pure()
  if (node.operator === SyntaxKind.ExclamationToken) return other
  if (node.operator === SyntaxKind.TildeToken) return shape.kind === 'number' && isPure(shape) ? pure() : unknown
  return step(inference, node, shape, scope)
}

/** `x++` adds a pure 1. */
function step(
  inference: Inference,
  node: ts.PrefixUnaryExpression | ts.PostfixUnaryExpression,
  shape: Shape,
  scope: Scope,
): Shape {
  if (shape.kind !== 'number') return firstUnknown(shape)
  const operator = node.operator === inference.typescript.SyntaxKind.PlusPlusToken ? '++' : '--'
  if (!isPure(shape)) {
    inference.reports.add(node, wants(`${operator} counts in steps of 1, so it`, [pure().dimension], shape))
    const wrong = unknownBecause(saidWrong)
    inference.assign(node.operand, wrong, scope)
    return wrong
  }
  inference.assign(node.operand, pure(), scope)
  return pure()
}

/** `x as Mass` names the dimension of what has none yet; it cannot turn one into another. */
function assertion(inference: Inference, node: ts.AsExpression | ts.TypeAssertion, scope: Scope): Shape {
  const shape = inference.expression(node.expression, scope)
  if (inference.typescript.isConstTypeReference(node.type)) return shape
  const type = inference.checker.getTypeFromTypeNode(node.type)
  const named = inference.declared(type)
  if (named === undefined) return shape.kind === 'unknown' ? moreOf(shape, inference.fromType(type)) : shape
  if (shape.kind === 'number' && !isPure(shape) && !agree(shape, named))
    inference.reports.add(node, wants(`'as ${node.type.getText()}'`, [named.dimension], shape))
  return named
}

/** What a type says of a value that is not known; where it says nothing either, the reason stays. */
function moreOf(before: UnknownShape, typed: Shape): Shape {
  return typed.kind === 'unknown' && typed.why === undefined ? before : typed
}

function satisfies(inference: Inference, node: ts.SatisfiesExpression, scope: Scope): Shape {
  const shape = inference.expression(node.expression, scope)
  const type = inference.checker.getTypeFromTypeNode(node.type)
  matchDeclared(inference, { node: node.expression, shape }, type, `'satisfies ${node.type.getText()}'`)
  return shape
}

/** Forms that give no quantity or that are not followed; what stands inside is looked at all the same. */
function anythingElse(inference: Inference, node: ts.Expression, scope: Scope): Shape {
  const t = inference.typescript
  t.forEachChild(node, (child) => {
    if (t.isExpression(child)) inference.expression(child, scope)
    else if (t.isTemplateSpan(child)) inference.expression(child.expression, scope)
  })
  const { SyntaxKind } = t
  switch (node.kind) {
    case SyntaxKind.TrueKeyword:
    case SyntaxKind.FalseKeyword:
    case SyntaxKind.TypeOfExpression:
    case SyntaxKind.VoidExpression:
    case SyntaxKind.DeleteExpression:
    case SyntaxKind.TemplateExpression:
      return other
    case SyntaxKind.NullKeyword:
      return nothing
    default:
      return unknown
  }
}
