import { requireCount, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { solveLinear } from '../numerics/index.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface LiftingLineOptions {
  /** Span squared over area. */
  readonly aspectRatio: Ratio
  /** Tip chord over root chord. */
  readonly taper: Ratio
  /** [1/rad] */
  readonly sectionLiftSlope: Ratio
  /** Incidence of the tip section against the root section [rad], linear between; washout is negative. 0 when left out. */
  readonly twist?: Angle
  /** Lift coefficient at which `spanEfficiency` and `inducedDrag` are wanted; with twist they depend on it. */
  readonly liftCoefficient?: Ratio
  /** Terms of the series, 100 when left out. */
  readonly terms?: Ratio
}

export interface LiftingLine {
  /** Of the whole wing [1/rad]. */
  readonly liftCurveSlope: Ratio
  /** Induced drag over that of elliptic loading, less one: the untwisted wing. */
  readonly delta: Ratio
  /** Slope factor in a = a_0/(1 + a_0 (1 + tau)/(pi AR)). */
  readonly tau: Ratio
  /** 1/(1 + delta) without `liftCoefficient`; C_L^2/(pi AR C_Di) at that lift with it. */
  readonly spanEfficiency: Ratio
  /** Angle of the root section at which the wing as a whole makes no lift [rad], from that of its sections; 0 without twist. */
  readonly zeroLiftAngle: Angle
  /** C_1 and C_0 in C_Di = C_L^2 (1 + delta)/(pi AR) + C_1 C_L + C_0; both 0 without twist. */
  readonly twistDragPerLift: Ratio
  readonly twistDrag: Ratio
  /** C_Di at `liftCoefficient`, where that is given. */
  readonly inducedDrag?: Ratio
}

const method = 'wing.liftingLine'
const known = new Set(['aspectRatio', 'taper', 'sectionLiftSlope', 'twist', 'liftCoefficient', 'terms'])

/**
 * Prandtl's lifting line for a straight-tapered wing, by Fourier series.
 *
 * @equation sum A_n sin(n t) (n mu + sin t) = mu alpha sin t, mu = a_0 c/(4 b), n odd; C_L = pi AR A_1; C_Di = pi AR sum n A_n^2;
 * a = a_0/(1 + a_0 (1 + tau)/(pi AR)); C_Di = C_L^2 (1 + delta)/(pi AR) without twist
 * @param options - `aspectRatio` AR, `taper` (tip over root chord), `sectionLiftSlope` a_0 [1/rad]; optional `twist` [rad] of the tip
 * against the root (0, washout negative), `liftCoefficient` C_L (none), `terms` (100)
 * @returns `liftCurveSlope` [1/rad], `delta`, `tau`, `spanEfficiency`, `zeroLiftAngle` [rad] of the root, `twistDragPerLift`,
 * `twistDrag`, and `inducedDrag` with `liftCoefficient`
 * @throws InvalidInput for an aspect ratio outside 0.1 to 100, a taper outside 0 to 2, a section slope outside 0.5 to 12, a twist beyond
 * 0.5 rad, a lift coefficient of 0, more than 300 terms, and an unknown option
 * @method Collocation at t = (2 i - 1) pi/(4 N), odd terms only, dense elimination. 100 terms are within 1e-5 in slope and 0.1 % in
 * delta and tau of 200.
 * @validity Unswept, aspect ratio from 4, attached flow. Below 4 an advisory. The line stays above a lifting surface: 7.5 % in slope at
 * aspect ratio 6 and 4.3 % at 10 for rectangular wings. Delta read from charts is often a quarter too high.
 * @source Glauert, H., The Elements of Aerofoil and Airscrew Theory, 2nd edition, 1947, chapter 11 (from memory).
 * @example
 * const line = wing.liftingLine({ aspectRatio: 8, taper: 0.4, sectionLiftSlope: 2 * Math.PI })
 * line.delta // 0.0130
 */
export function liftingLine(options: LiftingLineOptions): LiftingLine {
  checkLine(options)
  const { aspectRatio, taper, sectionLiftSlope, twist = 0, liftCoefficient, terms = 100 } = options
  adviseOutside(aspectRatio, {
    code: 'LIFTING_LINE_ASPECT_RATIO',
    method,
    quantity: 'aspectRatio',
    low: 4,
    because: 'below 4 a lifting line says 10 % or more too much lift; use wing.lattice',
  })
  const series = solveSeries(aspectRatio, taper, sectionLiftSlope, terms)
  const sums = sumSeries(series, terms, twist)
  const wholeSpan = Math.PI * aspectRatio
  const slope = wholeSpan * sums.first
  const answer = {
    liftCurveSlope: slope,
    delta: sums.delta,
    tau: wholeSpan * (1 / slope - 1 / sectionLiftSlope) - 1,
    zeroLiftAngle: -sums.twistFirst / sums.first,
    twistDragPerLift: sums.twistCross,
    twistDrag: wholeSpan * sums.twistSquare,
  }
  const untwisted = 1 / (1 + answer.delta)
  requireRepresentable(method, slope + answer.delta + answer.tau + answer.zeroLiftAngle + answer.twistDrag)
  if (liftCoefficient === undefined) return { ...answer, spanEfficiency: untwisted }
  const ideal = (liftCoefficient * liftCoefficient) / wholeSpan
  const inducedDrag = ideal / untwisted + answer.twistDragPerLift * liftCoefficient + answer.twistDrag
  return { ...answer, spanEfficiency: ideal / inducedDrag, inducedDrag }
}

function checkLine(options: LiftingLineOptions): void {
  checkOptions(method, options, known)
  requireWithin(method, 'aspectRatio', options.aspectRatio, '1', 0.1, 100)
  requireWithin(method, 'taper', options.taper, '1', 0, 2)
  requireWithin(method, 'sectionLiftSlope', options.sectionLiftSlope, '1', 0.5, 12)
  if (options.twist !== undefined) requireWithin(method, 'twist', options.twist, 'rad', -0.5, 0.5)
  if (options.terms !== undefined) {
    requireCount(method, 'terms', options.terms)
    requireWithin(method, 'terms', options.terms, '1', 1, 300)
  }
  const lift = options.liftCoefficient
  if (lift === undefined) return
  requireWithin(method, 'liftCoefficient', lift, '1', -5, 5)
  if (Math.abs(lift) < 1e-6)
    throw new InvalidInput({
      method,
      argument: 'liftCoefficient',
      value: lift,
      accepted: 'away from 0, where no span efficiency exists',
      remedy: 'The drag of twist alone is `twistDrag`.',
    })
}

/** A_n for a radian of incidence, then A_n for a radian of twist at the tip: one list after the other. */
function solveSeries(aspectRatio: number, taper: number, sectionLiftSlope: number, terms: number): Float64Array {
  const matrix = new Float64Array(terms * terms)
  const sides = new Float64Array(2 * terms)
  const atRoot = sectionLiftSlope / (2 * aspectRatio * (1 + taper))
  for (let row = 0; row < terms; row += 1) {
    const t = ((2 * row + 1) * Math.PI) / (4 * terms)
    const across = Math.cos(t)
    const sine = Math.sin(t)
    const mu = atRoot * (1 - (1 - taper) * across)
    for (let term = 0; term < terms; term += 1) {
      const n = 2 * term + 1
      matrix[row * terms + term] = Math.sin(n * t) * (n * mu + sine)
    }
    sides[row] = mu * sine
    sides[terms + row] = mu * sine * across
  }
  if (!solveLinear(matrix, terms, sides))
    throw new InvalidInput({
      method,
      argument: 'the wing',
      value: 'without a solution',
      accepted: 'a wing whose series can be solved',
    })
  return sides
}

interface Sums {
  readonly first: number
  readonly twistFirst: number
  readonly delta: number
  readonly twistCross: number
  readonly twistSquare: number
}

/** Induced drag as a quadratic in lift: A_n = (C_L/(pi AR)) a_n/a_1 + d_n, with d_n = b_n - a_n b_1/a_1 and so d_1 = 0. */
function sumSeries(series: Float64Array, terms: number, twist: number): Sums {
  const first = series[0] as number
  const twistFirst = twist * (series[terms] as number)
  let delta = 0
  let cross = 0
  let square = 0
  for (let term = 1; term < terms; term += 1) {
    const n = 2 * term + 1
    const relative = (series[term] as number) / first
    const own = twist * (series[terms + term] as number) - relative * twistFirst
    delta += n * relative * relative
    cross += n * relative * own
    square += n * own * own
  }
  return { first, twistFirst, delta, twistCross: 2 * cross, twistSquare: square }
}
