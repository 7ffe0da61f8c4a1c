import { requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface WingFormFactorOptions {
  /** Thickness over chord. */
  readonly thickness: Ratio
  /** `'Raymer'` when left out. */
  readonly method?: 'Raymer' | 'Torenbeek' | 'Hoerner'
  /** Place of the greatest thickness in chords, 0.3 when left out; Raymer's alone. */
  readonly thicknessAt?: Ratio
  /** With it Raymer's factor of Mach number and sweep is taken, at least 1. */
  readonly mach?: Ratio
  /** Of the line of greatest thickness [rad], 0 when left out; Raymer's alone. */
  readonly sweep?: Angle
}

const caller = 'drag.wingFormFactor'
const known = new Set(['thickness', 'method', 'thicknessAt', 'mach', 'sweep'])
const methods = ['Raymer', 'Torenbeek', 'Hoerner'] as const

/**
 * Form factor of a wing or tail: profile drag over that of a flat plate of the same wetted area.
 *
 * @equation Raymer: F = (1 + 0.6/(x/c)_m t/c + 100 (t/c)^4) max(1, 1.34 M^0.18 cos^0.28 L); Torenbeek: 1 + 2.7 t/c + 100 (t/c)^4;
 * Hoerner: 1 + 2 t/c + 60 (t/c)^4
 * @param options - `thickness` t/c; optional `method` ('Raymer'), `thicknessAt` (x/c)_m (0.3), `mach` M (none: the second bracket is
 * left out), `sweep` L [rad] (0)
 * @returns the factor F
 * @throws InvalidInput for a thickness outside 0 to 0.4, a place of thickness outside 0.1 to 0.6, a Mach number outside 0 to 0.95, a
 * sweep beyond 1.2 rad, an unknown method, and an unknown option
 * @method Regressions. Raymer's bracket of Mach number falls below 1 under Mach 0.2 (0.885 at 0.1), where it was not meant: it is held at 1.
 * @validity Sections of 0.06 to 0.21 thickness; outside an advisory. The three differ by 7 % at 0.12.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equation 12.30 (read second-hand); Torenbeek, E., Synthesis of Subsonic
 * Airplane Design, 1982, and Hoerner, S. F., Fluid-Dynamic Drag, 1965 (both from memory).
 * @example
 * drag.wingFormFactor({ thickness: 0.12 }) // 1.260736
 */
export function wingFormFactor(options: WingFormFactorOptions): Ratio {
  checkOptions(caller, options, known)
  const { thickness, method = 'Raymer', thicknessAt = 0.3, mach, sweep = 0 } = options
  requireWithin(caller, 'thickness', thickness, '1', 0, 0.4)
  requireChoice(caller, 'method', method, methods)
  requireWithin(caller, 'thicknessAt', thicknessAt, '1', 0.1, 0.6)
  if (mach !== undefined) requireWithin(caller, 'mach', mach, '1', 0, 0.95)
  requireWithin(caller, 'sweep', sweep, 'rad', -1.2, 1.2)
  adviseOutside(thickness, {
    code: 'FORM_FACTOR_THICKNESS',
    method: caller,
    quantity: 'thickness',
    low: 0.06,
    high: 0.21,
    because: 'form factors were fitted to sections of 0.06 to 0.21 thickness',
  })
  const fourth = thickness ** 4
  if (method === 'Torenbeek') return 1 + 2.7 * thickness + 100 * fourth
  if (method === 'Hoerner') return 1 + 2 * thickness + 60 * fourth
  const shape = 1 + (0.6 / thicknessAt) * thickness + 100 * fourth
  const speed = mach === undefined ? 1 : 1.34 * mach ** 0.18 * Math.cos(sweep) ** 0.28
  return shape * Math.max(1, speed)
}
