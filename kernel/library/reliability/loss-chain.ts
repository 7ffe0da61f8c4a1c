/** The chain of losses of equal units, one after another, as far as somebody says the rest can still fly. */
import { requireCount, requireNonNegative, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Frequency, Ratio, Time } from '../quantity.js'
import { type Chain, chain } from './chain.js'

export interface LossChainOptions {
  /** Units there are: 2 to 24. */
  readonly of: Ratio
  /** Failures per time of one unit [1/s], a user's number. */
  readonly rate: Frequency
  /** [s] */
  readonly time: Time
  /** Whether the aircraft flies with these units lost: from `authority.trim`, under the requirement the user chooses. */
  readonly survives: (lost: readonly number[]) => boolean
  /** Losses after which it counts as failed whatever is left; 4 when left out. */
  readonly upTo?: Ratio
}

export interface LossChain extends Chain {
  /** For one unit of rate: column of the state left, row of the state entered; state k is k lost, the last is failure. */
  readonly generator: readonly (readonly Ratio[])[]
  /** Share of the (k + 1)th losses that are survived, after k that were. */
  readonly survived: readonly Ratio[]
  /** Sets of lost units that were asked about. */
  readonly asked: Ratio
}

const method = 'reliability.lossChain'
const known = new Set(['of', 'rate', 'time', 'survives', 'upTo'])

/**
 * Markov chain of losses that follows the trim: which first, second, third loss is survived is asked set by set.
 *
 * @equation from k to k + 1 lost: (n - k) lambda a_k; from k to failure: (n - k) lambda (1 - a_k); a_k the share of orders of k + 1 losses,
 * survived so far, that are survived again
 * @param options - `of` n, `rate` lambda [1/s], `time` [s], `survives(lost)`: whether the aircraft flies with these places lost, `upTo` losses (4)
 * @returns as `reliability.chain`, with `generator` for a rate of 1, `survived` a_k and the number of sets `asked`
 * @throws InvalidInput for fewer than 2 or more than 24 units, a negative rate or time, `survives` that is no function or does not answer true or
 * false, and an unknown option
 * @method Units of equal rate are lost in any order alike, so that sets of as many losses lump together exactly; their weights are counted, not
 * sampled. After `upTo` losses the next one counts as failure: on the safe side.
 * @validity Equal units without repair. The answer is that of the requirement in `survives`: all four axes with steering left
 * (`controllable`), trim only (`feasible`), or yaw given up (`hold: ['lift', 'roll', 'pitch']`); published chains differ because of it.
 * @source Form of the chain: Aslansefat, K., Marques, F., Mendonca, R., Barata, J., DoCEIS 2019, 91-98 (read in the authors' slides); the count of orders is the house's.
 * @example
 * const pairs = reliability.lossChain({ of: 4, rate: 1e-5 / u.h, time: 1 * u.h, survives: (lost) => lost.length <= 1 })
 * pairs.failure // 5.9999e-10
 */
export function lossChain(options: LossChainOptions): LossChain {
  checkOptions(method, options, known)
  const { of, rate, time, survives, upTo = 4 } = options
  requireCount(method, 'of', of)
  requireWithin(method, 'of', of, '1', 2, 24)
  requireNonNegative(method, 'rate', rate, '1/s')
  requireWithin(method, 'rate', rate, '1/s', 0, 1e6)
  requireNonNegative(method, 'time', time, 's')
  requireCount(method, 'upTo', upTo)
  if (typeof survives !== 'function')
    throw new InvalidInput({
      method,
      argument: 'survives',
      value: describeValue(survives),
      accepted: 'a function of a list of lost places that answers true or false',
    })
  const { survived, asked } = countSurvived(of, Math.min(upTo, of - 1), survives)
  const generator = buildGenerator(of, survived)
  const answer = chain({ generator: generator.map((row) => row.map((value) => value * rate)), time })
  return { ...answer, generator, survived, asked }
}

/** Counts orders of losses that are survived all the way, set by set: one set's orders are those of the sets with one fewer. */
function countSurvived(
  of: number,
  depth: number,
  survives: (lost: readonly number[]) => boolean,
): { readonly survived: number[]; readonly asked: number } {
  let level = new Map<number, number>([[0, 1]])
  let orders = 1
  let asked = 0
  const survived: number[] = []
  for (let lost = 0; lost < depth && orders > 0; lost += 1) {
    const next = new Map<number, number>()
    for (const [set, weight] of level)
      for (let unit = 0; unit < of; unit += 1)
        if ((set & (1 << unit)) === 0) next.set(set | (1 << unit), (next.get(set | (1 << unit)) ?? 0) + weight)
    asked += next.size
    for (const set of next.keys()) if (!ask(survives, set, of)) next.delete(set)
    const after = [...next.values()].reduce((sum, weight) => sum + weight, 0)
    survived.push(after / (orders * (of - lost)))
    level = next
    orders = after
  }
  return { survived, asked }
}

function ask(survives: (lost: readonly number[]) => boolean, set: number, of: number): boolean {
  const lost = Array.from({ length: of }, (_, unit) => unit).filter((unit) => (set & (1 << unit)) !== 0)
  const answer = survives(lost)
  if (typeof answer === 'boolean') return answer
  throw new InvalidInput({
    method,
    argument: `what survives answers for ${lost.join(', ')} lost`,
    value: describeValue(answer),
    accepted: 'true or false',
  })
}

function buildGenerator(of: number, survived: readonly number[]): number[][] {
  // Nothing is entered beyond the first loss that is never survived.
  const alive = survived.indexOf(0)
  const states = (alive < 0 ? survived.length : alive) + 2
  const failed = states - 1
  const generator = Array.from({ length: states }, () => new Array<number>(states).fill(0))
  for (let lost = 0; lost < failed; lost += 1) {
    const left = of - lost
    const share = lost + 1 < failed ? (survived[lost] ?? 0) : 0
    const column = (to: number, value: number) => {
      ;(generator[to] as number[])[lost] = value
    }
    if (share > 0) column(lost + 1, left * share)
    column(failed, left * (1 - share))
    column(lost, -left)
  }
  return generator
}
