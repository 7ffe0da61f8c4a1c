/** Sizing: closing the loop between gross mass and what it has to carry, and the diagrams around the closed design. */
export type { MassItems } from './build-up.js'
export { type Closed, type ClosedMasses, type CloseOptions, type Closure, close } from './close.js'
export type { ClimbConstraint, Constraint, CruiseConstraint, StallConstraint, TurnConstraint } from './constraint.js'
export {
  type ConstraintCurve,
  type ConstraintDiagram,
  type ConstraintDiagramOptions,
  type ConstraintMargin,
  constraintDiagram,
  type DesignLine,
  type DesignPoint,
  type WingLoadingLimit,
} from './constraint-diagram.js'
export type { Deficit, Deficits } from './deficits.js'
export {
  type DiskLoadingBound,
  type DiskLoadingRow,
  type DiskLoadingWindow,
  type DiskLoadingWindowOptions,
  diskLoadingWindow,
  type FootprintBound,
  type HoverPowerBound,
  type OutwashBound,
  type TipSpeedBound,
} from './disk-loading-window.js'
export { type ElectricRange, type ElectricRangeOptions, electricRange } from './electric-range.js'
export { type Along, type Fold, type FoldOptions, fold } from './fold.js'
export {
  type GrowthFactor,
  type GrowthFactorOptions,
  type GrowthShare,
  growthFactor,
  type Sensitivity,
  type SensitivityOptions,
  sensitivity,
} from './growth-factor.js'
export type { NotClosed } from './not-closed.js'
export {
  type Lacking,
  type PayloadRange,
  type PayloadRangeCorner,
  type PayloadRangeOptions,
  payloadRange,
} from './payload-range.js'
