/** Flight on tilted rotors alone: the power it takes, and the speeds at which it does best. No checks. */
import { brentMinimum, brentRoot } from '../numerics/index.js'
import { glauertRatio } from '../rotor/edgewise.js'
import type { Moment } from './moment.js'
import { downloadAt, type Edgewise, setBladeDrag } from './rotor-borne.js'

/** Advance ratios between which speeds are sought. */
const slowest = 0.01
const fastest = 0.5
/** Of the thrust in hover: the blades' own drag never leaves a disk without any. */
const leastThrust = 0.01

/** Scratch of the synchronous kernel. */
const blades: Edgewise = { thrust: 0, inducedPower: 0, profilePower: 0, hForce: 0 }

/**
 * At the shafts of all rotors, climbing (positive) or sinking at a rate; never below 0. Forces across and along the path as in
 * `rotor.levelFlight`: the H-force goes with the cosine of the tilt, so that the tilt is a closed form.
 */
export function tiltedPower(moment: Moment, speed: number, rate: number): number {
  const { craft, density, diskArea, hoverThrust, weight } = moment
  const slope = rate / speed
  const across = (weight * Math.sqrt(1 - slope * slope)) / (1 - downloadAt(moment, speed))
  const uncovered = 0.5 * density * craft.lift.uncoveredDragArea
  const along = (moment.parasite + uncovered) * speed * speed + weight * slope
  setBladeDrag(blades, moment, speed, across / hoverThrust)
  const tilt = Math.atan2(along + blades.hForce, across)
  const [cosine, sine] = [Math.cos(tilt), Math.sin(tilt)]
  const thrust = Math.max(leastThrust * hoverThrust, across * cosine + along * sine)
  setBladeDrag(blades, moment, speed * cosine, thrust / hoverThrust)
  const hover = Math.sqrt(thrust / (2 * density * diskArea))
  const induced = hover * glauertRatio((speed * cosine) / hover, (speed * sine) / hover)
  return Math.max(0, thrust * (speed * sine + moment.inducedFactor * induced) + blades.profilePower)
}

/** From the battery's terminals. */
function terminalPower(moment: Moment, speed: number): number {
  const { lift, hotelPower } = moment.craft
  return tiltedPower(moment, speed, 0) / lift.efficiency + hotelPower
}

export function leastPowerOnRotors(moment: Moment): number {
  const { tipSpeed } = moment
  return brentMinimum((speed) => tiltedPower(moment, speed, 0), slowest * tipSpeed, fastest * tipSpeed, 1e-8).x
}

/** Of least energy per ground distance; against a wind that leaves no way over ground, the fastest. */
export function bestRangeOnRotors(moment: Moment, tailwind: number): number {
  const [least, most] = [slowest * moment.tipSpeed, fastest * moment.tipSpeed]
  const low = Math.max(least, least - tailwind)
  if (low >= most) return most
  return brentMinimum((speed) => terminalPower(moment, speed) / (speed + tailwind), low, most, 1e-8).x
}

/** At which the rating is used up; that of least power where it never suffices. */
export function fastestOnRotors(moment: Moment, powerLimit: number): number {
  const excess = (speed: number) => tiltedPower(moment, speed, 0) - powerLimit
  const low = leastPowerOnRotors(moment)
  const high = fastest * moment.tipSpeed
  const [below, above] = [excess(low), excess(high)]
  if (below >= 0) return low
  return above <= 0 ? high : brentRoot(excess, low, high, below, above, 1e-12).x
}

/** Of climb at which the rating is used up, between two rates. */
export function climbOnRotors(moment: Moment, speed: number, powerLimit: number, least: number, most: number): number {
  const excess = (rate: number) => tiltedPower(moment, speed, rate) - powerLimit
  const [below, above] = [excess(least), excess(most)]
  if (below >= 0) return least
  return above <= 0 ? most : brentRoot(excess, least, most, below, above, 1e-12).x
}
