/**
 * Quantities: plain numbers in SI whose type carries a dimension. Nothing exists at run time, so arithmetic costs nothing.
 *
 * The marker is optional, so a plain number passes where a quantity is wanted and the cell checker, which follows dimensions
 * through arithmetic, is the one voice on units. Dimensions are spelled as `formatDimension` of the contracts writes them.
 */

declare const dimension: unique symbol

/** Tells an absolute temperature from a difference of two, which share a dimension. */
declare const temperature: unique symbol

export type { dimension, temperature }

/** A number in SI with dimension `D` in base units: `kg m^2 s^-3`, or `1` for a pure number. */
export type Quantity<D extends string> = number & { readonly [dimension]?: D }

/** [kg] */
export type Mass = Quantity<'kg'>
/** [m] */
export type Length = Quantity<'m'>
/** [m^2] */
export type Area = Quantity<'m^2'>
/** [m^3] */
export type Volume = Quantity<'m^3'>
/** [s] */
export type Time = Quantity<'s'>
/** [m/s] */
export type Speed = Quantity<'m s^-1'>
/** [m/s^2] */
export type Acceleration = Quantity<'m s^-2'>
/** [N] */
export type Force = Quantity<'kg m s^-2'>
/** [N m], the dimension of an energy. */
export type Torque = Quantity<'kg m^2 s^-2'>
/** [W] */
export type Power = Quantity<'kg m^2 s^-3'>
/** [J] */
export type Energy = Quantity<'kg m^2 s^-2'>
/** [Pa] */
export type Pressure = Quantity<'kg m^-1 s^-2'>
/** [kg/m^3] */
export type Density = Quantity<'kg m^-3'>
/** [K], of either kind: an offset from a standard day, or what a thermometer shows. */
export type Temperature = Quantity<'K'>
/** What a thermometer shows, from absolute zero [K]. */
export type AbsoluteTemperature = Temperature & { readonly [temperature]?: 'absolute' }
/** One absolute temperature less another: an offset, a rise [K]. */
export type TemperatureDifference = Temperature & { readonly [temperature]?: 'difference' }
/** [rad], a pure number. */
export type Angle = Quantity<'1'>
/** A pure number. */
export type Ratio = Quantity<'1'>
/** [rad/s] */
export type AngularSpeed = Quantity<'s^-1'>
/** [1/s] */
export type Frequency = Quantity<'s^-1'>
/** [Pa s] */
export type DynamicViscosity = Quantity<'kg m^-1 s^-1'>
/** Thrust per disk area [N/m^2]. */
export type DiskLoading = Quantity<'kg m^-1 s^-2'>
/** Thrust per power [N/W]. */
export type PowerLoading = Quantity<'m^-1 s'>
/** [J/kg] */
export type SpecificEnergy = Quantity<'m^2 s^-2'>
/** [W/kg] */
export type SpecificPower = Quantity<'m^2 s^-3'>
/** [A] */
export type Current = Quantity<'A'>
/** [V] */
export type Voltage = Quantity<'kg m^2 s^-3 A^-1'>
/** [ohm] */
export type Resistance = Quantity<'kg m^2 s^-3 A^-2'>
/** [C] */
export type Charge = Quantity<'s A'>
/** [J/(kg K)] */
export type SpecificHeat = Quantity<'m^2 s^-2 K^-1'>
/** [J/K] */
export type HeatCapacity = Quantity<'kg m^2 s^-2 K^-1'>
/** Heat flow per temperature difference [W/K]. */
export type ThermalConductance = Quantity<'kg m^2 s^-3 K^-1'>
/** Of mass [kg m^2]. */
export type MomentOfInertia = Quantity<'kg m^2'>
/** Of area [m^4]. */
export type SecondMomentOfArea = Quantity<'m^4'>
/** Mass per area [kg/m^2]. */
export type ArealDensity = Quantity<'kg m^-2'>
/** Mass per power [kg/W]. */
export type MassPerPower = Quantity<'m^-2 s^3'>
/** Torque per mass [N m/kg]. */
export type TorqueDensity = Quantity<'m^2 s^-2'>
/** [ohm m] */
export type Resistivity = Quantity<'kg m^3 s^-3 A^-2'>
