/**
 * What the checker knows of a value: a number with its dimension, a record or list of such, a function of the cell, or
 * something described by a kernel type. `unknown` absorbs: nothing is ever reported about it.
 */
import type ts from 'typescript'
import { type Dimension, formatDimension, pureNumber, sameDimension } from '../../../../shared/contracts/index.js'
import type { Scope } from './scope.js'

export type FunctionNode = ts.FunctionDeclaration | ts.FunctionExpression | ts.ArrowFunction | ts.MethodDeclaration

/** What stands for the type parameters of a kernel type: `Bound<T>` of a call that was given metres. */
export type Bindings = ReadonlyMap<ts.Type, Shape>

export interface NumberShape {
  readonly kind: 'number'
  readonly dimension: Dimension
  /** Value of a pure number that can only be this one, so that it may be an exponent. */
  readonly constant?: number
  /** Zero, infinity and NaN fit any dimension in sums and comparisons. */
  readonly free?: boolean
}
export interface RecordShape {
  readonly kind: 'record'
  readonly fields: ReadonlyMap<string, Shape>
}
export interface ListShape {
  readonly kind: 'list'
  /** Join of all elements; absent while the list is known to be empty. */
  readonly element?: Shape
  readonly items?: readonly Shape[]
}
export interface ClosureShape {
  readonly kind: 'closure'
  readonly node: FunctionNode
  readonly scope: Scope
}
/** A value that a declaration describes; looked into only as far as a cell looks into it. */
export interface TypedShape {
  readonly kind: 'typed'
  readonly type: ts.Type
  readonly bindings: Bindings
}
/** A member of the language's own library, `Math.sqrt`. */
export interface BuiltinShape {
  readonly kind: 'builtin'
  readonly owner: string
  readonly name: string
}
export type Shape =
  | { readonly kind: 'unknown' }
  /** Text, truth, nothing: certainly no number. `text` where it is a literal. */
  | { readonly kind: 'other'; readonly text?: string }
  | NumberShape
  | RecordShape
  | ListShape
  | ClosureShape
  | TypedShape
  | BuiltinShape

export const unknown: Shape = { kind: 'unknown' }
export const other: Shape = { kind: 'other' }
export const noBindings: Bindings = new Map()
export const freeNumber: NumberShape = { kind: 'number', dimension: pureNumber, free: true }

export function quantity(dimension: Dimension): NumberShape {
  return { kind: 'number', dimension }
}

/** A pure number; with its value where only one is possible. */
export function pure(constant?: number): NumberShape {
  if (constant === undefined) return { kind: 'number', dimension: pureNumber }
  if (constant === 0 || !Number.isFinite(constant)) return { ...freeNumber, constant }
  return { kind: 'number', dimension: pureNumber, constant }
}

export function isPure(shape: NumberShape): boolean {
  return sameDimension(shape.dimension, pureNumber)
}

/** Whether two numbers may be added or compared. */
export function agree(a: NumberShape, b: NumberShape): boolean {
  return a.free === true || b.free === true || sameDimension(a.dimension, b.dimension)
}

/** The same shape without what holds for one value only: an assumption is a number that may change. */
export function withoutConstant(shape: Shape): Shape {
  return shape.kind === 'number' && shape.constant !== undefined
    ? { kind: 'number', dimension: shape.dimension, ...(shape.free === true ? { free: true } : {}) }
    : shape
}

/** What holds for both: where two branches meet, or for all elements of a list. Clashing numbers are unknown. */
export function join(a: Shape, b: Shape): Shape {
  if (a === b) return a
  if (a.kind === 'number' && b.kind === 'number') return joinNumbers(a, b)
  if (a.kind === 'record' && b.kind === 'record') return joinRecords(a, b)
  if (a.kind === 'list' && b.kind === 'list') return joinLists(a, b)
  if (a.kind === 'other' && b.kind === 'other') return a.text === b.text ? a : other
  if (a.kind === 'closure' && b.kind === 'closure' && a.node === b.node && a.scope === b.scope) return a
  if (a.kind === 'typed' && b.kind === 'typed' && a.type === b.type) return a
  return unknown
}

function joinNumbers(a: NumberShape, b: NumberShape): Shape {
  if (a.free === true && b.free === true) return a.constant === b.constant ? a : freeNumber
  if (a.free === true) return withoutConstant(b)
  if (b.free === true) return withoutConstant(a)
  if (!sameDimension(a.dimension, b.dimension)) return unknown
  return a.constant === b.constant ? a : withoutConstant(a)
}

function joinRecords(a: RecordShape, b: RecordShape): Shape {
  const fields = new Map<string, Shape>()
  for (const [name, shape] of a.fields) {
    const second = b.fields.get(name)
    if (second !== undefined) fields.set(name, join(shape, second))
  }
  return { kind: 'record', fields }
}

function joinLists(a: ListShape, b: ListShape): Shape {
  const element = a.element === undefined ? b.element : b.element === undefined ? a.element : join(a.element, b.element)
  const items =
    a.items !== undefined && b.items !== undefined && a.items.length === b.items.length
      ? a.items.map((item, index) => join(item, b.items?.[index] ?? unknown))
      : undefined
  return { kind: 'list', ...(element === undefined ? {} : { element }), ...(items === undefined ? {} : { items }) }
}

export function joinAll(shapes: readonly Shape[]): Shape {
  const [first, ...rest] = shapes
  return first === undefined ? unknown : rest.reduce(join, first)
}

/** Equal as far as a fixed point of a loop needs: same kind and same dimensions inside. */
export function sameShape(a: Shape | undefined, b: Shape | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && describeShape(a) === describeShape(b))
}

/** One line that tells shapes apart; used to compare and to remember, never shown. */
export function describeShape(shape: Shape, depth = 0): string {
  if (depth > 6) return '...'
  if (shape.kind === 'number')
    return `${formatDimension(shape.dimension)}${shape.free === true ? '?' : ''}${shape.constant ?? ''}`
  if (shape.kind === 'record')
    return `{${[...shape.fields].map(([name, field]) => `${name}:${describeShape(field, depth + 1)}`).join()}}`
  if (shape.kind === 'list') {
    const items = shape.items?.map((item) => describeShape(item, depth + 1)).join() ?? ''
    return `[${shape.element === undefined ? '' : describeShape(shape.element, depth + 1)}|${items}]`
  }
  if (shape.kind === 'closure') return `function@${shape.node.pos}`
  return shape.kind === 'other' ? `other ${shape.text ?? ''}` : shape.kind
}
