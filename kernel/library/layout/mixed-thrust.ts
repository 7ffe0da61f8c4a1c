import { InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Layout } from './parts.js'
import { placeWinged } from './winged.js'
import type { WingedOptions } from './winged-options.js'

export interface MixedThrustOptions extends WingedOptions {
  /** Which rotors tilt forward in cruise; `'ahead'` of the wing when left out. The others only lift. */
  readonly tilting?: 'ahead' | 'behind'
}

const method = 'layout.mixedThrust'

/**
 * The mixed kind: the rotors on one side of the wing tilt forward to push in cruise, the others only lift.
 *
 * @equation as `layout.liftPlusCruise`, the role `'tilt'` ahead of the wing or behind it
 * @param options - those of `layout.liftPlusCruise`, and `tilting`: `'ahead'` (when left out) or `'behind'`
 * @returns a layout
 * @throws InvalidInput for no row where rotors should tilt, an unknown `tilting`, and as `layout.liftPlusCruise`
 * @method The same places; only the roles differ.
 * @validity Geometry, as `layout.vectoredThrust`.
 * @source House convention, no publication.
 * @example
 * const plan = layout.mixedThrust({
 *   rotorRadius: 1.3 * u.m, rowsAhead: 1, rowsBehind: 1, columns: 3, wing: { area: 14 * u.m2, aspectRatio: 12 },
 *   body: { length: 6.6 * u.m, width: 1.5 * u.m, height: 1.5 * u.m },
 * })
 * plan.rotors.filter((one) => one.role === 'tilt').length // 6
 */
export function mixedThrust(options: MixedThrustOptions): Layout {
  const { tilting = 'ahead', ...rest } = options
  requireChoice(method, 'tilting', tilting, ['ahead', 'behind'])
  const rows = tilting === 'ahead' ? options.rowsAhead : options.rowsBehind
  if (rows === 0)
    throw new InvalidInput({
      method,
      argument: tilting === 'ahead' ? 'rowsAhead' : 'rowsBehind',
      value: 0,
      accepted: 'at least 1: the rotors that tilt',
    })
  return placeWinged(rest, {
    method,
    kind: 'mixed lift and tilt',
    tilts: (ahead) => ahead === (tilting === 'ahead'),
  })
}
