/**
 * Holds values against what declarations want: arguments, options of records, elements of lists, what a callback
 * returns. A type parameter of the call takes the dimension of the first value given for it, and the others must agree.
 */
import type ts from 'typescript'
import { memberTypes } from './from-type.js'
import type { Given } from './given.js'
import type { Inference } from './inference.js'
import { argumentsClash, lacksUnit, wants } from './messages.js'
import {
  agree,
  type Bindings,
  type ClosureShape,
  join,
  type NumberShape,
  type Shape,
  withoutConstant,
} from './shape.js'
import { unlikeTemperatures, wantsOtherTemperature } from './temperatures.js'

/** One call whose arguments are being held against a declaration. */
export interface Matching {
  /** How the callee reads in a sentence: `rotor.hover`. */
  readonly callee: string
  readonly bindings: Map<ts.Type, Shape>
  readonly boundBy: Map<ts.Type, ts.Node>
  /** Functions are followed last, when the type parameters of their arguments are known. */
  readonly later: (() => void)[]
  /** Where the call stands, to tell functions written in it from those handed over by name. */
  readonly site: ts.Node
}

export function newMatching(callee: string, site: ts.Node): Matching {
  return { callee, bindings: new Map(), boundBy: new Map(), later: [], site }
}

/** Holds a value against one declared type outside of calls: an annotation, `satisfies`. */
export function matchDeclared(inference: Inference, given: Given, type: ts.Type, subject: string): void {
  const matching = newMatching(subject, given.node)
  match(inference, matching, given, [type], subject)
  for (const follow of matching.later) follow()
}

export function match(
  inference: Inference,
  matching: Matching,
  given: Given,
  types: readonly ts.Type[],
  subject: string,
  depth = 0,
): void {
  if (depth > 6) return
  const { shape } = given
  const members = flatten(inference, shape.kind === 'number' ? types : types.map((type) => bound(inference, type)))
  if (shape.kind === 'number') matchNumber(inference, matching, given, shape, members, subject)
  else if (shape.kind === 'closure')
    matching.later.push(() => matchFunction(inference, matching, given, shape, members, subject))
  else if (shape.kind === 'list' || shape.kind === 'record' || shape.kind === 'typed') {
    bindWhole(inference, matching, shape, types)
    if (shape.kind === 'list') matchList(inference, matching, given, members, subject, depth)
    else matchRecord(inference, matching, given, members, subject, depth)
  }
}

/** A type parameter that stands for a whole list or record takes the first given for it: what goes in unchanged comes out so. */
function bindWhole(inference: Inference, matching: Matching, shape: Shape, types: readonly ts.Type[]): void {
  for (const type of types)
    if (type.flags & inference.typescript.TypeFlags.TypeParameter && !matching.bindings.has(type))
      matching.bindings.set(type, shape)
}

/** What a type parameter must be at least. */
function bound(inference: Inference, type: ts.Type): ts.Type {
  return inference.checker.getBaseConstraintOfType(type) ?? type
}

function flatten(inference: Inference, types: readonly ts.Type[]): readonly ts.Type[] {
  const { TypeFlags } = inference.typescript
  return types
    .flatMap((type) => (type.isUnion() ? type.types : [type]))
    .filter((type) => !(type.flags & (TypeFlags.Undefined | TypeFlags.Null | TypeFlags.Void)))
}

function matchNumber(
  inference: Inference,
  matching: Matching,
  given: Given,
  shape: NumberShape,
  members: readonly ts.Type[],
  subject: string,
): void {
  const { TypeFlags } = inference.typescript
  const parameter = members.find((member) => member.flags & TypeFlags.TypeParameter)
  if (parameter !== undefined) bindParameter(inference, matching, given, shape, parameter)
  const constraint = parameter === undefined ? undefined : inference.checker.getBaseConstraintOfType(parameter)
  const candidates = constraint === undefined ? members : flatten(inference, [constraint])
  const wanted = candidates.flatMap((member) => inference.declared(member) ?? [])
  const takesAnyNumber = candidates.some(
    (member) => member.flags & (TypeFlags.Number | TypeFlags.Any | TypeFlags.Unknown | TypeFlags.TypeParameter),
  )
  if (wanted.length === 0 || takesAnyNumber) return
  const fitting = wanted.filter((one) => agree(one, shape))
  const [reading] = fitting
  if (reading !== undefined && fitting.every((one) => unlikeTemperatures(one, shape)))
    inference.reports.add(given.node, wantsOtherTemperature(subject, reading, shape))
  if (fitting.length > 0) return
  const dimensions = wanted.map((one) => one.dimension)
  const [first] = dimensions
  const mend = first === undefined || dimensions.length > 1 ? undefined : { node: given.node, wanted: first }
  if (shape.constant === undefined) inference.reports.add(given.node, wants(subject, dimensions, shape), 'error', mend)
  else inference.reports.add(given.node, lacksUnit(subject, dimensions), 'warning', mend)
}

function bindParameter(
  inference: Inference,
  matching: Matching,
  given: Given,
  shape: NumberShape,
  parameter: ts.Type,
): void {
  const bound = matching.bindings.get(parameter)
  const by = matching.boundBy.get(parameter)
  if (bound?.kind === 'number' && by !== undefined && !agree(bound, shape)) {
    inference.reports.add(given.node, argumentsClash(matching.callee, by, bound, given.node, shape))
    return
  }
  matching.bindings.set(parameter, withoutConstant(bound === undefined ? shape : join(bound, shape)))
  if (by === undefined) matching.boundBy.set(parameter, given.node)
}

function matchList(
  inference: Inference,
  matching: Matching,
  given: Given,
  members: readonly ts.Type[],
  subject: string,
  depth: number,
): void {
  if (given.shape.kind !== 'list') return
  const { checker, typescript } = inference
  const elements = members.flatMap((member) =>
    member.flags & typescript.TypeFlags.Object
      ? (checker.getIndexTypeOfType(member, typescript.IndexKind.Number) ?? [])
      : [],
  )
  if (elements.length === 0) return
  const literal = typescript.isArrayLiteralExpression(given.node) ? given.node : undefined
  const { items, element } = given.shape
  if (literal !== undefined && items !== undefined)
    literal.elements.forEach((node, index) => {
      const shape = items[index]
      if (shape !== undefined) match(inference, matching, { node, shape }, elements, subject, depth + 1)
    })
  else if (element !== undefined)
    match(inference, matching, { node: given.node, shape: element }, elements, subject, depth + 1)
}

function matchRecord(
  inference: Inference,
  matching: Matching,
  given: Given,
  members: readonly ts.Type[],
  subject: string,
  depth: number,
): void {
  for (const name of namesOf(inference, given.shape, members)) {
    const types = members.flatMap((member) => memberTypes(inference, member, name))
    if (types.length === 0) continue
    const field = { node: nodeOfField(inference, given.node, name), shape: inference.property(given.shape, name) }
    match(inference, matching, field, types, subjectOfField(matching, subject, name, depth), depth + 1)
  }
}

function namesOf(inference: Inference, shape: Shape, members: readonly ts.Type[]): readonly string[] {
  if (shape.kind === 'record') return [...shape.fields.keys()]
  if (shape.kind !== 'typed' || members.some((member) => member === shape.type)) return []
  const own = new Set(inference.checker.getPropertiesOfType(shape.type).map((property) => property.name))
  return members
    .flatMap((member) => inference.checker.getPropertiesOfType(member).map((property) => property.name))
    .filter((name) => own.has(name))
}

/** The options record of a call has no name of its own worth saying: `rotor.hover: thrust`. */
function subjectOfField(matching: Matching, subject: string, name: string, depth: number): string {
  return depth === 0 ? `${matching.callee}: ${name}` : `${subject}.${name}`
}

/** Where a field is written, if the record is written here. */
function nodeOfField(inference: Inference, node: ts.Node, name: string): ts.Node {
  const t = inference.typescript
  let literal = node
  while (t.isParenthesizedExpression(literal) || t.isAsExpression(literal) || t.isSatisfiesExpression(literal))
    literal = literal.expression
  if (!t.isObjectLiteralExpression(literal)) return node
  const property = literal.properties.find((one) => one.name !== undefined && one.name.getText() === name)
  if (property === undefined) return node
  return t.isPropertyAssignment(property) ? property.initializer : (property.name ?? node)
}

function matchFunction(
  inference: Inference,
  matching: Matching,
  given: Given,
  closure: ClosureShape,
  members: readonly ts.Type[],
  subject: string,
): void {
  const signature = members.flatMap((member) => member.getCallSignatures())[0]
  if (signature === undefined) return
  const args = signature.parameters.map((parameter) =>
    inference.fromType(inference.checker.getTypeOfSymbol(parameter), matching.bindings as Bindings),
  )
  const inPlace = isWithin(closure.node, matching.site)
  const result = signature.getReturnType()
  for (const returned of inference.follow(closure, args, given.node, inPlace ? 'in place' : 'from elsewhere'))
    match(
      inference,
      matching,
      inPlace ? returned : { node: given.node, shape: returned.shape },
      [result],
      `${matching.callee}: the result of ${lastWord(subject)}`,
      1,
    )
}

function lastWord(subject: string): string {
  return subject.slice(subject.lastIndexOf(' ') + 1)
}

function isWithin(node: ts.Node, site: ts.Node): boolean {
  return node.getSourceFile() === site.getSourceFile() && node.pos >= site.pos && node.end <= site.end
}
