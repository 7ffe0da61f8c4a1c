/** The transition and its return as segments: slices of speed become legs, or one leg where steps are coarse. */
import type { Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { TransitionSegment } from './segment.js'
import { buildSlice, setSlice, speedAt } from './transition-slice.js'
import { buildTrimPoint } from './trim-point.js'

/** Scratch of the synchronous kernel: one set serves all. */
const point = buildTrimPoint()
const slice = buildSlice()

export function convert(progress: Progress, segment: TransitionSegment, stopped: number, orders: Orders): void {
  const outward = segment.kind === 'transition'
  const { acceleration = outward ? 1.5 : 1, tailwind = orders.tailwind } = segment
  progress.look(progress.altitude, stopped)
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
