/** What climbs, descents and level flight have in common, whatever carries the aircraft: layers, length, the speed that is usual. */
import { InvalidInput } from '../errors.js'
import { layer, type Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { ClimbSegment, DescentSegment, LevelSegment, SpeedRule } from './segment.js'

/** Less than this is no climb [m/s]. */
export const leastRate = 0.1

/** The rule where a segment says nothing: what goes somewhere or comes down looks at range, the rest at endurance. */
export function usualSpeed({ kind }: ClimbSegment | DescentSegment | LevelSegment): SpeedRule {
  return kind === 'cruise' || kind === 'divert' || kind === 'descent' ? 'best range' : 'best endurance'
}

/** Climbs or descends in layers of one height; `fly` flies the next one, whose air has been looked up, up by `step` [m]. */
export function flyLayers(
  progress: Progress,
  segment: ClimbSegment | DescentSegment,
  index: number,
  orders: Orders,
  fly: (step: number, first: boolean) => void,
): void {
  const height = segment.to - progress.altitude
  if (segment.kind === 'climb' ? height < 0 : height > 0) refuseAltitude(progress, segment, index, orders)
  const layers = Math.max(1, Math.ceil(Math.abs(height) / layer))
  const step = height / layers
  for (let k = 0; k < layers; k += 1) {
    progress.look(progress.altitude + 0.5 * step)
    fly(step, k === 0)
  }
  progress.altitude = segment.to
}

/** Flies level; a segment at an altitude of its own goes there and back without a climb. */
export function flyLevel(progress: Progress, segment: LevelSegment, fly: (altitude: number) => void): void {
  const { altitude } = progress
  const flown = segment.altitude ?? altitude
  progress.look(flown)
  fly(flown)
  progress.altitude = altitude
}

/** Writes time and distance of level flight at a speed into the leg. */
export function setLength(
  progress: Progress,
  segment: LevelSegment,
  speed: number,
  tailwind: number,
  index: number,
  orders: Orders,
): void {
  const { leg } = progress
  const overGround = speed + tailwind
  if (segment.time !== undefined) {
    leg.duration = segment.time
    leg.distance = segment.time * overGround
    return
  }
  if (segment.distance === undefined && orders.openDistance < 0) progress.meet('sector distance', 0)
  const distance = segment.distance ?? Math.max(0, orders.openDistance)
  if (!(overGround > 0)) refuseWind(tailwind, speed, index, orders)
  leg.duration = distance / overGround
  leg.distance = distance
}

function refuseAltitude(
  progress: Progress,
  segment: ClimbSegment | DescentSegment,
  index: number,
  { method }: Orders,
): never {
  throw new InvalidInput({
    method,
    argument: `segments[${index}].to`,
    value: segment.to,
    unit: 'm',
    accepted: `${segment.kind === 'climb' ? 'at or above' : 'at or below'} the ${progress.altitude.toFixed(1)} m where the ${segment.kind} begins`,
  })
}

function refuseWind(tailwind: number, speed: number, index: number, { method }: Orders): never {
  throw new InvalidInput({
    method,
    argument: `segments[${index}].tailwind`,
    value: tailwind,
    unit: 'm/s',
    accepted: `above ${(-speed).toPrecision(4)} m/s: against more wind than its speed the aircraft never arrives`,
  })
}
