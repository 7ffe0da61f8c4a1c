/** Methods of `Map` and `Set`: a map is followed as the list of its pairs, a set as the list of its members. */
import type { Given, MethodCall } from './given.js'
import type { Inference } from './inference.js'
import { grow } from './patterns.js'
import { type ListShape, nothing, other, type Shape, unknown } from './shape.js'

type Each = (given: Given, ...shapes: readonly Shape[]) => Shape

export function mapMethod(
  inference: Inference,
  map: ListShape,
  { name, args, receiver, scope }: MethodCall,
  each: Each,
): Shape {
  const pair = map.element
  const key = part(inference, pair, 0)
  const value = part(inference, pair, 1)
  if (name === 'get') return value
  if (name === 'set') {
    const items = [args[0]?.shape ?? unknown, args[1]?.shape ?? unknown]
    grow(inference, receiver, { kind: 'list', items, element: unknown }, scope)
    return inference.expression(receiver, scope)
  }
  if (name === 'forEach' && args[0] !== undefined) {
    each(args[0], value, key, map)
    return nothing
  }
  if (name === 'keys') return { kind: 'list', element: key }
  if (name === 'values') return { kind: 'list', element: value }
  if (name === 'entries') return { kind: 'list', element: pair ?? unknown }
  return name === 'has' || name === 'delete' ? other : unknown
}

function part(inference: Inference, pair: Shape | undefined, index: 0 | 1): Shape {
  if (pair?.kind !== 'list') return unknown
  return pair.items?.[index] ?? inference.elementOf(pair)
}

export function setMethod(
  inference: Inference,
  set: ListShape,
  { name, args, receiver, scope }: MethodCall,
  each: Each,
): Shape {
  if (name === 'add') {
    grow(inference, receiver, args[0]?.shape ?? unknown, scope)
    return inference.expression(receiver, scope)
  }
  if (name === 'forEach' && args[0] !== undefined) {
    each(args[0], set.element ?? unknown)
    return nothing
  }
  if (name === 'values' || name === 'keys') return { kind: 'list', element: set.element ?? unknown }
  return name === 'has' || name === 'delete' ? other : unknown
}
