import type { Layout } from './parts.js'
import { placeWinged } from './winged.js'
import type { WingedOptions } from './winged-options.js'

/**
 * Vectored thrust: every rotor lifts in hover and tilts forward to push in cruise.
 *
 * @equation as `layout.liftPlusCruise`, all rotors with the role `'tilt'`
 * @param options - those of `layout.liftPlusCruise`
 * @returns a layout; `layout.checks` looks at its rotors upright and tilted forward
 * @throws InvalidInput as `layout.liftPlusCruise`
 * @method The same places; only the role differs, and rotors behind the wing hang under their booms, so that they push from behind when tilted.
 * @validity Geometry. The tilt turns about the boom's middle line under the hub. To fly it, give `mission.aircraft` its disks as `lift`, and as `cruise` what the same rotors do tilted (`propeller.bladeAngleForThrust`).
 * @source House convention, no publication.
 * @example
 * const tilting = layout.vectoredThrust({
 *   rotorRadius: 1.4 * u.m, rowsAhead: 1, rowsBehind: 1, columns: 2, wing: { area: 14 * u.m2, aspectRatio: 10 },
 *   body: { length: 6.6 * u.m, width: 1.5 * u.m, height: 1.5 * u.m },
 * })
 * tilting.rotors[0].role === 'tilt' // true
 */
export function vectoredThrust(options: WingedOptions): Layout {
  return placeWinged(options, { method: 'layout.vectoredThrust', kind: 'vectored thrust', tilts: () => true })
}
