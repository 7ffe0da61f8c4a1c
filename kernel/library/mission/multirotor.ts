/** An aircraft on rotors alone, as a mission sees it. */
import { requireNonNegative, requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Mass, Power } from '../quantity.js'
import { type Aircraft, type AircraftOptions, requireAircraft } from './aircraft.js'
import { type EnergyStore, type EnergyStoreOptions, readEnergyStore } from './energy-store.js'
import { type LiftSystem, type LiftSystemOptions, readLiftSystem } from './lift-system.js'

export interface MultirotorOptions {
  /** At take-off [kg]. */
  readonly mass: Mass
  /** Of body, booms, hubs and gear in level flight [m^2]. */
  readonly dragArea: Area
  readonly lift: LiftSystemOptions
  /** Drawn from the battery all the time: avionics, cooling, cabin [W]; 0 when left out. */
  readonly hotelPower?: Power
  /** Without one a mission tells energy and power, and no charge. */
  readonly battery?: EnergyStoreOptions | undefined
}

export interface Multirotor {
  readonly mass: Mass
  readonly dragArea: Area
  readonly lift: LiftSystem
  readonly hotelPower: Power
  readonly battery?: EnergyStore | undefined
}

/** What a mission flies: on a wing, or on rotors alone. */
export type FlyerOptions = Aircraft | AircraftOptions | Multirotor | MultirotorOptions

/** Inside a mission; on rotors alone the fields of the wing stand for nothing but the drag, and no segment reads them. */
export interface Flyer extends Aircraft {
  readonly onRotors?: boolean
}

const known = new Set(['mass', 'dragArea', 'lift', 'hotelPower', 'battery'])

/**
 * The record of a multirotor, which `mission.fly` and `mission.demand` fly with the same segments as an aircraft with a wing, but for the transitions: it cruises on tilted rotors.
 *
 * @equation nothing is computed except an aged cell, as `battery.aged`
 * @param options - `mass` [kg], `dragArea` f [m^2]; `lift` as of `mission.aircraft`; optional `hotelPower` [W] (0), `battery` as of `mission.aircraft`
 * @returns the same record, completed and frozen: it may be spread into another, which is checked again where it is flown
 * @throws InvalidInput as `mission.aircraft`
 * @method In climb, cruise, loiter, reserve and descent the rotors tilt as in `rotor.levelFlight`, at a climb angle where there is one: tan a = (D + h + W sin g)/(W cos g), power of `rotor.edgewise` at that tilt. The speed is given, or
 * that of best range (wind and hotel power counted), of best endurance, or the fastest at `lift.powerLimit`, each between advance ratios of 0.01 and 0.5; a climb without `rate` takes what `lift.powerLimit` leaves. Download and
 * `lift.control` as in `mission.trim`.
 * @validity As `rotor.levelFlight`: rotors share the thrust evenly, no body lift, wakes of the rotors ahead not counted (5 to 20 % of induced power; common practice, no source), advance ratio up to 0.3 (else an advisory). Climbs and
 * descents of up to 30 degrees. Accelerating to the speed of flight is not counted.
 * @source As `rotor.levelFlight` and `rotor.edgewise`.
 * @example
 * const craft = mission.multirotor({
 *   mass: 1600 * u.kg, dragArea: 1.2 * u.m2, hotelPower: 2 * u.kW,
 *   lift: { diskArea: 42.5 * u.m2, profileDrag: 0.011, solidity: 0.12, tipSpeed: 165 * u.mps, efficiency: 0.9, control: 'pitch' },
 * })
 * const away = mission.demand({ aircraft: craft, segments: [{ kind: 'cruise', distance: 10 * u.km, speed: 25 * u.mps }] })
 * away.energy / u.kWh // 19.90
 */
export function multirotor(options: MultirotorOptions): Multirotor {
  const { mass, dragArea, lift, hotelPower, battery } = requireMultirotor('mission.multirotor', options)
  const store = battery === undefined ? {} : { battery: Object.freeze(battery) }
  const given = Object.fromEntries(Object.entries(lift).filter(([, value]) => value !== undefined))
  return Object.freeze({ mass, dragArea, lift: Object.freeze(given) as unknown as LiftSystem, hotelPower, ...store })
}

function requireMultirotor(method: string, options: MultirotorOptions | Multirotor): Multirotor {
  checkOptions(`${method} aircraft`, options, known)
  const { mass, dragArea, hotelPower = 0 } = options
  requirePositive(method, 'mass', mass, 'kg')
  requireNonNegative(method, 'dragArea', dragArea, 'm^2')
  requireNonNegative(method, 'hotelPower', hotelPower, 'W')
  const lift = readLiftSystem(method, options.lift)
  const battery = options.battery === undefined ? undefined : readEnergyStore(method, options.battery)
  return { mass, dragArea, lift, hotelPower, battery }
}

/** Any area would do for the coefficient of a drag area [m^2]. */
const reference = 1

/** Either kind, checked and completed; a drag area of its own tells a multirotor. */
export function requireFlyer(method: string, options: FlyerOptions): Flyer {
  if (typeof options !== 'object' || options === null || !('dragArea' in options))
    return requireAircraft(method, options)
  const craft = requireMultirotor(method, options)
  return {
    mass: craft.mass,
    lift: craft.lift,
    hotelPower: craft.hotelPower,
    battery: craft.battery,
    onRotors: true,
    wingArea: reference,
    polar: { zeroLiftDrag: craft.dragArea / reference, inducedFactor: 0 },
    maximumLift: 1,
    cruise: { propellerEfficiency: 1, efficiency: craft.lift.efficiency },
    stallMargin: 1,
    conversionMargin: 1,
  }
}
