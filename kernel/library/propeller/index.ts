/** Propeller: the ideal one, an estimate with losses, blade elements, the design of least induced loss, and maps. */
export { type BladeAngleForThrustOptions, bladeAngleForThrust } from './blade-angle-for-thrust.js'
export { bladeElement, type PropellerLoads, type PropellerOptions } from './blade-element.js'
export { type BestPitch, type EfficiencyMap, type EfficiencyMapOptions, efficiencyMap } from './efficiency-map.js'
export { type Estimate, type EstimateOptions, estimate } from './estimate.js'
export { type Ideal, type IdealOptions, ideal } from './ideal.js'
export {
  type MinimumInducedLoss,
  type MinimumInducedLossOptions,
  minimumInducedLoss,
} from './minimum-induced-loss.js'
export {
  type TipSpeedForThrust,
  type TipSpeedForThrustOptions,
  tipSpeedForThrust,
} from './tip-speed-for-thrust.js'
