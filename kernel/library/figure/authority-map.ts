import type { Figure, Ink, Mark } from '../../../shared/contracts/figure.js'
import type { Attainable } from '../authority/index.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { buildAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'

export interface AuthorityMapOptions {
  /** From `authority.attainable`, all in one plane. */
  readonly maps: readonly Attainable[]
  /** One per map; "intact" and what is lost when left out. */
  readonly labels?: readonly string[]
  /** Moments that must lie inside: across and up [N m]. */
  readonly required?: readonly (readonly [number, number])[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.authorityMap'
const known = new Set(['maps', 'labels', 'required', 'caption', 'description'])
const inks: readonly Ink[] = ['ink', 'accent', 'second', 'third']

/**
 * Authority map: the moments attainable about two axes, intact and after losses, with what trim asks for.
 *
 * @equation as `authority.attainable`
 * @param options - `maps`: list of `authority.attainable` in one plane; optional `labels`, `required` points `[across, up]` [N m], `caption`, `description`
 * @returns a figure of polygons; where the trim's point lies outside one, hover is not possible there
 * @throws InvalidInput for no maps or maps in different planes, and an unknown option
 * @method Draws what it is given; a map without corners (nothing attainable) is left out and named in the caption's place of labels by its absence.
 * @validity As `authority.attainable`.
 * @source House convention, no publication.
 * @example
 * const four = [1, -1, 1, -1].map((spin, i) => ({
 *   x: Math.cos((i * Math.PI) / 2), y: Math.sin((i * Math.PI) / 2), spin, maxThrust: 500 * u.N, torqueRatio: 0.1,
 * }))
 * const drawn = figure.authorityMap({ maps: [authority.attainable({ rotors: four, weight: 1 * u.kN })] })
 */
export function authorityMap(options: AuthorityMapOptions): Figure {
  checkOptions(method, options, known)
  const { maps, labels, required = [], description } = options
  const first = readMaps(maps)
  const [across, up] = first.plane
  const { caption = `Attainable moments: ${across} and ${up}` } = options
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const shown = maps.flatMap((map, at): Mark[] => {
    if (map.x.length === 0) return []
    const label = labels?.[at] ?? (map.lost.length === 0 ? 'intact' : `${map.lost.join(' and ')} lost`)
    requireCaption(method, `labels[${at}]`, label)
    return [
      {
        mark: 'polygon',
        x: requireSeries(method, `maps[${at}].x`, map.x),
        y: requireSeries(method, `maps[${at}].y`, map.y),
        ink: inks[at % inks.length] ?? 'ink',
        ...(at % 8 >= 4 ? { broken: true } : {}),
        label,
      },
    ]
  })
  const asked = required.length === 0 ? [] : [pointsOf(required)]
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', { label: `${across} moment`, unit: 'N m' }),
    y: buildAxis(method, 'y', { label: `${up} moment`, unit: 'N m' }),
    marks: [...shown, ...asked, { mark: 'dot', x: [first.trim[0]], y: [first.trim[1]], names: ['trim'], ink: 'ink' }],
  })
}

function pointsOf(required: readonly (readonly [number, number])[]): Mark {
  const at = (place: 0 | 1) =>
    requireSeries(
      method,
      'required',
      required.map((point) => point?.[place]),
    )
  return { mark: 'dot', x: at(0), y: at(1), ink: 'warning', label: 'required' }
}

function readMaps(maps: readonly Attainable[]): Attainable {
  const first = Array.isArray(maps) ? maps[0] : undefined
  const sound =
    first !== undefined &&
    maps.length <= 100 &&
    maps.every((map: Attainable) => Array.isArray(map?.plane) && Array.isArray(map.x) && Array.isArray(map.trim)) &&
    maps.every((map: Attainable) => map.plane.join() === first.plane.join() && map.x.length === map.y.length)
  if (!sound)
    throw new InvalidInput({
      method,
      argument: 'maps',
      value: describeValue(maps),
      accepted: 'a list of 1 to 100 answers of authority.attainable in one plane',
    })
  return first as Attainable
}
