/** Methods of lists. Those that call a function at once follow it with the list's elements. */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import type { Given } from './matching.js'
import { grow } from './patterns.js'
import type { Scope } from './scope.js'
import { join, joinAll, type ListShape, other, pure, type Shape, unknown } from './shape.js'
import { repeated } from './state.js'

const sameList = new Set(['filter', 'slice', 'reverse', 'toReversed', 'flat', 'with', 'toSpliced'])
const oneElement = new Set(['at', 'find', 'findLast', 'pop', 'shift'])
const whereabouts = new Set(['indexOf', 'lastIndexOf', 'findIndex', 'findLastIndex'])

export interface MethodCall {
  readonly call: ts.CallExpression | ts.NewExpression
  readonly receiver: ts.Expression
  readonly name: string
  readonly args: readonly Given[]
  readonly scope: Scope
}

export function listMethod(inference: Inference, list: ListShape, method: MethodCall): Shape {
  const { name, args, call, scope } = method
  const element = list.element ?? unknown
  const first = args[0]?.shape
  if (name === 'push' || name === 'unshift' || name === 'fill') {
    for (const { shape } of args.slice(0, name === 'fill' ? 1 : undefined))
      grow(inference, method.receiver, shape, scope)
    return name === 'fill' ? withElement(args[0]?.shape ?? unknown) : pure()
  }
  if (name === 'reduce' || name === 'reduceRight') return reduced(inference, list, method)
  if (name === 'sort' || name === 'toSorted') {
    if (args[0] !== undefined) eachCall(inference, call, args[0], [element, element], scope)
    return withoutItems(list)
  }
  const given =
    first?.kind === 'closure' ? eachCall(inference, call, args[0] as Given, [element, pure(), list], scope) : unknown
  if (name === 'map') return withElement(given)
  if (name === 'flatMap') return withElement(given.kind === 'list' ? (given.element ?? unknown) : given)
  if (sameList.has(name)) return name === 'flat' ? withElement(inference.elementOf(element)) : withoutItems(list)
  if (oneElement.has(name)) return element
  if (name === 'concat') return concatenated(inference, list, args)
  if (whereabouts.has(name)) return pure()
  return name === 'some' || name === 'every' || name === 'includes' || name === 'join' || name === 'forEach'
    ? other
    : unknown
}

function withElement(element: Shape): Shape {
  return { kind: 'list', element }
}

function withoutItems(list: ListShape): Shape {
  return list.element === undefined ? { kind: 'list' } : { kind: 'list', element: list.element }
}

function concatenated(inference: Inference, list: ListShape, args: readonly Given[]): Shape {
  const more = args.map(({ shape }) => (shape.kind === 'list' ? inference.elementOf(shape) : shape))
  return withElement(joinAll(list.element === undefined ? more : [list.element, ...more]))
}

/** Follows a function for one element that stands for all; what it changes outside settles as in a loop. */
export function eachCall(
  inference: Inference,
  call: ts.Node,
  given: Given,
  args: readonly Shape[],
  scope: Scope,
): Shape {
  const { shape } = given
  if (shape.kind !== 'closure') return unknown
  const inPlace = shape.node.parent === call
  let result: Shape = unknown
  repeated(inference, shape.node, scope, () => {
    const returned = inference.follow(shape, args, given.node, inPlace ? 'in place' : 'from elsewhere')
    result = joinAll(returned.map((one) => one.shape))
  })
  return result
}

/** The running value starts as given and takes what the function makes of it, until that settles. */
function reduced(inference: Inference, list: ListShape, method: MethodCall): Shape {
  const [given, start] = method.args
  const element = list.element ?? unknown
  if (given === undefined || given.shape.kind !== 'closure') return unknown
  const each = (running: Shape): Shape =>
    eachCall(inference, method.call, given, [running, element, pure(), list], method.scope)
  let running = start === undefined ? element : start.shape
  for (let pass = 0; pass < 2; pass += 1) running = join(running, each(running))
  return running
}
