/** A value and where it is written. */
import type ts from 'typescript'
import type { Scope } from './scope.js'
import type { Shape } from './shape.js'

export interface Given {
  readonly node: ts.Node
  readonly shape: Shape
}

/** A method called on a list. */
export interface MethodCall {
  readonly call: ts.CallExpression | ts.NewExpression
  readonly receiver: ts.Expression
  readonly name: string
  readonly args: readonly Given[]
  readonly scope: Scope
}
