import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import type { LinearSectionOptions } from './linear.js'
import type { Polar } from './polar.js'
import { preparePolar, type Section } from './prepare-polar.js'

export interface CoefficientsOptions {
  /** From `section.linear` or `section.table`. */
  readonly section: Section | LinearSectionOptions
  /** [rad] */
  readonly angleOfAttack: Angle
  /** The section's own reference when left out. */
  readonly reynolds?: Ratio
  /** 0 when left out. */
  readonly mach?: Ratio
}

export interface Coefficients {
  /** c_l */
  readonly lift: Ratio
  /** c_d */
  readonly drag: Ratio
  readonly liftToDrag: Ratio
  /** True past the stall. */
  readonly stalled: boolean
}

const method = 'section.coefficients'
const known = new Set(['section', 'angleOfAttack', 'reynolds', 'mach'])
const fullCircle = 2 * Math.PI

/**
 * Lift and drag coefficients of a section at an angle of attack.
 *
 * @equation as `section.linear` and `section.table` say
 * @param options - `section` (a record of `section.linear` or `section.table`), `angleOfAttack` [rad]; optional `reynolds` (the section's
 * reference), `mach` (0)
 * @returns `lift`, `drag`, `liftToDrag`, `stalled`
 * @throws InvalidInput for what is not a section, an angle beyond a full circle, a Reynolds number that is not positive, a Mach number
 * outside 0 to 1.2, and an unknown option
 * @method Evaluates the section once.
 * @validity Mach up to 0.7 and the section's Reynolds numbers; outside these an advisory.
 * @source As the section's.
 * @example
 * const plain = section.linear({ liftSlope: 5.7, minimumDrag: 0.01 })
 * section.coefficients({ section: plain, angleOfAttack: 90 * u.deg }).drag // 1.29
 */
export function coefficients(options: CoefficientsOptions): Coefficients {
  checkOptions(method, options, known)
  const { section, angleOfAttack, reynolds, mach = 0 } = options
  const polar = preparePolar(method, section)
  requireWithin(method, 'angleOfAttack', angleOfAttack, 'rad', -fullCircle, fullCircle)
  if (reynolds !== undefined) requirePositive(method, 'reynolds', reynolds, '1')
  requireWithin(method, 'mach', mach, '1', 0, 1.2)
  const asked = reynolds ?? referenceOf(polar)
  polar.evaluate(angleOfAttack, asked, mach)
  const { lift, drag, stalled } = polar
  requireRepresentable(method, lift / drag)
  if (isListening()) {
    adviseReynolds(method, polar, asked)
    adviseMach(method, mach)
  }
  return { lift, drag, liftToDrag: lift / drag, stalled }
}

/** Middle of the range, which is the reference of a linear section. */
function referenceOf(polar: Polar): number {
  const { leastReynolds, greatestReynolds } = polar
  return Number.isFinite(greatestReynolds) ? Math.sqrt(leastReynolds * greatestReynolds) : 1e6
}

/** Says that a section was asked outside the Reynolds numbers it knows. */
export function adviseReynolds(caller: string, polar: Polar, reynolds: number): void {
  const { leastReynolds, greatestReynolds } = polar
  if (reynolds >= leastReynolds * (1 - 1e-9) && reynolds <= greatestReynolds * (1 + 1e-9)) return
  advise({
    code: 'SECTION_REYNOLDS',
    method: caller,
    quantity: 'reynolds',
    value: reynolds,
    range: [leastReynolds, Number.isFinite(greatestReynolds) ? greatestReynolds : null],
    message: `The section's polar knows Reynolds numbers from ${leastReynolds.toPrecision(2)} to ${greatestReynolds.toPrecision(2)}; at ${reynolds.toPrecision(2)} its nearest end is held.`,
  })
}

/** Says that a section was asked past the Mach numbers at which its corrections hold. */
export function adviseMach(caller: string, mach: number): void {
  if (mach <= 0.7) return
  advise({
    code: 'SECTION_MACH',
    method: caller,
    quantity: 'mach',
    value: mach,
    range: [0, 0.7],
    message: `At a Mach number of ${mach.toPrecision(3)} shocks govern a section; linear corrections (good to 0.7) say too much lift and too little drag.`,
  })
}
