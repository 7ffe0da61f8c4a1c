/** Propeller: the ideal one, an estimate with losses, blade elements, the design of least induced loss, and maps. */
export { bladeElement, type PropellerLoads, type PropellerOptions } from './blade-element.js'
export { type BestPitch, type EfficiencyMap, type EfficiencyMapOptions, efficiencyMap } from './efficiency-map.js'
export { type Estimate, type EstimateOptions, estimate } from './estimate.js'
export { type Ideal, type IdealOptions, ideal } from './ideal.js'
export {
  type MinimumInducedLoss,
  type MinimumInducedLossOptions,
  minimumInducedLoss,
} from './minimum-induced-loss.js'
