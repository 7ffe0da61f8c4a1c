/**
 * An aircraft at one instant: its mass, the air, how many of its rotors turn, and what follows from them. Inner loops read these
 * numbers and allocate nothing; `setMoment` writes them in place.
 */
import { gravity } from '../air/constants.js'
import { requireRepresentable } from '../check.js'
import type { Aircraft } from './aircraft.js'

export interface Moment {
  craft: Aircraft
  mass: number
  density: number
  weight: number
  /** Thrust of all rotors in hover, download included. */
  hoverThrust: number
  /** v_h^2 of it. */
  loading: number
  /** Induced over ideal power, interference included. */
  inducedFactor: number
  /** Profile power in hover. */
  profilePower: number
  /** Of the rotors that turn, in hover. */
  tipSpeed: number
  /** Disk area of the rotors that turn. */
  diskArea: number
  stallSpeed: number
  /** Least wing-borne speed. */
  floor: number
  /** Where the wing takes over. */
  conversion: number
  /** Lift coefficient of the wing while rotors help. */
  sharingLift: number
  /** Drag of the polar: `parasite` V^2 + `induced` L^2/V^2. */
  parasite: number
  induced: number
}

export function buildMoment(craft: Aircraft, mass: number, density: number): Moment {
  const moment: Moment = {
    craft,
    mass: 0,
    density: 0,
    weight: 0,
    hoverThrust: 0,
    loading: 0,
    inducedFactor: 1,
    profilePower: 0,
    tipSpeed: 0,
    diskArea: 0,
    stallSpeed: 0,
    floor: 0,
    conversion: 0,
    sharingLift: 0,
    parasite: 0,
    induced: 0,
  }
  setMoment(moment, mass, density, 0)
  return moment
}

/** `stopped` rotors of the aircraft's count do not turn; the others carry all. */
export function setMoment(moment: Moment, mass: number, density: number, stopped: number): void {
  const { craft } = moment
  const { lift, polar, wingArea, maximumLift, conversionMargin } = craft
  const weight = mass * gravity
  moment.mass = mass
  moment.density = density
  moment.weight = weight
  const turning = stopped === 0 ? 1 : 1 - stopped / (lift.count as number)
  moment.diskArea = lift.diskArea * turning
  moment.hoverThrust = weight / (1 - lift.download)
  moment.loading = moment.hoverThrust / (2 * density * moment.diskArea)
  // With speed control the rotors left turn faster, so that each blade keeps its coefficient of lift.
  moment.tipSpeed = lift.control === 'speed' ? lift.tipSpeed / Math.sqrt(turning) : lift.tipSpeed
  setLosses(moment)
  moment.stallSpeed = Math.sqrt((2 * weight) / (density * wingArea * maximumLift))
  moment.floor = craft.stallMargin * moment.stallSpeed
  moment.conversion = conversionMargin * moment.stallSpeed
  moment.sharingLift = maximumLift / (conversionMargin * conversionMargin)
  moment.parasite = 0.5 * density * wingArea * polar.zeroLiftDrag
  moment.induced = (2 * polar.inducedFactor) / (density * wingArea)
}

/** Refuses what follows from absurd sizes, before it comes back as Infinity or NaN. */
export function requireMoment(method: string, moment: Moment): void {
  const { stallSpeed, hoverThrust, loading, profilePower, tipSpeed, parasite, induced } = moment
  requireRepresentable(
    method,
    stallSpeed * stallSpeed + hoverThrust + loading + profilePower + tipSpeed + parasite + induced,
  )
}

/** Splits a figure of merit into what grows with thrust and what the blades' drag takes; together they are `rotor.hover`'s power. */
function setLosses(moment: Moment): void {
  const { figureOfMerit, inducedFactor, interference, solidity, profileDrag } = moment.craft.lift
  if (figureOfMerit === undefined) {
    const { density, diskArea, tipSpeed } = moment
    moment.inducedFactor = interference * inducedFactor
    moment.profilePower =
      (density * diskArea * tipSpeed * tipSpeed * tipSpeed * (solidity as number) * (profileDrag as number)) / 8
    return
  }
  const factor = Math.min(inducedFactor, 1 / figureOfMerit)
  const ideal = moment.hoverThrust * Math.sqrt(moment.loading)
  moment.inducedFactor = interference * factor
  moment.profilePower = interference * ideal * (1 / figureOfMerit - factor)
}
