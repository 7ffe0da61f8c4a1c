import { describeValue, InvalidInput } from '../errors.js'
import { type FuselageMassOptions, fuselageItem } from './fuselage.js'
import { type GearMassOptions, gearItem } from './gear.js'
import { type MassItem, type Spread, spreadOf } from './method.js'
import {
  type ControllerMassOptions,
  controllerItem,
  type GearboxMassOptions,
  gearboxItem,
  type MotorMassOptions,
  motorItem,
} from './motors.js'
import { type PropellerMassOptions, propellerItem } from './propeller.js'
import { type HubMassOptions, hubItem, type RotorBladesMassOptions, rotorBladesItem } from './rotors.js'
import {
  type AvionicsMassOptions,
  avionicsItem,
  type ElectricalMassOptions,
  electricalItem,
  type FlightControlsMassOptions,
  type FurnishingMassOptions,
  flightControlsItem,
  furnishingItem,
  type HydraulicsMassOptions,
  hydraulicsItem,
} from './systems.js'
import {
  type HorizontalTailMassOptions,
  horizontalTailItem,
  type VerticalTailMassOptions,
  verticalTailItem,
} from './tails.js'
import { type WingMassOptions, wingItem } from './wing.js'

/** Options of each item that has more than one way to its mass. */
export interface SpreadItems {
  readonly wing: WingMassOptions
  readonly horizontalTail: HorizontalTailMassOptions
  readonly verticalTail: VerticalTailMassOptions
  readonly fuselage: FuselageMassOptions
  readonly gear: GearMassOptions
  readonly flightControls: FlightControlsMassOptions
  readonly avionics: AvionicsMassOptions
  readonly electrical: ElectricalMassOptions
  readonly hydraulics: HydraulicsMassOptions
  readonly furnishing: FurnishingMassOptions
  readonly rotorBlades: RotorBladesMassOptions
  readonly hub: HubMassOptions
  readonly motor: MotorMassOptions
  readonly gearbox: GearboxMassOptions
  readonly controller: ControllerMassOptions
  readonly propeller: PropellerMassOptions
}

const items: { readonly [Name in keyof SpreadItems]: MassItem<SpreadItems[Name]> } = {
  wing: wingItem,
  horizontalTail: horizontalTailItem,
  verticalTail: verticalTailItem,
  fuselage: fuselageItem,
  gear: gearItem,
  flightControls: flightControlsItem,
  avionics: avionicsItem,
  electrical: electricalItem,
  hydraulics: hydraulicsItem,
  furnishing: furnishingItem,
  rotorBlades: rotorBladesItem,
  hub: hubItem,
  motor: motorItem,
  gearbox: gearboxItem,
  controller: controllerItem,
  propeller: propellerItem,
}

/**
 * All methods of one item on the same options, and how far they lie apart.
 *
 * @equation ratio = highest/lowest; mean = sum/count
 * @param item - `"wing"`, `"horizontalTail"`, `"verticalTail"`, `"fuselage"`, `"gear"`, `"rotorBlades"`, `"hub"`, `"motor"`, `"controller"` and so on: the name of the function
 * @param options - the options of `mass.wing` and so on, those of all methods together; `method` is not heeded
 * @returns `methods` (list of `method` and `mass` [kg]), `low`, `high`, `mean` [kg], `ratio`, `leftOut` (methods whose options are lacking, with their names)
 * @throws InvalidInput for an item it does not know, options too few for any method, and as the item's own function
 * @method The item's own methods, one after the other.
 * @validity Scatter of methods is not the error of any: all may be wrong the same way for a new kind of aircraft.
 * @source As the item's own function.
 * @example
 * const wings = mass.spread('wing', {
 *   grossMass: 2000 * u.kg, ultimateLoadFactor: 5.7, area: 14 * u.m2, aspectRatio: 10, taper: 0.45, dynamicPressure: 2001 * u.Pa, speed: 60 * u.mps,
 * })
 * wings.ratio // 2.2505
 */
export function spread<Name extends keyof SpreadItems>(item: Name, options: SpreadItems[Name]): Spread {
  if (typeof item !== 'string' || !Object.hasOwn(items, item))
    throw new InvalidInput({
      method: 'mass.spread',
      argument: 'item',
      value: describeValue(item),
      accepted: `one of ${Object.keys(items).join(', ')}`,
    })
  return spreadOf(items[item] as MassItem<SpreadItems[Name]>, options)
}
