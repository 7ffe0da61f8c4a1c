/** Spread: how sure a number is, what shares its variance, and what bare ranges do to it. */
export type { Convergence, ConvergenceRow } from './convergence.js'
export type { Estimate, Share } from './design.js'
export { type Distribution, support, valueAt } from './distribution.js'
export {
  type Envelope,
  type EnvelopeRequest,
  type EnvelopeTools,
  envelopeDefaults,
  type IntervalEffect,
  runEnvelope,
  type SpreadAtEnds,
} from './envelope.js'
export type { FailureReason } from './failures.js'
export type { Inputs, Interval, Uncertain } from './inputs.js'
export type { RequirementSpread } from './requirements.js'
export type { Samples, Tools } from './samples.js'
export { headline, runShares, type Shares, type SharesRequest, type SharesTools, sharesDefaults } from './shares.js'
export {
  drawSamples,
  mostSamples,
  runSpread,
  type Spread,
  type SpreadRequest,
  type SpreadTools,
  spreadDefaults,
} from './spread.js'
export { type Percentile, percentile, type Summary } from './summary.js'
export { type SpreadCode, SpreadTrouble } from './trouble.js'
