/**
 * One run of the dimension core over a notebook: what all its parts share. The parts (expressions, calls, functions,
 * statements) call each other through this record, so that their files import in one direction only.
 */
import type ts from 'typescript'
import type { Given } from './given.js'
import type { Memory } from './memory.js'
import type { Mutations } from './mutations.js'
import type { Reports } from './reports.js'
import type { Scope } from './scope.js'
import type { Bindings, ClosureShape, NumberShape, Shape } from './shape.js'

/** A value that a function may return and the expression that gives it. */
export interface Returned {
  readonly node: ts.Node
  readonly shape: Shape
}

/** How a function is being followed. */
export type CallMode =
  /** The function is written in the place where it is used: what is wrong inside is reported where it stands. */
  | 'in place'
  /** A call from elsewhere with these very arguments: what is wrong only for them is reported at the call. */
  | 'from elsewhere'

export interface Inference {
  readonly typescript: typeof ts
  readonly checker: ts.TypeChecker
  readonly reports: Reports
  /** The scope of all top-level names. */
  readonly top: Scope
  /** Top-level names that several cells declare: nobody can say which is meant. */
  readonly disputed: ReadonlySet<string>
  readonly remembered: Memory<{ readonly shape: Shape; readonly fresh: string | undefined }>
  readonly mutations: Mutations
  /** Functions whose bodies have been looked at with reporting on. */
  readonly covered: Set<ts.Node>
  /** Functions seen, to be looked at by the end of the cell unless a call does so before. */
  readonly pending: ClosureShape[]
  /** Sums of absolute temperatures by where they stand, with what is to be said of each that nothing makes a mean of. */
  readonly sums: Map<ts.Node, string>
  readonly forgiven: Set<ts.Node>
  /** What was found of each expression and of each name where it is declared. */
  readonly found: Map<ts.Node, Shape>
  /** Functions being followed, so that recursion ends. */
  /** With what each is taken to give, should it call itself. */
  readonly active: Map<ts.Node, Shape>
  /** Calls of functions already being followed, so far. */
  selfCalls: number
  /** Expressions still to be looked at before everything is unknown: bounds the time of hostile sources. */
  steps: number
  /** Above zero while a call is tried with particular arguments. */
  trying: number
  /** Nesting of what is being followed, so that the stack holds. */
  depth: number

  expression(node: ts.Expression, scope: Scope): Shape
  note(node: ts.Node, shape: Shape): void
  statements(nodes: readonly ts.Statement[], scope: Scope, returned: Returned[]): boolean
  bind(name: ts.BindingName, shape: Shape, scope: Scope): void
  assign(target: ts.Expression, shape: Shape, scope: Scope): void
  call(node: ts.CallExpression | ts.NewExpression, scope: Scope): Shape
  /** Calls a function of a cell that stands elsewhere; what is wrong with these very arguments is said at `site`. */
  apply(name: string, closure: ClosureShape, args: readonly Given[], site: ts.Node): Shape
  /** Follows a function; `site` is the call that is followed. */
  follow(
    closure: ClosureShape,
    args: readonly (Shape | undefined)[],
    site: ts.Node,
    mode: CallMode,
  ): readonly Returned[]
  /** Looks at a function's body for its own sake. */
  cover(closure: ClosureShape): void
  property(shape: Shape, name: string, node?: ts.Node): Shape
  elementOf(shape: Shape): Shape
  fromType(type: ts.Type, bindings?: Bindings): Shape
  /** The dimension that a node's type declares, if it declares one. */
  declared(type: ts.Type): NumberShape | undefined
}
