/**
 * What the checker knows of a value: a number with its dimension, a record or list of such, a function of the cell, or
 * something described by a kernel type. `unknown` absorbs: nothing is ever reported about it.
 */
import type ts from 'typescript'
import { type Dimension, formatDimension, pureNumber, sameDimension } from '../../../../shared/contracts/index.js'
import type { Scope } from './scope.js'

export type FunctionNode =
  | ts.FunctionDeclaration
  | ts.FunctionExpression
  | ts.ArrowFunction
  | ts.MethodDeclaration
  | ts.ConstructorDeclaration
  | ts.GetAccessorDeclaration

/** What `this` means in a method; its fields may change while it runs. */
export interface Self {
  shape: Shape
  /** What `super` means: the instance as the class above leaves it. */
  parent?: Shape | undefined
  /** What `super(...)` does. */
  startParent?: ((args: readonly Shape[]) => void) | undefined
}

/** What stands for the type parameters of a kernel type: `Bound<T>` of a call that was given metres. */
export type Bindings = ReadonlyMap<ts.Type, Shape>

export interface NumberShape {
  readonly kind: 'number'
  readonly dimension: Dimension
  /** Value of a pure number that can only be this one, so that it may be an exponent. */
  readonly constant?: number
  /** Zero, infinity and NaN fit any dimension in sums and comparisons. */
  readonly free?: boolean
  /** Of a temperature, where a declaration says: 1 absolute, 0 a difference (temperatures.ts). */
  readonly zeros?: number
  /** Where absolute temperatures were added up to this; half of it may be a mean. */
  readonly sum?: ts.Node
}
export interface RecordShape {
  readonly kind: 'record'
  readonly fields: ReadonlyMap<string, Shape>
  /** Of fields that are not known by name. */
  readonly rest?: Shape
}
export interface ListShape {
  readonly kind: 'list'
  /** Join of all elements; absent while the list is known to be empty. */
  readonly element?: Shape
  readonly items?: readonly Shape[]
  /** A `Map` is followed as the list of its pairs, a `Set` as the list of its members. */
  readonly as?: 'Map' | 'Set'
}
export interface ClosureShape {
  readonly kind: 'closure'
  readonly node: FunctionNode
  readonly scope: Scope
  readonly self?: Self
}
export interface ClassShape {
  readonly kind: 'class'
  readonly node: ts.ClassLikeDeclaration
  readonly scope: Scope
  readonly base: Shape | undefined
  /** Static members; they may change as fields do. */
  readonly statics: Self
}
/** A value that a declaration describes; looked into only as far as a cell looks into it. */
export interface TypedShape {
  readonly kind: 'typed'
  readonly type: ts.Type
  readonly bindings: Bindings
}
/** Nothing is ever reported about it. `why` is a clause that tells an author what would have to be known. */
export interface UnknownShape {
  readonly kind: 'unknown'
  readonly why?: string
  /** Stands for what a function that calls itself will give, until that is found. */
  readonly pending?: true
  /** Of items or branches that clash: each is known, but not which. */
  readonly mixed?: true
}
/** A member of the language's own library, `Math.sqrt`. */
export interface BuiltinShape {
  readonly kind: 'builtin'
  readonly owner: string
  readonly name: string
}
export type Shape =
  | UnknownShape
  /** Text, truth, nothing: certainly no number. `text` where it is a literal. */
  | { readonly kind: 'other'; readonly text?: string; readonly nothing?: true }
  | NumberShape
  | RecordShape
  | ListShape
  | ClosureShape
  | ClassShape
  | TypedShape
  | BuiltinShape

export const unknown: UnknownShape = { kind: 'unknown' }
export const pending: UnknownShape = { kind: 'unknown', pending: true }
export const other: Shape = { kind: 'other' }
/** `undefined` and `null`: where it meets a value, the value is what is worth knowing. */
export const nothing: Shape = { kind: 'other', nothing: true }
export const noBindings: Bindings = new Map()
export const freeNumber: NumberShape = { kind: 'number', dimension: pureNumber, free: true }

export function quantity(dimension: Dimension): NumberShape {
  return { kind: 'number', dimension }
}

export function unknownBecause(why: string): UnknownShape {
  return { kind: 'unknown', why }
}

/** What is unknown in a list of operands, with its reason. */
export function firstUnknown(...shapes: readonly Shape[]): UnknownShape {
  const found = shapes.filter((shape) => shape.kind === 'unknown')
  return found.find((shape) => shape.pending === true) ?? found.find((shape) => shape.why !== undefined) ?? unknown
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
  if (shape.kind !== 'number' || shape.constant === undefined) return shape
  const { constant: _, ...rest } = shape
  return rest
}

/** What holds for both: where two branches meet, or for all elements of a list. Clashing numbers are unknown. */
export function join(a: Shape, b: Shape): Shape {
  if (a === b || isNothing(b) || isPending(b)) return a
  if (isNothing(a) || isPending(a)) return b
  if (a.kind === 'number' && b.kind === 'number') return joinNumbers(a, b)
  if (a.kind === 'record' && b.kind === 'record') return joinRecords(a, b)
  if (a.kind === 'list' && b.kind === 'list') return joinLists(a, b)
  if (a.kind === 'other' && b.kind === 'other') return a.text === b.text ? a : other
  if (a.kind === 'closure' && b.kind === 'closure' && a.node === b.node && a.scope === b.scope) return a
  if (a.kind === 'typed' && b.kind === 'typed' && a.type === b.type) return a
  return a.kind === 'unknown' || b.kind === 'unknown' ? firstUnknown(a, b) : unknown
}

function isNothing(shape: Shape): boolean {
  return shape.kind === 'other' && shape.nothing === true
}

export function isPending(shape: Shape): boolean {
  return shape.kind === 'unknown' && shape.pending === true
}

function joinNumbers(a: NumberShape, b: NumberShape): Shape {
  if (a.free === true && b.free === true) return a.constant === b.constant ? a : freeNumber
  if (a.free === true) return withoutConstant(b)
  if (b.free === true) return withoutConstant(a)
  if (!sameDimension(a.dimension, b.dimension)) return { ...unknownBecause(mixture(a, b)), mixed: true }
  const either = a.constant === b.constant ? a : withoutConstant(a)
  return a.zeros === b.zeros && a.sum === b.sum ? either : { ...quantity(a.dimension), ...sumOf(a, b) }
}

function sumOf(a: NumberShape, b: NumberShape): Pick<NumberShape, 'sum'> {
  const sum = a.sum ?? b.sum
  return sum === undefined ? {} : { sum }
}

function mixture(a: NumberShape, b: NumberShape): string {
  return `it may be ${inWords(a)} or ${inWords(b)}`
}

function inWords(shape: NumberShape): string {
  const text = formatDimension(shape.dimension)
  return text === '1' ? 'a pure number' : `in ${text}`
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
  return {
    kind: 'list',
    ...(element === undefined ? {} : { element }),
    ...(items === undefined ? {} : { items }),
    ...(a.as === undefined || a.as !== b.as ? {} : { as: a.as }),
  }
}

export function joinAll(shapes: readonly Shape[]): Shape {
  const [first, ...rest] = shapes
  return first === undefined ? unknown : rest.reduce(join, first)
}

/** Equal as far as a fixed point of a loop needs: same kind and same dimensions inside. */
export function sameShape(a: Shape | undefined, b: Shape | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && describeShape(a) === describeShape(b))
}

function temperatureOf({ zeros, sum }: NumberShape): string {
  return zeros === undefined && sum === undefined ? '' : `@${zeros}@${sum?.pos}`
}

/** One line that tells shapes apart; used to compare and to remember, never shown. */
export function describeShape(shape: Shape, depth = 0): string {
  if (depth > 6) return '...'
  if (shape.kind === 'number')
    return `${formatDimension(shape.dimension)}${shape.free === true ? '?' : ''}${shape.constant ?? ''}${temperatureOf(shape)}`
  if (shape.kind === 'record')
    return `{${[...shape.fields].map(([name, field]) => `${name}:${describeShape(field, depth + 1)}`).join()}}`
  if (shape.kind === 'list') {
    const items = shape.items?.map((item) => describeShape(item, depth + 1)).join() ?? ''
    return `[${shape.element === undefined ? '' : describeShape(shape.element, depth + 1)}|${items}]`
  }
  if (shape.kind === 'closure') return `function@${shape.node.pos}`
  if (shape.kind === 'other') return `other ${shape.text ?? (shape.nothing === true ? 'nothing' : '')}`
  return isPending(shape) ? 'pending' : shape.kind
}
