import { requireFinite, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Length, Ratio } from '../quantity.js'
import type { GravityLimit } from './gravity-limit.js'
import type { Layout } from './parts.js'
import { requireLayout } from './record.js'

export interface CruiseLimitsOptions {
  /** In mean chords behind the leading edge of the mean chord, as `wing.neutralPoint` returns it. */
  readonly neutralPoint: Ratio
  /** Least static margin in mean chords; 0.05 when left out. */
  readonly leastMargin?: Ratio
  /** Greatest, for trim and control forces; open when left out. */
  readonly greatestMargin?: Ratio
}

export interface CruiseLimits extends GravityLimit {
  readonly label: string
  /** [m]; present with `greatestMargin`. */
  readonly forward?: Length
  /** [m] */
  readonly aft: Length
  /** Place of the neutral point [m]. */
  readonly neutralPoint: Length
  /** Leading edge of the mean aerodynamic chord [m]. */
  readonly leadingEdge: Length
  /** Mean aerodynamic chord [m]. */
  readonly chord: Length
}

const method = 'layout.cruiseLimits'
const known = new Set(['neutralPoint', 'leastMargin', 'greatestMargin'])

/**
 * Where the centre of gravity may lie in cruise: ahead of the neutral point by the static margin wanted.
 *
 * @equation x_aft = x_LE - (h_n - SM_least) c; x_forward = x_LE - (h_n - SM_greatest) c; c = (2/3) c_r (1 + t + t^2)/(1 + t)
 * @param layout - with a wing
 * @param options - `neutralPoint` h_n in mean chords behind the mean chord's leading edge; optional `leastMargin` (0.05), `greatestMargin` (open)
 * @returns a limit for `layout.gravityMargins` and `figure.loadingEnvelope`: `label`, `aft` and, where asked for, `forward` [m]; with `neutralPoint`, `leadingEdge`, `chord` [m]
 * @throws InvalidInput for a layout without a wing, a neutral point that is not finite, margins outside -1 to 2 or in the wrong order, and an unknown option
 * @method Definition of the static margin; a centre of gravity x lies (x_LE - x)/c chords behind the leading edge.
 * @validity As the neutral point's: stick fixed, power off.
 * @source As `wing.staticMargin`.
 * @example
 * const plan = layout.record({
 *   rotors: [{ x: 2 * u.m, y: 0 * u.m, radius: 1 * u.m, spin: 1 }], wing: { x: 0.25 * u.m, span: 10 * u.m, rootChord: 1 * u.m, tipChord: 1 * u.m },
 * })
 * layout.cruiseLimits(plan, { neutralPoint: 0.45, leastMargin: 0.05 }).aft // -0.15
 */
export function cruiseLimits(layout: Layout, options: CruiseLimitsOptions): CruiseLimits {
  requireLayout(method, layout)
  checkOptions(method, options, known)
  const { neutralPoint, leastMargin = 0.05, greatestMargin } = options
  const { wing } = layout
  if (wing === undefined)
    throw new InvalidInput({ method, argument: 'layout', value: 'without a wing', accepted: 'a layout with a wing' })
  requireFinite(method, 'neutralPoint', neutralPoint, '1')
  requireWithin(method, 'neutralPoint', neutralPoint, '1', -100, 100)
  requireWithin(method, 'leastMargin', leastMargin, '1', -1, 2)
  if (greatestMargin !== undefined) requireWithin(method, 'greatestMargin', greatestMargin, '1', leastMargin, 2)
  const { rootChord, tipChord, span, sweep, x } = wing
  const taper = tipChord / rootChord
  const chord = ((2 / 3) * rootChord * (1 + taper + taper * taper)) / (1 + taper)
  const across = ((span / 6) * (1 + 2 * taper)) / (1 + taper)
  const leadingEdge = x - across * Math.tan(sweep)
  const placeOf = (chords: number) => leadingEdge - chords * chord
  return {
    label: 'cruise static margin',
    aft: placeOf(neutralPoint - leastMargin),
    ...(greatestMargin === undefined ? {} : { forward: placeOf(neutralPoint - greatestMargin) }),
    neutralPoint: placeOf(neutralPoint),
    leadingEdge,
    chord,
  }
}
