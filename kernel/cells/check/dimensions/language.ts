/** What the language's own library gives: numbers from text, lists, maps and sets, the functions of `Object` and `Array`. */
import type ts from 'typescript'
import type { Given } from './given.js'
import type { Inference } from './inference.js'
import { eachCall } from './lists.js'
import { mathematics } from './mathematics.js'
import type { Scope } from './scope.js'
import {
  type BuiltinShape,
  freeNumber,
  joinAll,
  type ListShape,
  other,
  pure,
  type RecordShape,
  type Shape,
  unknown,
  unknownBecause,
} from './shape.js'

type CallNode = ts.CallExpression | ts.NewExpression

const typedArray = /^(?:Float(?:32|64)|Int(?:8|16|32)|Uint(?:8|8Clamped|16|32))ArrayConstructor$/
const numbersFromText = new Set(['parseFloat', 'parseInt'])
const neverNumbers = new Set(['isFinite', 'isNaN', 'StringConstructor', 'BooleanConstructor', 'SymbolConstructor'])

/** `Number(...)`, `new Array(...)`, `parseFloat(...)`; `undefined` for what is not told apart here. */
export function callLibrary(inference: Inference, library: string, args: readonly Given[]): Shape | undefined {
  const first = args[0]?.shape
  if (library === 'NumberConstructor') return first?.kind === 'number' ? first : pure()
  if (numbersFromText.has(library)) return pure()
  if (neverNumbers.has(library)) return other
  if (library === 'ArrayConstructor') return listOf(first?.kind === 'number' && args.length === 1 ? [] : shapesOf(args))
  if (library === 'SetConstructor')
    return { ...listOf(first === undefined ? [] : [inference.elementOf(first)]), as: 'Set' }
  if (library === 'MapConstructor')
    return { ...listOf(first === undefined ? [] : [inference.elementOf(first)]), as: 'Map' }
  if (!typedArray.test(library)) return undefined
  return listOf([first?.kind === 'list' ? inference.elementOf(first) : freeNumber])
}

function shapesOf(args: readonly Given[]): readonly Shape[] {
  return args.map((one) => one.shape)
}

function listOf(shapes: readonly Shape[]): ListShape {
  return shapes.length === 0 ? { kind: 'list' } : { kind: 'list', element: joinAll(shapes) }
}

/** A member of the library called by its owner: `Math.sqrt(...)`, `Object.entries(...)`. */
export function callMember(
  inference: Inference,
  node: CallNode,
  { owner, name }: BuiltinShape,
  args: readonly Given[],
  scope: Scope,
): Shape {
  if (owner === 'Math') return mathematics(inference, name, args)
  if (owner === 'NumberConstructor') return name.startsWith('is') ? other : pure()
  if (owner === 'ArrayConstructor' || typedArray.test(owner)) return makeList(inference, node, name, args, scope)
  return owner === 'ObjectConstructor' ? ofRecord(inference, name, args) : unknown
}

function makeList(inference: Inference, node: CallNode, name: string, args: readonly Given[], scope: Scope): Shape {
  const [first, second] = args
  if (name === 'of') return listOf(shapesOf(args))
  if (name !== 'from' || first === undefined) return name === 'isArray' ? other : unknown
  const element = inference.elementOf(first.shape)
  return listOf([second === undefined ? element : eachCall(inference, node, second, [element, pure()], scope)])
}

function ofRecord(inference: Inference, name: string, args: readonly Given[]): Shape {
  const first = args[0]?.shape
  if (first === undefined) return unknown
  if (name === 'freeze' || name === 'seal') return first
  if (name === 'assign') return args.every(({ shape }) => shape.kind === 'record') ? assigned(args) : unknown
  if (name === 'fromEntries') return fromPairs(inference, first)
  if (name === 'keys') return { kind: 'list', element: other }
  if (first.kind !== 'record' && first.kind !== 'typed') return unknown
  const value = first.kind === 'record' ? joinAll([...first.fields.values()]) : inference.elementOf(first)
  if (name === 'values') return { kind: 'list', element: value }
  if (name === 'entries') return { kind: 'list', element: { kind: 'list', items: [other, value], element: unknown } }
  return unknown
}

function assigned(args: readonly Given[]): RecordShape {
  const fields = args.flatMap(({ shape }) => (shape.kind === 'record' ? [...shape.fields] : []))
  return { kind: 'record', fields: new Map(fields) }
}

/** Every field of such a record is one of the values; which names it has is not known. */
function fromPairs(inference: Inference, pairs: Shape): Shape {
  const pair = inference.elementOf(pairs)
  const value = pair.kind === 'list' ? (pair.items?.[1] ?? inference.elementOf(pair)) : unknown
  return value.kind === 'unknown'
    ? unknownBecause('the fields of Object.fromEntries are not followed')
    : { kind: 'record', fields: new Map(), rest: value }
}
