/** At which values a quantity is tried: close by first, then as far as it may lie. */
import type { AssumptionRecord } from '../../../../shared/contracts/index.js'
import { valueAt } from '../spread/distribution.js'
import { normalQuantile } from '../spread/normal-quantile.js'

/** Something that can be set alone. */
export interface Quantity {
  readonly name: string
  /** In force. */
  readonly value: number
  /** A number worked out on the way, set in place of what the text gives. */
  readonly handled: boolean
  /** Least and greatest value thought possible. */
  readonly ends?: readonly [low: number, high: number]
  /** It says yes or no: 0 or 1 without unit or range. */
  readonly isSwitch: boolean
  /** It may count something: its fractions may be refused, which says nothing about the count. */
  readonly isCount: boolean
}

/** Beyond this an integer is more likely a round number. House convention. */
const largestCount = 100

export function assumptionQuantity(record: AssumptionRecord, value: number): Quantity {
  const ends = endsOf(record)
  const { name, unit, distribution } = record
  const bare = unit === undefined && distribution === undefined
  const isSwitch = bare && (value === 0 || value === 1) && (ends === undefined || (ends[0] === 0 && ends[1] === 1))
  const isRound = Number.isInteger(value) && value !== 0 && Math.abs(value) <= largestCount
  const isCount = isSwitch || (bare && ends === undefined && isRound)
  return { name, value, handled: false, ...(ends === undefined ? {} : { ends }), isSwitch, isCount }
}

export function handledQuantity(name: string, value: number): Quantity {
  return { name, value, handled: true, isSwitch: false, isCount: false }
}

function endsOf({ low, high, distribution }: AssumptionRecord): readonly [number, number] | undefined {
  if (typeof low === 'number' && typeof high === 'number' && low < high) return [low, high]
  if (distribution === undefined) return undefined
  const ends = [valueAt(distribution, normalQuantile(0.05)), valueAt(distribution, normalQuantile(0.95))] as const
  return ends.every(Number.isFinite) && ends[0] < ends[1] ? ends : undefined
}

/** 1 % and 10 % either way; the other position of a switch comes first. House convention, as are the points farther off. */
export function pointsNear(quantity: Quantity): readonly number[] {
  const { value, isSwitch } = quantity
  const scale = scaleOf(quantity)
  const steps = [0.01, -0.01, 0.1, -0.1].map((share) => value + share * scale)
  return isSwitch ? [1 - value, ...steps] : steps
}

/** The smallest steps: what they do not move stands still where it is. */
export function pointsClose(quantity: Quantity): readonly number[] {
  const scale = scaleOf(quantity)
  return [quantity.value + 0.01 * scale, quantity.value - 0.01 * scale]
}

/** On each side of the value, nearest first: through the range, or by factors where none is stated. */
export function pointsFar(quantity: Quantity): {
  readonly above: readonly number[]
  readonly below: readonly number[]
} {
  const { value, ends, isCount } = quantity
  const scale = scaleOf(quantity)
  const whole = isCount ? [value + 1, value - 1] : []
  const shares = [0.25, 0.5, 0.75, 1]
  const far =
    ends === undefined
      ? [0.25, 0.5, 1, 2, 4, -0.25, -0.5, -0.75].map((share) => value + share * scale)
      : ends.flatMap((end) => shares.map((share) => (share === 1 ? end : value + share * (end - value))))
  const all = [...new Set([...whole, ...pointsNear(quantity), ...far])]
  return {
    above: all.filter((at) => at > value).sort((a, b) => a - b),
    below: all.filter((at) => at < value).sort((a, b) => b - a),
  }
}

/** Beyond the stated ends nothing is promised, so that a failure there is no news. */
export function isPromised({ ends }: Quantity, at: number): boolean {
  return ends !== undefined && at >= ends[0] && at <= ends[1]
}

function scaleOf({ value, ends }: Quantity): number {
  if (value !== 0) return Math.abs(value)
  return ends === undefined ? 1 : Math.max(Math.abs(ends[0]), Math.abs(ends[1]))
}
