/** Records and lists written in a cell keep the dimension of each part. */
import type ts from 'typescript'
import { defineFunction } from './functions.js'
import type { Inference } from './inference.js'
import { readSymbol } from './names.js'
import type { Scope } from './scope.js'
import { join, type Shape, unknown } from './shape.js'

export function objectLiteral(inference: Inference, node: ts.ObjectLiteralExpression, scope: Scope): Shape {
  const fields = new Map<string, Shape>()
  for (const property of node.properties) addProperty(inference, property, fields, scope)
  return { kind: 'record', fields }
}

function addProperty(
  inference: Inference,
  property: ts.ObjectLiteralElementLike,
  fields: Map<string, Shape>,
  scope: Scope,
): void {
  const t = inference.typescript
  if (t.isSpreadAssignment(property)) {
    spread(inference, inference.expression(property.expression, scope), fields)
    return
  }
  const name = propertyName(inference, property.name, scope)
  const shape = propertyShape(inference, property, scope)
  if (name !== undefined) fields.set(name, shape)
  else for (const known of fields.keys()) fields.set(known, unknown)
}

function propertyShape(inference: Inference, property: ts.ObjectLiteralElementLike, scope: Scope): Shape {
  const t = inference.typescript
  if (t.isPropertyAssignment(property)) return inference.expression(property.initializer, scope)
  if (t.isShorthandPropertyAssignment(property)) return shorthand(inference, property, scope)
  return t.isMethodDeclaration(property) ? defineFunction(inference, property, scope) : unknown
}

function shorthand(inference: Inference, property: ts.ShorthandPropertyAssignment, scope: Scope): Shape {
  const symbol = inference.checker.getShorthandAssignmentValueSymbol(property)
  return symbol === undefined ? unknown : readSymbol(inference, symbol, property.name, scope)
}

/** The name of a property; computed names count when their text is known. */
export function propertyName(
  inference: Inference,
  name: ts.PropertyName | ts.BindingName,
  scope: Scope,
): string | undefined {
  const t = inference.typescript
  if (t.isIdentifier(name) || t.isStringLiteralLike(name) || t.isNumericLiteral(name)) return name.text
  if (!t.isComputedPropertyName(name)) return undefined
  const shape = inference.expression(name.expression, scope)
  return shape.kind === 'other' ? shape.text : undefined
}

function spread(inference: Inference, shape: Shape, fields: Map<string, Shape>): void {
  if (shape.kind === 'record') {
    for (const [name, field] of shape.fields) fields.set(name, field)
  } else if (shape.kind === 'typed' && !shape.type.isUnion()) {
    for (const property of inference.checker.getPropertiesOfType(shape.type))
      fields.set(property.name, inference.property(shape, property.name))
  } else if (shape.kind !== 'other') for (const known of fields.keys()) fields.set(known, unknown)
}

export function arrayLiteral(inference: Inference, node: ts.ArrayLiteralExpression, scope: Scope): Shape {
  const items: Shape[] = []
  let element: Shape | undefined
  let counted = true
  for (const item of node.elements) {
    const spreads = inference.typescript.isSpreadElement(item)
    const shape = spreads
      ? inference.elementOf(inference.expression(item.expression, scope))
      : inference.expression(item, scope)
    counted = counted && !spreads
    items.push(shape)
    element = element === undefined ? shape : join(element, shape)
  }
  return { kind: 'list', ...(element === undefined ? {} : { element }), ...(counted ? { items } : {}) }
}
