import { requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface PlainFlapOptions {
  /** Flap chord over section chord. */
  readonly chordShare: Ratio
  /** Deflection [rad], watched where given. */
  readonly deflection?: Angle
}

export interface PlainFlap {
  /** Change of the zero-lift angle per deflection: the angle of attack that a radian of flap is worth. */
  readonly effectiveness: Ratio
  /** Lift coefficient per deflection [1/rad]. */
  readonly liftPerDeflection: Ratio
  /** Moment coefficient about the quarter chord per deflection [1/rad]. */
  readonly momentPerDeflection: Ratio
}

const method = 'wing.plainFlap'
const known = new Set(['chordShare', 'deflection'])

/**
 * Effectiveness of a plain flap, elevator, aileron or rudder as a hinged mean line.
 *
 * @equation tau = 1 - (t - sin t)/pi, cos t = 2 E - 1; dc_l/dd = 2 pi tau; dc_m,c/4/dd = -(sin t) (1 - cos t)/2
 * @param options - `chordShare` E (0 to 1); optional `deflection` [rad]
 * @returns `effectiveness` tau, `liftPerDeflection` [1/rad], `momentPerDeflection` [1/rad]
 * @throws InvalidInput for a chord share outside 0 to 1, a deflection beyond 1.2 rad, and an unknown option
 * @method Glauert's closed form, sealed hinge, no boundary layer.
 * @validity Real flaps give 0.7 to 0.9 of it up to 15 degrees and ever less beyond (common practice, no source); a larger deflection
 * carries an advisory.
 * @source Glauert, H., Theoretical Relationships for an Aerofoil with Hinged Flap, ARC R and M 1095, 1927 (from memory).
 * @example
 * const elevator = wing.plainFlap({ chordShare: 0.3 })
 * elevator.effectiveness // 0.66074595
 */
export function plainFlap(options: PlainFlapOptions): PlainFlap {
  checkOptions(method, options, known)
  const { chordShare, deflection = 0 } = options
  requireWithin(method, 'chordShare', chordShare, '1', 0, 1)
  requireWithin(method, 'deflection', deflection, 'rad', -1.2, 1.2)
  adviseOutside(Math.abs(deflection), {
    code: 'FLAP_DEFLECTION',
    method,
    quantity: 'deflection',
    high: Math.PI / 12,
    because: 'beyond 15 degrees (0.26 rad) flow leaves a plain flap and the theory promises far too much',
  })
  const hinge = Math.acos(2 * chordShare - 1)
  const effectiveness = 1 - (hinge - Math.sin(hinge)) / Math.PI
  return {
    effectiveness,
    liftPerDeflection: 2 * Math.PI * effectiveness,
    momentPerDeflection: -0.5 * Math.sin(hinge) * (1 - Math.cos(hinge)),
  }
}
