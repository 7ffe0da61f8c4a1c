import { requireFinite, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Ratio } from '../quantity.js'

export interface NeutralPointOptions {
  /** Of wing and body [1/rad]. */
  readonly liftCurveSlope: Ratio
  /** Of wing and body, in mean chords behind the leading edge of the mean chord. */
  readonly aerodynamicCentre: Ratio
  readonly tailVolume: Ratio
  /** Of the tail on its own area [1/rad]. */
  readonly tailLiftCurveSlope: Ratio
  /** de/dalpha at the tail. */
  readonly downwashSlope: Ratio
  /** Dynamic pressure at the tail over that of flight, 1 when left out. */
  readonly tailPressureRatio?: Ratio
  /** Tail area over wing area where `tailVolume` is measured between the two aerodynamic centres; left out where its arm begins at the centre of gravity. */
  readonly tailAreaShare?: Ratio
  /** Slope of the pitching moment of body, booms and lift rotors [1/rad], destabilising positive; 0 when left out. */
  readonly bodyPitchSlope?: Ratio
}

const method = 'wing.neutralPoint'
const known = new Set([
  'liftCurveSlope',
  'aerodynamicCentre',
  'tailVolume',
  'tailLiftCurveSlope',
  'downwashSlope',
  'tailPressureRatio',
  'tailAreaShare',
  'bodyPitchSlope',
])

/**
 * Neutral point of wing, body and tail, in mean chords behind the leading edge of the mean chord.
 *
 * @equation h_n = h_ac + (eta V a_t (1 - de/da) - C_m,body)/(a + eta (S_t/S) a_t (1 - de/da))
 * @param options - `liftCurveSlope` a [1/rad], `aerodynamicCentre` h_ac [chords], `tailVolume` V, `tailLiftCurveSlope` a_t [1/rad],
 * `downwashSlope` de/da; optional `tailPressureRatio` eta (1), `tailAreaShare` S_t/S (0: V has its arm from the centre of gravity),
 * `bodyPitchSlope` C_m,body [1/rad] (0)
 * @returns h_n [chords]
 * @throws InvalidInput for slopes that are not positive, a downwash slope outside 0 to 1, a pressure ratio outside 0 to 2, a tail larger
 * than twice the wing, and an unknown option
 * @method Moments of both lifts about a point where they do not change. With the tail volume between the aerodynamic centres and the
 * tail's area it is exact; with the arm from the centre of gravity, the textbook form, the tail's own lift is left out of the slope.
 * @validity Stick fixed, power off. Lift rotors and booms ahead of the wing are destabilising and enter only through `bodyPitchSlope`;
 * free controls and a propeller in front cost 2 to 5 % more (common practice, no source).
 * @source Anderson, J. D., Introduction to Flight, section 7.9 (formula read in worked examples); with the tail's area: Raymer, D. P.,
 * Aircraft Design: A Conceptual Approach, equation 16.9 (read second-hand).
 * @example
 * wing.neutralPoint({ liftCurveSlope: 4.58, aerodynamicCentre: 0.24, tailVolume: 0.34, tailLiftCurveSlope: 5.725, downwashSlope: 0.35 }) // 0.51625
 */
export function neutralPoint(options: NeutralPointOptions): Ratio {
  checkOptions(method, options, known)
  const { liftCurveSlope, aerodynamicCentre, tailVolume, tailLiftCurveSlope, downwashSlope } = options
  const { tailPressureRatio = 1, tailAreaShare = 0, bodyPitchSlope = 0 } = options
  requirePositive(method, 'liftCurveSlope', liftCurveSlope, '1')
  requireFinite(method, 'aerodynamicCentre', aerodynamicCentre, '1')
  requireNonNegative(method, 'tailVolume', tailVolume, '1')
  requirePositive(method, 'tailLiftCurveSlope', tailLiftCurveSlope, '1')
  requireWithin(method, 'downwashSlope', downwashSlope, '1', 0, 1)
  requireWithin(method, 'tailPressureRatio', tailPressureRatio, '1', 0, 2)
  requireWithin(method, 'tailAreaShare', tailAreaShare, '1', 0, 2)
  requireFinite(method, 'bodyPitchSlope', bodyPitchSlope, '1')
  const tail = tailPressureRatio * tailLiftCurveSlope * (1 - downwashSlope)
  const point = aerodynamicCentre + (tail * tailVolume - bodyPitchSlope) / (liftCurveSlope + tail * tailAreaShare)
  requireRepresentable(method, point)
  return point
}
