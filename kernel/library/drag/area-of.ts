import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Speed } from '../quantity.js'

export interface AreaOfOptions {
  /** Measured or computed [N]. */
  readonly drag: Force
  /** [m/s] */
  readonly speed: Speed
  /** [kg/m^3] */
  readonly density: Density
}

const method = 'drag.areaOf'
const known = new Set(['drag', 'speed', 'density'])

/**
 * Drag area of a measured force: the way from a test report into a build-up.
 *
 * @equation D/q = 2 D/(rho V^2)
 * @param options - `drag` D [N], `speed` V [m/s], `density` rho [kg/m^3]
 * @returns the drag area [m^2]
 * @throws InvalidInput for a negative force, a speed or density that is not positive, and an unknown option
 * @method Definition.
 * @validity The Reynolds number of the test; a model's skin friction is higher than the aircraft's.
 * @source Definition.
 * @example
 * drag.areaOf({ drag: 13 * u.lbf, speed: 44.704 * u.mps, density: 1.225 }) // 0.04724
 */
export function areaOf(options: AreaOfOptions): Area {
  checkOptions(method, options, known)
  const { drag, speed, density } = options
  requireNonNegative(method, 'drag', drag, 'N')
  requirePositive(method, 'speed', speed, 'm/s')
  requirePositive(method, 'density', density, 'kg/m^3')
  const area = drag / (0.5 * density * speed * speed)
  requireRepresentable(method, area)
  return area
}
