import { requireFinite, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Ratio } from '../quantity.js'

export interface StaticMarginOptions {
  /** In mean chords behind the leading edge of the mean chord. */
  readonly centreOfGravity: Ratio
  /** In the same chords; or give the two slopes. */
  readonly neutralPoint?: Ratio
  /** Slope of the moment about the centre of gravity, for instance of `wing.lattice` [1/rad]. */
  readonly pitchCurveSlope?: Ratio
  /** [1/rad] */
  readonly liftCurveSlope?: Ratio
}

export interface StaticMargin {
  /** h_n - h in mean chords; positive is stable. */
  readonly margin: Ratio
  readonly neutralPoint: Ratio
}

const method = 'wing.staticMargin'
const known = new Set(['centreOfGravity', 'neutralPoint', 'pitchCurveSlope', 'liftCurveSlope'])

/**
 * Static margin in pitch.
 *
 * @equation SM = h_n - h = -C_m,alpha/C_L,alpha
 * @param options - `centreOfGravity` h [chords], and `neutralPoint` h_n [chords] or `pitchCurveSlope` C_m,alpha and `liftCurveSlope`
 * C_L,alpha [1/rad]
 * @returns `margin` and `neutralPoint`, both in mean chords
 * @throws InvalidInput unless either the neutral point or both slopes are given, for a lift slope that is not positive, and for an
 * unknown option
 * @method Definition.
 * @validity A margin outside 0.05 to 0.3 carries an advisory: below, the aircraft needs automatic help; above, trim costs drag and the
 * controls are heavy (common practice, no source).
 * @source Definition; Nelson, R. C., Flight Stability and Automatic Control, 2nd edition, 1998, chapter 2 (from memory).
 * @example
 * const stick = wing.staticMargin({ centreOfGravity: 0.295, pitchCurveSlope: -0.683, liftCurveSlope: 4.44 })
 * stick.neutralPoint // 0.44883
 */
export function staticMargin(options: StaticMarginOptions): StaticMargin {
  checkOptions(method, options, known)
  const { centreOfGravity } = options
  requireFinite(method, 'centreOfGravity', centreOfGravity, '1')
  const margin = marginOf(options)
  const neutralPoint = options.neutralPoint ?? centreOfGravity + margin
  requireRepresentable(method, margin + neutralPoint)
  adviseOutside(margin, {
    code: 'STATIC_MARGIN',
    method,
    quantity: 'margin',
    low: 0.05,
    high: 0.3,
    because: 'usual margins are 0.05 to 0.3 mean chords; below, automatic help is needed, above, trim costs drag',
  })
  return { margin, neutralPoint }
}

function marginOf(options: StaticMarginOptions): number {
  const { centreOfGravity, neutralPoint, pitchCurveSlope, liftCurveSlope } = options
  const bySlopes = pitchCurveSlope !== undefined && liftCurveSlope !== undefined
  const bySlope = pitchCurveSlope !== undefined || liftCurveSlope !== undefined
  if (neutralPoint !== undefined && !bySlope) {
    requireFinite(method, 'neutralPoint', neutralPoint, '1')
    return neutralPoint - centreOfGravity
  }
  if (neutralPoint === undefined && bySlopes) {
    requireFinite(method, 'pitchCurveSlope', pitchCurveSlope, '1')
    requirePositive(method, 'liftCurveSlope', liftCurveSlope, '1')
    return -pitchCurveSlope / liftCurveSlope
  }
  throw new InvalidInput({
    method,
    argument: 'the neutral point',
    value: neutralPoint === undefined ? 'missing' : 'given twice',
    accepted: 'given as neutralPoint, or as pitchCurveSlope and liftCurveSlope',
  })
}
