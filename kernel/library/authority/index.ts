/** Control authority in hover: trim of the lift rotors after a loss, what is left to steer with, and what that asks of each rotor. */
export { type Attainable, type AttainableOptions, attainable } from './attainable.js'
export type { Axis } from './axes.js'
export type { AccelerationDemand, ConditionsOptions, ForAttitude, Inertia } from './conditions.js'
export { type Arrangement, type Candidate, type CountRow, type CountTradeOptions, countTrade } from './count-trade.js'
export { type Effectiveness, type EffectivenessOptions, effectiveness, type PlanPoint } from './effectiveness.js'
export {
  type ElectricalLoss,
  type ElectricalLosses,
  type ElectricalLossesOptions,
  electricalLosses,
} from './electrical.js'
export type { Cant, LiftRotor } from './lift-rotor.js'
export { type Loss, type Losses, type LossesOptions, losses } from './losses.js'
export { type AxisMargin, type LossMargin, type Margin, type MarginOptions, margin } from './margin.js'
export { type Pairing, type PairingOptions, pairing } from './pairing.js'
export { type RatedCase, type Rating, type RatingOptions, rating } from './rating.js'
export { type RotorResponse, type RotorResponseOptions, type RotorState, rotorResponse } from './rotor-response.js'
export { type Search, type SearchOptions, type SearchRow, type Stretch, search } from './search.js'
export { type Disturbance, type HoverOptions, type Trim, type TrimOptions, trim } from './trim.js'
export { type WindMomentsOptions, windMoments } from './wind.js'
