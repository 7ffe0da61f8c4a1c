/** Units of which some number must work: probability of losing the function, and the unit failure that a target allows. */
import { requireCount, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Ratio } from '../quantity.js'

export interface KOfNOptions {
  /** Units that must work. */
  readonly needed: Ratio
  /** Units there are. */
  readonly of: Ratio
  /** Probability that a unit fails, per flight or per hour as the user counts. */
  readonly unitFailure: Ratio
  /** Share of a unit's failures that take all units at once; 0 when left out. */
  readonly commonCause?: Ratio
}

export interface RequiredUnitFailureOptions {
  readonly needed: Ratio
  readonly of: Ratio
  /** Probability of losing the function that is allowed. */
  readonly target: Ratio
  readonly commonCause?: Ratio
}

const known = new Set(['needed', 'of', 'unitFailure', 'commonCause'])
const knownRequired = new Set(['needed', 'of', 'target', 'commonCause'])

/**
 * Probability that fewer than k of n equal units work.
 *
 * @equation Q = b q + (1 - b q) sum for i = n-k+1 to n of C(n, i) p^i (1 - p)^(n-i), p = (1 - b) q
 * @param options - `needed` k, `of` n, `unitFailure` q (a user's number), `commonCause` b, the share of failures that take all units (0)
 * @returns probability of losing the function
 * @throws InvalidInput for numbers of units that are not whole or k above n, a probability outside 0 to 1, and an unknown option
 * @method The failing terms are summed: one less the working ones would lose every digit.
 * @validity Equal units; independent but for the common cause, which adds b q whatever n is: with b = 1 % and q = 1e-5, 1e-7.
 * Which losses an aircraft survives is seldom a plain number: `reliability.lossChain` follows the trims.
 * @source Rausand, M., Hoyland, A., System Reliability Theory, 2nd edition, 2004; common cause by the beta factor of Fleming, 1975 (both from memory).
 * @example
 * reliability.kOfN({ needed: 7, of: 8, unitFailure: 1e-5 }) // 2.7999e-9
 */
export function kOfN(options: KOfNOptions): Ratio {
  const method = 'reliability.kOfN'
  checkOptions(method, options, known)
  const { needed, of, unitFailure, commonCause = 0 } = options
  checkUnits(method, needed, of, commonCause)
  requireWithin(method, 'unitFailure', unitFailure, '1', 0, 1)
  return lossOf(needed, of, unitFailure, commonCause)
}

/**
 * Greatest unit failure at which k of n still meet a target.
 *
 * @equation q with Q(q) = Q_target, Q as `reliability.kOfN`
 * @param options - `needed` k, `of` n, `target` Q_target, `commonCause` b (0)
 * @returns probability that a unit may fail
 * @throws InvalidInput as `reliability.kOfN`, and for a target not above 0 or not below 1
 * @method Bracketed root in the logarithm of q; Q rises with q.
 * @validity As `reliability.kOfN`. EASA's objective for catastrophic failure conditions in Category Enhanced, 1e-9 per flight hour, was read in a
 * reprint of SC-VTOL; check the applicable text before use.
 * @source As `reliability.kOfN`.
 * @example
 * reliability.requiredUnitFailure({ needed: 7, of: 8, target: 1e-9 }) // 5.976e-6
 */
export function requiredUnitFailure(options: RequiredUnitFailureOptions): Ratio {
  const method = 'reliability.requiredUnitFailure'
  checkOptions(method, options, knownRequired)
  const { needed, of, target, commonCause = 0 } = options
  checkUnits(method, needed, of, commonCause)
  requireWithin(method, 'target', target, '1', 1e-300, 1 - 1e-15)
  const excess = (logarithm: number) => Math.log(lossOf(needed, of, Math.exp(logarithm), commonCause) / target)
  // A single unit's failure is never above n^n times what all of them need, nor below the target over n.
  const low = Math.log(target) - Math.log(of) - 1
  const high = 0
  const atHigh = excess(high)
  return atHigh <= 0 ? 1 : Math.min(1, Math.exp(brentRoot(excess, low, high, excess(low), atHigh, 1e-14).x))
}

function checkUnits(method: string, needed: number, of: number, commonCause: number): void {
  requireCount(method, 'of', of)
  requireWithin(method, 'of', of, '1', 1, 1000)
  requireCount(method, 'needed', needed)
  if (needed > of)
    throw new InvalidInput({ method, argument: 'needed', value: needed, accepted: `at most the ${of} units there are` })
  requireWithin(method, 'commonCause', commonCause, '1', 0, 1)
}

/** Without checks. */
export function lossOf(needed: number, of: number, unitFailure: number, commonCause: number): number {
  const common = commonCause * unitFailure
  const alone = unitFailure - common
  return common + (1 - common) * tail(of - needed + 1, of, alone)
}

/** Probability of at least `from` failures among `count`. Terms by their logarithm: C(1000, 500) alone is within the range of numbers, its powers are not. */
function tail(from: number, count: number, probability: number): number {
  if (probability === 0) return 0
  if (probability === 1) return 1
  const [fail, work] = [Math.log(probability), Math.log1p(-probability)]
  let logarithm = 0
  for (let at = 1; at <= from; at += 1) logarithm += Math.log((count - from + at) / at)
  logarithm += from * fail + (count - from) * work
  let total = 0
  for (let failed = from; failed <= count; failed += 1) {
    total += Math.exp(logarithm)
    logarithm += Math.log((count - failed) / (failed + 1)) + fail - work
  }
  return Math.min(1, total)
}
