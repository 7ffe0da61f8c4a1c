/**
 * Absolute temperatures and differences of temperature, which share a dimension. `zeros` of a number says how many times the
 * offset from absolute zero is in it: 1 in what a thermometer shows, 0 in a difference, 2 in the sum of two readings, of which
 * half is a mean. Absent where no declaration says; then nothing is said either.
 */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import { spoken } from './messages.js'
import { isPure, type NumberShape } from './shape.js'

/** An operand and how it reads in a sentence. */
interface Stated {
  readonly node: ts.Node
  readonly shape: NumberShape
}

/** Whether one is certainly an absolute temperature and the other certainly a difference. */
export function unlikeTemperatures(a: NumberShape, b: NumberShape): boolean {
  if (a.free === true || b.free === true) return false
  return (a.zeros === 0 && b.zeros === 1) || (a.zeros === 1 && b.zeros === 0)
}

/**
 * What a sum or difference is. One that is neither a temperature nor a difference may be on its way to a mean, so it is said only
 * if nothing scales it: `sum` keeps where it stands.
 */
export function addTemperatures(
  inference: Inference,
  operator: '+' | '-' | '%',
  left: Stated,
  right: Stated,
  at: ts.Node,
  result: NumberShape,
): NumberShape {
  const [a, b] = [left.shape, right.shape]
  if (a.zeros === undefined && b.zeros === undefined && a.sum === undefined && b.sum === undefined) return result
  const begun = a.sum ?? b.sum
  const zeros = counted(operator, zerosOf(a), zerosOf(b))
  if (zeros === 0 || zeros === 1) {
    forgive(inference, a, b)
    return { ...result, zeros }
  }
  if (zeros === undefined) return begun === undefined ? result : { ...result, sum: begun }
  if (begun === undefined) inference.sums.set(at, impossible(operator, left, right))
  return { ...result, zeros, sum: begun ?? at }
}

/** Zero itself moves nothing. */
function zerosOf(shape: NumberShape): number | undefined {
  return shape.free === true ? 0 : shape.zeros
}

function counted(operator: '+' | '-' | '%', a: number | undefined, b: number | undefined): number | undefined {
  if (a === undefined || b === undefined || operator === '%') return undefined
  const zeros = operator === '+' ? a + b : a - b
  const whole = Math.round(zeros)
  return Math.abs(zeros - whole) < 1e-9 ? whole : zeros
}

/** What a product or quotient with a pure number is: a mean of readings, a share of a difference. */
export function scaleTemperature(
  inference: Inference,
  operator: '*' | '/',
  a: NumberShape,
  b: NumberShape,
  result: NumberShape,
): NumberShape {
  forgive(inference, a, b)
  const [scaled, by] = isPure(b) ? [a, b.constant] : operator === '*' && isPure(a) ? [b, a.constant] : []
  if (scaled?.zeros === undefined) return result
  if (scaled.zeros === 0) return { ...result, zeros: 0 }
  if (by === undefined) return result
  const zeros = operator === '*' ? scaled.zeros * by : scaled.zeros / by
  return { ...result, zeros: Math.abs(zeros - 1) < 1e-9 ? 1 : zeros }
}

function forgive(inference: Inference, ...shapes: readonly NumberShape[]): void {
  for (const { sum } of shapes) if (sum !== undefined) inference.forgiven.add(sum)
}

/** Reports the sums that nothing made a mean of. */
export function reportSums(inference: Inference): void {
  for (const [node, message] of inference.sums) if (!inference.forgiven.has(node)) inference.reports.add(node, message)
}

function impossible(operator: string, left: Stated, right: Stated): string {
  const [a, b] = [spoken(left.node), spoken(right.node)]
  return operator === '-'
    ? `Cannot subtract ${b} from ${a}: an absolute temperature less a difference is a temperature, but not the other way about.`
    : `Cannot add ${a} and ${b}: both are absolute temperatures, and their sum is no temperature. Subtract one to get the difference, or divide the sum by their number to get the mean.`
}

export function temperaturesClash(
  operator: string,
  left: ts.Node,
  a: NumberShape,
  right: ts.Node,
  b: NumberShape,
): string {
  const one = `${spoken(left)} (${kindOfTemperature(a.zeros)})`
  return `Cannot compare ${one} and ${spoken(right)} (${kindOfTemperature(b.zeros)}): both sides of ${operator} need to be of one kind.`
}

export function wantsOtherTemperature(subject: string, wanted: NumberShape, got: NumberShape): string {
  return `${subject} wants ${kindOfTemperature(wanted.zeros)} but got ${kindOfTemperature(got.zeros)}.`
}

/** `an absolute temperature`, `a temperature difference`. */
function kindOfTemperature(zeros: number | undefined): string {
  return zeros === 0 ? 'a temperature difference' : 'an absolute temperature'
}
