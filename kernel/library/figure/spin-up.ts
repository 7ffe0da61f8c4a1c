import type { Figure, Ink, Mark } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { frequencyAt, type SpinUp } from '../layout/spin-up.js'
import { requireCaption } from './axis.js'
import { freezeFigure } from './freeze.js'

export interface SpinUpFigureOptions {
  /** What `layout.spinUp` returns. */
  readonly spinUp: SpinUp
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.spinUp'
const known = new Set(['spinUp', 'caption', 'description'])
const inks: readonly Ink[] = ['accent', 'second', 'third', 'warning']

/**
 * Natural frequencies and excitations against rotor speed, from standstill through the whole spin-up: where the lines meet, the boom shakes.
 *
 * @equation as `layout.spinUp`
 * @param options - `spinUp`: what `layout.spinUp` returns; optional `caption`, `description`
 * @returns a figure: a line per mode, a fine line per excitation, a dot per meeting, and the range of work as a band
 * @throws InvalidInput for what is no result of `layout.spinUp`, and an unknown option
 * @method Draws the closed forms at 41 speeds.
 * @validity As `layout.spinUp`.
 * @source The diagram: Campbell, W., Transactions of the ASME 46, 1924 (from memory).
 * @example
 * const seen = layout.spinUp({ blades: 2, operating: [1000 * u.rpm, 1300 * u.rpm], modes: [{ name: 'boom, bending', frequency: 14 * u.Hz }] })
 * const drawn = figure.spinUp({ spinUp: seen })
 */
export function spinUp(options: SpinUpFigureOptions): Figure {
  checkOptions(method, options, known)
  const { caption = 'Frequencies against rotor speed over the whole spin-up.', description } = options
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const { modes, orders, operating, crossings } = requireSpinUp(options.spinUp)
  const [low, high] = operating
  const most = 1.12 * high
  const speeds = Array.from({ length: 41 }, (_, step) => (most * step) / 40)
  // Excitations of high order would squeeze the modes to the bottom: the field ends a third above the highest mode or the first order.
  const top =
    1.35 *
    Math.max(
      ...modes.map((mode) => frequencyAt(mode, most)),
      ...crossings.map((one) => one.frequency),
      high / (2 * Math.PI),
    )
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'rotor speed', dimension: 's^-1', unit: 'rpm', from: 0, to: most },
    y: { label: 'frequency', dimension: 's^-1', unit: 'Hz', from: 0, to: top },
    marks: [
      { mark: 'band', x: [low, high], low: [0, 0], high: [top, top], ink: 'faint', label: 'range of work' },
      ...orders.map((order) => excitation(order, most, top)),
      ...modes.map(
        (mode, index): Mark => ({
          mark: 'line',
          x: speeds,
          y: speeds.map((speed) => frequencyAt(mode, speed)),
          ink: inks[index % inks.length] as Ink,
          label: mode.name,
        }),
      ),
      ...meetings(crossings),
    ],
  })
}

/** From standstill to where it leaves the field. */
function excitation(order: number, most: number, top: number): Mark {
  const end = Math.min(most, (2 * Math.PI * top) / order)
  return {
    mark: 'line',
    ...{ x: [0, end], y: [0, (order * end) / (2 * Math.PI)], ink: 'faint' as const, broken: true },
    label: order === 1 ? '1 per turn' : `${order} per turn`,
  }
}

function meetings(crossings: SpinUp['crossings']): readonly Mark[] {
  return (['spin-up', 'working'] as const).flatMap((where): Mark[] => {
    const some = crossings.filter((crossing) => crossing.where === where)
    if (some.length === 0) return []
    return [
      {
        mark: 'dot',
        x: some.map(({ speed }) => speed),
        y: some.map(({ frequency }) => frequency),
        names: some.map(({ speed }) => `${((speed * 30) / Math.PI).toFixed(0)} rpm`),
        ink: where === 'working' ? 'warning' : 'ink',
        label: where === 'working' ? 'meets while working' : 'passed in spin-up',
      },
    ]
  })
}

function requireSpinUp(given: SpinUp): SpinUp {
  const lists = [given?.modes, given?.orders, given?.crossings, given?.operating]
  if (lists.every(Array.isArray) && given.modes.length > 0) return given
  throw new InvalidInput({
    method,
    argument: 'spinUp',
    value: describeValue(given),
    accepted: 'what layout.spinUp returns',
  })
}
