import { requireNonNegative, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface SpanEfficiencyOptions {
  readonly aspectRatio: Ratio
  /** Tip chord over root chord, 0.45 when left out. */
  readonly taper?: Ratio
  /** Thickness over chord, 0.15 when left out. */
  readonly thickness?: Ratio
  /** Of the quarter chord [rad], 0 when left out. */
  readonly sweepQuarterChord?: Angle
  /** 0 when left out. */
  readonly mach?: Ratio
  /** Body width over span, 0.1 when left out. */
  readonly bodyWidthShare?: Ratio
  /** Engines on the wing as Howe counts them, 0 when left out. */
  readonly wingEngines?: Ratio
  /** Loss of lift-dependent profile drag, Nita and Scholz's k_D0: 0.804 (general aviation) when left out. */
  readonly profileFactor?: Ratio
}

export interface SpanEfficiencyEstimates {
  readonly raymer: Ratio
  readonly howe: Ratio
  readonly nitaScholz: Ratio
  readonly low: Ratio
  readonly mean: Ratio
  readonly high: Ratio
  /** (high - low)/mean. */
  readonly spread: Ratio
}

const method = 'wing.spanEfficiencyEstimates'
const known = new Set([
  'aspectRatio',
  'taper',
  'thickness',
  'sweepQuarterChord',
  'mach',
  'bodyWidthShare',
  'wingEngines',
  'profileFactor',
])
/** Sweep at which Raymer's second formula takes over [rad]; between 0 and here the two are blended. */
const sweptFrom = Math.PI / 6

/**
 * Oswald's efficiency of a whole aircraft by three published estimates, and how far they lie apart.
 *
 * @equation Raymer: e = 1.78 (1 - 0.045 AR^0.68) - 0.64, swept by 30 degrees and more 4.61 (1 - 0.045 AR^0.68) cos^0.15 L - 3.1;
 * Howe: 1/e = (1 + 0.12 M^6) [1 + (0.142 + f AR (10 t/c)^0.33)/cos^2 L + 0.1 (3 N + 1)/(4 + AR)^0.8], f = 0.005 (1 + 1.5 (taper - 0.6)^2);
 * Nita and Scholz: e = (1 - 2 w^2) k_D0/(1 + AR p(taper - d)), p(x) = 0.0524 x^4 - 0.15 x^3 + 0.1659 x^2 - 0.0706 x + 0.0119,
 * d = -0.357 + 0.45 exp(0.0375 L[deg])
 * @param options - `aspectRatio` AR (1 to 30); optional `taper` (0.45), `thickness` t/c (0.15), `sweepQuarterChord` L [rad] (0), `mach`
 * M (0), `bodyWidthShare` w (0.1), `wingEngines` N (0), `profileFactor` k_D0 (0.804)
 * @returns `raymer`, `howe`, `nitaScholz`, their `low`, `mean` and `high`, and `spread` = (high - low)/mean
 * @throws InvalidInput for an aspect ratio outside 1 to 30, a taper outside 0 to 1, a thickness outside 0.05 to 0.3, a sweep beyond 0.8
 * rad, a Mach number above 0.9, a body wider than half the span, and an unknown option
 * @method Three regressions on aeroplanes of the past; between 0 and 30 degrees of sweep Raymer's two are blended linearly, as he
 * advises (from memory), and held at 0.2 from below.
 * @validity Expect 10 % between them. Raymer's falls steadily and is not meant for aspect ratios above 10: advisory. None has booms or
 * stopped rotors in its data. A lifting line gives the wing alone: these include what grows with lift on the rest of the aircraft.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equations 12.48 and 12.49 (first read, second from memory); Howe, D.,
 * Aircraft Conceptual Design Synthesis, 2000, equation 6.14 (from memory); Nita, M., Scholz, D., Estimating the Oswald Factor from Basic
 * Aircraft Geometrical Parameters, DLRK 2012 (from memory).
 * @example
 * const estimates = wing.spanEfficiencyEstimates({ aspectRatio: 10, taper: 0.5, mach: 0.2 })
 * estimates.howe // 0.82499
 */
export function spanEfficiencyEstimates(options: SpanEfficiencyOptions): SpanEfficiencyEstimates {
  const checked = checkEstimate(options)
  adviseOutside(checked.aspectRatio, {
    code: 'SPAN_EFFICIENCY_ASPECT_RATIO',
    method,
    quantity: 'aspectRatio',
    high: 10,
    because: 'above 10 Raymer’s estimate is outside its data and falls too low',
  })
  const raymer = raymerEstimate(checked.aspectRatio, checked.sweepQuarterChord)
  const howe = howeEstimate(checked)
  const nitaScholz = nitaScholzEstimate(checked)
  const low = Math.min(raymer, howe, nitaScholz)
  const high = Math.max(raymer, howe, nitaScholz)
  const mean = (raymer + howe + nitaScholz) / 3
  return { raymer, howe, nitaScholz, low, mean, high, spread: (high - low) / mean }
}

function checkEstimate(options: SpanEfficiencyOptions): Required<SpanEfficiencyOptions> {
  checkOptions(method, options, known)
  const { aspectRatio, taper = 0.45, thickness = 0.15, sweepQuarterChord = 0, mach = 0 } = options
  const { bodyWidthShare = 0.1, wingEngines = 0, profileFactor = 0.804 } = options
  requireWithin(method, 'aspectRatio', aspectRatio, '1', 1, 30)
  requireWithin(method, 'taper', taper, '1', 0, 1)
  requireWithin(method, 'thickness', thickness, '1', 0.05, 0.3)
  requireWithin(method, 'sweepQuarterChord', sweepQuarterChord, 'rad', -0.8, 0.8)
  requireWithin(method, 'mach', mach, '1', 0, 0.9)
  requireWithin(method, 'bodyWidthShare', bodyWidthShare, '1', 0, 0.5)
  requireNonNegative(method, 'wingEngines', wingEngines, '1')
  requireWithin(method, 'wingEngines', wingEngines, '1', 0, 20)
  requireWithin(method, 'profileFactor', profileFactor, '1', 0.5, 1)
  return { aspectRatio, taper, thickness, sweepQuarterChord, mach, bodyWidthShare, wingEngines, profileFactor }
}

function raymerEstimate(aspectRatio: number, sweep: number): number {
  const shape = 1 - 0.045 * aspectRatio ** 0.68
  const straight = 1.78 * shape - 0.64
  const turned = Math.abs(sweep)
  if (turned === 0) return straight
  const swept = 4.61 * shape * Math.cos(Math.max(turned, sweptFrom)) ** 0.15 - 3.1
  const share = Math.min(1, turned / sweptFrom)
  // The swept formula leaves its data at high aspect ratio and would turn negative; an aircraft does not fall below 0.2.
  return Math.max(0.2, straight * (1 - share) + swept * share)
}

function howeEstimate(given: Required<SpanEfficiencyOptions>): number {
  const { aspectRatio, taper, thickness, sweepQuarterChord, mach, wingEngines } = given
  const f = 0.005 * (1 + 1.5 * (taper - 0.6) ** 2)
  const cosine = Math.cos(sweepQuarterChord)
  const wing = (0.142 + f * aspectRatio * (10 * thickness) ** 0.33) / (cosine * cosine)
  return 1 / ((1 + 0.12 * mach ** 6) * (1 + wing + (0.1 * (3 * wingEngines + 1)) / (4 + aspectRatio) ** 0.8))
}

function nitaScholzEstimate(given: Required<SpanEfficiencyOptions>): number {
  const { aspectRatio, taper, sweepQuarterChord, bodyWidthShare, profileFactor } = given
  const best = -0.357 + 0.45 * Math.exp((0.0375 * Math.abs(sweepQuarterChord) * 180) / Math.PI)
  const x = taper - best
  const f = 0.0524 * x ** 4 - 0.15 * x ** 3 + 0.1659 * x ** 2 - 0.0706 * x + 0.0119
  return ((1 - 2 * bodyWidthShare * bodyWidthShare) * profileFactor) / (1 + f * aspectRatio)
}
