/** Layout: where rotors, booms, wing, tail and body are, whether they fit together, and what follows from their places. */
export { type BlockedArea, blockedArea } from './blocked-area.js'
export { type BoomCase, type BoomLoads, type BoomLoadsOptions, type BoomRotor, boomLoads } from './boom-loads.js'
export type { Clear, LayoutCheck } from './check-pairs.js'
export { type Checks, type ChecksOptions, checks, type LayoutFinding } from './checks.js'
export { type CruiseLimits, type CruiseLimitsOptions, cruiseLimits } from './cruise-limits.js'
export { type Circle, enclosingCircle } from './enclosing-circle.js'
export type { GravityLimit } from './gravity-limit.js'
export { type GravityMargin, type GravityMarginsOptions, gravityMargins } from './gravity-margins.js'
export { type HoverLimits, type HoverLimitsOptions, hoverLimits } from './hover-limits.js'
export { type HubMoment, type HubMomentOptions, hubMoment } from './hub-moment.js'
export { liftPlusCruise } from './lift-plus-cruise.js'
export { type Loading, type LoadingOptions, type LoadingState, loading } from './loading.js'
export { type LossLimits, type LossLimitsOptions, lossLimits } from './loss-limits.js'
export { type MixedThrustOptions, mixedThrust } from './mixed-thrust.js'
export { type MultirotorOptions, multirotor } from './multirotor.js'
export { type Outwash, type OutwashOptions, outwash } from './outwash.js'
export { type Pad, pad } from './pad.js'
export type {
  Cant,
  Layout,
  LayoutBody,
  LayoutBoom,
  LayoutPropeller,
  LayoutRotor,
  Place,
  RotorRole,
  Surface,
} from './parts.js'
export { type RecordOptions, record } from './record.js'
export { type Crossing, type SpinUp, type SpinUpMode, type SpinUpOptions, spinUp } from './spin-up.js'
export type { SpinPattern } from './spins.js'
export { type LayoutUnit, type UnitsOptions, units } from './units.js'
export { vectoredThrust } from './vectored-thrust.js'
export type { LayoutTail, LayoutWing, WingedOptions } from './winged-options.js'
