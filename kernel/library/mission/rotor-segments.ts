/** Segments on the lift rotors alone: hover, vertical climb, landing. */
import { layer } from './orders.js'
import type { Progress } from './progress.js'
import { axialPower } from './rotor-borne.js'

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

export function hover(progress: Progress, time: number): void {
  rotorBorne(progress, 0, time)
}

export function rise(progress: Progress, height: number, rate: number, stopped = 0): void {
  const layers = Math.max(1, Math.ceil(Math.abs(height) / layer))
  const step = height / layers
  for (let k = 0; k < layers; k += 1) {
    progress.look(progress.altitude + 0.5 * step, stopped)
    rotorBorne(progress, rate, step / rate)
  }
}

export function land(progress: Progress, height: number, rate: number, time: number, stopped: number): void {
  if (height > 0) rise(progress, -height, -rate, stopped)
  progress.look(progress.altitude, stopped)
  hover(progress, time)
  progress.leg.speed = height > 0 ? rate : 0
}
