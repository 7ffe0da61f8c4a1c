import { requireFinite, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Ratio } from '../quantity.js'
import type { ParabolicPolar } from './polar.js'

export interface FitPolarOptions {
  /** Lift coefficients of the points. */
  readonly lift: ArrayLike<Ratio>
  /** Drag coefficients of the points, in the same order. */
  readonly drag: ArrayLike<Ratio>
  /** With it the span efficiency of the fit is returned. */
  readonly aspectRatio?: Ratio
}

export interface FittedPolar extends ParabolicPolar {
  /** Root of the mean square of the residuals, in drag coefficient. */
  readonly residual: Ratio
  /** Largest residual by size, with its sign: point minus fit. */
  readonly worstResidual: Ratio
  /** Lift coefficient of that point. */
  readonly worstAt: Ratio
  /** Point minus fit, in the order given. */
  readonly residuals: readonly Ratio[]
  /** 1/(pi AR K), where `aspectRatio` was given. */
  readonly spanEfficiency?: Ratio
}

const method = 'drag.fitPolar'
const known = new Set(['lift', 'drag', 'aspectRatio'])

/**
 * Parabolic polar through points of a test or a computation, by least squares, and how badly it fits.
 *
 * @equation minimise sum (C_D - C_D0 - K C_L^2)^2; residual = sqrt(sum r^2/n)
 * @param options - `lift` and `drag`, lists of coefficients of equal length; optional `aspectRatio`
 * @returns `zeroLiftDrag` C_D0 and `inducedFactor` K (a polar for the other methods), `residual`, `worstResidual`, `worstAt`,
 * `residuals`, and `spanEfficiency` with `aspectRatio`
 * @throws InvalidInput for fewer than three points, lists of unequal length, points that are not finite, points of one lift only, a fit
 * whose C_D0 or K is not positive, and an unknown option
 * @method Normal equations in C_L^2 about its mean, closed form.
 * @validity Where drag is quadratic in lift: between about 0 and the stall. A residual above 5 % of the mean drag carries an advisory:
 * cambered wings have their least drag at a lift above zero, and a stalling point does not belong in the list.
 * @source Least squares.
 * @example
 * const fit = drag.fitPolar({ lift: [0, 0.4, 0.8, 1.2], drag: [0.03, 0.0364, 0.0556, 0.0876], aspectRatio: 10 })
 * fit.inducedFactor // 0.04
 */
export function fitPolar(options: FitPolarOptions): FittedPolar {
  checkOptions(method, options, known)
  const { aspectRatio } = options
  const lift = requirePoints('lift', options.lift)
  const drag = requirePoints('drag', options.drag)
  if (lift.length !== drag.length)
    throw new InvalidInput({
      method,
      argument: 'drag',
      value: `a list of ${drag.length}`,
      accepted: `a list of ${lift.length}, one per lift coefficient`,
    })
  if (aspectRatio !== undefined) requirePositive(method, 'aspectRatio', aspectRatio, '1')
  const { zeroLiftDrag, inducedFactor, meanDrag } = leastSquares(lift, drag)
  const residuals = lift.map((one, index) => (drag[index] as number) - zeroLiftDrag - inducedFactor * one * one)
  const residual = Math.sqrt(residuals.reduce((sum, one) => sum + one * one, 0) / residuals.length)
  const worst = residuals.reduce(
    (at, one, index) => (Math.abs(one) > Math.abs(residuals[at] as number) ? index : at),
    0,
  )
  requireRepresentable(method, zeroLiftDrag + inducedFactor + residual)
  adviseOutside(residual / meanDrag, {
    code: 'POLAR_RESIDUAL',
    method,
    quantity: 'residual over mean drag',
    high: 0.05,
    because: 'above 0.05 the points are not on a parabola about zero lift',
  })
  return {
    zeroLiftDrag,
    inducedFactor,
    residual,
    worstResidual: residuals[worst] as number,
    worstAt: lift[worst] as number,
    residuals,
    ...(aspectRatio === undefined ? {} : { spanEfficiency: 1 / (Math.PI * aspectRatio * inducedFactor) }),
  }
}

function requirePoints(argument: string, values: ArrayLike<number>): number[] {
  if ((!Array.isArray(values) && !ArrayBuffer.isView(values)) || values.length < 3 || values.length > 20_000)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(values),
      accepted: 'a list of 3 to 20000 coefficients',
    })
  return Array.from(values, (value, index) => {
    requireFinite(method, `${argument}[${index}]`, value, '1')
    return value
  })
}

function leastSquares(lift: readonly number[], drag: readonly number[]) {
  const count = lift.length
  let [meanSquare, meanDrag] = [0, 0]
  for (let index = 0; index < count; index += 1) {
    meanSquare += (lift[index] as number) ** 2 / count
    meanDrag += (drag[index] as number) / count
  }
  let [across, both] = [0, 0]
  for (let index = 0; index < count; index += 1) {
    const offset = (lift[index] as number) ** 2 - meanSquare
    across += offset * offset
    both += offset * ((drag[index] as number) - meanDrag)
  }
  if (!(across > 1e-12 * meanSquare * meanSquare))
    throw new InvalidInput({
      method,
      argument: 'lift',
      value: 'of one size only',
      accepted: 'of at least two sizes, or the two parts of drag cannot be told apart',
    })
  const inducedFactor = both / across
  const zeroLiftDrag = meanDrag - inducedFactor * meanSquare
  if (!(zeroLiftDrag > 0 && inducedFactor > 0))
    throw new InvalidInput({
      method,
      argument: 'the points',
      value: `on a parabola with ${zeroLiftDrag > 0 ? 'an induced factor' : 'a drag at zero lift'} of ${(zeroLiftDrag > 0 ? inducedFactor : zeroLiftDrag).toPrecision(3)}`,
      accepted: 'points whose drag at zero lift is positive and grows with lift',
    })
  return { zeroLiftDrag, inducedFactor, meanDrag }
}
