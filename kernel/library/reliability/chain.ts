/** Markov chain of failures: where it is after a time, and how long it takes to reach failure. */
import { requireFinite, requireNonNegative, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { solveLinear } from '../numerics/index.js'
import type { Frequency, Ratio, Time } from '../quantity.js'

export interface ChainOptions {
  /** Rates [1/s]: column of the state left, row of the state entered; columns sum to zero. */
  readonly generator: readonly (readonly Frequency[])[]
  /** State at the beginning; 0 when left out. */
  readonly start?: Ratio
  /** States that count as failed; the last when left out. */
  readonly failed?: readonly Ratio[]
  /** [s] */
  readonly time: Time
}

export interface Chain {
  /** Probability of each state after the time. */
  readonly probabilities: readonly Ratio[]
  /** Probability of no failed state. */
  readonly reliability: Ratio
  /** Probability of a failed state, to all its digits. */
  readonly failure: Ratio
  /** Mean time to a failed state [s]; absent where it may never be reached. */
  readonly meanTime?: Time
}

const method = 'reliability.chain'
const known = new Set(['generator', 'start', 'failed', 'time'])
const mostStates = 200

/**
 * Markov chain in continuous time: probabilities of its states after a time, and the mean time to failure.
 *
 * @equation dp/dt = A p, p(t) = exp(A t) p_0; mean time = -1' A_T^-1 p_0 over the states that are not failed
 * @param options - `generator` A [1/s]: `A[to][from]`, columns that sum to zero; `start` (0), `failed` states (the last), `time` t [s]
 * @returns `probabilities`, `reliability` and `failure` after the time, `meanTime` to failure [s] (absent where failure may never come)
 * @throws InvalidInput for a generator that is not square or larger than 200 states, a negative rate, columns that do not sum to zero, states
 * that do not exist, a negative time, and an unknown option
 * @method Uniformisation on a fraction of the time, then squaring: only sums of positive terms, so that 1e-12 is as exact as 0.5.
 * Failed states are entered once: what leaves them is left out.
 * @validity Constant rates. What counts as failed is a requirement and not mathematics: the chain of Aslansefat et al. lets PNPNPN survive any
 * first loss (yaw given up) and PPNNPN 2/5 of second losses, where Du et al. with all four axes have none and 6/20.
 * @source Stewart, W. J., Introduction to the Numerical Solution of Markov Chains, 1994, section 8.2 (from memory); chains checked: Aslansefat, K., et al., DoCEIS 2019, 91-98.
 * @example
 * const twoUnits = [[-2e-5, 0, 0], [2e-5, -1e-5, 0], [0, 1e-5, 0]]
 * reliability.chain({ generator: twoUnits, time: 1e4 }).failure // 0.0090559
 */
export function chain(options: ChainOptions): Chain {
  checkOptions(method, options, known)
  const generator = readGenerator(options.generator)
  const size = generator.length
  const { start = 0, failed = [size - 1], time } = options
  requireNonNegative(method, 'time', time, 's')
  requireState('start', start, size)
  if (!Array.isArray(failed))
    throw new InvalidInput({ method, argument: 'failed', value: describeValue(failed), accepted: 'a list of states' })
  failed.forEach((state, index) => {
    requireState(`failed[${index}]`, state, size)
  })
  const ends = new Set(failed)
  const rates = generator.map((row) => row.map((rate, from) => (ends.has(from) ? 0 : rate)))
  const probabilities = propagate(rates, start, time)
  const failure = probabilities.reduce((sum, value, state) => (ends.has(state) ? sum + value : sum), 0)
  const reliability = probabilities.reduce((sum, value, state) => (ends.has(state) ? sum : sum + value), 0)
  const meanTime = meanTimeTo(rates, start, ends)
  return { probabilities, reliability, failure, ...(meanTime === undefined ? {} : { meanTime }) }
}

function requireState(argument: string, state: number, size: number): void {
  if (!Number.isInteger(state) || state < 0 || state >= size)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(state),
      accepted: `a state from 0 to ${size - 1}`,
    })
}

function readGenerator(generator: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const size = Array.isArray(generator) ? generator.length : 0
  const square =
    size >= 2 &&
    size <= mostStates &&
    generator.every((row) => (Array.isArray(row) || ArrayBuffer.isView(row)) && row.length === size)
  if (!square)
    throw new InvalidInput({
      method,
      argument: 'generator',
      value: describeValue(generator),
      accepted: `2 to ${mostStates} rows of as many rates`,
    })
  for (let from = 0; from < size; from += 1) {
    let [sum, largest] = [0, 0]
    for (let to = 0; to < size; to += 1) {
      const rate = generator[to]?.[from] as number
      requireFinite(method, `generator[${to}][${from}]`, rate, '1/s')
      requireWithin(method, `generator[${to}][${from}]`, rate, '1/s', to === from ? -1e100 : 0, to === from ? 0 : 1e100)
      sum += rate
      largest = Math.max(largest, Math.abs(rate))
    }
    if (Math.abs(sum) > 1e-9 * largest)
      throw new InvalidInput({
        method,
        argument: `the sum of column ${from} of generator`,
        value: sum,
        unit: '1/s',
        accepted: '0: what leaves a state enters others',
      })
  }
  return generator
}

/** Uniformised steps in a fraction of the time; the fraction is doubled by squaring until it is the whole. */
function propagate(rates: readonly (readonly number[])[], start: number, time: number): number[] {
  const size = rates.length
  const fastest = rates.reduce((most, row, at) => Math.max(most, -(row[at] as number)), 0)
  if (fastest === 0 || time === 0) return Array.from({ length: size }, (_, state) => (state === start ? 1 : 0))
  // Long past every change nothing more happens; the bound keeps the squarings to some hundred.
  const span = Math.min(fastest * time, 1e30)
  const doublings = Math.max(0, Math.ceil(Math.log2(span)) + 1)
  const step = span / 2 ** doublings
  // One uniformised jump: the identity and the rates over the fastest, nowhere negative.
  const jump = rates.map((row, to) =>
    Float64Array.from(row, (rate, from) => Math.max(0, (to === from ? 1 : 0) + rate / fastest)),
  )
  let whole: Float64Array[] = poissonSum(jump, step)
  for (let at = 0; at < doublings; at += 1) whole = keepColumns(multiply(whole, whole))
  return Array.from({ length: size }, (_, state) => whole[state]?.[start] as number)
}

/** Sum over the number of jumps, at most a half expected: 25 terms are beyond the last digit. */
function poissonSum(jump: readonly Float64Array[], step: number): Float64Array[] {
  const size = jump.length
  let power: Float64Array[] = Array.from({ length: size }, (_, row) =>
    Float64Array.from({ length: size }, (_value, column) => (row === column ? 1 : 0)),
  )
  let weight = Math.exp(-step)
  const sum: Float64Array[] = power.map((row) => row.map((value) => value * weight))
  for (let jumps = 1; jumps <= 25; jumps += 1) {
    power = multiply(jump, power)
    weight *= step / jumps
    for (let row = 0; row < size; row += 1)
      for (let column = 0; column < size; column += 1)
        (sum[row] as Float64Array)[column] =
          ((sum[row] as Float64Array)[column] as number) + weight * ((power[row] as Float64Array)[column] as number)
  }
  return keepColumns(sum)
}

/** Takes rounding from the largest entry of each column, so that a hundred squarings keep the sum at 1. */
function keepColumns(matrix: Float64Array[]): Float64Array[] {
  const size = matrix.length
  for (let column = 0; column < size; column += 1) {
    let [sum, largest] = [0, 0]
    for (let row = 0; row < size; row += 1) {
      const value = matrix[row]?.[column] as number
      sum += value
      if (value > (matrix[largest]?.[column] as number)) largest = row
    }
    const row = matrix[largest] as Float64Array
    row[column] = (row[column] as number) + (1 - sum)
  }
  return matrix
}

function multiply(one: readonly Float64Array[], other: readonly Float64Array[]): Float64Array[] {
  return one.map((row) => {
    const product = new Float64Array(row.length)
    for (let middle = 0; middle < row.length; middle += 1) {
      const factor = row[middle] as number
      if (factor === 0) continue
      const from = other[middle] as Float64Array
      for (let column = 0; column < product.length; column += 1)
        product[column] = (product[column] as number) + factor * (from[column] as number)
    }
    return product
  })
}

/** Mean stay in every state before failure, summed. States that cannot be reached from the start are left out. */
function meanTimeTo(
  rates: readonly (readonly number[])[],
  start: number,
  ends: ReadonlySet<number>,
): number | undefined {
  if (ends.has(start)) return 0
  const reached = [start]
  for (const from of reached)
    rates.forEach((row, to) => {
      if (!ends.has(to) && !reached.includes(to) && (row[from] as number) > 0) reached.push(to)
    })
  const size = reached.length
  const scale = reached.reduce((most, at) => Math.max(most, -(rates[at]?.[at] as number)), 0)
  if (!(scale > 0)) return undefined
  const matrix = Float64Array.from({ length: size * size }, (_, place) => {
    const [row, column] = [Math.floor(place / size), place % size]
    return -(rates[reached[row] as number]?.[reached[column] as number] as number) / scale
  })
  const stay = Float64Array.from(reached, (_, at) => (at === 0 ? 1 : 0))
  if (!solveLinear(matrix, size, stay)) return undefined
  const mean = stay.reduce((sum, value) => sum + value, 0) / scale
  return Number.isFinite(mean) ? mean : undefined
}
