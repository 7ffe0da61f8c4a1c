import type { Figure } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { type LineSeries, line } from './line.js'

/** What the figure reads of a blade-element result. */
export interface RotorPolarPoint {
  readonly thrustCoefficient: Ratio
  readonly torqueCoefficient: Ratio
}

export interface RotorPolarOptions {
  /** One curve per entry, its points in the order of their collectives. */
  readonly rotors: readonly { readonly label?: string; readonly loads: readonly RotorPolarPoint[] }[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.rotorPolar'
const known = new Set(['rotors', 'caption', 'description'])
const knownRotor = new Set(['label', 'loads'])

/**
 * Torque over thrust of hovering rotors, against the ideal rotor.
 *
 * @equation ideal: C_Q = C_T^1.5/sqrt(2)
 * @param options - `rotors`: list of `{ label, loads }`, `loads` a list of `rotor.bladeElement` results; `caption` ("Rotor polar"),
 * `description`
 * @returns a figure of lines
 * @throws InvalidInput for no rotors, loads without the two coefficients, and an unknown option
 * @method The curves join the points in their order; the ideal rotor is drawn to the largest thrust coefficient.
 * @validity Hover: in climb the ideal curve is another.
 * @source Momentum theory, as `rotor.hover`.
 * @example
 * const loads = [0.05, 0.1, 0.15].map((collective) =>
 *   rotor.bladeElement({
 *     ...air.standard(0), radius: 1.3, chord: 0.14, blades: 4, tipSpeed: 165, collective, section: { liftSlope: 5.9, minimumDrag: 0.01 },
 *   }),
 * )
 * const polar = figure.rotorPolar({ rotors: [{ label: 'four blades', loads }] })
 */
export function rotorPolar(options: RotorPolarOptions): Figure {
  checkOptions(method, options, known)
  const { rotors, caption = 'Rotor polar', description } = options
  if (!Array.isArray(rotors) || rotors.length === 0)
    throw new InvalidInput({
      method,
      argument: 'rotors',
      value: describeValue(rotors),
      accepted: 'a list of at least one { label, loads }',
    })
  const series = rotors.map(readRotor)
  const most = Math.max(...series.flatMap((one) => Array.from(one.x ?? [])))
  return line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'thrust coefficient', values: [0] },
    y: { label: 'torque coefficient' },
    series: [...series, ...(most > 0 ? [idealRotor(most)] : [])],
  })
}

function readRotor(rotor: RotorPolarOptions['rotors'][number], index: number): LineSeries {
  const at = `rotors[${index}]`
  checkOptions(`${method} ${at}`, rotor, knownRotor)
  const { label, loads } = rotor
  if (!Array.isArray(loads) || loads.length === 0)
    throw new InvalidInput({
      method,
      argument: `${at}.loads`,
      value: describeValue(loads),
      accepted: 'a list of results of rotor.bladeElement',
    })
  return {
    x: loads.map((one: RotorPolarPoint) => one.thrustCoefficient),
    values: loads.map((one: RotorPolarPoint) => one.torqueCoefficient),
    ...(label === undefined ? {} : { label }),
  }
}

function idealRotor(most: number): LineSeries {
  const x = Array.from({ length: 33 }, (_, index) => (most * index) / 32)
  return {
    label: 'ideal',
    x,
    values: x.map((thrust) => (thrust * Math.sqrt(thrust)) / Math.SQRT2),
    ink: 'faint',
    broken: true,
  }
}
