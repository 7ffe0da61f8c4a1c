/** How each kind of segment is flown: it fills in legs of constant power and hands them to the mission under way. */
import { InvalidInput } from '../errors.js'
import { chooseSpeed } from './choose-speed.js'
import type { Progress } from './progress.js'
import { axialPower } from './rotor-borne.js'
import type { ClimbSegment, DescentSegment, LevelSegment, Segment, TransitionSegment } from './segment.js'
import { buildSlice, setSlice, speedAt } from './transition-slice.js'
import { requireStopped } from './trim.js'
import { buildTrimPoint, setPropulsion, setTrim } from './trim-point.js'

/** What the segments of one mission share. */
export interface Orders {
  readonly method: string
  /** Along the path, from behind positive; where a segment says nothing. */
  readonly tailwind: number
  /** Over ground, of a cruise without time and distance; negative where the others already fly further than the sector. */
  readonly openDistance: number
}

/** Air changes little over this height [m]. */
const layer = 500
/** Less than this is no climb [m/s]. */
const leastRate = 0.1

/** Scratch of the synchronous kernel: one set serves all. */
const point = buildTrimPoint()
const slice = buildSlice()

export function flySegment(progress: Progress, segment: Segment, index: number, orders: Orders): void {
  progress.begin(segment, index)
  progress.look(progress.altitude)
  switch (segment.kind) {
    case 'hover':
      hover(progress, segment.time)
      break
    case 'vertical climb':
      rise(progress, segment.height, segment.rate)
      break
    case 'balked landing':
      hover(progress, segment.time ?? 10)
      rise(progress, segment.height ?? 30, segment.rate ?? 2.5)
      break
    case 'landing':
      land(
        progress,
        segment.height ?? 0,
        segment.rate ?? 2,
        segment.time ?? 0,
        stoppedOf(progress, segment, index, orders),
      )
      break
    case 'transition':
    case 'return transition':
      convert(progress, segment, index, orders)
      break
    case 'climb':
    case 'descent':
      slope(progress, segment, index, orders)
      break
    default:
      level(progress, segment, index, orders)
  }
  progress.end(segment)
}

function stoppedOf(
  progress: Progress,
  segment: { readonly stoppedRotors?: number },
  index: number,
  { method }: Orders,
): number {
  const { stoppedRotors = 0 } = segment
  if (stoppedRotors > 0)
    requireStopped(method, `segments[${index}].stoppedRotors`, progress.craft.lift.count, stoppedRotors)
  return stoppedRotors
}

/** On the rotors, climbing (positive) or sinking for a time. */
function rotorBorne(progress: Progress, climbSpeed: number, duration: number): void {
  const { leg, craft, moment } = progress
  leg.rotorPower = axialPower(moment, climbSpeed)
  leg.propellerPower = 0
  leg.power = leg.rotorPower / craft.lift.efficiency + craft.hotelPower
  leg.peak = leg.power
  leg.duration = duration
  leg.distance = 0
  leg.speed = Math.abs(climbSpeed)
  leg.altitude = progress.altitude + climbSpeed * duration
  progress.fly()
}

function hover(progress: Progress, time: number): void {
  rotorBorne(progress, 0, time)
}

function rise(progress: Progress, height: number, rate: number, stopped = 0): void {
  const layers = Math.max(1, Math.ceil(Math.abs(height) / layer))
  const step = height / layers
  for (let k = 0; k < layers; k += 1) {
    progress.look(progress.altitude + 0.5 * step, stopped)
    rotorBorne(progress, rate, step / rate)
  }
}

function land(progress: Progress, height: number, rate: number, time: number, stopped: number): void {
  if (height > 0) rise(progress, -height, -rate, stopped)
  progress.look(progress.altitude, stopped)
  hover(progress, time)
  progress.leg.speed = height > 0 ? rate : 0
}

function convert(progress: Progress, segment: TransitionSegment, index: number, orders: Orders): void {
  const outward = segment.kind === 'transition'
  const { acceleration = outward ? 1.5 : 1, tailwind = orders.tailwind } = segment
  progress.look(progress.altitude, stoppedOf(progress, segment, index, orders))
  const { moment, leg } = progress
  const { slices, together } = progress.grain
  const end = segment.speed ?? moment.floor
  clearLeg(progress)
  for (let k = 0; k < slices; k += 1) {
    const from = speedAt(outward ? k : slices - k, slices, moment.conversion, end)
    const to = speedAt(outward ? k + 1 : slices - k - 1, slices, moment.conversion, end)
    setSlice(slice, point, moment, from, to, acceleration)
    addSlice(progress, tailwind)
    leg.speed = Math.max(from, to)
    if (together && k < slices - 1) continue
    progress.fly()
    clearLeg(progress)
  }
  leg.power = point.power
  leg.speed = end
}

function clearLeg({ leg, altitude }: Progress): void {
  leg.duration = 0
  leg.power = 0
  leg.peak = 0
  leg.rotorPower = 0
  leg.propellerPower = 0
  leg.distance = 0
  leg.altitude = altitude
}

/** Adds the slice to the leg, whose power is the mean of what it holds. */
function addSlice(progress: Progress, tailwind: number): void {
  const { leg } = progress
  const duration = leg.duration + slice.time
  leg.power = (leg.power * leg.duration + slice.energy) / duration
  leg.duration = duration
  leg.peak = Math.max(leg.peak, slice.peakPower)
  leg.rotorPower = Math.max(leg.rotorPower, slice.peakRotorPower)
  leg.propellerPower = Math.max(leg.propellerPower, slice.peakPropellerPower)
  leg.distance += slice.distance + tailwind * slice.time
  progress.thrustShort = Math.max(progress.thrustShort, slice.thrustShort)
  if (slice.thrustShort > 0) progress.meet('cruise thrust', 0)
}

function slope(progress: Progress, segment: ClimbSegment | DescentSegment, index: number, orders: Orders): void {
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

function level(progress: Progress, segment: LevelSegment, index: number, orders: Orders): void {
  const { altitude } = progress
  progress.look(segment.altitude ?? altitude)
  const ranging = segment.kind === 'cruise' || segment.kind === 'divert'
  const { tailwind = orders.tailwind } = segment
  const speed = chooseSpeed(progress, segment, ranging ? 'best range' : 'best endurance', tailwind, index, orders)
  const { moment, leg, craft } = progress
  setTrim(point, moment, speed, 0, craft.maximumLift)
  const overGround = speed + tailwind
  if (segment.time !== undefined) {
    leg.duration = segment.time
    leg.distance = segment.time * overGround
  } else {
    if (segment.distance === undefined && orders.openDistance < 0) progress.meet('sector distance', 0)
    const distance = segment.distance ?? Math.max(0, orders.openDistance)
    if (!(overGround > 0)) refuseWind(tailwind, speed, index, orders)
    leg.duration = distance / overGround
    leg.distance = distance
  }
  flyWing(progress, speed, segment.altitude ?? altitude)
  // A segment at an altitude of its own goes there and back without a climb.
  progress.altitude = altitude
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
