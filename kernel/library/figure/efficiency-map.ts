import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { EfficiencyMap } from '../propeller/efficiency-map.js'
import type { Ratio } from '../quantity.js'
import { buildAxis, requireCaption, requireSeries } from './axis.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'

export interface EfficiencyMapFigureOptions {
  /** From `propeller.efficiencyMap`. */
  readonly map: EfficiencyMap
  /** Efficiencies at which contours are drawn; 0.5 to 0.95 when left out. */
  readonly levels?: readonly Ratio[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.efficiencyMap'
const known = new Set(['map', 'levels', 'caption', 'description'])
const usualLevels: readonly number[] = [0.5, 0.6, 0.7, 0.75, 0.8, 0.825, 0.85, 0.875, 0.9, 0.95]

/**
 * Efficiency of a propeller: contours over advance ratio and blade angle with the best angle as a line; one line for a fixed pitch.
 *
 * @equation as `propeller.efficiencyMap`
 * @param options - `map` of `propeller.efficiencyMap`; `levels` (list), `caption` ("Propeller efficiency"), `description`
 * @returns a figure
 * @throws InvalidInput for what is not a map, and an unknown option
 * @method Contours between the map's points by the renderer; values stay in SI.
 * @validity As the map's.
 * @source House convention, no publication.
 * @example
 * const computed = propeller.efficiencyMap({
 *   ...air.standard(0), radius: 0.9, chord: 0.12, blades: 3, tipSpeed: 190, twist: -0.6, section: { liftSlope: 5.9, minimumDrag: 0.01 },
 *   advanceRatios: [0.4, 0.8, 1.2], bladeAngles: [0.3, 0.5, 0.7],
 * })
 * const drawn = figure.efficiencyMap({ map: computed })
 */
export function efficiencyMap(options: EfficiencyMapFigureOptions): Figure {
  checkOptions(method, options, known)
  const { map, levels = usualLevels, caption = 'Propeller efficiency', description } = options
  const { advanceRatios, bladeAngles, efficiency } = readMap(map)
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const told = description === undefined ? {} : { description }
  if (bladeAngles.length === 1)
    return line({
      caption,
      ...told,
      x: { label: 'advance ratio', values: advanceRatios },
      y: { label: 'efficiency', values: efficiency },
    })
  return freezeFigure({
    figure: 'plot',
    caption,
    ...told,
    x: buildAxis(method, 'x', { label: 'advance ratio' }),
    y: buildAxis(method, 'y', { label: 'blade angle at 75 % radius', unit: 'deg' }),
    marks: [
      {
        mark: 'contour',
        x: bladeAngles.flatMap(() => advanceRatios),
        y: bladeAngles.flatMap((angle) => advanceRatios.map(() => angle)),
        value: efficiency,
        levels: requireSeries(method, 'levels', levels),
        dimension: '1',
        label: 'efficiency',
      },
      {
        mark: 'line',
        x: map.best.map((one) => one.advanceRatio),
        y: map.best.map((one) => one.bladeAngle),
        ink: 'accent',
        label: 'best angle',
      },
    ],
  })
}

function readMap(map: EfficiencyMap): { advanceRatios: number[]; bladeAngles: number[]; efficiency: number[] } {
  if (typeof map !== 'object' || map === null || !Array.isArray(map.best))
    throw new InvalidInput({
      method,
      argument: 'map',
      value: describeValue(map),
      accepted: 'a map of propeller.efficiencyMap',
    })
  const advanceRatios = requireSeries(method, 'map.advanceRatios', map.advanceRatios)
  const bladeAngles = requireSeries(method, 'map.bladeAngles', map.bladeAngles)
  const efficiency = requireSeries(method, 'map.efficiency', map.efficiency)
  if (efficiency.length !== advanceRatios.length * bladeAngles.length)
    throw new InvalidInput({
      method,
      argument: 'map.efficiency',
      value: `a list of ${efficiency.length}`,
      accepted: `a list of ${advanceRatios.length * bladeAngles.length}, one per advance ratio and blade angle`,
    })
  return { advanceRatios, bladeAngles, efficiency }
}
