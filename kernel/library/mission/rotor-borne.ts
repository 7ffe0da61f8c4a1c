/** Shaft power of the lift rotors: hovering, along their axis, and edgewise with the wing beside them. No checks, no allocation. */
import { inducedVelocity } from '../rotor/axial-inflow.js'
import type { Moment } from './moment.js'

/** In hover (0), vertical climb or descent (negative); never below 0: what the air drives is not fed back. */
export function axialPower(moment: Moment, climbSpeed: number): number {
  const { hoverThrust, loading, inducedFactor, profilePower } = moment
  const induced = inducedVelocity(climbSpeed, loading)
  return Math.max(0, hoverThrust * (climbSpeed + inducedFactor * induced) + profilePower)
}

/** What the rotors do in edgewise flight; written in place. */
export interface Edgewise {
  thrust: number
  inducedPower: number
  profilePower: number
  /** Along the disk, rearward. */
  hForce: number
}

/** With pitch control rotors are slowed down over the last tenth of their lift, so that power ends without a step (house model). */
const spinDown = 0.1

/** Wakes that are swept back let go of the wing: the download falls with the cosine squared of their skew (house model). */
export function downloadAt(moment: Moment, speed: number): number {
  return moment.craft.lift.download / (1 + (speed * speed) / moment.loading)
}

/** Smooth from 0 to 1 as the thrust over that of hover goes from 0 to a tenth. */
export function turningShare(thrustRatio: number): number {
  const x = Math.min(1, thrustRatio / spinDown)
  return x * x * (3 - 2 * x)
}

/** Rotors with disks level with the stream that lift `lift`; equations as `rotor.edgewise`, inflow in closed form. */
export function setEdgewise(to: Edgewise, moment: Moment, speed: number, lift: number): void {
  const thrust = lift / (1 - downloadAt(moment, speed))
  const ratio = thrust / moment.hoverThrust
  const loading = moment.loading * ratio
  const square = speed * speed
  const induced =
    loading > 0 ? loading * Math.sqrt(2 / (square + Math.sqrt(square * square + 4 * loading * loading))) : 0
  to.thrust = thrust
  to.inducedPower = moment.inducedFactor * thrust * induced
  setBladeDrag(to, moment, speed, ratio)
}

/** Writes profile power and H-force; with speed control the tip speed follows the root of the thrust. */
export function setBladeDrag(to: Edgewise, moment: Moment, speed: number, ratio: number): void {
  const { profilePower, tipSpeed, craft } = moment
  const advance = speed / tipSpeed
  if (craft.lift.control === 'speed') {
    const turns = Math.sqrt(ratio)
    to.profilePower = profilePower * turns * (ratio + 1.65 * advance * advance)
    to.hForce = (3 * advance * profilePower * turns) / tipSpeed
    return
  }
  const turning = turningShare(ratio)
  to.profilePower = profilePower * turning * (1 + 1.65 * advance * advance)
  to.hForce = (3 * advance * profilePower * turning) / tipSpeed
}
