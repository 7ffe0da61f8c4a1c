import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import { requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import type { SpecificPower } from '../quantity.js'
import type { ConstraintDiagram } from '../sizing/index.js'
import { buildAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface ConstraintDiagramFigureOptions {
  /** What `sizing.constraintDiagram` returns. */
  readonly diagram: ConstraintDiagram
  /** Up to which it is drawn [W/kg]; half again of what matters when left out. */
  readonly upTo?: SpecificPower
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.constraintDiagram'
const known = new Set(['diagram', 'upTo', 'caption', 'description'])
const inks = ['ink', 'second', 'third', 'accent'] as const

/**
 * Constraint diagram: power per mass over wing loading, a line for each requirement, the allowed region shaded, the design and the least power marked.
 *
 * @equation as `sizing.constraintDiagram`
 * @param options - `diagram` of `sizing.constraintDiagram`; optional `upTo` [W/kg], `caption` ("Constraint diagram"), `description`
 * @returns a figure: lines, a rule per limit of wing loading, the region, named dots
 * @throws InvalidInput for what is not a diagram, an `upTo` that is not positive, and an unknown option
 * @method Lines end where they leave the picture; the region is bounded above by the picture alone.
 * @validity As the diagram's.
 * @source Form: Raymer, D. P., Aircraft Design: A Conceptual Approach (from memory).
 * @example
 * const drawn = figure.constraintDiagram({ diagram: sizing.constraintDiagram({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 }), propellerEfficiency: 0.84, constraints: [
 *     { kind: 'stall', name: 'conversion', density: 1.1, speed: 45 * u.mps, maximumLift: 1.5, margin: 1.2 }, { kind: 'cruise', density: 1.1, speed: 58 * u.mps },
 *   ],
 * }) })
 */
export function constraintDiagram(options: ConstraintDiagramFigureOptions): Figure {
  checkOptions(method, options, known)
  const { diagram, caption = 'Constraint diagram', description } = options
  const fits = Array.isArray(memberOf(diagram, 'curves')) && memberOf(diagram, 'best') !== undefined
  requireMadeBy(method, 'diagram', diagram, 'sizing.constraintDiagram', fits)
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const top = options.upTo ?? 1.5 * Math.max(diagram.best.specificPower, diagram.design?.specificPower ?? 0, 1)
  requirePositive(method, 'upTo', top, 'W/kg')
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', { label: 'wing loading', unit: 'N/m^2' }),
    y: buildAxis(method, 'y', { label: 'shaft power per gross mass', unit: 'W/kg', from: 0, to: top }),
    marks: [...regionOf(diagram, top), ...linesOf(diagram, top), ...limitsOf(diagram), ...placesOf(diagram, top)],
  })
}

/** Above the envelope, left of the greatest wing loading, below the top of the picture. */
function regionOf(diagram: ConstraintDiagram, top: number): Mark[] {
  const { required, greatestWingLoading, best } = diagram
  const inside = required.wingLoading
    .map((loading, index) => [loading, required.specificPower[index] as number] as const)
    .filter(([loading, power]) => loading < greatestWingLoading && power < top)
  const [first] = inside
  if (first === undefined || best.specificPower >= top) return []
  const last = inside.at(-1) as readonly [number, number]
  const edge = [greatestWingLoading, last[1]] as const
  const outline = [...inside, edge, [greatestWingLoading, top] as const, [first[0], top] as const]
  return [
    {
      mark: 'polygon',
      x: outline.map(([x]) => x),
      y: outline.map(([, y]) => y),
      filled: true,
      ink: 'accent',
      label: 'allowed',
    },
  ]
}

function linesOf(diagram: ConstraintDiagram, top: number): Mark[] {
  return diagram.curves.flatMap((curve, index): Mark[] => {
    const shown = curve.wingLoading
      .map((loading, at) => [loading, curve.specificPower[at] as number] as const)
      .filter(([, power]) => power <= top)
    if (shown.length === 0) return []
    return [
      {
        mark: 'line',
        x: requireSeries(
          method,
          'the wing loadings',
          shown.map(([x]) => x),
        ),
        y: requireSeries(
          method,
          'the powers',
          shown.map(([, y]) => y),
        ),
        ink: inks[index % inks.length] ?? 'ink',
        ...(index >= inks.length ? { broken: true } : {}),
        label: curve.name,
      },
    ]
  })
}

function limitsOf(diagram: ConstraintDiagram): Mark[] {
  return diagram.limits.map((limit) => ({
    mark: 'rule',
    axis: 'x',
    at: limit.wingLoading,
    ink: 'warning',
    label: limit.name,
  }))
}

function placesOf(diagram: ConstraintDiagram, top: number): Mark[] {
  const { best, design } = diagram
  const places = [{ ...best, name: 'least power' }]
  if (design !== undefined) places.push({ ...design, name: design.feasible ? 'design' : 'design (not met)' })
  const shown = places.filter((place) => place.specificPower > 0 && place.specificPower <= top)
  if (shown.length === 0) return []
  return [
    {
      mark: 'dot',
      x: shown.map((place) => place.wingLoading),
      y: shown.map((place) => place.specificPower),
      names: shown.map((place) => place.name),
      ink: 'ink',
    },
  ]
}
