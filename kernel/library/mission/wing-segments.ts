/** Segments on the wing: climbs and descents in layers, and level flight for a time or a distance. */
import { InvalidInput } from '../errors.js'
import { advise, isListening } from '../recorder.js'
import { chooseSpeed } from './choose-speed.js'
import { layer, type Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { ClimbSegment, DescentSegment, LevelSegment } from './segment.js'
import { buildTrimPoint, setPropulsion, setTrim } from './trim-point.js'

/** Less than this is no climb [m/s]. */
export const leastRate = 0.1

/** Scratch of the synchronous kernel. */
const point = buildTrimPoint()

export function slope(progress: Progress, segment: ClimbSegment | DescentSegment, index: number, orders: Orders): void {
  const up = segment.kind === 'climb'
  const height = segment.to - progress.altitude
  if (up ? height < 0 : height > 0) refuseAltitude(progress, segment, index, orders)
  const layers = Math.max(1, Math.ceil(Math.abs(height) / layer))
  const step = height / layers
  const { tailwind = orders.tailwind } = segment
  for (let k = 0; k < layers; k += 1) {
    progress.look(progress.altitude + 0.5 * step)
    const { moment, leg, craft } = progress
    const speed = chooseSpeed(progress, segment, up ? 'best endurance' : 'best range', tailwind, index, orders)
    setTrim(point, moment, speed, 0, craft.maximumLift)
    const rate = up ? (segment.rate ?? climbRate(progress, index, orders)) : -(segment.rate ?? 2.5)
    const glide = (point.drag * speed) / moment.weight
    if (k === 0 && -rate > glide && isListening()) adviseSteep(orders.method, -rate, glide, index)
    setPropulsion(point, moment, point.drag + (moment.weight * rate) / speed)
    leg.duration = step / rate
    leg.distance = (Math.sqrt(Math.max(0, speed * speed - rate * rate)) + tailwind) * leg.duration
    flyWing(progress, speed, progress.altitude + step)
  }
  progress.altitude = segment.to
}

/** What the rating leaves over level flight, at the trim of `point`. */
function climbRate(progress: Progress, index: number, { method }: Orders): number {
  const { cruise } = progress.craft
  if (cruise.powerLimit === undefined)
    throw new InvalidInput({
      method,
      argument: `segments[${index}].rate`,
      value: 'missing',
      accepted: 'given where cruise.powerLimit is not: it is the rating that would set the rate',
    })
  const excess = cruise.propellerEfficiency * cruise.powerLimit - point.drag * point.speed
  return Math.max(leastRate, excess / progress.moment.weight)
}

export function refuseAltitude(
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

export function level(progress: Progress, segment: LevelSegment, index: number, orders: Orders): void {
  const { altitude } = progress
  progress.look(segment.altitude ?? altitude)
  const ranging = segment.kind === 'cruise' || segment.kind === 'divert'
  const { tailwind = orders.tailwind } = segment
  const speed = chooseSpeed(progress, segment, ranging ? 'best range' : 'best endurance', tailwind, index, orders)
  setTrim(point, progress.moment, speed, 0, progress.craft.maximumLift)
  setLength(progress, segment, speed, tailwind, index, orders)
  flyWing(progress, speed, segment.altitude ?? altitude)
  // A segment at an altitude of its own goes there and back without a climb.
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

/** Flies the leg at the trim of `point`. */
function flyWing(progress: Progress, speed: number, altitude: number): void {
  const { leg } = progress
  leg.power = point.power
  leg.peak = point.power
  leg.rotorPower = point.rotorPower
  leg.propellerPower = point.propellerPower
  leg.speed = speed
  leg.altitude = altitude
  progress.fly()
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

function adviseSteep(method: string, rate: number, glide: number, index: number): void {
  advise({
    code: 'DESCENT_STEEP',
    method,
    quantity: `segments[${index}].rate`,
    value: rate,
    range: [0, glide],
    message: `The descent at ${rate.toFixed(1)} m/s in segment ${index + 1} is steeper than the glide (${glide.toFixed(1)} m/s there): something must brake, and no power is given back.`,
  })
}
