import { requireFinite, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface TrimOptions {
  /** Of wing and body [1/rad]. */
  readonly liftCurveSlope: Ratio
  /** Moment coefficient of wing and body about their aerodynamic centre. */
  readonly zeroLiftMoment: Ratio
  /** Centre of gravity behind that aerodynamic centre, in mean chords. */
  readonly gravityBehindCentre: Ratio
  readonly tailVolume: Ratio
  /** [1/rad] */
  readonly tailLiftCurveSlope: Ratio
  /** Leading edge of the tail down against the zero-lift line of the wing [rad]. */
  readonly tailIncidence: Angle
  /** de/dalpha. */
  readonly downwashSlope: Ratio
  /** Downwash where the wing makes no lift [rad], 0 when left out. */
  readonly downwashAtZeroLift?: Angle
}

export interface Trim {
  /** Absolute angle of attack (from the zero-lift line) at which the moment is none [rad]. */
  readonly angle: Angle
  /** Of wing and body there. */
  readonly liftCoefficient: Ratio
  /** Of the tail on its own area there; below 0 it pushes down. */
  readonly tailLiftCoefficient: Ratio
  /** Slope of the moment about the centre of gravity [1/rad]; below 0 is stable. */
  readonly momentSlope: Ratio
  /** Moment coefficient at zero lift of the wing; above 0 where a stable aircraft can be trimmed upright. */
  readonly momentAtZeroLift: Ratio
}

const method = 'wing.trim'
const known = new Set([
  'liftCurveSlope',
  'zeroLiftMoment',
  'gravityBehindCentre',
  'tailVolume',
  'tailLiftCurveSlope',
  'tailIncidence',
  'downwashSlope',
  'downwashAtZeroLift',
])

/**
 * Angle at which wing, body and tail balance, and what the tail carries there.
 *
 * @equation C_m = C_m,0 + C_m,alpha alpha; C_m,alpha = a [x - V (a_t/a) (1 - de/da)]; C_m,0 = C_m,ac + V a_t (i_t + e_0); alpha_trim =
 * -C_m,0/C_m,alpha
 * @param options - `liftCurveSlope` a [1/rad], `zeroLiftMoment` C_m,ac, `gravityBehindCentre` x [chords], `tailVolume` V,
 * `tailLiftCurveSlope` a_t [1/rad], `tailIncidence` i_t [rad, leading edge down], `downwashSlope` de/da; optional `downwashAtZeroLift`
 * e_0 [rad] (0)
 * @returns `angle` [rad], `liftCoefficient`, `tailLiftCoefficient`, `momentSlope` [1/rad], `momentAtZeroLift`
 * @throws InvalidInput for slopes that are not positive, a downwash slope outside 0 to 1, an aircraft that is neutral (no angle balances
 * it), and an unknown option
 * @method Linear, stick fixed, tail volume with its arm from the centre of gravity.
 * @validity Attached flow: a trim angle outside -0.1 to 0.26 rad carries an advisory, an unstable aircraft another.
 * @source Anderson, J. D., Introduction to Flight, sections 7.5 to 7.10 (inputs and formula read in worked examples).
 * @example
 * const balance = wing.trim({
 *   liftCurveSlope: 0.08 / u.deg, zeroLiftMoment: -0.032, gravityBehindCentre: 0.11, tailVolume: 0.34,
 *   tailLiftCurveSlope: 0.1 / u.deg, tailIncidence: 2.7 * u.deg, downwashSlope: 0.35,
 * })
 * balance.angle / u.deg // 4.496
 */
export function trim(options: TrimOptions): Trim {
  checkTrim(options)
  const { liftCurveSlope, zeroLiftMoment, gravityBehindCentre, tailVolume, tailLiftCurveSlope } = options
  const { tailIncidence, downwashSlope, downwashAtZeroLift = 0 } = options
  const tail = tailVolume * tailLiftCurveSlope
  const momentSlope = liftCurveSlope * gravityBehindCentre - tail * (1 - downwashSlope)
  const momentAtZeroLift = zeroLiftMoment + tail * (tailIncidence + downwashAtZeroLift)
  if (Math.abs(momentSlope) < 1e-9)
    throw new InvalidInput({
      method,
      argument: 'gravityBehindCentre',
      value: gravityBehindCentre,
      accepted: 'away from the neutral point, where no angle balances the aircraft',
    })
  const angle = -momentAtZeroLift / momentSlope
  const answer = {
    angle,
    liftCoefficient: liftCurveSlope * angle,
    tailLiftCoefficient: tailLiftCurveSlope * (angle * (1 - downwashSlope) - tailIncidence - downwashAtZeroLift),
    momentSlope,
    momentAtZeroLift,
  }
  requireRepresentable(
    method,
    momentSlope + angle + answer.liftCoefficient + answer.tailLiftCoefficient + momentAtZeroLift,
  )
  adviseTrim(angle, momentSlope)
  return answer
}

function checkTrim(options: TrimOptions): void {
  checkOptions(method, options, known)
  requirePositive(method, 'liftCurveSlope', options.liftCurveSlope, '1')
  requireFinite(method, 'zeroLiftMoment', options.zeroLiftMoment, '1')
  requireFinite(method, 'gravityBehindCentre', options.gravityBehindCentre, '1')
  requireNonNegative(method, 'tailVolume', options.tailVolume, '1')
  requirePositive(method, 'tailLiftCurveSlope', options.tailLiftCurveSlope, '1')
  requireWithin(method, 'tailIncidence', options.tailIncidence, 'rad', -0.5, 0.5)
  requireWithin(method, 'downwashSlope', options.downwashSlope, '1', 0, 1)
  const { downwashAtZeroLift } = options
  if (downwashAtZeroLift !== undefined)
    requireWithin(method, 'downwashAtZeroLift', downwashAtZeroLift, 'rad', -0.5, 0.5)
}

function adviseTrim(angle: number, momentSlope: number): void {
  adviseOutside(momentSlope, {
    code: 'UNSTABLE',
    method,
    quantity: 'momentSlope',
    high: 0,
    because: 'above 0 the aircraft is unstable: it balances at the trim angle and does not return to it',
  })
  adviseOutside(angle, {
    code: 'TRIM_ANGLE',
    method,
    quantity: 'angle',
    low: -0.1,
    high: 0.26,
    because:
      'outside -0.1 to 0.26 rad flow does not stay attached; another tail incidence or place of gravity is needed',
  })
}
