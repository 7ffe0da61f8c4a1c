/** Methods of lists. Those that call a function at once follow it with the list's elements. */
import type ts from 'typescript'
import { mapMethod, setMethod } from './collections.js'
import type { Given, MethodCall } from './given.js'
import type { Inference } from './inference.js'
import { itemsApart } from './items-apart.js'
import { mathematics } from './mathematics.js'
import { drift, saidWrong, spoken } from './messages.js'
import { grow } from './patterns.js'
import type { Scope } from './scope.js'
import {
  agree,
  firstUnknown,
  join,
  joinAll,
  type ListShape,
  other,
  pure,
  type Shape,
  unknown,
  unknownBecause,
} from './shape.js'
import { repeated } from './state.js'

const sameList = new Set(['filter', 'slice', 'reverse', 'toReversed', 'toSpliced', 'values', 'splice', 'subarray'])
const oneElement = new Set(['at', 'find', 'findLast', 'pop', 'shift'])
const whereabouts = new Set(['indexOf', 'lastIndexOf', 'findIndex', 'findLastIndex'])
const answers = new Set(['some', 'every', 'includes', 'join', 'forEach', 'toString'])

export function listMethod(inference: Inference, list: ListShape, method: MethodCall): Shape {
  const { name, args, call, scope } = method
  const element = list.element ?? unknown
  const each = (given: Given, ...shapes: readonly Shape[]) => eachCall(inference, call, given, shapes, scope)
  if (list.as === 'Map') return mapMethod(inference, list, method, each)
  if (list.as === 'Set') return setMethod(inference, list, method, each)
  if (name === 'push' || name === 'unshift' || name === 'fill') return grown(inference, list, method)
  if (name === 'reduce' || name === 'reduceRight') return reduced(inference, list, method)
  if (name === 'sort' || name === 'toSorted') {
    if (args[0] !== undefined) each(args[0], element, element)
    return withoutItems(list)
  }
  const [first] = args
  const results =
    first === undefined
      ? [unknown]
      : itemsApart(inference, list, element, first.node).map((one) => each(first, one, pure(), list))
  const given = joinAll(results)
  if (name === 'map') return results.length > 1 ? { kind: 'list', element: given, items: results } : withElement(given)
  if (name === 'flatMap') return withElement(given.kind === 'list' ? (given.element ?? unknown) : given)
  if (name === 'flat') return withElement(element.kind === 'list' ? inference.elementOf(element) : element)
  if (name === 'with') return withElement(args[1] === undefined ? element : join(element, args[1].shape))
  if (name === 'keys') return withElement(pure())
  if (name === 'entries') return withElement({ kind: 'list', items: [pure(), element], element: unknown })
  if (sameList.has(name)) return withoutItems(list)
  if (oneElement.has(name)) return element
  if (name === 'concat') return concatenated(inference, list, args)
  if (whereabouts.has(name)) return pure()
  return answers.has(name) ? other : unknown
}

function grown(inference: Inference, list: ListShape, { name, args, receiver, scope }: MethodCall): Shape {
  for (const { shape } of args.slice(0, name === 'fill' ? 1 : undefined)) grow(inference, receiver, shape, scope)
  if (name !== 'fill') return pure()
  const value = args[0]?.shape ?? unknown
  return withElement(list.element === undefined || args.length === 1 ? value : join(list.element, value))
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
  const { shape, node } = given
  if (shape.kind === 'builtin' && shape.owner === 'Math')
    return mathematics(inference, shape.name, [{ node, shape: args[0] ?? unknown }])
  if (shape.kind !== 'closure') return firstUnknown(shape)
  const inPlace = shape.node.parent === call
  let result: Shape = unknown
  repeated(inference, shape.node, scope, () => {
    result = inPlace
      ? joinAll(inference.follow(shape, args, node, 'in place').map((one) => one.shape))
      : inference.apply(
          spoken(node),
          shape,
          args.slice(0, shape.node.parameters.length).map((one) => ({ node, shape: one })),
          node,
        )
  })
  return result
}

/** The running value starts as given and takes what the function makes of it, until that settles. */
function reduced(inference: Inference, list: ListShape, method: MethodCall): Shape {
  const [given, start] = method.args
  const element = list.element ?? unknown
  if (given === undefined) return unknown
  const elements = itemsApart(inference, list, element, given.node)
  const each = (running: Shape): Shape =>
    elements.reduce(
      (now, one) => eachCall(inference, method.call, given, [now, one, pure(), list], method.scope),
      running,
    )
  let running = start === undefined ? element : start.shape
  for (let pass = 0; pass < 2; pass += 1) {
    const next = each(running)
    if (running.kind === 'number' && next.kind === 'number' && !agree(running, next)) {
      inference.reports.add(given.node, drift(running, next))
      return unknownBecause(saidWrong)
    }
    running = join(running, next)
  }
  return running
}
