import { requirePositive, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Ratio } from '../quantity.js'

export interface SectionLiftSlopeOptions {
  /** Slope over that of a thin section, 2 pi; 1 when left out. Measured smooth sections reach 0.93 to 0.98 of it. */
  readonly efficiency?: Ratio
  /** Free-stream Mach number normal to the wing's leading edge, 0 when left out. */
  readonly mach?: Ratio
  /** On the chord; watched where given, the slope does not follow it. */
  readonly reynolds?: Ratio
}

const method = 'wing.sectionLiftSlope'
const known = new Set(['efficiency', 'mach', 'reynolds'])

/**
 * Lift-curve slope of a section, per radian.
 *
 * @equation a_0 = 2 pi eta/sqrt(1 - M^2)
 * @param options - optional `efficiency` eta (1), `mach` M (0), `reynolds` (none)
 * @returns the slope [1/rad]
 * @throws InvalidInput for an efficiency outside 0.5 to 1.2, a Mach number outside 0 to 0.9, a Reynolds number that is not positive, and
 * an unknown option
 * @method Thin-aerofoil theory with the Prandtl-Glauert factor; what thickness adds and the boundary layer takes away is in eta
 * (measured NACA sections at a Reynolds number of 9 million: 0.105 to 0.107 per degree, so 0.96 to 0.98; Abbott and von Doenhoff, from
 * memory).
 * @validity Attached flow. Mach above 0.6 or Reynolds number below 500,000 carries an advisory: the slope then falls with the Reynolds
 * number and bubbles make it uneven (common practice, no source).
 * @source Glauert, H., The Effect of Compressibility on the Lift of an Aerofoil, Proceedings of the Royal Society A 118, 1928 (from memory).
 * @example
 * wing.sectionLiftSlope({ efficiency: 0.97, mach: 0.2 }) // 6.2202
 */
export function sectionLiftSlope(options: SectionLiftSlopeOptions = {}): Ratio {
  checkOptions(method, options, known)
  const { efficiency = 1, mach = 0, reynolds } = options
  requireWithin(method, 'efficiency', efficiency, '1', 0.5, 1.2)
  requireWithin(method, 'mach', mach, '1', 0, 0.9)
  adviseOutside(mach, {
    code: 'SECTION_MACH',
    method,
    quantity: 'mach',
    high: 0.6,
    because: 'above 0.6 the linear correction of the lift slope runs ahead of measurements',
  })
  if (reynolds !== undefined) {
    requirePositive(method, 'reynolds', reynolds, '1')
    adviseOutside(reynolds, {
      code: 'SECTION_REYNOLDS',
      method,
      quantity: 'reynolds',
      low: 5e5,
      because: 'below 500,000 the slope depends on the boundary layer; take it from a measured polar',
    })
  }
  return (2 * Math.PI * efficiency) / Math.sqrt(1 - mach * mach)
}
