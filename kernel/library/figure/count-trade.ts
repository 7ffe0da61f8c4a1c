import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import type { CountRow } from '../authority/index.js'
import { requireFinite, requirePositive } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import { buildAxis, requireCaption } from './axis.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'

export interface CountTradeFigureOptions {
  /** From `authority.countTrade`. */
  readonly rows: readonly CountRow[]
  /** Arrangement whose counts are shown; the first row's when left out. */
  readonly arrangement?: CountRow['arrangement']
  readonly caption?: string
  readonly description?: string
}

export interface MassAgainstLossOptions {
  /** From `authority.countTrade` with a unit failure. */
  readonly rows: readonly CountRow[]
  /** `'drives'` (motors and controllers) or `'gross'`; the former when left out. */
  readonly mass?: 'drives' | 'gross'
  readonly caption?: string
  readonly description?: string
}

const known = new Set(['rows', 'arrangement', 'caption', 'description'])
const knownMass = new Set(['rows', 'mass', 'caption', 'description'])
const accepted = 'the rows of authority.countTrade'

/**
 * Rotor count traded: hover power, rating, drive mass and parts over the count, each over its least value.
 *
 * @equation as `authority.countTrade`; value shown = value/least of its line
 * @param options - `rows` of `authority.countTrade`; optional `arrangement` ('rows', 'booms' or 'ring', the first row's), `caption`, `description`
 * @returns a figure of lines over the count
 * @throws InvalidInput for no rows, an arrangement that is not among them, and an unknown option
 * @method Counts of which some loss cannot be held and steered are marked on the line of the rating: what they are rated for does not cover every loss.
 * @validity As `authority.countTrade`.
 * @source House convention, no publication.
 * @example
 * const rows = authority.countTrade({
 *   counts: [6, 8], footprint: { length: 10 * u.m, width: 12 * u.m }, weight: 16 * u.kN, density: 1.1, figureOfMerit: 0.7, tipSpeed: 150 * u.mps,
 * })
 * const drawn = figure.countTrade({ rows, arrangement: 'ring' })
 */
export function countTrade(options: CountTradeFigureOptions): Figure {
  const method = 'figure.countTrade'
  checkOptions(method, options, known)
  const rows = readRows(method, options.rows)
  const names = [...new Set(rows.map((row) => row.arrangement))]
  const arrangement = requireChoice(method, 'arrangement', options.arrangement ?? (names[0] as 'rows'), names)
  const { caption = `Rotor count: ${arrangement}`, description } = options
  const shown = rows.filter((row) => row.arrangement === arrangement).sort((one, other) => one.count - other.count)
  const lines: readonly [string, (row: CountRow) => number][] = [
    ['hover power', (row) => row.hoverPower],
    ['rating over hover', (row) => row.thrustToHover],
    ['motors and controllers', (row) => row.motorMass + row.controllerMass],
    ['parts', (row) => Math.max(row.parts, 1e-9)],
  ]
  const drawn = line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'lift rotors', values: shown.map((row) => row.count) },
    y: { label: 'over the least' },
    series: lines.map(([label, of]) => {
      const values = shown.map((row, at) => {
        requirePositive(method, `${label} of rows[${at}]`, of(row), 'SI')
        return of(row)
      })
      const least = Math.min(...values)
      return { label, values: values.map((value) => value / least) }
    }),
  })
  const open = shown.filter((row) => row.held < row.of || !row.steerable)
  if (open.length === 0) return drawn
  const least = Math.min(...shown.map((row) => row.thrustToHover))
  const marked: Mark = {
    mark: 'dot',
    x: open.map((row) => row.count),
    y: open.map((row) => row.thrustToHover / least),
    ink: 'warning',
    label: 'not every loss held',
  }
  return freezeFigure({ ...drawn, marks: [...drawn.marks, marked] })
}

/**
 * Mass against the chance of losing lift: every count and arrangement, and those that no other beats in both.
 *
 * @equation front: rows for which no other has both less mass and less probability
 * @param options - `rows` of `authority.countTrade` with `unitFailure`; `mass` 'drives' (motors and controllers) or 'gross' ('drives'); `caption`, `description`
 * @returns a figure of dots, named by count and arrangement, and a line through the front; the probability on a logarithmic axis
 * @throws InvalidInput for rows without a probability above 0, and an unknown option
 * @method Draws what it is given.
 * @validity As `authority.countTrade`: the probability rests on the user's unit failure.
 * @source House convention, no publication.
 * @example
 * const rows = authority.countTrade({
 *   counts: [6, 8], footprint: { length: 10 * u.m, width: 12 * u.m }, weight: 16 * u.kN, density: 1.1, figureOfMerit: 0.7, tipSpeed: 150 * u.mps,
 *   unitFailure: 1e-5,
 * })
 * const drawn = figure.massAgainstLoss({ rows })
 */
export function massAgainstLoss(options: MassAgainstLossOptions): Figure {
  const method = 'figure.massAgainstLoss'
  checkOptions(method, options, knownMass)
  const { mass = 'drives', caption = 'Mass against the chance of losing lift', description } = options
  requireChoice(method, 'mass', mass, ['drives', 'gross'])
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  const points = readRows(method, options.rows).map((row, at) => {
    requirePositive(method, `rows[${at}].lossOfLift`, row.lossOfLift as number, '1')
    const x = mass === 'gross' ? row.grossMass : row.motorMass + row.controllerMass
    requireFinite(method, `the mass of rows[${at}]`, x, 'kg')
    return { x, y: row.lossOfLift as number, name: `${row.count} ${row.arrangement}` }
  })
  const beats = (one: { x: number; y: number }, other: { x: number; y: number }) =>
    one.x <= other.x && one.y <= other.y && (one.x < other.x || one.y < other.y)
  const front = points
    .filter((point) => !points.some((other) => beats(other, point)))
    .sort((one, other) => one.x - other.x)
  const named = new Set(front)
  const behind = points.filter((point) => !named.has(point))
  const dots = (list: typeof points, ink: 'accent' | 'second', label: string): Mark[] =>
    list.length === 0
      ? []
      : [
          {
            mark: 'dot',
            x: list.map((point) => point.x),
            y: list.map((point) => point.y),
            names: list.map((point) => point.name),
            ink,
            label,
          },
        ]
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: buildAxis(method, 'x', { label: mass === 'gross' ? 'gross mass' : 'motors and controllers', unit: 'kg' }),
    y: buildAxis(method, 'y', { label: 'chance of losing lift', scale: 'logarithmic' }),
    marks: [
      ...(front.length > 1
        ? [{ mark: 'line', x: front.map((point) => point.x), y: front.map((point) => point.y), ink: 'accent' } as const]
        : []),
      ...dots(behind, 'second', 'beaten'),
      ...dots(front, 'accent', 'not beaten'),
    ],
  })
}

function readRows(method: string, rows: readonly CountRow[]): CountRow[] {
  if (!Array.isArray(rows) || rows.length === 0 || !rows.every((row) => typeof row === 'object' && row !== null))
    throw new InvalidInput({ method, argument: 'rows', value: describeValue(rows), accepted })
  rows.forEach((row: CountRow, at: number) => {
    requireFinite(method, `rows[${at}].count`, row.count, '1')
  })
  return [...rows]
}
