import type { Area, Length, Mass, Pressure, Ratio, Speed } from '../quantity.js'
import { u } from '../units.js'
import { lightAircraft, type MassItem, massOf, positive, within } from './method.js'

export interface FuselageMassOptions {
  /** `'raymer'` when left out. */
  readonly method?: 'raymer' | 'torenbeek' | 'nicolai' | 'cessna'
  /** [kg] */
  readonly grossMass: Mass
  /** For `'raymer'` and `'nicolai'`. */
  readonly ultimateLoadFactor?: Ratio
  /** Wetted area [m^2]; for `'raymer'` and `'torenbeek'`. */
  readonly wettedArea?: Area
  /** [m] */
  readonly length?: Length
  /** Greatest height [m]. */
  readonly depth?: Length
  /** Greatest width [m]; as `depth` when left out. */
  readonly width?: Length
  /** Between the quarter chords of wing and tail [m]. */
  readonly tailArm?: Length
  /** In cruise [Pa]; for `'raymer'`. */
  readonly dynamicPressure?: Pressure
  /** Cruise speed, equivalent [m/s]; for `'nicolai'`. */
  readonly speed?: Speed
  /** Design dive speed, equivalent [m/s]; for `'torenbeek'`. */
  readonly diveSpeed?: Speed
  /** Pilot included; for `'cessna'`. */
  readonly occupants?: Ratio
}

export const fuselageItem: MassItem<FuselageMassOptions> = {
  call: 'mass.fuselage',
  checks: {
    grossMass: positive('kg'),
    ultimateLoadFactor: within('1', 0.5, 30),
    wettedArea: positive('m^2'),
    length: positive('m'),
    depth: positive('m'),
    width: positive('m'),
    tailArm: positive('m'),
    dynamicPressure: positive('Pa'),
    speed: positive('m/s'),
    diveSpeed: positive('m/s'),
    occupants: within('1', 1, 20),
  },
  fill: (o) => ({
    grossMass: o.grossMass,
    ultimateLoadFactor: o.ultimateLoadFactor,
    wettedArea: o.wettedArea,
    length: o.length,
    depth: o.depth,
    width: o.width,
    tailArm: o.tailArm,
    dynamicPressure: o.dynamicPressure,
    speed: o.speed,
    diveSpeed: o.diveSpeed,
    occupants: o.occupants,
  }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'raymer',
      needs: ['grossMass', 'ultimateLoadFactor', 'wettedArea', 'length', 'depth', 'tailArm', 'dynamicPressure'],
      mass: (o) =>
        u.lb *
        0.052 *
        (o.wettedArea / u.ft2) ** 1.086 *
        (o.ultimateLoadFactor * (o.grossMass / u.lb)) ** 0.177 *
        (o.tailArm / u.ft) ** -0.051 *
        (o.length / o.depth) ** -0.072 *
        (o.dynamicPressure / u.psf) ** 0.241,
    },
    {
      name: 'torenbeek',
      needs: ['grossMass', 'wettedArea', 'depth', 'tailArm', 'diveSpeed'],
      mass: (o) => 0.23 * Math.sqrt((o.diveSpeed * o.tailArm) / ((o.width ?? o.depth) + o.depth)) * o.wettedArea ** 1.2,
    },
    {
      name: 'nicolai',
      needs: ['grossMass', 'ultimateLoadFactor', 'length', 'depth', 'speed'],
      mass: (o) =>
        u.lb *
        200 *
        (((o.grossMass / u.lb) * o.ultimateLoadFactor * 1e-5) ** 0.286 *
          (o.length / u.ft / 10) ** 0.857 *
          (((o.width ?? o.depth) + o.depth) / u.ft / 10) *
          (o.speed / u.kt / 100) ** 0.338) **
          1.1,
    },
    {
      name: 'cessna',
      needs: ['grossMass', 'length', 'occupants'],
      mass: (o) => u.lb * 0.04682 * (o.grossMass / u.lb) ** 0.692 * o.occupants ** 0.374 * (o.length / u.ft) ** 0.59,
      caution:
        'The equation "cessna" was fitted to aluminium bodies of low-wing light aircraft; one source prints its constant as 0.04628.',
    },
  ],
}

/**
 * Mass of a body that carries people, by one of four published equations for light aircraft.
 *
 * @equation raymer: W = 0.052 S_w^1.086 (n W_g)^0.177 l_t^-0.051 (L/D)^-0.072 q^0.241 [lb, ft, psf]; torenbeek: m = 0.23 sqrt(V_D l_t/(w + h)) S_w^1.2 [kg, m, m/s]; nicolai: W = 200
 * ((n W_g/1e5)^0.286 (L/10)^0.857 ((w + h)/10) (V/100)^0.338)^1.1 [lb, ft, kt]; cessna: W = 0.04682 W_g^0.692 N^0.374 L^0.59 [lb, ft]
 * @param options - `method`, `grossMass` [kg], and as the method needs `ultimateLoadFactor` n, `wettedArea` S_w [m^2], `length` L, `depth` D or h, `width` w (as depth), `tailArm` l_t [m],
 * `dynamicPressure` q [Pa], `speed` V, `diveSpeed` V_D [m/s], `occupants` N
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regressions over light aircraft, no pressurisation; `mass.spread("fuselage", ...)` shows them side by side.
 * @validity Gross mass 300 to 5670 kg; outside an advisory, and cessna's always with one. A body that houses lift rotors, doors or a battery bay is heavier by their frames.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equation 15.49 (read). Torenbeek, E., Synthesis of Subsonic Airplane Design, 1976, section 8.3 (from memory). Nicolai; Roskam V,
 * equation 5.25 (from memory). Cessna, low wing: Roskam V, equation 5.26 (from memory).
 * @example
 * const cabin = {
 *   grossMass: 2000 * u.kg, ultimateLoadFactor: 5.7, wettedArea: 30 * u.m2, length: 7 * u.m, depth: 1.6 * u.m, tailArm: 4 * u.m, dynamicPressure: 2001 * u.Pa,
 * }
 * mass.fuselage(cabin) // 145.85
 */
export function fuselage(options: FuselageMassOptions): Mass {
  return massOf(fuselageItem, options)
}
