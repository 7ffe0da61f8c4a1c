/** A slice of a transition between two speeds: time, distance and energy by Gauss's rule of two points, peaks at its ends as well. */
import type { Moment } from './moment.js'
import { greatestThrust, setPropulsion, setTrim, type TrimPoint } from './trim-point.js'

/** Written in place by `setSlice`. */
export interface Slice {
  /** [s] */
  time: number
  /** Through the air [m]. */
  distance: number
  /** At the terminals [J]. */
  energy: number
  /** Greatest of the slice, at the terminals [W]. */
  peakPower: number
  peakRotorPower: number
  peakPropellerPower: number
  /** Shaft power of the propeller that the whole acceleration would take [W]. */
  ratingNeeded: number
  /** Thrust lacking for a tenth of the acceleration [N]; 0 where it is there. */
  thrustShort: number
}

export function buildSlice(): Slice {
  return {
    time: 0,
    distance: 0,
    energy: 0,
    peakPower: 0,
    peakRotorPower: 0,
    peakPropellerPower: 0,
    ratingNeeded: 0,
    thrustShort: 0,
  }
}

/** Where thrust lacks, the aircraft accelerates with what there is; with less than this share of the wish it counts as stuck. */
const leastShare = 0.1
const gauss = 0.5 / Math.sqrt(3)

/** From one speed to another at an acceleration of the given size; `point` holds the trim at the slice's end. */
export function setSlice(
  slice: Slice,
  point: TrimPoint,
  moment: Moment,
  from: number,
  to: number,
  acceleration: number,
): void {
  slice.time = 0
  slice.distance = 0
  slice.energy = 0
  slice.peakPower = 0
  slice.peakRotorPower = 0
  slice.peakPropellerPower = 0
  slice.ratingNeeded = 0
  slice.thrustShort = 0
  const middle = 0.5 * (from + to)
  const width = to - from
  visit(slice, point, moment, from, width, acceleration, 0)
  visit(slice, point, moment, middle - gauss * width, width, acceleration, 0.5)
  visit(slice, point, moment, middle + gauss * width, width, acceleration, 0.5)
  visit(slice, point, moment, to, width, acceleration, 0)
}

function visit(
  slice: Slice,
  point: TrimPoint,
  moment: Moment,
  speed: number,
  width: number,
  acceleration: number,
  weight: number,
): void {
  const wanted = width >= 0 ? acceleration : -acceleration
  setTrim(point, moment, speed, wanted, moment.sharingLift)
  const flown = width >= 0 ? limitAcceleration(slice, point, moment, wanted) : wanted
  const time = (weight * width) / flown
  slice.time += time
  slice.distance += speed * time
  slice.energy += point.power * time
  slice.peakPower = Math.max(slice.peakPower, point.power)
  slice.peakRotorPower = Math.max(slice.peakRotorPower, point.rotorPower)
  slice.peakPropellerPower = Math.max(slice.peakPropellerPower, point.propellerPower)
}

/** The acceleration that the propeller can give; the trim is set anew where that is less than wanted. */
function limitAcceleration(slice: Slice, point: TrimPoint, moment: Moment, wanted: number): number {
  const { speed, drag, propellerThrust } = point
  slice.ratingNeeded = Math.max(slice.ratingNeeded, point.propellerPower)
  const available = greatestThrust(moment, speed)
  if (propellerThrust <= available) return wanted
  const least = leastShare * wanted
  slice.thrustShort = Math.max(slice.thrustShort, drag + moment.mass * least - available)
  const flown = Math.max(least, (available - drag) / moment.mass)
  setPropulsion(point, moment, drag + moment.mass * flown)
  return flown
}

/** Ends of the slices: most of them while the wing takes over, the rest from there to the wing-borne end. */
export function speedAt(index: number, count: number, conversion: number, end: number): number {
  if (end <= conversion) return (end * index) / count
  const sharing = Math.max(1, Math.round(0.75 * count))
  if (index <= sharing) return (conversion * index) / sharing
  return conversion + ((end - conversion) * (index - sharing)) / (count - sharing)
}
