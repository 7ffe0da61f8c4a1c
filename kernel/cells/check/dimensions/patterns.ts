/** Giving names their shapes: declarations, destructuring, assignment, and changes inside records and lists. */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import { propertyName } from './literals.js'
import { matchDeclared } from './matching.js'
import { wants } from './messages.js'
import type { Scope } from './scope.js'
import { agree, join, nothing, type RecordShape, type Shape, unknown } from './shape.js'

export function bindName(inference: Inference, name: ts.BindingName, shape: Shape, scope: Scope): void {
  const t = inference.typescript
  if (t.isIdentifier(name)) {
    const symbol = inference.checker.getSymbolAtLocation(name)
    inference.note(name, shape)
    if (symbol !== undefined) scope.declare(symbol, shape)
  } else if (t.isObjectBindingPattern(name)) {
    for (const element of name.elements) bindField(inference, element, shape, name, scope)
  } else {
    name.elements.forEach((element, index) => {
      if (t.isBindingElement(element)) bindItem(inference, element, index, shape, scope)
    })
  }
}

function bindField(
  inference: Inference,
  element: ts.BindingElement,
  shape: Shape,
  pattern: ts.ObjectBindingPattern,
  scope: Scope,
): void {
  if (element.dotDotDotToken !== undefined) {
    inference.bind(element.name, remainder(inference, shape, pattern, scope), scope)
    return
  }
  const name = propertyName(inference, element.propertyName ?? (element.name as ts.PropertyName), scope)
  const left = shape.kind === 'record' && shape.rest === undefined && name !== undefined && !shape.fields.has(name)
  const missing = left && element.initializer !== undefined
  const field = missing ? nothing : name === undefined ? unknown : inference.property(shape, name, element.name)
  inference.bind(element.name, orDefault(inference, field, element.initializer, scope), scope)
}

function remainder(inference: Inference, shape: Shape, pattern: ts.ObjectBindingPattern, scope: Scope): Shape {
  if (shape.kind !== 'record') return unknown
  const fields = new Map(shape.fields)
  for (const taken of pattern.elements)
    fields.delete(propertyName(inference, taken.propertyName ?? (taken.name as ts.PropertyName), scope) ?? '')
  return { kind: 'record', fields }
}

function bindItem(inference: Inference, element: ts.BindingElement, index: number, shape: Shape, scope: Scope): void {
  const whole = inference.elementOf(shape)
  const item = shape.kind === 'list' ? (shape.items?.[index] ?? whole) : whole
  const value: Shape = element.dotDotDotToken === undefined ? item : { kind: 'list', element: whole }
  inference.bind(element.name, orDefault(inference, value, element.initializer, scope), scope)
}

function orDefault(inference: Inference, shape: Shape, initializer: ts.Expression | undefined, scope: Scope): Shape {
  if (initializer === undefined) return shape
  const otherwise = inference.expression(initializer, scope)
  if (shape.kind === 'number' && otherwise.kind === 'number' && !agree(shape, otherwise))
    inference.reports.add(initializer, wants('The value to fall back on', [shape.dimension], otherwise))
  return join(shape, otherwise)
}

/** `target = shape`, with what the target declares held against it. */
export function assignTo(inference: Inference, target: ts.Expression, shape: Shape, scope: Scope): void {
  const t = inference.typescript
  if (t.isIdentifier(target)) assignName(inference, target, shape, scope)
  else if (t.isParenthesizedExpression(target) || t.isNonNullExpression(target))
    inference.assign(target.expression, shape, scope)
  else if (target.kind === t.SyntaxKind.ThisKeyword) changeSelf(shape, scope)
  else if (t.isPropertyAccessExpression(target)) changeField(inference, target, target.name.text, shape, scope)
  else if (t.isElementAccessExpression(target)) changeElement(inference, target, shape, scope)
  else if (t.isArrayLiteralExpression(target)) assignItems(inference, target, shape, scope)
  else if (t.isObjectLiteralExpression(target)) assignFields(inference, target, shape, scope)
}

function changeSelf(shape: Shape, scope: Scope): void {
  if (scope.self !== undefined) scope.self.shape = shape
}

function assignName(inference: Inference, target: ts.Identifier, shape: Shape, scope: Scope): void {
  const symbol = inference.checker.getSymbolAtLocation(target)
  if (symbol === undefined) return
  const annotated = annotationOf(inference, symbol)
  if (annotated !== undefined) matchDeclared(inference, { node: target, shape }, annotated, target.text)
  scope.assign(symbol, annotated === undefined ? shape : (inference.declared(annotated) ?? shape))
}

function annotationOf(inference: Inference, symbol: ts.Symbol): ts.Type | undefined {
  const declaration = symbol.valueDeclaration
  const t = inference.typescript
  return declaration !== undefined && t.isVariableDeclaration(declaration) && declaration.type !== undefined
    ? inference.checker.getTypeFromTypeNode(declaration.type)
    : undefined
}

/** A field takes what it had joined with what it is given: another name may hold the same record. */
function changeField(
  inference: Inference,
  target: ts.PropertyAccessExpression | ts.ElementAccessExpression,
  name: string,
  value: Shape,
  scope: Scope,
): void {
  const owner = inference.expression(target.expression, scope)
  if (owner.kind === 'record') {
    const fields = new Map(owner.fields)
    const before = owner.fields.get(name)
    fields.set(name, before === undefined ? value : join(before, value))
    inference.assign(target.expression, { kind: 'record', fields }, scope)
  } else if (owner.kind === 'class' && owner.statics.shape.kind === 'record') {
    const fields = new Map(owner.statics.shape.fields)
    const before = fields.get(name)
    owner.statics.shape = {
      kind: 'record',
      fields: fields.set(name, before === undefined ? value : join(before, value)),
    }
  } else if (owner.kind === 'typed') {
    const type = inference.checker.getTypeAtLocation(target)
    matchDeclared(inference, { node: target, shape: value }, type, target.getText())
  }
}

function changeElement(inference: Inference, target: ts.ElementAccessExpression, value: Shape, scope: Scope): void {
  const owner = inference.expression(target.expression, scope)
  const key = inference.expression(target.argumentExpression, scope)
  if (owner.kind === 'list') grow(inference, target.expression, value, scope)
  else if (key.kind === 'other' && key.text !== undefined) changeField(inference, target, key.text, value, scope)
  else if (owner.kind === 'record') inference.assign(target.expression, blurred(owner, value), scope)
}

function blurred(owner: RecordShape, value: Shape): Shape {
  return { kind: 'record', fields: new Map([...owner.fields].map(([name, field]) => [name, join(field, value)])) }
}

/** One more element, somewhere in a list. */
export function grow(inference: Inference, list: ts.Expression, value: Shape, scope: Scope): void {
  const shape = inference.expression(list, scope)
  if (shape.kind !== 'list') return
  const element = shape.element === undefined ? value : join(shape.element, value)
  inference.assign(list, { kind: 'list', element, ...(shape.as === undefined ? {} : { as: shape.as }) }, scope)
}

function assignItems(inference: Inference, target: ts.ArrayLiteralExpression, shape: Shape, scope: Scope): void {
  target.elements.forEach((item, index) => {
    const value =
      shape.kind === 'list' ? (shape.items?.[index] ?? inference.elementOf(shape)) : inference.elementOf(shape)
    assignWithDefault(inference, item, value, scope)
  })
}

function assignFields(inference: Inference, target: ts.ObjectLiteralExpression, shape: Shape, scope: Scope): void {
  const t = inference.typescript
  for (const property of target.properties) {
    if (t.isShorthandPropertyAssignment(property)) {
      const symbol = inference.checker.getShorthandAssignmentValueSymbol(property)
      if (symbol !== undefined) scope.assign(symbol, inference.property(shape, property.name.text))
    } else if (t.isPropertyAssignment(property)) {
      const name = propertyName(inference, property.name, scope)
      const value = name === undefined ? unknown : inference.property(shape, name)
      assignWithDefault(inference, property.initializer, value, scope)
    } else if (t.isSpreadAssignment(property)) inference.assign(property.expression, unknown, scope)
  }
}

function assignWithDefault(inference: Inference, target: ts.Expression, shape: Shape, scope: Scope): void {
  const t = inference.typescript
  if (t.isSpreadElement(target)) inference.assign(target.expression, unknown, scope)
  else if (t.isBinaryExpression(target))
    inference.assign(target.left, join(shape, inference.expression(target.right, scope)), scope)
  else inference.assign(target, shape, scope)
}
