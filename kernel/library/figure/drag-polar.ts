import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import { requirePositive } from '../check.js'
import { type ParabolicPolar, requirePolar } from '../drag/polar.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { buildAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'

export interface DragPolarOptions {
  /** The parabola, of `drag.polar` or `drag.fitPolar`. */
  readonly polar: ParabolicPolar
  /** Points that it is held against: lift coefficients, and drag coefficients in the same order. */
  readonly points?: { readonly lift: ArrayLike<Ratio>; readonly drag: ArrayLike<Ratio> }
  /** Lift coefficient to which the parabola is drawn; the largest of the points, or 1.5, when left out. */
  readonly upTo?: Ratio
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.dragPolar'
const known = new Set(['polar', 'points', 'upTo', 'caption', 'description'])
const knownPoints = new Set(['lift', 'drag'])
const steps = 60

/**
 * Lift over drag coefficient: the parabola, the points it was fitted to, and the lift of its best ratio.
 *
 * @equation C_D = C_D0 + K C_L^2; best ratio at C_L = sqrt(C_D0/K)
 * @param options - `polar` { `zeroLiftDrag`, `inducedFactor` }; optional `points` { `lift`, `drag` }, `upTo` (lift coefficient),
 * `caption` ("Drag polar"), `description`
 * @returns a figure of a line and, with points, dots; a rule marks the best ratio where it lies in the picture
 * @throws InvalidInput for a polar without its two numbers, points that are not finite or of unequal length, an `upTo` that is not
 * positive, and an unknown option
 * @method The parabola is drawn at 61 lifts.
 * @validity As the polar's.
 * @source House convention, no publication.
 * @example
 * const points = { lift: [0, 0.4, 0.8, 1.2], drag: [0.03, 0.0364, 0.0556, 0.0876] }
 * const drawn = figure.dragPolar({ polar: drag.fitPolar(points), points })
 */
export function dragPolar(options: DragPolarOptions): Figure {
  checkOptions(method, options, known)
  const { polar, points, caption = 'Drag polar', description } = options
  requirePolar(method, polar)
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const dots = points === undefined ? undefined : readPoints(points)
  const least = Math.min(0, ...(dots?.y ?? [0]))
  const most = options.upTo ?? Math.max(...(dots?.y ?? [1.5]), 0.1)
  requirePositive(method, 'upTo', most, '1')
  const lift = Array.from({ length: steps + 1 }, (_, step) => least + ((most - least) * step) / steps)
  const drag = lift.map((one) => polar.zeroLiftDrag + polar.inducedFactor * one * one)
  const bestLift = Math.sqrt(polar.zeroLiftDrag / polar.inducedFactor)
  const marks: Mark[] = [
    { mark: 'line', x: requireSeries(method, 'the drag', drag), y: lift, ink: 'ink', label: 'parabola' },
  ]
  if (dots !== undefined) marks.push({ ...dots, ink: 'accent', label: 'points' })
  if (bestLift <= most) marks.push({ mark: 'rule', axis: 'y', at: bestLift, ink: 'faint', label: 'best ratio' })
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', { label: 'drag coefficient', from: 0 }),
    y: buildAxis(method, 'y', { label: 'lift coefficient' }),
    marks,
  })
}

function readPoints(points: { readonly lift: ArrayLike<number>; readonly drag: ArrayLike<number> }) {
  checkOptions(`${method} points`, points, knownPoints)
  const y = requireSeries(method, 'points.lift', points.lift)
  const x = requireSeries(method, 'points.drag', points.drag)
  if (x.length !== y.length)
    throw new InvalidInput({
      method,
      argument: 'points.drag',
      value: `a list of ${x.length}`,
      accepted: `a list of ${y.length}, one per lift coefficient`,
    })
  return { mark: 'dot' as const, x, y }
}
