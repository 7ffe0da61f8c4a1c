import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { PowerAgainstSpeed } from '../mission/index.js'
import { line } from './line.js'

export interface PowerAgainstSpeedFigureOptions {
  /** What `mission.powerAgainstSpeed` gave. */
  readonly curve: PowerAgainstSpeed
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.powerAgainstSpeed'
const known = new Set(['curve', 'caption', 'description'])

/**
 * Power of level flight from hover to the greatest speed, split into rotors and propeller.
 *
 * @equation as `mission.powerAgainstSpeed`
 * @param options - `curve` from `mission.powerAgainstSpeed`; optional `caption`, `description`
 * @returns a figure of three lines, with rules at the stall, the conversion and the greatest speed
 * @throws InvalidInput for something that is no such curve, and an unknown option
 * @method Draws what it is given.
 * @validity As the curve's.
 * @source House convention, no publication.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * const drawn = figure.powerAgainstSpeed({ curve: mission.powerAgainstSpeed({ aircraft: craft }) })
 */
export function powerAgainstSpeed(options: PowerAgainstSpeedFigureOptions): Figure {
  checkOptions(method, options, known)
  const { curve, caption = 'Power to fly level, from hover on', description } = options
  if (typeof curve !== 'object' || curve === null || !Array.isArray(curve.speed) || !Array.isArray(curve.rotors))
    throw new InvalidInput({
      method,
      argument: 'curve',
      value: describeValue(curve),
      accepted: 'what mission.powerAgainstSpeed gives',
    })
  const { stallSpeed, conversionSpeed, greatestSpeed } = curve
  return line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'true airspeed', unit: 'm/s', values: curve.speed, from: 0 },
    y: { label: 'power at the terminals', unit: 'kW', from: 0 },
    series: [
      { label: 'all', values: curve.power },
      { label: 'lift rotors', values: curve.rotors },
      { label: 'propeller', values: curve.propeller },
    ],
    rules: [
      { axis: 'x', at: stallSpeed, label: 'stall' },
      { axis: 'x', at: conversionSpeed, label: 'conversion' },
      ...(greatestSpeed === undefined ? [] : [{ axis: 'x' as const, at: greatestSpeed, label: 'rating' }]),
    ],
  })
}
