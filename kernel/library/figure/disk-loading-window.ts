import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions } from '../errors.js'
import type { DiskLoadingWindow } from '../sizing/index.js'
import { bars } from './bars.js'
import { freezeFigure } from './freeze.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface DiskLoadingWindowFigureOptions {
  /** What `sizing.diskLoadingWindow` returns. */
  readonly window: DiskLoadingWindow
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.diskLoadingWindow'
const known = new Set(['window', 'caption', 'description'])

/**
 * Bounds of disk loading as bars: what each leaves, from the least that fits to the most that is allowed, with the design as a rule.
 *
 * @equation as `sizing.diskLoadingWindow`
 * @param options - `window` of `sizing.diskLoadingWindow`; optional `caption` ("Window of disk loading"), `description`
 * @returns a figure of horizontal bars: a bound from above allows the bar, a bound from below forbids it
 * @throws InvalidInput for what is not a window, and an unknown option
 * @method In the order of the window's rows.
 * @validity As the window's.
 * @source House convention, no publication.
 * @example
 * const drawn = figure.diskLoadingWindow({ window: sizing.diskLoadingWindow({
 *   density: 1.098, design: 398 * u.Pa, bounds: [{ kind: 'outwash', speed: 28 * u.mps }, { kind: 'footprint', grossMass: 1637, diskArea: 44 }],
 * }) })
 */
export function diskLoadingWindow(options: DiskLoadingWindowFigureOptions): Figure {
  checkOptions(method, options, known)
  const { window, caption = 'Window of disk loading', description } = options
  requireMadeBy(method, 'window', window, 'sizing.diskLoadingWindow', Array.isArray(memberOf(window, 'rows')))
  const drawn = bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: window.rows.map((row) => `${row.side}: ${row.name}`),
    values: window.rows.map((row) => row.diskLoading),
    unit: 'N/m^2',
    label: 'disk loading',
    ink: 'accent',
  })
  const { design } = window
  if (design === undefined) return drawn
  return freezeFigure({ ...drawn, marks: [...drawn.marks, { mark: 'rule', axis: 'x', at: design, label: 'design' }] })
}
