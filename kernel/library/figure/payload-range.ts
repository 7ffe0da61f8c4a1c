import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { PayloadRange } from '../sizing/index.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'
import { memberOf, requireMadeBy } from './made-by.js'

export interface PayloadRangeFigureOptions {
  /** What `sizing.payloadRange` returned, by the label of the line. */
  readonly aircraft: Readonly<Record<string, PayloadRange>>
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.payloadRange'
const known = new Set(['aircraft', 'caption', 'description'])

/**
 * Payload against range, a line per aircraft, with its corners named: full payload, trades, ferry.
 *
 * @equation as `sizing.payloadRange`
 * @param options - `aircraft`: record of what `sizing.payloadRange` returned, by label; optional `caption` ("Payload and range, reserve kept"), `description`
 * @returns a figure: lines that begin at no range with full payload, and named dots
 * @throws InvalidInput for no aircraft, what is none, and an unknown option
 * @method Draws what it is given.
 * @validity As the diagram's.
 * @source House convention, no publication.
 * @example
 * const reach = sizing.payloadRange({ mostPayload: 400 * u.kg, evaluate: (payload, range) => (1 + payload / 1000) * range - 100 * u.km })
 * const drawn = figure.payloadRange({ aircraft: { shuttle: reach } })
 */
export function payloadRange(options: PayloadRangeFigureOptions): Figure {
  checkOptions(method, options, known)
  const { aircraft, caption = 'Payload and range, reserve kept', description } = options
  const entries = typeof aircraft === 'object' && aircraft !== null ? Object.entries(aircraft) : []
  if (entries.length === 0)
    throw new InvalidInput({
      method,
      argument: 'aircraft',
      value: describeValue(aircraft),
      accepted: 'a record of what sizing.payloadRange returned, by label',
    })
  for (const [label, one] of entries)
    requireMadeBy(method, `aircraft.${label}`, one, 'sizing.payloadRange', Array.isArray(memberOf(one, 'corners')))
  const drawn = line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'range', unit: 'km', values: acrossOf(entries[0]?.[1] as PayloadRange), from: 0 },
    y: { label: 'payload', unit: 'kg', from: 0 },
    series: entries.map(([label, one]) => ({ label, x: acrossOf(one), values: upOf(one) })),
  })
  return freezeFigure({
    ...drawn,
    marks: [...drawn.marks, ...entries.map(([, one]) => cornersOf(one, entries.length === 1))],
  })
}

/** Points of the line with the corners among them, so that a trade is a corner of the line too, from no range at full payload. */
function placesOf(one: PayloadRange): readonly { readonly payload: number; readonly range: number }[] {
  const sampled = one.payload.map((payload, index) => ({ payload, range: one.range[index] ?? 0 }))
  const places = [...sampled, ...one.corners].sort((a, b) => b.payload - a.payload)
  return [{ payload: places[0]?.payload ?? 0, range: 0 }, ...places]
}

function acrossOf(one: PayloadRange): readonly number[] {
  return placesOf(one).map((place) => place.range)
}

function upOf(one: PayloadRange): readonly number[] {
  return placesOf(one).map((place) => place.payload)
}

/** Among several aircraft the limits would crowd the picture; the corner's own name stays. */
function cornersOf(one: PayloadRange, alone: boolean): Mark {
  return {
    mark: 'dot',
    x: one.corners.map((corner) => corner.range),
    y: one.corners.map((corner) => corner.payload),
    names: one.corners.map((corner) => (alone ? `${corner.corner}: ${corner.binds}` : corner.corner)),
    ink: 'faint',
  }
}
