/** Looking into records, lists and what declarations describe. */
import type ts from 'typescript'
import { memberTypes, shapeOfMember } from './from-type.js'
import type { Inference } from './inference.js'
import { mathConstants } from './mathematics.js'
import type { Scope } from './scope.js'
import {
  firstUnknown,
  freeNumber,
  joinAll,
  other,
  pure,
  type Shape,
  type TypedShape,
  unknown,
  unknownBecause,
} from './shape.js'

export function readProperty(inference: Inference, shape: Shape, name: string, node?: ts.Node): Shape {
  if (shape.kind === 'record')
    return shape.fields.get(name) ?? shape.rest ?? unknownBecause(`nothing says what the field ${name} is`)
  if (name === 'length' && (shape.kind === 'list' || shape.kind === 'other')) return pure()
  if (name === 'size' && shape.kind === 'list' && shape.as !== undefined) return pure()
  if (shape.kind === 'class') return inference.property(shape.statics.shape, name)
  if (shape.kind === 'typed') return readMember(inference, shape, name, node)
  return shape.kind === 'unknown' ? shape : unknown
}

function readMember(inference: Inference, shape: TypedShape, name: string, node: ts.Node | undefined): Shape {
  const owner = libraryName(shape.type)
  if (owner === 'Math')
    return mathConstants.has(name) ? pure(mathConstants.get(name)) : { kind: 'builtin', owner, name }
  if (owner === 'NumberConstructor') return numberMember(name)
  if (owner?.endsWith('Constructor')) return { kind: 'builtin', owner, name }
  const member = shapeOfMember(inference, shape.type, name, shape.bindings)
  if (member.kind !== 'unknown') return member
  if (node === undefined || !isOpen(inference, shape.type, name))
    return member.why === undefined ? unknownBecause(`the declaration of ${name} gives it no dimension`) : member
  return inference.fromType(inference.checker.getTypeAtLocation(node))
}

/** Whether the declaration leaves open what a member is: TypeScript knows it where the member is read, at some cost. */
function isOpen(inference: Inference, type: ts.Type, name: string): boolean {
  const { Instantiable } = inference.typescript.TypeFlags
  return type.isUnion() || memberTypes(inference, type, name).some((member) => member.flags & Instantiable)
}

function numberMember(name: string): Shape {
  if (name === 'POSITIVE_INFINITY' || name === 'NEGATIVE_INFINITY' || name === 'NaN') return freeNumber
  return /^[A-Z_]+$/.test(name) ? pure() : { kind: 'builtin', owner: 'NumberConstructor', name }
}

/** `Math`, `NumberConstructor`: the name of an interface that the language's own library declares. */
export function libraryName(type: ts.Type): string | undefined {
  const declaration = type.symbol?.declarations?.[0]
  return declaration?.getSourceFile().fileName.startsWith('/lib/') === true ? type.symbol.name : undefined
}

export function readElement(inference: Inference, node: ts.ElementAccessExpression, scope: Scope): Shape {
  const shape = inference.expression(node.expression, scope)
  const index = inference.expression(node.argumentExpression, scope)
  if (index.kind === 'other' && index.text !== undefined) return inference.property(shape, index.text, node)
  if (shape.kind === 'list')
    return shape.items?.[index.kind === 'number' ? (index.constant ?? -1) : -1] ?? inference.elementOf(shape)
  if (shape.kind === 'record')
    return joinAll([...shape.fields.values(), ...(shape.rest === undefined ? [] : [shape.rest])])
  return shape.kind === 'typed' ? inference.elementOf(shape) : shape.kind === 'other' ? other : firstUnknown(shape)
}

export function readElements(inference: Inference, shape: Shape): Shape {
  if (shape.kind === 'list') return shape.element ?? unknown
  if (shape.kind !== 'typed') return shape.kind === 'other' ? other : firstUnknown(shape)
  const { checker, typescript } = inference
  const type =
    checker.getIndexTypeOfType(shape.type, typescript.IndexKind.Number) ??
    checker.getIndexTypeOfType(shape.type, typescript.IndexKind.String)
  return type === undefined ? unknown : inference.fromType(type, shape.bindings)
}
