/** Climb, level flight and descent of an aircraft on rotors alone. */
import { InvalidInput } from '../errors.js'
import { advise, isListening } from '../recorder.js'
import { layer, type Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { ClimbSegment, DescentSegment, LevelSegment, SpeedChoice, SpeedRule } from './segment.js'
import { bestRangeOnRotors, climbOnRotors, fastestOnRotors, leastPowerOnRotors, tiltedPower } from './tilted-rotors.js'
import { leastRate, refuseAltitude, setLength } from './wing-segments.js'

/** Sine of the steepest path: 30 degrees. */
const steepest = 0.5
const greatestAdvanceRatio = 0.3

export function slopeOnRotors(
  progress: Progress,
  segment: ClimbSegment | DescentSegment,
  index: number,
  orders: Orders,
): void {
  const up = segment.kind === 'climb'
  const height = segment.to - progress.altitude
  if (up ? height < 0 : height > 0) refuseAltitude(progress, segment, index, orders)
  const layers = Math.max(1, Math.ceil(Math.abs(height) / layer))
  const step = height / layers
  const { tailwind = orders.tailwind } = segment
  for (let k = 0; k < layers; k += 1) {
    progress.look(progress.altitude + 0.5 * step)
    const speed = chooseSpeed(
      progress,
      segment.speed ?? (up ? 'best endurance' : 'best range'),
      tailwind,
      index,
      orders,
    )
    const rate = up
      ? (segment.rate ?? climbRate(progress, speed, index, orders))
      : -(segment.rate ?? Math.min(2.5, steepest * speed))
    if (Math.abs(rate) > steepest * speed) refuseSteep(segment, rate, speed, index, orders)
    progress.leg.duration = step / rate
    progress.leg.distance = (Math.sqrt(speed * speed - rate * rate) + tailwind) * progress.leg.duration
    flyTilted(progress, speed, rate, progress.altitude + step, index, orders)
  }
  progress.altitude = segment.to
}

export function levelOnRotors(progress: Progress, segment: LevelSegment, index: number, orders: Orders): void {
  const { altitude } = progress
  progress.look(segment.altitude ?? altitude)
  const ranging = segment.kind === 'cruise' || segment.kind === 'divert'
  const { tailwind = orders.tailwind } = segment
  const { speed: choice = ranging ? 'best range' : 'best endurance' } = segment
  const speed = chooseSpeed(progress, choice, tailwind, index, orders)
  setLength(progress, segment, speed, tailwind, index, orders)
  flyTilted(progress, speed, 0, segment.altitude ?? altitude, index, orders)
  // A segment at an altitude of its own goes there and back without a climb.
  progress.altitude = altitude
}

function flyTilted(
  progress: Progress,
  speed: number,
  rate: number,
  altitude: number,
  index: number,
  { method }: Orders,
): void {
  const { leg, craft, moment } = progress
  leg.rotorPower = tiltedPower(moment, speed, rate)
  leg.propellerPower = 0
  leg.power = leg.rotorPower / craft.lift.efficiency + craft.hotelPower
  leg.peak = leg.power
  leg.speed = speed
  leg.altitude = altitude
  const advanceRatio = speed / moment.tipSpeed
  if (advanceRatio > greatestAdvanceRatio && isListening()) adviseAdvance(method, advanceRatio, index)
  progress.fly()
}

function chooseSpeed(progress: Progress, choice: SpeedChoice, tailwind: number, index: number, orders: Orders): number {
  return typeof choice === 'number' ? choice : byRule(progress, choice, tailwind, index, orders)
}

function byRule({ moment, craft }: Progress, rule: SpeedRule, tailwind: number, index: number, orders: Orders): number {
  if (rule === 'best range') return bestRangeOnRotors(moment, tailwind)
  if (rule === 'best endurance') return leastPowerOnRotors(moment)
  const { powerLimit } = craft.lift
  if (powerLimit !== undefined) return fastestOnRotors(moment, powerLimit)
  throw new InvalidInput({
    method: orders.method,
    argument: `segments[${index}].speed`,
    value: 'the text "power limit"',
    accepted: 'a speed or another rule where lift.powerLimit is not given',
  })
}

/** What the rating of the rotors leaves over level flight. */
function climbRate({ moment, craft }: Progress, speed: number, index: number, { method }: Orders): number {
  const { powerLimit } = craft.lift
  if (powerLimit !== undefined) {
    const most = steepest * speed
    return climbOnRotors(moment, speed, powerLimit, Math.min(leastRate, most), most)
  }
  throw new InvalidInput({
    method,
    argument: `segments[${index}].rate`,
    value: 'missing',
    accepted: 'given where lift.powerLimit is not: it is the rating that would set the rate',
  })
}

function refuseSteep(
  { kind }: ClimbSegment | DescentSegment,
  rate: number,
  speed: number,
  index: number,
  { method }: Orders,
): never {
  throw new InvalidInput({
    method,
    argument: `segments[${index}].rate`,
    value: Math.abs(rate),
    unit: 'm/s',
    accepted: `at most half of the ${speed.toPrecision(4)} m/s of flight, a path of 30 degrees`,
    remedy: kind === 'climb' ? 'A "vertical climb" goes straight up.' : 'A "landing" with a height goes straight down.',
  })
}

function adviseAdvance(method: string, advanceRatio: number, index: number): void {
  advise({
    code: 'ADVANCE_RATIO',
    method,
    quantity: `segments[${index}].speed`,
    value: advanceRatio,
    range: [0, greatestAdvanceRatio],
    message: `Segment ${index + 1} is flown at an advance ratio of ${advanceRatio.toPrecision(3)}: reversed flow and stall of the retreating blade grow, and profile power is then too low (fit to 0.3).`,
  })
}
