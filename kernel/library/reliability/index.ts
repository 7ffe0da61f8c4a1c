/** Reliability: how likely a function is lost, from failure rates that the user states; the kernel has none of its own. */
export { type Chain, type ChainOptions, chain } from './chain.js'
export {
  type Maintenance,
  type MaintenanceOptions,
  maintenance,
  type UnitFailureOptions,
  unitFailure,
} from './exposure.js'
export { type KOfNOptions, kOfN, type RequiredUnitFailureOptions, requiredUnitFailure } from './k-of-n.js'
export { type LossChain, type LossChainOptions, lossChain } from './loss-chain.js'
