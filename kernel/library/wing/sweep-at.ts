import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'

export interface SweepAtOptions {
  /** Span squared over area. */
  readonly aspectRatio: Ratio
  /** Tip chord over root chord. */
  readonly taper: Ratio
  /** Sweep that is known [rad], positive backwards. */
  readonly sweep: Angle
  /** Share of the chord at which it is known: 0 at the leading edge, 0.25 at the quarter chord. */
  readonly from: Ratio
  /** Share of the chord at which it is asked for. */
  readonly to: Ratio
}

const method = 'wing.sweepAt'
const known = new Set(['aspectRatio', 'taper', 'sweep', 'from', 'to'])
/** Sweep beyond which a span is no longer one [rad]. */
export const greatestSweep = 1.4

/**
 * Sweep of a straight-tapered wing at any share of its chord.
 *
 * @equation tan L_n = tan L_m - (4/AR) (n - m) (1 - taper)/(1 + taper)
 * @param options - `aspectRatio` AR, `taper`, `sweep` L_m [rad], `from` m and `to` n (shares of the chord, 0 to 1)
 * @returns the sweep L_n [rad], positive backwards
 * @throws InvalidInput for an aspect ratio that is not positive, a taper outside 0 to 2, a sweep beyond 1.4 rad, shares outside 0 to 1, and an
 * unknown option
 * @method Geometry, exact.
 * @validity Straight edges.
 * @source Geometry; Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on wing geometry (from memory).
 * @example
 * wing.sweepAt({ aspectRatio: 8, taper: 0.5, sweep: 0, from: 0.25, to: 0 }) // 0.041643
 */
export function sweepAt(options: SweepAtOptions): Angle {
  checkOptions(method, options, known)
  const { aspectRatio, taper, sweep, from, to } = options
  requirePositive(method, 'aspectRatio', aspectRatio, '1')
  requireWithin(method, 'taper', taper, '1', 0, 2)
  requireWithin(method, 'sweep', sweep, 'rad', -greatestSweep, greatestSweep)
  requireWithin(method, 'from', from, '1', 0, 1)
  requireWithin(method, 'to', to, '1', 0, 1)
  const tangent = sweepTangent(aspectRatio, taper, Math.tan(sweep), from, to)
  requireRepresentable(method, tangent)
  return Math.atan(tangent)
}

/** The formula alone: tangents in, tangent out. */
export function sweepTangent(aspectRatio: number, taper: number, tangent: number, from: number, to: number): number {
  return tangent - (4 / aspectRatio) * (to - from) * ((1 - taper) / (1 + taper))
}
