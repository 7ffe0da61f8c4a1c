/** Drag: by parts and as a polar, of lift rotors that stand still, the power it asks for, and the speeds at which it asks for least. */
export { type AreaOfOptions, areaOf } from './area-of.js'
export { type BestSpeed, type BestSpeedOptions, leastDragSpeed, leastPowerSpeed } from './best-speed.js'
export { type BodyFormFactorOptions, type BodyFormMethod, bodyFormFactor } from './body-form-factor.js'
export { type Boom, type BoomOptions, boom } from './boom.js'
export {
  type BreakEvenGrowth,
  type BreakEvenGrowthOptions,
  breakEvenGrowth,
} from './break-even-growth.js'
export {
  type BuildUp,
  type BuildUpOptions,
  buildUp,
  type DragPart,
  type KnownPart,
  type PartDrag,
  type WettedPart,
} from './build-up.js'
export {
  type CompareStowageOptions,
  compareStowage,
  type ForBoth,
  type StowageComparison,
  type Verdict,
} from './compare-stowage.js'
export { type Cooling, type CoolingOptions, cooling } from './cooling.js'
export { type ExposedKind, type ExposedPart, type ExposedPartOptions, exposedPart } from './exposed-part.js'
export { type FitPolarOptions, type FittedPolar, fitPolar } from './fit-polar.js'
export { type FixedGear, type FixedGearOptions, fixedGear } from './fixed-gear.js'
export type { FrictionMethod } from './friction-lines.js'
export { type InLineShielding, type InLineShieldingOptions, inLineShielding } from './in-line-shielding.js'
export { type Interference, type InterferenceOptions, type InterferencePlace, interference } from './interference.js'
export { type ParabolicPolar, type Polar, type PolarOptions, polar } from './polar.js'
export { type PowerRequired, type PowerRequiredOptions, powerRequired } from './power-required.js'
export { type SkinFrictionOptions, skinFriction } from './skin-friction.js'
export {
  type StoppedRotor,
  type StoppedRotorGeometry,
  type StoppedRotorOptions,
  stoppedRotor,
} from './stopped-rotor.js'
export { type RotorRow, type StowageOptionsOptions, stowageOptions } from './stowage-options.js'
export { type Band, type StowageRecord, type StowageRecordOptions, stowageRecord } from './stowage-record.js'
export { type WingFormFactorOptions, wingFormFactor } from './wing-form-factor.js'
