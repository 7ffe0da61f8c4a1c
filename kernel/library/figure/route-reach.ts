import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import { checkOptions } from '../errors.js'
import type { ReachGap, RouteReach } from '../limits/index.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface RouteReachFigureOptions {
  /** What `limits.routeReach` returns. */
  readonly route: RouteReach
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.routeReach'
const known = new Set(['route', 'caption', 'description'])

/**
 * Reach along a route after the loss of the cruise propulsor, against the distance to the site that serves best; gaps are shaded.
 *
 * @equation as `limits.routeReach`
 * @param options - `route` of `limits.routeReach`; optional `caption` ("Reach after loss of the cruise propulsor"), `description`
 * @returns a figure: lines for reach, glide alone and distance to the site, a band over each gap
 * @throws InvalidInput for what is not a route, and an unknown option
 * @method Draws what it is given.
 * @validity As the route's.
 * @source House convention, no publication.
 * @example
 * const route = limits.routeReach({
 *   length: 40 * u.km, height: 450 * u.m, liftToDrag: 12, sites: [{ name: 'south', along: 0, runway: true }, { name: 'north', along: 40 * u.km, runway: true }],
 * })
 * const drawn = figure.routeReach({ route })
 */
export function routeReach(options: RouteReachFigureOptions): Figure {
  checkOptions(method, options, known)
  const { route, caption = 'Reach after loss of the cruise propulsor', description } = options
  const fits = Array.isArray(memberOf(route, 'points')) && Array.isArray(memberOf(route, 'gaps'))
  requireMadeBy(method, 'route', route, 'limits.routeReach', fits)
  const { points } = route
  const rotorBorne = points.some((point) => point.reach > point.glide)
  const drawn = line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'flown', unit: 'km', values: points.map((point) => point.along) },
    y: { label: 'distance', unit: 'km', from: 0 },
    series: [
      { label: 'nearest site', values: points.map((point) => point.distance), ink: 'ink' },
      { label: rotorBorne ? 'glide, then rotors' : 'glide', values: points.map((point) => point.reach), ink: 'accent' },
      ...(rotorBorne
        ? [{ label: 'glide alone', values: points.map((point) => point.glide), ink: 'second' as const, broken: true }]
        : []),
    ],
  })
  return freezeFigure({ ...drawn, marks: [...route.gaps.flatMap((gap) => bandOf(gap, route)), ...drawn.marks] })
}

/** From the reach up to the distance that is lacking; only the first carries the label of all. */
function bandOf(gap: ReachGap, route: RouteReach): Mark[] {
  const inside = route.points.filter((point) => point.along >= gap.from && point.along <= gap.to)
  if (inside.length < 2) return []
  return [
    {
      mark: 'band',
      x: inside.map((point) => point.along),
      low: inside.map((point) => Math.min(point.reach, point.distance)),
      high: inside.map((point) => Math.max(point.reach, point.distance)),
      ink: 'warning',
      ...(gap === route.gaps[0] ? { label: 'out of reach' } : {}),
    },
  ]
}
