/** Expressions with two operands; chains of them are walked without recursion, however long they are. */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import { fallbackClash, saidWrong } from './messages.js'
import { type Arithmetic, arithmetic, comparison, type Operand } from './operators.js'
import type { Scope } from './scope.js'
import { agree, join, other, type Shape, unknown, unknownBecause } from './shape.js'
import { alternatives } from './state.js'

const arithmeticOperators: ReadonlySet<string> = new Set(['+', '-', '*', '/', '%', '**'])
const comparisons: ReadonlySet<string> = new Set(['<', '>', '<=', '>=', '==', '===', '!=', '!=='])

export function binary(inference: Inference, node: ts.BinaryExpression, scope: Scope): Shape {
  const chain: ts.BinaryExpression[] = []
  let first: ts.Expression = node
  while (inference.typescript.isBinaryExpression(first) && isPlain(first)) {
    chain.push(first)
    first = first.left
  }
  if (chain.length === 0) return special(inference, node, scope)
  let shape = inference.expression(first, scope)
  for (const link of chain.reverse()) {
    const right = { node: link.right, shape: inference.expression(link.right, scope) }
    shape = combine(inference, link.operatorToken.getText(), { node: link.left, shape }, right, placeOf(link))
    inference.note(link, shape)
  }
  return shape
}

function isPlain(node: ts.BinaryExpression): boolean {
  const operator = node.operatorToken.getText()
  return arithmeticOperators.has(operator) || comparisons.has(operator)
}

function combine(inference: Inference, operator: string, left: Operand, right: Operand, at: ts.Node): Shape {
  return comparisons.has(operator)
    ? comparison(inference, operator, left, right, at)
    : arithmetic(inference, operator as Arithmetic, left, right, at)
}

/** A sum over several lines is pointed at where its wrong term stands. */
function placeOf(node: ts.BinaryExpression): ts.Node {
  const file = node.getSourceFile()
  const lineOf = (position: number) => file.getLineAndCharacterOfPosition(position).line
  return lineOf(node.getStart()) === lineOf(node.right.getStart()) ? node : node.right
}

function special(inference: Inference, node: ts.BinaryExpression, scope: Scope): Shape {
  const operator = node.operatorToken.getText()
  if (operator === '=') {
    const shape = inference.expression(node.right, scope)
    inference.assign(node.left, shape, scope)
    return shape
  }
  if (operator.endsWith('=')) return compound(inference, node, operator.slice(0, -1), scope)
  const left = inference.expression(node.left, scope)
  if (operator === ',') return inference.expression(node.right, scope)
  const right = sometimes(inference, node, scope)
  if (operator === '||' || operator === '??') return either(inference, node, operator, left, right)
  if (operator === '&&') return left.kind === 'number' ? join(left, right) : right.kind === 'other' ? other : unknown
  return operator === 'in' || operator === 'instanceof' ? other : unknown
}

/** One side or the other: they must be of one dimension. */
function either(inference: Inference, node: ts.BinaryExpression, operator: string, left: Shape, right: Shape): Shape {
  if (left.kind !== 'number' || right.kind !== 'number' || agree(left, right)) return join(left, right)
  inference.reports.add(node, fallbackClash(operator, node.left, left, node.right, right))
  return unknownBecause(saidWrong)
}

/** The right side of `&&`, `||` and `??` runs or does not. */
function sometimes(inference: Inference, node: ts.BinaryExpression, scope: Scope): Shape {
  let shape: Shape = unknown
  alternatives(inference, node.right, scope, [
    () => false,
    () => {
      shape = inference.expression(node.right, scope)
      return false
    },
  ])
  return shape
}

function compound(inference: Inference, node: ts.BinaryExpression, operator: string, scope: Scope): Shape {
  const left = { node: node.left, shape: inference.expression(node.left, scope) }
  const right = { node: node.right, shape: inference.expression(node.right, scope) }
  const logical = operator === '||' || operator === '??' || operator === '&&'
  const shape = arithmeticOperators.has(operator)
    ? arithmetic(inference, operator as Arithmetic, left, right, node)
    : logical
      ? join(left.shape, right.shape)
      : unknown
  inference.assign(node.left, shape, scope)
  return shape
}
