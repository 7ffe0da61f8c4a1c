import type { Figure, Ink, Mark } from '../../../shared/contracts/figure.js'
import { checkOptions } from '../errors.js'
import type { HotAndHigh } from '../limits/index.js'
import type { Ratio } from '../quantity.js'
import { buildAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface HotAndHighFigureOptions {
  /** What `limits.hotAndHigh` returns. */
  readonly grid: HotAndHigh
  /** Margins at which contours are drawn; -0.2 to 0.4 in steps of a tenth, the ceiling standing for 0, when left out. */
  readonly levels?: readonly Ratio[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.hotAndHigh'
const known = new Set(['grid', 'levels', 'caption', 'description'])
const usualLevels: readonly number[] = [-0.2, -0.1, 0.1, 0.2, 0.3, 0.4]
const inks: readonly Ink[] = ['ink', 'second', 'third', 'accent', 'faint']

/**
 * Hot and high: altitude over temperature, at each place a mark for the limit that is nearest, contours of what is left of it, and the ceiling.
 *
 * @equation as `limits.hotAndHigh`
 * @param options - `grid` of `limits.hotAndHigh`; optional `levels` of margin, `caption` ("Hot and high: what limits"), `description`
 * @returns a figure: one set of dots per limit, contours of the margin (on a grid of two temperatures or more), the ceiling as a line
 * @throws InvalidInput for what is not a grid, and an unknown option
 * @method Contours between the grid's points by the renderer.
 * @validity As the grid's.
 * @source House convention, no publication.
 * @example
 * const lift = { diskArea: 42.5, figureOfMerit: 0.72, download: 0.05, shaftPower: 345 * u.kW }
 * const drawn = figure.hotAndHigh({ grid: limits.hotAndHigh({
 *   altitudes: [0, 1000, 2000, 3000], temperatureOffsets: [-20, 0, 20], margins: (there) => limits.margins({ grossMass: 1637 * u.kg, density: there.density, lift }),
 * }) })
 */
export function hotAndHigh(options: HotAndHighFigureOptions): Figure {
  checkOptions(method, options, known)
  const { grid, levels = usualLevels, caption = 'Hot and high: what limits', description } = options
  const fits = Array.isArray(memberOf(grid, 'rows')) && Array.isArray(memberOf(grid, 'ceilings'))
  requireMadeBy(method, 'grid', grid, 'limits.hotAndHigh', fits)
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', { label: 'temperature from standard', unit: 'K' }),
    y: buildAxis(method, 'y', { label: 'pressure altitude', unit: 'm' }),
    marks: [...contoursOf(grid, levels), ...placesOf(grid), ...ceilingOf(grid)],
  })
}

function contoursOf(grid: HotAndHigh, levels: readonly number[]): Mark[] {
  const wanted = requireSeries(method, 'levels', levels)
  if (grid.temperatureOffsets.length < 2) return []
  return [
    {
      mark: 'contour',
      x: grid.rows.map((row) => row.temperatureOffset),
      y: grid.rows.map((row) => row.altitude),
      value: requireSeries(
        method,
        'the margins',
        grid.rows.map((row) => row.margin),
      ),
      levels: wanted,
      dimension: '1',
      unit: '%',
      ink: 'faint',
      label: 'margin left',
    },
  ]
}

function placesOf(grid: HotAndHigh): Mark[] {
  const limits = [...new Set(grid.rows.map((row) => row.limit))]
  return limits.map((limit, index) => {
    const mine = grid.rows.filter((row) => row.limit === limit)
    return {
      mark: 'dot',
      x: mine.map((row) => row.temperatureOffset),
      y: mine.map((row) => row.altitude),
      ink: inks[index % inks.length] ?? 'ink',
      label: limit,
    }
  })
}

function ceilingOf(grid: HotAndHigh): Mark[] {
  const met = grid.ceilings.filter((one) => one.limit !== 'none in the grid')
  if (met.length < 2) return []
  return [
    {
      mark: 'line',
      x: met.map((one) => one.temperatureOffset),
      y: met.map((one) => one.altitude),
      ink: 'warning',
      label: 'ceiling',
    },
  ]
}
