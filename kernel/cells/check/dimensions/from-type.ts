/** From TypeScript's types to shapes: what declarations of the kernel, annotations and contexts say. */
import type ts from 'typescript'
import { markedDimension, markedZeros } from '../types/marker.js'
import type { Inference } from './inference.js'
import { type Bindings, joinAll, type NumberShape, noBindings, other, quantity, type Shape, unknown } from './shape.js'

/** The number a type declares when it carries a marker (`Mass`, `Mass | undefined`). */
export function declaredNumber(inference: Inference, type: ts.Type): NumberShape | undefined {
  const shape = shapeOfType(inference, type, noBindings)
  return shape.kind === 'number' ? shape : undefined
}

/**
 * Plain numbers of a declaration say nothing, since a quantity would carry its marker. A conditional type stands for the
 * type parameter it tests (`number extends Q ? Q : number`, which only widens a literal).
 */
export function shapeOfType(inference: Inference, type: ts.Type, bindings: Bindings, depth = 0): Shape {
  const { TypeFlags } = inference.typescript
  const bound = bindings.get(type)
  if (bound !== undefined) return bound
  if (depth > 4) return unknown
  const dimension = markedDimension(inference.typescript, inference.checker, type)
  if (dimension !== undefined) {
    const zeros = markedZeros(inference.typescript, inference.checker, type)
    return zeros === undefined ? quantity(dimension) : { ...quantity(dimension), zeros }
  }
  if (
    type.flags &
    (TypeFlags.StringLike | TypeFlags.BooleanLike | TypeFlags.Void | TypeFlags.Undefined | TypeFlags.Null)
  )
    return type.isStringLiteral() ? { kind: 'other', text: type.value } : other
  if (type.flags & TypeFlags.Conditional) return bindings.get((type as ts.ConditionalType).extendsType) ?? unknown
  if (type.isUnion()) return shapeOfUnion(inference, type, bindings, depth)
  if (type.flags & (TypeFlags.Object | TypeFlags.Intersection)) return shapeOfObject(inference, type, bindings, depth)
  return unknown
}

function shapeOfUnion(inference: Inference, type: ts.UnionType, bindings: Bindings, depth: number): Shape {
  const { TypeFlags } = inference.typescript
  const members = type.types.filter(
    (member) => !(member.flags & (TypeFlags.Undefined | TypeFlags.Null | TypeFlags.Void)),
  )
  if (members.length > 1 && members.every((member) => member.flags & TypeFlags.Object))
    return { kind: 'typed', type, bindings }
  return joinAll(members.map((member) => shapeOfType(inference, member, bindings, depth + 1)))
}

function shapeOfObject(inference: Inference, type: ts.Type, bindings: Bindings, depth: number): Shape {
  const { checker } = inference
  if (checker.isTupleType(type)) {
    const items = checker
      .getTypeArguments(type as ts.TypeReference)
      .map((item) => shapeOfType(inference, item, bindings, depth + 1))
    return { kind: 'list', element: joinAll(items), items }
  }
  if (checker.isArrayType(type)) {
    const element = checker.getIndexTypeOfType(type, inference.typescript.IndexKind.Number)
    return {
      kind: 'list',
      element: element === undefined ? unknown : shapeOfType(inference, element, bindings, depth + 1),
    }
  }
  return { kind: 'typed', type, bindings }
}

/** The shape of a member of a typed value; members of a union must agree. */
export function shapeOfMember(inference: Inference, type: ts.Type, name: string, bindings: Bindings): Shape {
  const found = memberTypes(inference, type, name)
  return found.length === 0 ? unknown : joinAll(found.map((member) => shapeOfType(inference, member, bindings)))
}

/** The types that a property may have, over the members of a union that have it; index signatures count, what is never read does not. */
export function memberTypes(inference: Inference, type: ts.Type, name: string): readonly ts.Type[] {
  const { checker, typescript } = inference
  return (type.isUnion() ? type.types : [type]).flatMap((member) => {
    if (!(member.flags & (typescript.TypeFlags.Object | typescript.TypeFlags.Intersection))) return []
    const property = checker.getPropertyOfType(member, name)
    if (property !== undefined) {
      const found = checker.getTypeOfSymbol(property)
      return found.flags & typescript.TypeFlags.Never ? [] : [found]
    }
    const indexed = checker.getIndexTypeOfType(member, typescript.IndexKind.String)
    return indexed === undefined ? [] : [indexed]
  })
}
