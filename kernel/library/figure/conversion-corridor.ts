import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Corridor } from '../mission/index.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'

export interface ConversionCorridorOptions {
  /** What `mission.corridor` gave. */
  readonly corridor: Corridor
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.conversionCorridor'
const known = new Set(['corridor', 'caption', 'description'])
/** Shares beyond it are cut off: the corridor is read between 0 and 1. */
const top = 1.4

/**
 * The conversion corridor: what share of the weight the rotors may carry, over speed.
 *
 * @equation as `mission.corridor`
 * @param options - `corridor` from `mission.corridor`; optional `caption`, `description`
 * @returns a figure: the open space as a band, the stall and the rotors' limit as lines, the schedule flown, rules at the stall and conversion speed
 * @throws InvalidInput for something that is no corridor, and an unknown option
 * @method Draws what it is given; the band lies between the stall below and the least of the two upper bounds.
 * @validity As the corridor's.
 * @source House convention, no publication.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9, powerLimit: 480 * u.kW },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * const drawn = figure.conversionCorridor({ corridor: mission.corridor({ aircraft: craft }) })
 */
export function conversionCorridor(options: ConversionCorridorOptions): Figure {
  checkOptions(method, options, known)
  const { corridor, caption = 'Conversion corridor', description } = options
  if (typeof corridor !== 'object' || corridor === null || !Array.isArray(corridor.stallShare))
    throw new InvalidInput({
      method,
      argument: 'corridor',
      value: describeValue(corridor),
      accepted: 'what mission.corridor gives',
    })
  const { speed, stallShare, incidenceShare, rotorLimitShare, flownShare } = corridor
  const upper = rotorLimitShare.map((share, at) => Math.min(share, incidenceShare[at] ?? share, top))
  const drawn = line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'true airspeed', unit: 'm/s', values: speed, from: 0 },
    y: { label: 'share of the weight on the rotors', unit: '%', from: 0, to: top },
    series: [
      { label: 'stall', values: stallShare },
      { label: 'rotor limit', values: rotorLimitShare.map((share) => Math.min(share, top)), ink: 'warning' },
      { label: 'flown', values: flownShare, ink: 'accent', broken: true },
    ],
    rules: [
      { axis: 'x', at: corridor.stallSpeed, label: 'stall speed' },
      { axis: 'x', at: corridor.conversionSpeed, label: 'conversion' },
    ],
  })
  const band = {
    mark: 'band' as const,
    x: [...speed],
    low: [...stallShare],
    high: upper.map((share, at) => Math.max(share, stallShare[at] ?? 0)),
    ink: 'faint' as const,
  }
  return freezeFigure({ ...drawn, marks: [band, ...drawn.marks] })
}
