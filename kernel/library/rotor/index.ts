/** Rotor: hover, climb and descent, edgewise flight, blade elements, ducts, and what rotors and bodies do to each other. */
export type { AlongBlade } from './along-blade.js'
export { type Axial, type AxialOptions, type AxialState, axial } from './axial.js'
export type { BladeOptions } from './blade.js'
export { type BladeElement, type BladeElementOptions, type BladeFlowOptions, bladeElement } from './blade-element.js'
export { type Climb, type ClimbOptions, climb } from './climb.js'
export { type Coaxial, type CoaxialOptions, coaxial } from './coaxial.js'
export {
  type CollectiveForThrust,
  type CollectiveForThrustOptions,
  collectiveForThrust,
} from './collective-for-thrust.js'
export { type Descent, type DescentOptions, descent } from './descent.js'
export { type Download, type DownloadOptions, download } from './download.js'
export { type DuctInCruise, type DuctInCruiseOptions, ductInCruise } from './duct-in-cruise.js'
export { type Ducted, type DuctedOptions, ducted } from './ducted.js'
export { type Edgewise, type EdgewiseOptions, edgewise } from './edgewise.js'
export { type Hover, type HoverByBlades, type HoverByBladesOptions, type HoverByMeritOptions, hover } from './hover.js'
export { type LevelFlight, type LevelFlightOptions, levelFlight } from './level-flight.js'
export { type Overlap, type OverlapOptions, overlap } from './overlap.js'
export { type SmallAngle, type SmallAngleOptions, smallAngleHover } from './small-angle.js'
export { type PrandtlLossOptions, prandtlLoss, type TipLossOptions, tipLoss } from './tip-loss.js'
export type { VerticalFlightOptions } from './vertical-flight.js'
export { vortexRingFit } from './vortex-ring-fit.js'
