import { requireFinite, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface DownwashOptions {
  /** Of the wing [1/rad]. */
  readonly liftCurveSlope: Ratio
  readonly aspectRatio: Ratio
  /** Of the wing, for the angle itself; 0 when left out. */
  readonly liftCoefficient?: Ratio
  /** Span efficiency of the wing, 1 when left out. */
  readonly spanEfficiency?: Ratio
}

export interface Downwash {
  /** de/dalpha. */
  readonly slope: Ratio
  /** Angle at `liftCoefficient` [rad], downwards positive. */
  readonly angle: Angle
}

const method = 'wing.downwash'
const known = new Set(['liftCurveSlope', 'aspectRatio', 'liftCoefficient', 'spanEfficiency'])

/**
 * Downwash far behind a wing.
 *
 * @equation e = 2 C_L/(pi AR e_w); de/dalpha = 2 a/(pi AR e_w)
 * @param options - `liftCurveSlope` a [1/rad], `aspectRatio` AR; optional `liftCoefficient` C_L (0), `spanEfficiency` e_w (1)
 * @returns `slope` de/dalpha and `angle` [rad]
 * @throws InvalidInput for values that are not positive, a span efficiency outside 0.3 to 1, and an unknown option
 * @method Twice the downwash at the wing: the wake of an elliptic loading, flat, at the height of the tail.
 * @validity An upper bound for a tail above or below the wake or close behind the wing: a vortex lattice of both surfaces
 * (`wing.lattice`) knows the place. A slope above 0.7 carries an advisory.
 * @source Textbook momentum result; McCormick, B. W., Aerodynamics, Aeronautics, and Flight Mechanics, 2nd edition, 1995,
 * chapter 8 (both from memory).
 * @example
 * const wash = wing.downwash({ liftCurveSlope: 5, aspectRatio: 10, liftCoefficient: 0.5 })
 * wash.slope // 0.31831
 */
export function downwash(options: DownwashOptions): Downwash {
  checkOptions(method, options, known)
  const { liftCurveSlope, aspectRatio, liftCoefficient = 0, spanEfficiency = 1 } = options
  requirePositive(method, 'liftCurveSlope', liftCurveSlope, '1')
  requirePositive(method, 'aspectRatio', aspectRatio, '1')
  requireFinite(method, 'liftCoefficient', liftCoefficient, '1')
  requireWithin(method, 'spanEfficiency', spanEfficiency, '1', 0.3, 1)
  const perLift = 2 / (Math.PI * aspectRatio * spanEfficiency)
  const slope = perLift * liftCurveSlope
  const angle = perLift * liftCoefficient
  requireRepresentable(method, slope + angle)
  adviseOutside(slope, {
    code: 'DOWNWASH_SLOPE',
    method,
    quantity: 'slope',
    high: 0.7,
    because: 'above 0.7 a tail in this wake hardly stabilises, and the far-field estimate no longer holds',
  })
  return { slope, angle }
}
