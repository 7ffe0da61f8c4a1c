/** Figures of what a pack can give: power against charge, and energy against power. */
import type { Figure } from '../../../shared/contracts/figure.js'
import type { AvailablePower, Ragone } from '../battery/index.js'
import { requireFinite } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Ratio, SpecificPower } from '../quantity.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'

export interface PackPowerOptions {
  /** What `battery.availablePower` gave, by the label of the line. */
  readonly curves: Readonly<Record<string, AvailablePower>>
  /** Instants at which a power is needed, per mass of pack. */
  readonly needed?: readonly {
    readonly name: string
    readonly stateOfCharge: Ratio
    readonly specificPower: SpecificPower
  }[]
  readonly caption?: string
  readonly description?: string
}

export interface RagoneFigureOptions {
  /** What `battery.ragone` gave, by the label of the line. */
  readonly curves: Readonly<Record<string, Ragone>>
  readonly caption?: string
  readonly description?: string
}

const knownPower = new Set(['curves', 'needed', 'caption', 'description'])
const knownNeeded = new Set(['name', 'stateOfCharge', 'specificPower'])
const knownRagone = new Set(['curves', 'caption', 'description'])

/**
 * Power available per mass of pack against charge, with the instants at which it is needed.
 *
 * @equation as `battery.availablePower`
 * @param options - `curves`: record of what `battery.availablePower` gave, by label; optional `needed`: list of `{ name, stateOfCharge, specificPower [W/kg] }`, `caption`, `description`
 * @returns a figure: a line per curve and a named dot per need; a dot above its line cannot be met
 * @throws InvalidInput for no curves, something that is none, values that are not finite, and an unknown option
 * @method Draws what it is given.
 * @validity As the curves'.
 * @source House convention, no publication.
 * @example
 * const drawn = figure.packPower({
 *   curves: { warm: battery.availablePower({ cell: battery.cells.power18650, cellShare: 0.7 }) },
 *   needed: [{ name: 'last landing', stateOfCharge: 0.15, specificPower: (700 * u.W) / u.kg }],
 * })
 */
export function packPower(options: PackPowerOptions): Figure {
  const method = 'figure.packPower'
  checkOptions(method, options, knownPower)
  const { needed = [], caption = 'Power the pack can give against charge', description } = options
  const curves = readCurves<AvailablePower>(method, options.curves, 'stateOfCharge', 'battery.availablePower')
  const drawn = line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'state of charge', values: curves[0]?.[1].stateOfCharge as readonly number[] },
    y: { label: 'power per mass of pack', unit: 'W/kg', from: 0 },
    series: curves.map(([label, curve]) => ({ label, x: curve.stateOfCharge, values: curve.specificPower })),
  })
  if (!Array.isArray(needed))
    throw new InvalidInput({ method, argument: 'needed', value: describeValue(needed), accepted: 'a list of needs' })
  if (needed.length === 0) return drawn
  needed.forEach((one, index) => {
    checkOptions(`${method} needed[${index}]`, one, knownNeeded)
    requireFinite(method, `needed[${index}].stateOfCharge`, one.stateOfCharge, '1')
    requireFinite(method, `needed[${index}].specificPower`, one.specificPower, 'W/kg')
  })
  const dots = {
    mark: 'dot' as const,
    x: needed.map((one) => one.stateOfCharge),
    y: needed.map((one) => one.specificPower),
    names: needed.map((one) => String(one.name)),
    ink: 'warning' as const,
    label: 'needed',
  }
  return freezeFigure({ ...drawn, marks: [...drawn.marks, dots] })
}

/**
 * Energy per mass of pack against the power at which it is drawn.
 *
 * @equation as `battery.ragone`
 * @param options - `curves`: record of what `battery.ragone` gave, by label; optional `caption`, `description`
 * @returns a figure: a line per curve
 * @throws InvalidInput for no curves, something that is none, and an unknown option
 * @method Draws what it is given.
 * @validity As the curves'.
 * @source The diagram: Ragone, D. V., SAE paper 680453, 1968 (from memory).
 * @example
 * const drawn = figure.ragone({ curves: { 'power cell': battery.ragone({ cell: battery.cells.power18650, cellShare: 0.7 }) } })
 */
export function ragone(options: RagoneFigureOptions): Figure {
  const method = 'figure.ragone'
  checkOptions(method, options, knownRagone)
  const { caption = 'Energy against the power at which it is drawn', description } = options
  const curves = readCurves<Ragone>(method, options.curves, 'specificEnergy', 'battery.ragone')
  return line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'power per mass of pack', unit: 'W/kg', values: curves[0]?.[1].specificPower as readonly number[] },
    y: { label: 'energy per mass of pack', unit: 'Wh/kg', from: 0 },
    series: curves.map(([label, curve]) => ({ label, x: curve.specificPower, values: curve.specificEnergy })),
  })
}

function readCurves<Curve extends object>(
  method: string,
  curves: Readonly<Record<string, Curve>>,
  key: keyof Curve & string,
  from: string,
): readonly [string, Curve][] {
  const entries = typeof curves === 'object' && curves !== null && !Array.isArray(curves) ? Object.entries(curves) : []
  if (entries.length > 0 && entries.every(([, curve]) => Array.isArray(curve?.[key]))) return entries
  throw new InvalidInput({
    method,
    argument: 'curves',
    value: entries.length === 0 ? describeValue(curves) : 'a record of something else',
    accepted: `a record of what ${from} gave, by label`,
  })
}
