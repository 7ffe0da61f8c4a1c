/** What both ways of flying a mission share: their options, and the way through the segments. */
import { requireFinite, requireNonNegative } from '../check.js'
import { InvalidInput } from '../errors.js'
import type { Length, Speed, TemperatureDifference } from '../quantity.js'
import { silently } from '../recorder.js'
import { requireSegments } from './check-segments.js'
import type { DemandDeficits } from './flown.js'
import { flySegment } from './fly-segment.js'
import type { Flyer, FlyerOptions } from './multirotor.js'
import type { Orders } from './orders.js'
import type { PackTrack } from './pack-track.js'
import { deficitOf, type Grain, Progress } from './progress.js'
import type { Segment } from './segment.js'

export interface DemandOptions {
  /** From `mission.aircraft` or `mission.multirotor`, or their options. */
  readonly aircraft: FlyerOptions
  /** In their order; `mission.segments` checks a list once. */
  readonly segments: readonly Segment[]
  /** Of the field, pressure altitude [m]; 0 when left out. */
  readonly altitude?: Length
  /** From the standard atmosphere [K]; 0 when left out. */
  readonly temperatureOffset?: TemperatureDifference
  /** Along the path, from behind positive, where a segment says nothing [m/s]; 0 when left out. */
  readonly tailwind?: Speed
  /** Of the sector over ground, to be filled by the one cruise without time and distance [m]. Reserve, divert and loiter do not count. */
  readonly distance?: Length
}

export const demandKeys: readonly string[] = [
  'aircraft',
  'segments',
  'altitude',
  'temperatureOffset',
  'tailwind',
  'distance',
]

/** Flies all segments; where a cruise is open, a dry run finds what distance the others leave for it. */
export function flyAll(
  method: string,
  craft: Flyer,
  options: DemandOptions,
  grain: Grain,
  track: PackTrack | undefined,
): { readonly progress: Progress; readonly missing: number } {
  const { altitude = 0, temperatureOffset = 0, tailwind = 0 } = options
  requireFinite(method, 'tailwind', tailwind, 'm/s')
  const segments = requireSegments(method, options.segments)
  const open = openCruise(method, options.distance, segments)
  let openDistance = 0
  if (open !== undefined) {
    // Cut alike, so that the distances of both runs agree to the last digit.
    const dry = new Progress(method, craft, altitude, temperatureOffset, { ...grain, history: false }, undefined)
    silently(() => flyEach(dry, segments, { method, tailwind, openDistance: 0 }))
    openDistance = open - countedDistance(dry)
  }
  const progress = new Progress(method, craft, altitude, temperatureOffset, grain, track)
  flyEach(progress, segments, { method, tailwind, openDistance })
  return { progress, missing: Math.max(0, -openDistance) }
}

function flyEach(progress: Progress, segments: readonly Segment[], orders: Orders): void {
  for (let index = 0; index < segments.length; index += 1)
    flySegment(progress, segments[index] as Segment, index, orders)
}

/** The distance that an open cruise shall fill; undefined where there is none. */
function openCruise(method: string, distance: number | undefined, segments: readonly Segment[]): number | undefined {
  let open = 0
  for (const segment of segments)
    if (segment.kind === 'cruise' && segment.time === undefined && segment.distance === undefined) open += 1
  if (distance !== undefined) requireNonNegative(method, 'distance', distance, 'm')
  if (open === (distance === undefined ? 0 : 1)) return distance
  throw new InvalidInput({
    method,
    argument: 'distance',
    value: distance ?? 'missing',
    unit: 'm',
    accepted:
      distance === undefined
        ? 'given where a cruise has neither time nor distance'
        : `given with one cruise that has neither time nor distance; there are ${open}`,
  })
}

function countedDistance(dry: Progress): number {
  let sum = 0
  for (const { kind, distance } of dry.rows)
    if (kind !== 'reserve' && kind !== 'divert' && kind !== 'loiter') sum += distance
  return sum
}

/** Of what the mission asks of rotors, propeller and sector. */
export function deficitsOf(progress: Progress, distance: number): DemandDeficits {
  const { craft, rotorPeak, propellerPeak, thrustShort } = progress
  const deficits: { -readonly [Key in keyof DemandDeficits]: DemandDeficits[Key] } = { thrust: thrustShort, distance }
  const [liftRating, cruiseRating] = [craft.lift.powerLimit, craft.cruise.powerLimit]
  if (liftRating !== undefined) deficits.liftPower = deficitOf(rotorPeak, liftRating)
  if (cruiseRating !== undefined) deficits.cruisePower = deficitOf(propellerPeak, cruiseRating)
  return deficits
}
