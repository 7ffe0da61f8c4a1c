import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Charge, Current, Ratio, Time } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface PeukertOptions {
  /** At the rated time [C]. */
  readonly capacity: Charge
  /** In which the capacity was measured [s]. */
  readonly ratedTime: Time
  /** [A] */
  readonly current: Current
  /** 1 for none. */
  readonly exponent: Ratio
}

export interface Peukert {
  /** Until empty [s]. */
  readonly time: Time
  /** Charge given over rated capacity. */
  readonly capacityShare: Ratio
}

const known = new Set(['capacity', 'ratedTime', 'current', 'exponent'])
const knownSpeed = new Set(['exponent'])

/**
 * Time to empty at a current, by Peukert's law.
 *
 * @equation t = H (C/(I H))^n; for a flight at power P: I = P/(eta V)
 * @param options - `capacity` C [C], `ratedTime` H [s], `current` I [A], `exponent` n (1 to 2)
 * @returns `time` [s], `capacityShare`
 * @throws InvalidInput for a value that is not positive, an exponent outside 1 to 2, and an unknown option
 * @method A fit to lead-acid cells. The circuit of `battery.run` says the same from its causes; this law is for comparison with work that used it.
 * @validity Lithium-ion n = 1.00 to 1.10 (from memory); above 1.1 an advisory.
 * @source Peukert, W., Elektrotechnische Zeitschrift 20, 1897 (from memory); as used by Traub, L. W., Range and Endurance Estimates for Battery-Powered Aircraft, Journal of
 * Aircraft 48(2), 2011 (equation from memory).
 * @example
 * battery.peukert({ capacity: 100 * u.Ah, ratedTime: 20 * u.h, current: 10 * u.A, exponent: 1.2 }).time / u.h // 8.7055
 */
export function peukert(options: PeukertOptions): Peukert {
  const method = 'battery.peukert'
  checkOptions(method, options, known)
  const { capacity, ratedTime, current, exponent } = options
  requirePositive(method, 'capacity', capacity, 'C')
  requirePositive(method, 'ratedTime', ratedTime, 's')
  requirePositive(method, 'current', current, 'A')
  requireWithin(method, 'exponent', exponent, '1', 1, 2)
  const time = ratedTime * (capacity / (current * ratedTime)) ** exponent
  const capacityShare = (time * current) / capacity
  requireRepresentable(method, time + capacityShare)
  adviseExponent(method, exponent)
  return { time, capacityShare }
}

/**
 * Speed of best range over speed of least drag, where the battery follows Peukert's law.
 *
 * @equation range goes with U/P^n on a parabolic polar: (U/U_R)^4 = (n + 1)/(3 n - 1)
 * @param options - `exponent` n (1 to 2)
 * @returns ratio of the two speeds; 1 for n = 1
 * @throws InvalidInput for an exponent outside 1 to 2, and an unknown option
 * @method Exact for a parabolic polar.
 * @validity As `battery.peukert`.
 * @source House derivation from Traub, L. W., Journal of Aircraft 48(2), 2011 (equations from memory).
 * @example
 * battery.peukertRangeSpeed({ exponent: 1.3 }) // 0.9437
 */
export function peukertRangeSpeed(options: { readonly exponent: Ratio }): Ratio {
  const method = 'battery.peukertRangeSpeed'
  checkOptions(method, options, knownSpeed)
  const { exponent } = options
  requireWithin(method, 'exponent', exponent, '1', 1, 2)
  adviseExponent(method, exponent)
  return ((exponent + 1) / (3 * exponent - 1)) ** 0.25
}

function adviseExponent(method: string, exponent: number): void {
  if (exponent > 1.1 && isListening())
    advise({
      code: 'PEUKERT_EXPONENT',
      method,
      quantity: 'exponent',
      value: exponent,
      range: [1, 1.1],
      message: `An exponent of ${exponent} is above those of lithium-ion cells (1.00 to 1.10).`,
    })
}
