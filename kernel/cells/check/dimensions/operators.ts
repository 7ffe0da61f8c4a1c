/** What plain arithmetic does to dimensions. */
import type ts from 'typescript'
import { divideDimensions, multiplyDimensions, raiseDimension } from '../../../../shared/contracts/index.js'
import type { Inference } from './inference.js'
import { clash, saidWrong, spoken, wantsPure } from './messages.js'
import type { Mend } from './reports.js'
import {
  agree,
  firstUnknown,
  freeNumber,
  isPure,
  type NumberShape,
  other,
  pure,
  quantity,
  type Shape,
  unknownBecause,
} from './shape.js'
import { addTemperatures, scaleTemperature, temperaturesClash, unlikeTemperatures } from './temperatures.js'

/** An operand and how it reads in a sentence. */
export interface Operand {
  readonly node: ts.Expression
  readonly shape: Shape
}

export type Arithmetic = '+' | '-' | '*' | '/' | '%' | '**'

const compute: Readonly<Record<Arithmetic, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '%': (a, b) => a % b,
  '**': (a, b) => a ** b,
}

/** `at` is where a clash is reported. */
export function arithmetic(
  inference: Inference,
  operator: Arithmetic,
  left: Operand,
  right: Operand,
  at: ts.Node,
): Shape {
  const a = left.shape
  const b = right.shape
  if (operator === '+' && (a.kind === 'other' || b.kind === 'other')) return other
  if (operator === '**' && b.kind === 'number') return power(inference, a, b, right.node)
  if (a.kind !== 'number' || b.kind !== 'number') return firstUnknown(a, b)
  if (operator === '*' || operator === '/') return product(inference, operator, a, b)
  if (agree(a, b) && operator !== '**') {
    const stated = [
      { node: left.node, shape: a },
      { node: right.node, shape: b },
    ] as const
    return addTemperatures(inference, operator, ...stated, at, sum(operator, a, b))
  }
  inference.reports.add(at, clash(operator, left.node, a, right.node, b), 'error', mendOf(left.node, a, right.node, b))
  return unknownBecause(saidWrong)
}

/** A bare number beside a quantity most likely lacks its unit; otherwise the second is taken to be the wrong one. */
function mendOf(left: ts.Node, a: NumberShape, right: ts.Node, b: NumberShape): Mend {
  return a.constant === undefined ? { node: right, wanted: a.dimension } : { node: left, wanted: b.dimension }
}

function folded(operator: Arithmetic, a: NumberShape, b: NumberShape): NumberShape | undefined {
  if (a.constant === undefined || b.constant === undefined) return undefined
  return pure(compute[operator](a.constant, b.constant))
}

function sum(operator: Arithmetic, a: NumberShape, b: NumberShape): NumberShape {
  if (a.free === true && b.free === true) return folded(operator, a, b) ?? freeNumber
  return folded(operator, a, b) ?? quantity(a.free === true ? b.dimension : a.dimension)
}

function product(inference: Inference, operator: '*' | '/', a: NumberShape, b: NumberShape): Shape {
  const known = folded(operator, a, b)
  if (known !== undefined) return known
  if ((a.free === true && isPure(b)) || (operator === '*' && b.free === true && isPure(a))) return freeNumber
  const combine = operator === '*' ? multiplyDimensions : divideDimensions
  return scaleTemperature(inference, operator, a, b, quantity(combine(a.dimension, b.dimension)))
}

/** A power; only an exponent that is known while checking gives a quantity a dimension. */
export function power(inference: Inference, base: Shape, exponent: NumberShape, exponentNode: ts.Expression): Shape {
  if (!isPure(exponent)) {
    inference.reports.add(exponentNode, wantsPure('An exponent', exponentNode, exponent))
    return unknownBecause(saidWrong)
  }
  if (base.kind !== 'number') return firstUnknown(base)
  if (base.free === true) return freeNumber
  const known = folded('**', base, exponent)
  if (known !== undefined) return known
  if (isPure(base)) return pure()
  return exponent.constant === undefined
    ? unknownBecause(`the exponent ${spoken(exponentNode)} may change, and the dimension with it`)
    : quantity(raiseDimension(base.dimension, exponent.constant))
}

/** Equality and order: both sides must be comparable; the answer is a truth. */
export function comparison(inference: Inference, operator: string, left: Operand, right: Operand, at: ts.Node): Shape {
  const a = left.shape
  const b = right.shape
  if (a.kind === 'number' && b.kind === 'number' && !agree(a, b))
    inference.reports.add(
      at,
      clash(operator, left.node, a, right.node, b),
      'error',
      mendOf(left.node, a, right.node, b),
    )
  else if (a.kind === 'number' && b.kind === 'number' && unlikeTemperatures(a, b))
    inference.reports.add(at, temperaturesClash(operator, left.node, a, right.node, b))
  return other
}

export function negated(shape: Shape): Shape {
  if (shape.kind !== 'number') return firstUnknown(shape)
  if (shape.constant !== undefined) return pure(-shape.constant)
  return shape.zeros === undefined || shape.zeros === 0 ? shape : { ...shape, zeros: -shape.zeros }
}
