/** Wing: its planform, what it carries, with which induced drag, from which speed on, and how the aircraft balances on it. */
export { type DesignSpeeds, type DesignSpeedsOptions, designSpeeds } from './design-speeds.js'
export { type Downwash, type DownwashOptions, downwash } from './downwash.js'
export { type GustLoadFactor, type GustLoadFactorOptions, gustLoadFactor } from './gust-load-factor.js'
export { type Lattice, type LatticeOptions, lattice, type SurfaceLoad } from './lattice.js'
export type { LatticeStation, LatticeStations, LatticeSurface, LatticeTrapezium } from './lattice-surface.js'
export { type LiftCurveSlopeOptions, liftCurveSlope } from './lift-curve-slope.js'
export { type LiftingLine, type LiftingLineOptions, liftingLine } from './lifting-line.js'
export {
  type ManoeuvreLoadFactor,
  type ManoeuvreLoadFactorOptions,
  manoeuvreLoadFactor,
} from './manoeuvre-load-factor.js'
export { type FlapOptions, type MaximumLift, type MaximumLiftOptions, maximumLift } from './maximum-lift.js'
export { type NeutralPointOptions, neutralPoint } from './neutral-point.js'
export { type PlainFlap, type PlainFlapOptions, plainFlap } from './plain-flap.js'
export { type Planform, type PlanformOptions, planform } from './planform.js'
export { type SectionLiftSlopeOptions, sectionLiftSlope } from './section-lift-slope.js'
export { type SpanEfficiencyEstimates, type SpanEfficiencyOptions, spanEfficiencyEstimates } from './span-efficiency.js'
export { type StallSpeedOptions, stallSpeed } from './stall-speed.js'
export { type StaticMargin, type StaticMarginOptions, staticMargin } from './static-margin.js'
export { type SweepAtOptions, sweepAt } from './sweep-at.js'
export { type TailLoad, type TailLoadOptions, tailLoad } from './tail-load.js'
export { type TailKind, type TailSizing, type TailSizingOptions, tailSizing } from './tail-sizing.js'
export { type TailVolumeOptions, tailVolume } from './tail-volume.js'
export { type ThinAerofoil, type ThinAerofoilOptions, thinAerofoil } from './thin-aerofoil.js'
export { type Trim, type TrimOptions, trim } from './trim.js'
