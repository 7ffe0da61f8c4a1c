/** Mass: what each item weighs, by which method, how far methods lie apart, and where it all sits. */
export { type Boom, type BoomBound, type BoomMaterial, type BoomOptions, boom, materials } from './boom.js'
export {
  type CoolingOptions,
  cooling,
  type Parachute,
  type ParachuteOptions,
  parachute,
  type StowageMechanismOptions,
  stowageMechanism,
} from './fittings.js'
export { type FuselageMassOptions, fuselage } from './fuselage.js'
export { type GearMassOptions, gear } from './gear.js'
export { type Growth, type GrowthItem, growth, type Maturity } from './growth.js'
export type { Spread } from './method.js'
export {
  type ControllerMassOptions,
  controller,
  type GearboxMassOptions,
  gearbox,
  type MotorMassOptions,
  motor,
} from './motors.js'
export { type PropellerMassOptions, propeller } from './propeller.js'
export { type MassProperties, type PlacedItem, properties } from './properties.js'
export { type HubMassOptions, hub, type RotorBladesMassOptions, rotorBlades } from './rotors.js'
export { type SpreadItems, spread } from './spread.js'
export {
  type AvionicsMassOptions,
  avionics,
  type ElectricalMassOptions,
  electrical,
  type FlightControlsMassOptions,
  type FurnishingMassOptions,
  flightControls,
  furnishing,
  type HydraulicsMassOptions,
  hydraulics,
} from './systems.js'
export {
  type HorizontalTailMassOptions,
  horizontalTail,
  type VerticalTailMassOptions,
  verticalTail,
} from './tails.js'
export { type Tube, type TubeOptions, tube } from './tube.js'
export { type WingMassOptions, wing } from './wing.js'
export { type Wiring, type WiringOptions, wiring } from './wiring.js'
