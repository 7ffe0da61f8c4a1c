/** Spread: how sure a number is, what shares its variance, and what bare ranges do to it. Results are `shared/contracts/spread.ts`. */
export { type Distribution, support, valueAt } from './distribution.js'
export { type EnvelopeRequest, type EnvelopeTools, envelopeDefaults, runEnvelope } from './envelope.js'
export type { Inputs, Uncertain } from './inputs.js'
export type { Samples } from './samples.js'
export { runShares, type SharesRequest, type SharesTools, sharesDefaults } from './shares.js'
export {
  drawSamples,
  fewestSamples,
  mostSamples,
  runSpread,
  type SpreadRequest,
  type SpreadTools,
  spreadDefaults,
} from './spread.js'
