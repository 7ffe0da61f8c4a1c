import type { Figure } from '../../../shared/contracts/figure.js'
import { requireNonNegative } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Area } from '../quantity.js'
import { bars } from './bars.js'

export interface DragBreakdownOptions {
  /** Drag areas by part [m^2], for instance `dragAreas` of `drag.buildUp`. */
  readonly dragAreas: Readonly<Record<string, Area>>
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.dragBreakdown'
const known = new Set(['dragAreas', 'caption', 'description'])

/**
 * Where the drag comes from: one bar per part, largest first, with its share of the whole.
 *
 * @equation share = drag area of the part / sum of drag areas
 * @param options - `dragAreas` by part [m^2], `caption` ("Drag breakdown" when left out), `description`
 * @returns a figure of horizontal bars in square metres of drag area
 * @throws InvalidInput for a drag area that is negative or not finite, for no parts, for parts that add up to nothing, and for an
 * unknown option
 * @method Sums what is given; the shares are of that sum.
 * @validity Drag at zero lift; drag due to lift belongs to the polar.
 * @source House convention, no publication.
 * @example
 * const breakdown = figure.dragBreakdown({ dragAreas: { wing: 0.12 * u.m2, body: 0.15 * u.m2, liftRotors: 0.3 * u.m2 } })
 */
export function dragBreakdown(options: DragBreakdownOptions): Figure {
  checkOptions(method, options, known)
  const { dragAreas, caption = 'Drag breakdown', description } = options
  if (typeof dragAreas !== 'object' || dragAreas === null || Array.isArray(dragAreas))
    throw new InvalidInput({
      method,
      argument: 'dragAreas',
      value: describeValue(dragAreas),
      accepted: 'a record of drag areas by part, such as the dragAreas that drag.buildUp returns',
    })
  const parts = Object.entries(dragAreas)
  for (const [part, area] of parts) requireNonNegative(method, `dragAreas.${part}`, area, 'm^2')
  const total = parts.reduce((sum, [, area]) => sum + area, 0)
  if (!(total > 0 && total < Number.POSITIVE_INFINITY))
    throw new InvalidInput({
      method,
      argument: 'dragAreas',
      value: total > 0 ? 'beyond numbers in sum' : 'nothing in sum',
      accepted: 'at least one drag area above 0, and a sum that numbers can hold',
    })
  parts.sort(([, a], [, b]) => b - a)
  return bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: parts.map(([part, area]) => `${spellOut(part)} (${((100 * area) / total).toFixed(1)} %)`),
    values: parts.map(([, area]) => area),
    unit: 'm^2',
    label: 'drag area',
    ink: 'accent',
  })
}

/** `liftRotors` is a name in a cell; `lift rotors` is what a reader reads. */
function spellOut(part: string): string {
  return part.replace(/([a-z0-9])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`)
}
