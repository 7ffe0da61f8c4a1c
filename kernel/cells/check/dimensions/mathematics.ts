/** What `Math` does to dimensions. */

import type ts from 'typescript'
import { raiseDimension } from '../../../../shared/contracts/index.js'
import type { Given } from './given.js'
import type { Inference } from './inference.js'
import { argumentsClash, looksLikeDegrees, saidWrong, spoken, wantsPure } from './messages.js'
import { power } from './operators.js'
import {
  agree,
  firstUnknown,
  freeNumber,
  isPure,
  joinAll,
  type NumberShape,
  pure,
  quantity,
  type Shape,
  unknown,
  unknownBecause,
} from './shape.js'
import { temperaturesClash, unlikeTemperatures } from './temperatures.js'

export const mathConstants: ReadonlyMap<string, number> = new Map([
  ['E', Math.E],
  ['LN10', Math.LN10],
  ['LN2', Math.LN2],
  ['LOG10E', Math.LOG10E],
  ['LOG2E', Math.LOG2E],
  ['PI', Math.PI],
  ['SQRT1_2', Math.SQRT1_2],
  ['SQRT2', Math.SQRT2],
])

const keeping = new Set(['abs', 'floor', 'ceil', 'round', 'trunc', 'fround'])
const mixing = new Set(['min', 'max', 'hypot'])
const roots: ReadonlyMap<string, number> = new Map([
  ['sqrt', 1 / 2],
  ['cbrt', 1 / 3],
])
const ofPureNumbers = new Set(
  'sin cos tan asin acos atan sinh cosh tanh asinh acosh atanh exp expm1 log log10 log2 log1p'.split(' '),
)

const ofAngles = new Set(['sin', 'cos', 'tan'])

/** A known number of more than a turn, in whole or half units: nobody writes 30 or 12.5 radians. */
function seemsDegrees(value = 0): boolean {
  return Math.abs(value) > 2 * Math.PI && Number.isInteger(2 * value)
}

export function mathematics(inference: Inference, name: string, args: readonly Given[]): Shape {
  const first = args[0]
  if (first === undefined) return name === 'max' || name === 'min' ? freeNumber : unknown
  if (mixing.has(name)) return mixed(inference, `Math.${name}`, args)
  if (name === 'atan2') return mixed(inference, 'Math.atan2', args).kind === 'number' ? pure() : unknown
  if (name === 'sign') return pure()
  if (name === 'pow') return raised(inference, first, args[1])
  const { shape } = first
  if (name === 'clz32' || name === 'imul') return pure()
  if (shape.kind !== 'number') return firstUnknown(shape)
  if (keeping.has(name)) return kept(name, shape)
  const root = roots.get(name)
  if (root !== undefined) return rooted(name, shape, root)
  if (!ofPureNumbers.has(name)) return unknown
  if (isPure(shape)) {
    if (ofAngles.has(name) && seemsDegrees(shape.constant))
      inference.reports.add(first.node, looksLikeDegrees(`Math.${name}`, spoken(first.node)), 'warning', {
        node: first.node,
        wanted: shape.dimension,
      })
    return pure()
  }
  inference.reports.add(first.node, wantsPure(`Math.${name}`, first.node, shape))
  return unknownBecause(saidWrong)
}

function kept(name: string, shape: NumberShape): Shape {
  if (shape.constant === undefined) return shape
  return pure((Math[name as 'abs'] as (x: number) => number)(shape.constant))
}

function rooted(name: string, shape: NumberShape, root: number): Shape {
  if (shape.constant !== undefined) return pure((Math[name as 'sqrt'] as (x: number) => number)(shape.constant))
  return shape.free === true ? shape : quantity(raiseDimension(shape.dimension, root))
}

function raised(inference: Inference, base: Given, exponent: Given | undefined): Shape {
  if (exponent?.shape.kind !== 'number') return unknown
  return power(inference, base.shape, exponent.shape, exponent.node as ts.Expression)
}

/** Values of one dimension: the largest, the smallest, the root of the sum of squares. */
function mixed(inference: Inference, name: string, args: readonly Given[]): Shape {
  const numbers = args.flatMap(({ node, shape }) => (shape.kind === 'number' ? [{ node, shape }] : []))
  const reference = numbers.find(({ shape }) => shape.free !== true)
  for (const { node, shape } of numbers)
    if (reference !== undefined && !agree(reference.shape, shape)) {
      inference.reports.add(node, argumentsClash(name, reference.node, reference.shape, node, shape))
      return unknownBecause(saidWrong)
    }
  const unlike = numbers.find(({ shape }) => reference !== undefined && unlikeTemperatures(reference.shape, shape))
  if (reference !== undefined && unlike !== undefined)
    inference.reports.add(
      unlike.node,
      temperaturesClash(name, reference.node, reference.shape, unlike.node, unlike.shape),
    )
  const shapes = args.map(({ shape }) => shape)
  return numbers.length === args.length ? joinAll(shapes) : firstUnknown(...shapes)
}
