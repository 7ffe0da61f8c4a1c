/** Limits that size the aircraft: power, speed, hot and high, growth, a day's work, failures, and what is not modelled at all. */
export {
  type ClimbAfterLoss,
  type ClimbAfterLossOptions,
  climbAfterLoss,
  type VerticalClimbAfterLoss,
  type VerticalClimbAfterLossOptions,
  verticalClimbAfterLoss,
} from './climb-after-loss.js'
export { type Day, type DayHistory, type DayOptions, type DaySegment, day, type SectorRow } from './day.js'
export {
  type FailureCase,
  type FailureRow,
  type FailureTable,
  type FailureTableOptions,
  failureTable,
  type Outcome,
  type TrimAnswer,
} from './failure-table.js'
export { type Glide, type GlideOptions, glide } from './glide.js'
export {
  type AirThere,
  type Ceiling,
  type HotAndHigh,
  type HotAndHighOptions,
  type HotAndHighRow,
  hotAndHigh,
} from './hot-and-high.js'
export {
  type HeatSource,
  type HotelItem,
  type HotelPower,
  type HotelPowerOptions,
  type HotelRow,
  hotelPower,
} from './hotel-power.js'
export {
  type CruiseLimits,
  type LiftLimits,
  type Margins,
  type MarginsOptions,
  margins,
  type WingLimits,
} from './margins.js'
export {
  type DesignMaturity,
  type GrowingItem,
  type GrowthCategory,
  type MassAllowanceOptions,
  type MassGrowth,
  type MassGrowthOptions,
  type MassGrowthRow,
  massAllowance,
  massGrowth,
} from './mass-growth.js'
export { type NotModelledOptions, notModelled, type OwnOmission } from './not-modelled.js'
export type { Effect, Omission, OmissionSubject } from './omissions.js'
export { type PackCorner, type PackPower, type PackPowerOptions, type PackPowerRow, packPower } from './pack-power.js'
export {
  type LandingSite,
  type ReachGap,
  type ReachPoint,
  type RotorBorne,
  type RouteReach,
  type RouteReachOptions,
  routeReach,
} from './route-reach.js'
export { type FlownSpeed, type SpeedFloor, type SpeedFloorsOptions, speedFloors } from './speed-floors.js'
export { type SizingLimit, type SizingRow, type WhatSizesWhatOptions, whatSizesWhat } from './what-sizes-what.js'
