/** Systems and equipment of light aircraft. */
import type { Length, Mass, Ratio } from '../quantity.js'
import { u } from '../units.js'
import { lightAircraft, type MassItem, massOf, positive, within } from './method.js'

export interface FlightControlsMassOptions {
  /** `'cessna'` when left out. */
  readonly method?: 'cessna' | 'raymer'
  /** [kg] */
  readonly grossMass: Mass
  /** Of the body [m]; for `'raymer'`. */
  readonly length?: Length
  /** Of the wing [m]; for `'raymer'`. */
  readonly span?: Length
  /** For `'raymer'`. */
  readonly ultimateLoadFactor?: Ratio
}

export interface AvionicsMassOptions {
  /** `'share'` when left out. */
  readonly method?: 'share' | 'raymer'
  /** [kg]; for `'share'`. */
  readonly grossMass?: Mass
  /** Of the boxes before they are installed [kg]; for `'raymer'`. */
  readonly uninstalledMass?: Mass
}

export interface ElectricalMassOptions {
  readonly method?: 'cessna'
  /** [kg] */
  readonly grossMass: Mass
}

export interface HydraulicsMassOptions {
  readonly method?: 'raymer'
  /** [kg] */
  readonly grossMass: Mass
  /** In cruise; 0.2 when left out. */
  readonly mach?: Ratio
}

export interface FurnishingMassOptions {
  /** `'cessna'` when left out. */
  readonly method?: 'cessna' | 'raymer'
  /** [kg] */
  readonly grossMass: Mass
  /** Pilot included; for `'cessna'`. */
  readonly occupants?: Ratio
}

export const flightControlsItem: MassItem<FlightControlsMassOptions> = {
  call: 'mass.flightControls',
  checks: {
    grossMass: positive('kg'),
    length: positive('m'),
    span: positive('m'),
    ultimateLoadFactor: within('1', 0.5, 30),
  },
  fill: (o) => ({ grossMass: o.grossMass, length: o.length, span: o.span, ultimateLoadFactor: o.ultimateLoadFactor }),
  grossMass: lightAircraft,
  methods: [
    { name: 'cessna', needs: ['grossMass'], mass: (o) => 0.0168 * o.grossMass },
    {
      name: 'raymer',
      needs: ['grossMass', 'length', 'span', 'ultimateLoadFactor'],
      mass: (o) =>
        u.lb *
        0.053 *
        (o.length / u.ft) ** 1.536 *
        (o.span / u.ft) ** 0.371 *
        (o.ultimateLoadFactor * (o.grossMass / u.lb) * 1e-4) ** 0.8,
    },
  ],
}

export const avionicsItem: MassItem<AvionicsMassOptions> = {
  call: 'mass.avionics',
  checks: { grossMass: positive('kg'), uninstalledMass: positive('kg') },
  fill: (o) => ({ grossMass: o.grossMass, uninstalledMass: o.uninstalledMass }),
  grossMass: lightAircraft,
  methods: [
    { name: 'share', needs: ['grossMass'], mass: (o) => 40 * u.lb + 0.008 * o.grossMass },
    { name: 'raymer', needs: ['uninstalledMass'], mass: (o) => u.lb * 2.117 * (o.uninstalledMass / u.lb) ** 0.933 },
  ],
}

export const electricalItem: MassItem<ElectricalMassOptions> = {
  call: 'mass.electrical',
  checks: { grossMass: positive('kg') },
  fill: (o) => ({ grossMass: o.grossMass }),
  grossMass: lightAircraft,
  methods: [{ name: 'cessna', needs: ['grossMass'], mass: (o) => 0.0268 * o.grossMass }],
}

export const hydraulicsItem: MassItem<HydraulicsMassOptions> = {
  call: 'mass.hydraulics',
  checks: { grossMass: positive('kg'), mach: within('1', 0.01, 1) },
  fill: (o) => ({ grossMass: o.grossMass, mach: o.mach ?? 0.2 }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'raymer',
      needs: ['grossMass'],
      mass: (o) => u.lb * 0.05 * (o.grossMass / u.lb) ** 0.8 * Math.sqrt(o.mach),
    },
  ],
}

export const furnishingItem: MassItem<FurnishingMassOptions> = {
  call: 'mass.furnishing',
  checks: { grossMass: positive('kg'), occupants: within('1', 1, 20) },
  fill: (o) => ({ grossMass: o.grossMass, occupants: o.occupants }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'cessna',
      needs: ['grossMass', 'occupants'],
      mass: (o) => u.lb * 0.412 * o.occupants ** 1.145 * (o.grossMass / u.lb) ** 0.489,
    },
    { name: 'raymer', needs: ['grossMass'], mass: (o) => 0.0582 * o.grossMass - 65 * u.lb },
  ],
}

/**
 * Mass of flight controls, by one of two published equations.
 *
 * @equation cessna: m = 0.0168 m_g; raymer: W = 0.053 L^1.536 b^0.371 (n W_g 1e-4)^0.8 [lb, ft]
 * @param options - `method`, `grossMass` [kg]; for raymer `length` L of the body, `span` b [m], `ultimateLoadFactor` n
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regressions over light aircraft with rods and cables; actuators of electric controls differ.
 * @validity Gross mass 300 to 5670 kg; outside an advisory.
 * @source Cessna: Roskam V (read in an open course notebook, printed 90 lb for 5354 lb). Raymer, Aircraft Design: A Conceptual Approach, equation 15.54 (from memory).
 * @example
 * mass.flightControls({ grossMass: 2000 * u.kg }) // 33.6
 */
export function flightControls(options: FlightControlsMassOptions): Mass {
  return massOf(flightControlsItem, options)
}

/**
 * Mass of avionics, as a share of the aircraft or from the mass of the boxes.
 *
 * @equation share: W = 40 lb + 0.008 W_g; raymer: W = 2.117 W_boxes^0.933 [lb]
 * @param options - `method`, `grossMass` [kg] for share, `uninstalledMass` [kg] for raymer
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regressions over light aircraft; flight computers and sensors of an aircraft that cannot fly without them come in threes and are heavier.
 * @validity Gross mass 300 to 5670 kg; outside an advisory.
 * @source Share: open course notebook after Roskam V (read, printed 83 lb for 5354 lb). Raymer, Aircraft Design: A Conceptual Approach, equation 15.57 (from memory).
 * @example
 * mass.avionics({ grossMass: 2000 * u.kg }) // 34.14
 */
export function avionics(options: AvionicsMassOptions): Mass {
  return massOf(avionicsItem, options)
}

/**
 * Mass of the low-voltage electrical system.
 *
 * @equation m = 0.0268 m_g
 * @param options - `grossMass` [kg]
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regression over light aircraft with one engine: lamps, instruments, a starter. The propulsion's own wires are `mass.wiring`.
 * @validity Gross mass 300 to 5670 kg; outside an advisory.
 * @source Cessna: Roskam V, equation 7.13 (read in an open course notebook, printed 143 lb for 5354 lb).
 * @example
 * mass.electrical({ grossMass: 2000 * u.kg }) // 53.6
 */
export function electrical(options: ElectricalMassOptions): Mass {
  return massOf(electricalItem, options)
}

/**
 * Mass of hydraulics: brakes and what they need.
 *
 * @equation W = 0.05 W_g^0.8 M^0.5 [lb]
 * @param options - `grossMass` [kg], `mach` M in cruise (0.2)
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regression over light aircraft.
 * @validity Gross mass 300 to 5670 kg; outside an advisory.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equation 15.55 (read in an open course notebook, printed 26 lb).
 * @example
 * mass.hydraulics({ grossMass: 2000 * u.kg, mach: 0.18 }) // 7.9207
 */
export function hydraulics(options: HydraulicsMassOptions): Mass {
  return massOf(hydraulicsItem, options)
}

/**
 * Mass of seats, trim and what else makes a cabin, by one of two published equations.
 *
 * @equation cessna: W = 0.412 N^1.145 W_g^0.489; raymer: W = 0.0582 W_g - 65 [lb]
 * @param options - `method`, `grossMass` [kg], `occupants` N for cessna
 * @returns mass [kg]; never below 0
 * @throws InvalidInput as `mass.wing`
 * @method Regressions over light aircraft.
 * @validity Gross mass 300 to 5670 kg; outside an advisory. Raymer's falls to nothing at 507 kg.
 * @source Cessna: Roskam V (read in an open course notebook, printed 213 lb for six seats and 5354 lb). Raymer, equation 15.59 (from memory).
 * @example
 * mass.furnishing({ grossMass: 2000 * u.kg, occupants: 4 }) // 55.32
 */
export function furnishing(options: FurnishingMassOptions): Mass {
  return massOf(furnishingItem, options)
}
