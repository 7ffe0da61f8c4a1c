/** Wing: its planform, what it carries, with which induced drag, from which speed on, and how the aircraft balances on it. */
export { type LiftCurveSlopeOptions, liftCurveSlope } from './lift-curve-slope.js'
export { type LiftingLine, type LiftingLineOptions, liftingLine } from './lifting-line.js'
export { type PlainFlap, type PlainFlapOptions, plainFlap } from './plain-flap.js'
export { type Planform, type PlanformOptions, planform } from './planform.js'
export { type SectionLiftSlopeOptions, sectionLiftSlope } from './section-lift-slope.js'
export { type StallSpeedOptions, stallSpeed } from './stall-speed.js'
export { type SweepAtOptions, sweepAt } from './sweep-at.js'
export { type ThinAerofoil, type ThinAerofoilOptions, thinAerofoil } from './thin-aerofoil.js'
