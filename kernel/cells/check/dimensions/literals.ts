/** Records and lists written in a cell keep the dimension of each part. */
import type ts from 'typescript'
import { defineFunction } from './functions.js'
import type { Inference } from './inference.js'
import { readSymbol } from './names.js'
import type { Scope } from './scope.js'
import { join, type Self, type Shape, unknown } from './shape.js'

export function objectLiteral(inference: Inference, node: ts.ObjectLiteralExpression, scope: Scope): Shape {
  const fields = new Map<string, Shape>()
  const self: Self = { shape: unknown }
  for (const property of node.properties) addProperty(inference, property, fields, scope, self)
  self.shape = { kind: 'record', fields }
  return self.shape
}

function addProperty(
  inference: Inference,
  property: ts.ObjectLiteralElementLike,
  fields: Map<string, Shape>,
  scope: Scope,
  self: Self,
): void {
  const t = inference.typescript
  if (t.isSpreadAssignment(property)) {
    spread(inference, inference.expression(property.expression, scope), fields)
    return
  }
  const name = propertyName(inference, property.name, scope)
  const shape = propertyShape(inference, property, scope, self)
  if (name !== undefined) fields.set(name, shape)
  else for (const known of fields.keys()) fields.set(known, unknown)
}

function propertyShape(inference: Inference, property: ts.ObjectLiteralElementLike, scope: Scope, self: Self): Shape {
  const t = inference.typescript
  if (t.isPropertyAssignment(property)) return inference.expression(property.initializer, scope)
  if (t.isShorthandPropertyAssignment(property)) return shorthand(inference, property, scope)
  if (t.isMethodDeclaration(property)) return defineFunction(inference, property, scope, self)
  if (!t.isGetAccessor(property)) return unknown
  const [got] = inference.follow({ kind: 'closure', node: property, scope, self }, [], property, 'in place')
  return got?.shape ?? unknown
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
    const given = partsOf(inference, item, scope)
    counted = counted && given.counted
    items.push(...given.shapes)
    for (const shape of given.shapes) element = element === undefined ? shape : join(element, shape)
  }
  return { kind: 'list', ...(element === undefined ? {} : { element }), ...(counted ? { items } : {}) }
}

/** One item of a list, or those of a list spread into it. */
function partsOf(
  inference: Inference,
  item: ts.Expression,
  scope: Scope,
): { readonly shapes: readonly Shape[]; readonly counted: boolean } {
  if (!inference.typescript.isSpreadElement(item)) return { shapes: [inference.expression(item, scope)], counted: true }
  const list = inference.expression(item.expression, scope)
  if (list.kind === 'list' && list.items !== undefined) return { shapes: list.items, counted: true }
  if (list.kind === 'list' && list.element === undefined) return { shapes: [], counted: false }
  return { shapes: [inference.elementOf(list)], counted: false }
}
