import { requirePositive, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'
import { plateDrag } from './post-stall.js'

export interface LinearSectionOptions {
  /** Of the two-dimensional section at low speed [1/rad]. */
  readonly liftSlope: Ratio
  readonly minimumDrag: Ratio
  /** Angle of attack of no lift [rad], 0 when left out. */
  readonly zeroLiftAngle?: Angle
  /** Lift coefficient in the middle of the drag bucket, 0 when left out. */
  readonly liftAtMinimumDrag?: Ratio
  /** k in c_d = c_d,min + k (c_l - c_l0)^2, 0 when left out. */
  readonly dragRise?: Ratio
  /** Half the width in lift of the bucket, in which drag does not rise; 0 when left out. */
  readonly bucketHalfWidth?: Ratio
  /** 1.2 when left out. */
  readonly maximumLift?: Ratio
  /** Most negative lift coefficient; as far below zero as `maximumLift` is above when left out. */
  readonly minimumLift?: Ratio
  /** Reynolds number at which the coefficients were read; without it they hold at any. */
  readonly referenceReynolds?: Ratio
  /** n in (Re/Re_ref)^n, which stretches the lift range and divides the drag; 0.2 when left out. */
  readonly reynoldsExponent?: Ratio
  /** Thickness over chord; with it drag rises past the critical Mach number. */
  readonly thickness?: Ratio
  /** Of the blade, for its drag square to the stream; 10 when left out. */
  readonly aspectRatio?: Ratio
}

export interface LinearSection extends Required<Omit<LinearSectionOptions, 'referenceReynolds' | 'thickness'>> {
  readonly section: 'linear'
  readonly referenceReynolds?: Ratio
  readonly thickness?: Ratio
  /** Drag coefficient square to the stream. */
  readonly plateDrag: Ratio
}

const method = 'section.linear'
const known = new Set([
  'liftSlope',
  'minimumDrag',
  'zeroLiftAngle',
  'liftAtMinimumDrag',
  'dragRise',
  'bucketHalfWidth',
  'maximumLift',
  'minimumLift',
  'referenceReynolds',
  'reynoldsExponent',
  'thickness',
  'aspectRatio',
])
/** Lift over slope beyond which no section stays attached [rad]. */
const greatestStallAngle = 0.6

/**
 * A section polar from a few constants: linear lift, drag bucket, stall, and the flat plate past it, to any angle.
 *
 * @equation attached: c_l = a (alpha - alpha_0)/sqrt(1 - M^2); c_d = [c_d,min + k max(0, |c_l - c_l0| - w)^2]/K + 20 (M - M_cr)^4; stall at
 * K c_l,max and K c_l,min; K = (Re/Re_ref)^n; past stall c_l = (C/2) sin 2d + A cos^2 d/sin d, c_d = C sin^2 d + B cos d, d = alpha - alpha_0,
 * C = 1.11 + 0.018 AR, A and B such that both join at the stall; M_cr = 0.7623 - t/c - |c_l|/10
 * @param options - `liftSlope` a [1/rad], `minimumDrag` c_d,min; optional `zeroLiftAngle` alpha_0 [rad] (0), `liftAtMinimumDrag` c_l0 (0),
 * `dragRise` k (0), `bucketHalfWidth` w (0), `maximumLift` (1.2), `minimumLift` (-`maximumLift`), `referenceReynolds` Re_ref (none: no
 * influence), `reynoldsExponent` n (0.2), `thickness` t/c (none: no drag rise with Mach number), `aspectRatio` AR of the blade (10)
 * @returns a frozen record for `rotor.bladeElement` and the propeller's methods; `section.coefficients` asks it
 * @throws InvalidInput for constants no section has (slope outside 0.5 to 12 per radian, least drag outside 0.0001 to 0.5, drag rise outside
 * 0 to 1, greatest lift below 0.05, stall beyond 0.6 rad), and an unknown option
 * @method Lift and drag are continuous in angle round the whole circle; the stall is a corner, without hysteresis, dynamic stall or the
 * delay of stall near a rotor's hub. Flow from behind: 0.7 of the lift (house value) and twice the least drag at 180 degrees. K is held
 * between 0.5 and 1.5.
 * @validity Mach up to 0.7, Reynolds within a factor of 7.6 of its reference (K between 2/3 and 1.5, at n = 0.2); the users of the section advise.
 * @source Lift and Mach: Glauert, Proceedings of the Royal Society A 118, 1928 (from memory). Reynolds: Yamauchi and Johnson, NASA TM-84363, 1983 (n
 * 0.125 to 0.2, from memory). Drag rise: Korn and Lock in Mason, AIAA 90-3262, 1990 (from memory). Past stall: Viterna and Corrigan, 1982
 * (from memory). Flow from behind: Critzos, Heyson and Boswinkle, NACA TN 3361, 1955, summary read (drag about twice).
 * @example
 * const blade = section.linear({ liftSlope: 5.7, minimumDrag: 0.0095, dragRise: 0.01, maximumLift: 1.3, referenceReynolds: 1e6 })
 * section.coefficients({ section: blade, angleOfAttack: 0.1, reynolds: 1e6 }).lift // 0.57
 */
export function linear(options: LinearSectionOptions): LinearSection {
  checkOptions(method, options, known)
  const { liftSlope, minimumDrag, maximumLift = 1.2, referenceReynolds, thickness } = options
  const { zeroLiftAngle = 0, liftAtMinimumDrag = 0, dragRise = 0, bucketHalfWidth = 0 } = options
  const { minimumLift = -maximumLift, reynoldsExponent = 0.2, aspectRatio = 10 } = options
  requireWithin(method, 'liftSlope', liftSlope, '1', 0.5, 12)
  requireWithin(method, 'minimumDrag', minimumDrag, '1', 1e-4, 0.5)
  requireWithin(method, 'zeroLiftAngle', zeroLiftAngle, 'rad', -0.5, 0.5)
  requireWithin(method, 'liftAtMinimumDrag', liftAtMinimumDrag, '1', -3, 3)
  requireWithin(method, 'dragRise', dragRise, '1', 0, 1)
  requireWithin(method, 'bucketHalfWidth', bucketHalfWidth, '1', 0, 3)
  requireLiftLimit('maximumLift', maximumLift, liftSlope)
  requireLiftLimit('minimumLift', -minimumLift, liftSlope)
  if (referenceReynolds !== undefined) requirePositive(method, 'referenceReynolds', referenceReynolds, '1')
  requireWithin(method, 'reynoldsExponent', reynoldsExponent, '1', 0, 0.5)
  if (thickness !== undefined) requireWithin(method, 'thickness', thickness, '1', 0.01, 0.5)
  requirePositive(method, 'aspectRatio', aspectRatio, '1')
  return Object.freeze({
    section: 'linear',
    liftSlope,
    minimumDrag,
    zeroLiftAngle,
    liftAtMinimumDrag,
    dragRise,
    bucketHalfWidth,
    maximumLift,
    minimumLift,
    reynoldsExponent,
    aspectRatio,
    plateDrag: plateDrag(aspectRatio),
    ...(referenceReynolds === undefined ? {} : { referenceReynolds }),
    ...(thickness === undefined ? {} : { thickness }),
  })
}

function requireLiftLimit(argument: string, magnitude: number, liftSlope: number): void {
  if (typeof magnitude === 'number' && magnitude >= 0.05 && magnitude / liftSlope <= greatestStallAngle) return
  const most = (greatestStallAngle * liftSlope).toPrecision(3)
  throw new InvalidInput({
    method,
    argument,
    value: argument === 'minimumLift' ? -magnitude : magnitude,
    accepted: argument === 'minimumLift' ? `from -${most} to -0.05` : `from 0.05 to ${most}`,
    remedy: `At this lift slope more would be an angle beyond ${greatestStallAngle} rad, where no section stays attached.`,
  })
}
