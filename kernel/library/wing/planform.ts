import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Area, Length, Ratio } from '../quantity.js'
import { greatestSweep, sweepTangent } from './sweep-at.js'

export interface PlanformOptions {
  /** Reference area, both halves [m^2]. Two of `area`, `span` and `aspectRatio` are needed. */
  readonly area?: Area
  /** Tip to tip [m]. */
  readonly span?: Length
  /** Span squared over area. */
  readonly aspectRatio?: Ratio
  /** Tip chord over root chord, 1 when left out. */
  readonly taper?: Ratio
  /** Sweep of the line at `sweepChordShare` [rad], positive backwards; 0 when left out. */
  readonly sweep?: Angle
  /** Share of the chord at which `sweep` is given, 0.25 when left out. */
  readonly sweepChordShare?: Ratio
}

export interface Planform {
  readonly area: Area
  readonly span: Length
  readonly semiSpan: Length
  readonly aspectRatio: Ratio
  readonly taper: Ratio
  readonly rootChord: Length
  readonly tipChord: Length
  /** Area over span [m]. */
  readonly meanChord: Length
  /** [m] */
  readonly meanAerodynamicChord: Length
  /** Distance of that chord from the plane of symmetry [m]. */
  readonly meanAerodynamicChordAcross: Length
  /** Its leading edge behind that of the root [m]. */
  readonly meanAerodynamicChordBehind: Length
  /** Its quarter point behind the leading edge of the root [m]: about where the aerodynamic centre lies. */
  readonly quarterChordBehind: Length
  readonly sweepLeadingEdge: Angle
  readonly sweepQuarterChord: Angle
  readonly sweepHalfChord: Angle
  readonly sweepTrailingEdge: Angle
}

const method = 'wing.planform'
const known = new Set(['area', 'span', 'aspectRatio', 'taper', 'sweep', 'sweepChordShare'])

/**
 * Geometry of a straight-tapered, swept wing.
 *
 * @equation c_r = 2 S/(b (1 + taper)); mac = (2/3) c_r (1 + taper + taper^2)/(1 + taper) at y = (b/6) (1 + 2 taper)/(1 + taper);
 * tan L_n = tan L_m - (4/AR) (n - m) (1 - taper)/(1 + taper); x_mac = y tan L_0
 * @param options - two of `area` S [m^2], `span` b [m], `aspectRatio` AR = b^2/S; optional `taper` (1), `sweep` [rad] (0) at
 * `sweepChordShare` (0.25)
 * @returns `area` [m^2], `span`, `semiSpan` [m], `aspectRatio`, `taper`, `rootChord`, `tipChord`, `meanChord`, `meanAerodynamicChord`,
 * `meanAerodynamicChordAcross`, `meanAerodynamicChordBehind`, `quarterChordBehind` [m], `sweepLeadingEdge`, `sweepQuarterChord`,
 * `sweepHalfChord`, `sweepTrailingEdge` [rad]
 * @throws InvalidInput unless exactly two of area, span and aspect ratio are given, for values that are not positive, a taper outside 0
 * to 2, a sweep beyond 1.4 rad, and an unknown option
 * @method Geometry, exact.
 * @validity One trapezium a side, the part inside the body included. A taper outside 0.2 to 1 carries an advisory: tips so narrow stall first
 * (common practice, no source).
 * @source Geometry; Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on wing geometry (from memory).
 * @example
 * const main = wing.planform({ area: 14 * u.m2, aspectRatio: 10, taper: 0.45 })
 * main.meanAerodynamicChord // 1.23996
 */
export function planform(options: PlanformOptions): Planform {
  checkOptions(method, options, known)
  const { taper = 1, sweep = 0, sweepChordShare = 0.25 } = options
  requireWithin(method, 'taper', taper, '1', 0, 2)
  requireWithin(method, 'sweep', sweep, 'rad', -greatestSweep, greatestSweep)
  requireWithin(method, 'sweepChordShare', sweepChordShare, '1', 0, 1)
  const { area, span, aspectRatio } = completeSize(options)
  adviseOutside(taper, {
    code: 'TAPER',
    method,
    quantity: 'taper',
    low: 0.2,
    high: 1,
    because: 'outside 0.2 to 1 the tips stall first or the wing is heavy for its lift',
  })
  const rootChord = (2 * area) / (span * (1 + taper))
  const meanAerodynamicChord = ((2 / 3) * rootChord * (1 + taper + taper * taper)) / (1 + taper)
  const across = ((span / 6) * (1 + 2 * taper)) / (1 + taper)
  const tangentAt = (share: number) => sweepTangent(aspectRatio, taper, Math.tan(sweep), sweepChordShare, share)
  const behind = across * tangentAt(0)
  requireRepresentable(method, rootChord + meanAerodynamicChord + across + behind + area + span + aspectRatio)
  return {
    area,
    span,
    semiSpan: span / 2,
    aspectRatio,
    taper,
    rootChord,
    tipChord: rootChord * taper,
    meanChord: area / span,
    meanAerodynamicChord,
    meanAerodynamicChordAcross: across,
    meanAerodynamicChordBehind: behind,
    quarterChordBehind: behind + meanAerodynamicChord / 4,
    sweepLeadingEdge: Math.atan(tangentAt(0)),
    sweepQuarterChord: Math.atan(tangentAt(0.25)),
    sweepHalfChord: Math.atan(tangentAt(0.5)),
    sweepTrailingEdge: Math.atan(tangentAt(1)),
  }
}

interface Size {
  readonly area: number
  readonly span: number
  readonly aspectRatio: number
}

function completeSize({ area, span, aspectRatio }: PlanformOptions): Size {
  const given = [area, span, aspectRatio].filter((one) => one !== undefined).length
  if (given !== 2)
    throw new InvalidInput({
      method,
      argument: 'the size of the wing',
      value: `given by ${given} of area, span and aspectRatio`,
      accepted: 'given by exactly two of them',
    })
  if (area !== undefined) requirePositive(method, 'area', area, 'm^2')
  if (span !== undefined) requirePositive(method, 'span', span, 'm')
  if (aspectRatio !== undefined) requirePositive(method, 'aspectRatio', aspectRatio, '1')
  const size = {
    area: area ?? ((span as number) * (span as number)) / (aspectRatio as number),
    span: span ?? Math.sqrt((area as number) * (aspectRatio as number)),
    aspectRatio: aspectRatio ?? ((span as number) / (area as number)) * (span as number),
  }
  requirePositive(method, 'area that follows', size.area, 'm^2')
  requirePositive(method, 'span that follows', size.span, 'm')
  requirePositive(method, 'aspectRatio that follows', size.aspectRatio, '1')
  return size
}
