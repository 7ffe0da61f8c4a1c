/** Loads of a whole blade: the annuli solved one by one and added up. */
import type { Polar } from '../section/polar.js'
import { Annulus } from './annulus.js'
import type { Blade } from './blade.js'

export interface BladeConditions {
  readonly blade: Blade
  readonly polar: Polar
  /** Added to the twist [rad]. */
  readonly pitch: number
  /** [m/s] */
  readonly tipSpeed: number
  /** Along the thrust [m/s]. */
  readonly axialSpeed: number
  /** [kg/m^3] */
  readonly density: number
  /** [Pa s] */
  readonly dynamicViscosity: number
  /** [m/s] */
  readonly speedOfSound: number
  readonly losses: boolean
  readonly swirl: boolean
}

export interface BladeLoads {
  /** Of all blades [N]. */
  readonly thrust: number
  /** Of all blades [N m]. */
  readonly torque: number
  /** At the shaft [W]. */
  readonly power: number
  /** Of section drag [W]. */
  readonly profilePower: number
  /** Stalled part of the span. */
  readonly stalledShare: number
  /** At 75 % radius. */
  readonly reynolds: number
  /** Of the tip's path. */
  readonly tipMach: number
}

export function bladeLoads(conditions: BladeConditions): BladeLoads {
  const { blade, pitch, tipSpeed, axialSpeed, density, dynamicViscosity, speedOfSound } = conditions
  const reynoldsScale = (density * tipSpeed * blade.radius) / dynamicViscosity
  const climb = axialSpeed / tipSpeed
  const annulus = new Annulus({
    polar: conditions.polar,
    blades: blade.blades,
    root: blade.root,
    climb,
    machScale: tipSpeed / speedOfSound,
    reynoldsScale,
    losses: conditions.losses,
    swirl: conditions.swirl,
  })
  let normal = 0
  let moment = 0
  let profile = 0
  let stalled = 0
  let reynolds = 0
  for (let i = 0; i < blade.station.length; i += 1) {
    const station = blade.station[i] as number
    const chord = blade.chord[i] as number
    const width = blade.width[i] as number
    annulus.solve(station, chord, pitch + (blade.twist[i] as number))
    const { speed } = annulus
    const area = speed * speed * chord * width
    normal += area * annulus.normal
    moment += area * annulus.tangential * station
    profile += area * speed * annulus.drag
    if (annulus.stalled) stalled += width
    if (reynolds === 0 && station >= 0.75) reynolds = speed * chord * reynoldsScale
  }
  const force = 0.5 * density * tipSpeed * tipSpeed * blade.blades * blade.radius * blade.radius
  const torque = force * blade.radius * moment
  return {
    thrust: force * normal,
    torque,
    power: (torque * tipSpeed) / blade.radius,
    profilePower: force * tipSpeed * profile,
    stalledShare: stalled / (1 - blade.root),
    reynolds,
    tipMach: (tipSpeed * Math.sqrt(1 + climb * climb)) / speedOfSound,
  }
}
