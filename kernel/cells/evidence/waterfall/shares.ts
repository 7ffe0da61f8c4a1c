/**
 * Shapley shares: the effect of a step averaged over all orders in which the steps could be adopted (L. S. Shapley, *A value for
 * n-person games*, in Contributions to the Theory of Games II, 1953). They add up to the difference, treat steps alike, and give
 * nothing to a step that changes nothing. Beyond a few steps the mean over orders drawn by chance takes the place of all orders
 * (J. Castro, D. Gómez, J. Tejada, *Polynomial calculation of the Shapley value based on sampling*, Computers & Operations Research 36, 2009).
 */
import type { WaterfallShares } from '../../../../shared/contracts/index.js'
import type { Answers } from './answers.js'
import type { ExplainOptions } from './explain.js'

/** @equation share_i = sum over sets S without i of |S|! (n - |S| - 1)! / n! * (v(S and i) - v(S)) */
export async function exactShares(answers: Answers): Promise<WaterfallShares> {
  const { count } = answers
  answers.expect(2 ** count)
  const values: number[] = []
  for (let set = 0; set < 2 ** count; set += 1) {
    const attempt = await answers.of(membersOf(set, count))
    if (!attempt.ok) return { kind: 'none', reason: attempt.reason }
    values.push(attempt.value)
  }
  const shares = Array.from({ length: count }, (_, step) => {
    let share = 0
    for (let set = 0; set < 2 ** count; set += 1) {
      if ((set & (1 << step)) !== 0) continue
      const size = membersOf(set, count).length
      share += weight(size, count) * ((values[set | (1 << step)] ?? 0) - (values[set] ?? 0))
    }
    return share
  })
  return { kind: 'exact', values: shares }
}

function membersOf(set: number, count: number): number[] {
  return Array.from({ length: count }, (_, step) => step).filter((step) => (set & (1 << step)) !== 0)
}

/** |S|! (n - |S| - 1)! / n!, as 1 / (n * binomial(n - 1, |S|)). */
function weight(size: number, count: number): number {
  let binomial = 1
  for (let index = 0; index < size; index += 1) binomial = (binomial * (count - 1 - index)) / (index + 1)
  return 1 / (count * binomial)
}

/** Each order is taken with its reverse, which halves the error where steps act upon each other two by two. */
export async function sampledShares(answers: Answers, options: ExplainOptions): Promise<WaterfallShares> {
  const { seed = 1, pairs = 16 } = options
  const { count } = answers
  const next = generator(seed)
  const sums = Array.from({ length: count }, () => 0)
  let orders = 0
  let leftOut = 0
  let reason = 'nothing could be computed.'
  answers.expect(answers.asked + 2 * pairs * Math.max(0, count - 1))
  for (let pair = 0; pair < pairs; pair += 1) {
    const order = shuffled(count, next)
    for (const one of [order, [...order].reverse()]) {
      if (answers.isStopped) return { kind: 'none', reason: 'it was stopped.' }
      const effects = await effectsOf(answers, one)
      if (typeof effects === 'string') {
        leftOut += 1
        reason = effects
        continue
      }
      orders += 1
      effects.forEach((effect, step) => {
        sums[step] = (sums[step] ?? 0) + effect
      })
    }
  }
  if (orders === 0) return { kind: 'none', reason }
  return { kind: 'sampled', values: sums.map((sum) => sum / orders), orders, leftOut, seed }
}

/** The effect of each step in one order, or why it cannot be told. */
async function effectsOf(answers: Answers, order: readonly number[]): Promise<readonly number[] | string> {
  const effects = order.map(() => 0)
  const adopted: number[] = []
  let last = await answers.of([])
  for (const step of order) {
    adopted.push(step)
    const next = await answers.of(adopted)
    if (!last.ok) return last.reason
    if (!next.ok) return next.reason
    effects[step] = next.value - last.value
    last = next
  }
  return effects
}

/** Fisher and Yates. */
function shuffled(count: number, next: () => number): number[] {
  const order = Array.from({ length: count }, (_, index) => index)
  for (let last = count - 1; last > 0; last -= 1) {
    const other = Math.floor(next() * (last + 1))
    const moved = order[last] ?? 0
    order[last] = order[other] ?? 0
    order[other] = moved
  }
  return order
}

/** Numbers below 1 by a linear congruence (G. Marsaglia's multiplier 69069), enough to shuffle a few steps. */
function generator(seed: number): () => number {
  let state = (seed * 2_654_435_761) >>> 0
  return () => {
    state = (Math.imul(state, 69_069) + 1) >>> 0
    return state / 2 ** 32
  }
}
