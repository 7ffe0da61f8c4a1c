/**
 * Lists whose items differ in dimension. One element cannot stand for all of them, so where what is done with each takes the same course for
 * every item, it is followed item by item: `parts.reduce((sum, part) => sum + part.mass, 0)` with one mass in metres. Where it parts
 * (`if (part.kind === 'mass')`) it may be right for each, and nothing is said.
 */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import type { ListShape, Shape } from './shape.js'

/** A longer list is data, and following every item would cost more than it tells. */
const mostItems = 24

/** The items one by one, or the one element that stands for all. */
export function itemsApart(inference: Inference, list: ListShape, element: Shape, body: ts.Node): readonly Shape[] {
  const { items } = list
  if (items === undefined || items.length > mostItems || !isMixed(element)) return [element]
  // What a function does that is written elsewhere is not looked into.
  return !inference.typescript.isIdentifier(body) && isPlainCourse(inference, body) ? items : [element]
}

function isMixed(shape: Shape, depth = 0): boolean {
  if (depth > 3) return false
  if (shape.kind === 'unknown') return shape.mixed === true
  if (shape.kind === 'record') return [...shape.fields.values()].some((field) => isMixed(field, depth + 1))
  return shape.kind === 'list' && (shape.items ?? []).some((item) => isMixed(item, depth + 1))
}

/** Neither a choice nor a call of anything that may choose. */
function isPlainCourse({ typescript: t }: Inference, node: ts.Node): boolean {
  const { SyntaxKind } = t
  const choosing = new Set([
    SyntaxKind.AmpersandAmpersandToken,
    SyntaxKind.BarBarToken,
    SyntaxKind.QuestionQuestionToken,
  ])
  const plain = (one: ts.Node): boolean => {
    if (t.isIfStatement(one) || t.isConditionalExpression(one) || t.isSwitchStatement(one) || t.isTryStatement(one))
      return false
    if (t.isContinueStatement(one) || t.isBreakStatement(one) || t.isIterationStatement(one, false)) return false
    if (t.isBinaryExpression(one) && choosing.has(one.operatorToken.kind)) return false
    if ((t.isCallExpression(one) || t.isNewExpression(one)) && !isOfMath(t, one.expression)) return false
    return t.forEachChild(one, (child) => !plain(child) || undefined) === undefined
  }
  return plain(node)
}

function isOfMath(t: typeof ts, callee: ts.Node): boolean {
  return t.isPropertyAccessExpression(callee) && t.isIdentifier(callee.expression) && callee.expression.text === 'Math'
}
