/** The aircraft as a mission sees it: what it weighs, how it is carried, what drives it and what feeds it. */
import { requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { type ParabolicPolar, requirePolar } from '../drag/polar.js'
import { checkOptions } from '../errors.js'
import type { Area, Mass, Power, Ratio } from '../quantity.js'
import { type CruiseSystem, type CruiseSystemOptions, readCruiseSystem } from './cruise-system.js'
import { type EnergyStore, type EnergyStoreOptions, readEnergyStore } from './energy-store.js'
import { type LiftSystem, type LiftSystemOptions, readLiftSystem } from './lift-system.js'

export interface AircraftOptions {
  /** At take-off [kg]. */
  readonly mass: Mass
  /** Reference area of the polar and of the largest lift coefficient [m^2]. */
  readonly wingArea: Area
  /** Of the aircraft with its lift rotors at rest; `drag.polar`, or a record with `zeroLiftDrag` and `inducedFactor`. */
  readonly polar: ParabolicPolar
  /** Largest lift coefficient of the wing, with booms and rotors in place. */
  readonly maximumLift: Ratio
  readonly lift: LiftSystemOptions
  readonly cruise: CruiseSystemOptions
  /** Drawn from the battery all the time: avionics, cooling, cabin [W]; 0 when left out. */
  readonly hotelPower?: Power
  /** Without one a mission tells energy and power, and no charge. */
  readonly battery?: EnergyStoreOptions | undefined
  /** Least wing-borne speed over stall speed; 1.3 when left out. */
  readonly stallMargin?: Ratio
  /** Speed at which the wing takes over, over stall speed; 1.2 when left out. */
  readonly conversionMargin?: Ratio
}

export interface Aircraft {
  readonly mass: Mass
  readonly wingArea: Area
  readonly polar: ParabolicPolar
  readonly maximumLift: Ratio
  readonly lift: LiftSystem
  readonly cruise: CruiseSystem
  readonly hotelPower: Power
  readonly battery?: EnergyStore | undefined
  readonly stallMargin: Ratio
  readonly conversionMargin: Ratio
}

const known = new Set([
  'mass',
  'wingArea',
  'polar',
  'maximumLift',
  'lift',
  'cruise',
  'hotelPower',
  'battery',
  'stallMargin',
  'conversionMargin',
])

/**
 * The record of an aircraft that the other methods of `mission` fly; checked, completed and frozen.
 *
 * @equation nothing is computed except an aged cell, as `battery.aged`
 * @param options - `mass` [kg], `wingArea` [m^2], `polar` (`drag.polar`), `maximumLift`; `lift`: `diskArea` [m^2] of all rotors, `efficiency` from battery to shaft, and `figureOfMerit` or
 * `profileDrag` with `solidity` and `tipSpeed` [m/s]; optional `inducedFactor` (1.15), `interference` (1), `download` (0), `control` (`'speed'` or `'pitch'`), `powerLimit` at the shafts [W], `count`,
 * `greatestBladeLoading` (0.12), `uncoveredDragArea` [m^2] (0); `cruise`: `propellerEfficiency`, `efficiency` from battery to shaft, optional `powerLimit` at the shaft [W], `staticThrust` [N]; optional
 * `hotelPower` [W] (0), `battery`: `cell`, `series`, `parallel`, optional `aged` (`capacityLeft`, `resistanceGrowth`), `rating`, `floor` (0.1), `conductance` [W/K] (0), `stallMargin` (1.3),
 * `conversionMargin` (1.2)
 * @returns the same record, completed: it may be spread into another, `{ ...craft, mass: 1900 * u.kg }`, which is checked again where it is flown
 * @throws InvalidInput for a value outside its range, a lift system with neither or both ways of losses, a cell that is none, and an unknown option
 * @method Constant efficiencies: a record from `powertrain.chain` and `propeller.estimate` at the design point is as good as that point is near.
 * @validity Lift plus cruise: rotors that lift and stand still in cruise, a separate propeller, a wing. The polar is that of the stopped rotors. Rotors that tilt are both, with a polar of their own; in the transition lift
 * and thrust are then counted apart. Without a wing: `mission.multirotor`.
 * @source Margins of 1.3 and about 1.2 stall speeds: common practice, no source. Blade loading: as `rotor.hover`.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, download: 0.05, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * craft.conversionMargin // 1.2
 */
export function aircraft(options: AircraftOptions): Aircraft {
  const craft = requireAircraft('mission.aircraft', options)
  return givenOnly({
    ...craft,
    lift: givenOnly(craft.lift),
    cruise: givenOnly(craft.cruise),
    battery: Object.freeze(craft.battery),
  })
}

/** A frozen record without what was left out: data that crosses cells holds no undefined. */
function givenOnly<T extends object>(record: T): T {
  return Object.freeze(Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined))) as T
}

/** Checks and completes the aircraft of an argument; a record of `mission.aircraft` passes unchanged in content. */
export function requireAircraft(method: string, options: AircraftOptions | Aircraft): Aircraft {
  checkOptions(`${method} aircraft`, options, known)
  const { mass, wingArea, polar, maximumLift, hotelPower = 0, stallMargin = 1.3, conversionMargin = 1.2 } = options
  requirePositive(method, 'mass', mass, 'kg')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePolar(method, polar)
  requireWithin(method, 'maximumLift', maximumLift, '1', 0.1, 10)
  requireNonNegative(method, 'hotelPower', hotelPower, 'W')
  requireWithin(method, 'stallMargin', stallMargin, '1', 1, 3)
  requireWithin(method, 'conversionMargin', conversionMargin, '1', 1, 3)
  return {
    mass,
    wingArea,
    polar,
    maximumLift,
    lift: readLiftSystem(method, options.lift),
    cruise: readCruiseSystem(method, options.cruise),
    hotelPower,
    battery: options.battery === undefined ? undefined : readEnergyStore(method, options.battery),
    stallMargin,
    conversionMargin,
  }
}
