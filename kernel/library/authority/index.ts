/** Control authority in hover: trim of the lift rotors after a loss, what is left to steer with, and what that asks of each rotor. */
export type { Axis } from './axes.js'
export { type Effectiveness, type EffectivenessOptions, effectiveness, type PlanPoint } from './effectiveness.js'
export type { Cant, LiftRotor } from './lift-rotor.js'
export { type Disturbance, type HoverOptions, type Trim, type TrimOptions, trim } from './trim.js'
