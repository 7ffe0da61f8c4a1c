/** What a unit's failure rate comes to on one flight, and what a fleet of units asks of maintenance. */
import { requireCount, requireNonNegative, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Frequency, Ratio, Time } from '../quantity.js'

export interface UnitFailureOptions {
  /** Failures per time of running [1/s]: `2e-5 / u.h`. */
  readonly rate: Frequency
  /** Running in the flight [s]: lift units run for minutes. */
  readonly time: Time
  /** Probability that it does not start when called; 0 when left out. */
  readonly startFailure?: Ratio
  /** Probability that a hidden failure arises between two checks; 0 when left out. */
  readonly latentFailure?: Ratio
}

export interface MaintenanceOptions {
  /** Units there are. */
  readonly of: Ratio
  /** Probability that a unit fails, per flight or per hour as the user counts. */
  readonly unitFailure: Ratio
}

export interface Maintenance {
  /** Probability that some unit fails. */
  readonly anyFailure: Ratio
  /** Units to be replaced on average. */
  readonly expectedFailures: Ratio
  /** Flights (or hours, as the user counts) from one failure of some unit to the next; absent where none fails. */
  readonly between?: Ratio
}

const knownUnit = new Set(['rate', 'time', 'startFailure', 'latentFailure'])
const knownMaintenance = new Set(['of', 'unitFailure'])

/**
 * Probability that a unit fails in one flight: it runs for minutes, must start when called, and may have failed unseen.
 *
 * @equation q = lambda t + q_start + q_latent/2
 * @param options - `rate` lambda [1/s] and `time` t [s] (a user's numbers), `startFailure` q_start (0), `latentFailure` q_latent between two checks (0)
 * @returns probability of failure in the flight
 * @throws InvalidInput for negative numbers, a probability above 1, a sum above 1, and an unknown option
 * @method First order in lambda t; a hidden failure is there for half of the interval on average.
 * @validity q up to about 0.1; an advisory beyond. The kernel has no failure rates of its own.
 * @source Rausand, M., Hoyland, A., System Reliability Theory, 2nd edition, 2004, periodically tested items (from memory).
 * @example
 * reliability.unitFailure({ rate: 2e-5 / u.h, time: 3 * u.min, startFailure: 1e-6, latentFailure: 4e-6 }) // 4e-6
 */
export function unitFailure(options: UnitFailureOptions): Ratio {
  const method = 'reliability.unitFailure'
  checkOptions(method, options, knownUnit)
  const { rate, time, startFailure = 0, latentFailure = 0 } = options
  requireNonNegative(method, 'rate', rate, '1/s')
  requireNonNegative(method, 'time', time, 's')
  requireWithin(method, 'startFailure', startFailure, '1', 0, 1)
  requireWithin(method, 'latentFailure', latentFailure, '1', 0, 1)
  const failure = rate * time + startFailure + latentFailure / 2
  requireRepresentable(method, failure)
  if (failure > 1)
    throw new InvalidInput({
      method,
      argument: 'the sum of running, start and latent failure',
      value: failure,
      accepted: 'at most 1',
      remedy: 'The sum is a first order, for units that seldom fail.',
    })
  adviseOutside(failure, {
    code: 'UNIT_FAILURE_OFTEN',
    method,
    quantity: 'unit failure',
    high: 0.1,
    because: 'above 0.1 the sum of first order overstates it',
  })
  return failure
}

/**
 * How often some unit fails: the burden on maintenance that grows with the number of units.
 *
 * @equation P = 1 - (1 - q)^n; mean n q; one failure every 1/(n q)
 * @param options - `of` n, `unitFailure` q (a user's number)
 * @returns `anyFailure` P, `expectedFailures` n q, `between` 1/(n q) in the unit in which q was counted (absent where q is 0)
 * @throws InvalidInput for a number of units that is not whole, a probability outside 0 to 1, and an unknown option
 * @method Exact for small q too: no digits are lost.
 * @validity Equal, independent units.
 * @source Elementary probability.
 * @example
 * reliability.maintenance({ of: 8, unitFailure: 1e-5 }).anyFailure // 7.9997e-5
 */
export function maintenance(options: MaintenanceOptions): Maintenance {
  const method = 'reliability.maintenance'
  checkOptions(method, options, knownMaintenance)
  const { of, unitFailure: failure } = options
  requireCount(method, 'of', of)
  requireWithin(method, 'of', of, '1', 1, 1000)
  requireWithin(method, 'unitFailure', failure, '1', 0, 1)
  const mean = of * failure
  const between = 1 / mean
  return {
    anyFailure: failure === 1 ? 1 : 0 - Math.expm1(of * Math.log1p(-failure)),
    expectedFailures: mean,
    ...(Number.isFinite(between) ? { between } : {}),
  }
}
