import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface LiftCurveSlopeOptions {
  readonly aspectRatio: Ratio
  /** `'lifting surface'` when left out: it holds from slender to square wings and with sweep. */
  readonly method?: 'lifting surface' | 'lifting line'
  /** Of the section at low speed [1/rad], 2 pi when left out. */
  readonly sectionLiftSlope?: Ratio
  /** Sweep of the half-chord line [rad], 0 when left out; for the lifting surface. */
  readonly sweepHalfChord?: Angle
  /** 0 when left out. */
  readonly mach?: Ratio
  /** e_1 = 1/(1 + tau), 1 when left out (elliptic); for the lifting line. */
  readonly slopeEfficiency?: Ratio
}

const caller = 'wing.liftCurveSlope'
const known = new Set(['aspectRatio', 'method', 'sectionLiftSlope', 'sweepHalfChord', 'mach', 'slopeEfficiency'])
const methods = ['lifting surface', 'lifting line'] as const

/**
 * Lift-curve slope of a whole wing in closed form, per radian.
 *
 * @equation lifting surface: a = 2 pi AR/(2 + sqrt(4 + (AR beta/eta)^2 (1 + tan^2 L/beta^2))), eta = a_0/(2 pi);
 * lifting line: a = a_0/(beta + a_0/(pi e_1 AR)); beta = sqrt(1 - M^2)
 * @param options - `aspectRatio` AR; optional `method` ('lifting surface'), `sectionLiftSlope` a_0 [1/rad] (2 pi), `mach` M (0),
 * `sweepHalfChord` L [rad] (0, lifting surface), `slopeEfficiency` e_1 (1, lifting line)
 * @returns the slope a [1/rad]
 * @throws InvalidInput for an aspect ratio that is not positive, a section slope outside 0.5 to 12, a Mach number outside 0 to 0.9, a
 * sweep beyond 1.4 rad, an option of the other method, and an unknown option or method
 * @method Closed forms. At aspect ratio 6 the lifting line says 4.71, this lifting surface 4.53, a vortex lattice 4.21 for a rectangular
 * wing: the gap is the spread to be expected.
 * @validity Lifting line: aspect ratio from 4 and no sweep; below an advisory. Mach up to 0.7; above an advisory.
 * @source Helmbold, H. B., Der unverwundene Ellipsenfluegel als tragende Flaeche, 1942, in the form of USAF DATCOM section 4.1.3.2 (from
 * memory); lifting line: Anderson, J. D., Aircraft Performance and Design, 1999, section 2.8 (equations read).
 * @example
 * wing.liftCurveSlope({ aspectRatio: 10 }) // 5.15098
 */
export function liftCurveSlope(options: LiftCurveSlopeOptions): Ratio {
  checkOptions(caller, options, known)
  const { aspectRatio, method = 'lifting surface', sectionLiftSlope = 2 * Math.PI, mach = 0 } = options
  requirePositive(caller, 'aspectRatio', aspectRatio, '1')
  requireChoice(caller, 'method', method, methods)
  requireWithin(caller, 'sectionLiftSlope', sectionLiftSlope, '1', 0.5, 12)
  requireWithin(caller, 'mach', mach, '1', 0, 0.9)
  adviseOutside(mach, {
    code: 'WING_MACH',
    method: caller,
    quantity: 'mach',
    high: 0.7,
    because: 'above 0.7 shocks govern the lift of usual sections',
  })
  const slope =
    method === 'lifting line' ? byLine(options, sectionLiftSlope, mach) : bySurface(options, sectionLiftSlope, mach)
  requireRepresentable(caller, slope)
  return slope
}

function byLine(options: LiftCurveSlopeOptions, sectionLiftSlope: number, mach: number): number {
  const { aspectRatio, slopeEfficiency = 1, sweepHalfChord } = options
  if (sweepHalfChord !== undefined) throw otherMethod('sweepHalfChord', 'lifting surface')
  requireWithin(caller, 'slopeEfficiency', slopeEfficiency, '1', 0.3, 1)
  adviseOutside(aspectRatio, {
    code: 'LIFTING_LINE_ASPECT_RATIO',
    method: caller,
    quantity: 'aspectRatio',
    low: 4,
    because: 'below 4 a lifting line says 10 % or more too much lift; use the lifting surface or wing.lattice',
  })
  const beta = Math.sqrt(1 - mach * mach)
  return sectionLiftSlope / (beta + sectionLiftSlope / (Math.PI * slopeEfficiency * aspectRatio))
}

function bySurface(options: LiftCurveSlopeOptions, sectionLiftSlope: number, mach: number): number {
  const { aspectRatio, sweepHalfChord = 0, slopeEfficiency } = options
  if (slopeEfficiency !== undefined) throw otherMethod('slopeEfficiency', 'lifting line')
  requireWithin(caller, 'sweepHalfChord', sweepHalfChord, 'rad', -1.4, 1.4)
  const betaSquared = 1 - mach * mach
  const tangent = Math.tan(sweepHalfChord)
  const stretched = (aspectRatio * 2 * Math.PI) / sectionLiftSlope
  return (2 * Math.PI * aspectRatio) / (2 + Math.sqrt(4 + stretched * stretched * (betaSquared + tangent * tangent)))
}

function otherMethod(argument: string, owner: string): InvalidInput {
  return new InvalidInput({
    method: caller,
    argument,
    value: 'given',
    accepted: `left out, or method: '${owner}' chosen`,
  })
}
