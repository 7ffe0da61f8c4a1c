/** Segments on the wing: climbs and descents in layers, and level flight for a time or a distance. */
import { InvalidInput } from '../errors.js'
import { advise, isListening } from '../recorder.js'
import { chooseSpeed } from './choose-speed.js'
import { flyLayers, flyLevel, leastRate, setLength, usualSpeed } from './legs.js'
import type { Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { ClimbSegment, DescentSegment, LevelSegment } from './segment.js'
import { buildTrimPoint, setPropulsion, setTrim } from './trim-point.js'

/** Scratch of the synchronous kernel. */
const point = buildTrimPoint()

export function slope(progress: Progress, segment: ClimbSegment | DescentSegment, index: number, orders: Orders): void {
  const { tailwind = orders.tailwind } = segment
  flyLayers(progress, segment, index, orders, (step, first) => {
    const { moment, leg, craft } = progress
    const speed = chooseSpeed(progress, segment, usualSpeed(segment), tailwind, index, orders)
    setTrim(point, moment, speed, 0, craft.maximumLift)
    const rate =
      segment.kind === 'climb' ? (segment.rate ?? climbRate(progress, index, orders)) : -(segment.rate ?? 2.5)
    const glide = (point.drag * speed) / moment.weight
    if (first && -rate > glide && isListening()) adviseSteep(orders.method, -rate, glide, index)
    setPropulsion(point, moment, point.drag + (moment.weight * rate) / speed)
    leg.duration = step / rate
    leg.distance = (Math.sqrt(Math.max(0, speed * speed - rate * rate)) + tailwind) * leg.duration
    flyWing(progress, speed, progress.altitude + step)
  })
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

export function level(progress: Progress, segment: LevelSegment, index: number, orders: Orders): void {
  const { tailwind = orders.tailwind } = segment
  flyLevel(progress, segment, (altitude) => {
    const speed = chooseSpeed(progress, segment, usualSpeed(segment), tailwind, index, orders)
    setTrim(point, progress.moment, speed, 0, progress.craft.maximumLift)
    setLength(progress, segment, speed, tailwind, index, orders)
    flyWing(progress, speed, altitude)
  })
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
