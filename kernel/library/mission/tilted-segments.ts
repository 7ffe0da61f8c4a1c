/** Climb, level flight and descent of an aircraft on rotors alone. */
import { InvalidInput } from '../errors.js'
import { advise, isListening } from '../recorder.js'
import { flyLayers, flyLevel, leastRate, setLength, usualSpeed } from './legs.js'
import type { Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { ClimbSegment, DescentSegment, LevelSegment, SpeedRule } from './segment.js'
import { bestRangeOnRotors, climbOnRotors, fastestOnRotors, leastPowerOnRotors, tiltedPower } from './tilted-rotors.js'

/** Sine of the steepest path: 30 degrees. */
const steepest = 0.5
const greatestAdvanceRatio = 0.3

export function slopeOnRotors(
  progress: Progress,
  segment: ClimbSegment | DescentSegment,
  index: number,
  orders: Orders,
): void {
  const { tailwind = orders.tailwind } = segment
  flyLayers(progress, segment, index, orders, (step) => {
    const speed = chooseSpeed(progress, segment, tailwind, index, orders)
    const rate =
      segment.kind === 'climb'
        ? (segment.rate ?? climbRate(progress, speed, index, orders))
        : -(segment.rate ?? Math.min(2.5, steepest * speed))
    if (Math.abs(rate) > steepest * speed) refuseSteep(segment, rate, speed, index, orders)
    progress.leg.duration = step / rate
    progress.leg.distance = (Math.sqrt(speed * speed - rate * rate) + tailwind) * progress.leg.duration
    flyTilted(progress, speed, rate, progress.altitude + step, index, orders)
  })
}

export function levelOnRotors(progress: Progress, segment: LevelSegment, index: number, orders: Orders): void {
  const { tailwind = orders.tailwind } = segment
  flyLevel(progress, segment, (altitude) => {
    const speed = chooseSpeed(progress, segment, tailwind, index, orders)
    setLength(progress, segment, speed, tailwind, index, orders)
    flyTilted(progress, speed, 0, altitude, index, orders)
  })
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

function chooseSpeed(
  progress: Progress,
  segment: ClimbSegment | DescentSegment | LevelSegment,
  tailwind: number,
  index: number,
  orders: Orders,
): number {
  const { speed = usualSpeed(segment) } = segment
  return typeof speed === 'number' ? speed : byRule(progress, speed, tailwind, index, orders)
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
