import type { Angle, Area, Mass, Pressure, Ratio, Speed } from '../quantity.js'
import { u } from '../units.js'
import { lightAircraft, type MassItem, massOf, positive, within } from './method.js'

export interface WingMassOptions {
  /** `'raymer'` when left out. */
  readonly method?: 'raymer' | 'torenbeek' | 'nicolai' | 'cessna'
  /** [kg] */
  readonly grossMass: Mass
  readonly ultimateLoadFactor: Ratio
  /** [m^2] */
  readonly area: Area
  readonly aspectRatio: Ratio
  /** Tip over root chord; 0.4 when left out. */
  readonly taper?: Ratio
  /** Thickness over chord, at the root; 0.15 when left out. */
  readonly thicknessRatio?: Ratio
  /** Of the quarter chord [rad]; 0 when left out. */
  readonly sweep?: Angle
  /** In cruise [Pa]; for `'raymer'`. */
  readonly dynamicPressure?: Pressure
  /** Greatest level speed, equivalent [m/s]; for `'nicolai'`. */
  readonly speed?: Speed
  /** Fuel (or batteries) in the wing [kg]; its factor is 1 when left out; for `'raymer'`. */
  readonly massInWing?: Mass
}

/** Span of a wing along its sweep [m]; Torenbeek takes that of the half chord, which a wing of little sweep shares with the quarter chord. */
function structuralSpan(area: number, aspectRatio: number, sweep: number): number {
  return Math.sqrt(area * aspectRatio) / Math.cos(sweep)
}

export const wingItem: MassItem<WingMassOptions> = {
  call: 'mass.wing',
  checks: {
    grossMass: positive('kg'),
    ultimateLoadFactor: within('1', 0.5, 30),
    area: positive('m^2'),
    aspectRatio: within('1', 0.5, 60),
    taper: within('1', 0.05, 1),
    thicknessRatio: within('1', 0.02, 0.5),
    sweep: within('rad', -1, 1),
    dynamicPressure: positive('Pa'),
    speed: positive('m/s'),
    massInWing: positive('kg'),
  },
  fill: (o) => ({
    grossMass: o.grossMass,
    ultimateLoadFactor: o.ultimateLoadFactor,
    area: o.area,
    aspectRatio: o.aspectRatio,
    taper: o.taper ?? 0.4,
    thicknessRatio: o.thicknessRatio ?? 0.15,
    sweep: o.sweep ?? 0,
    dynamicPressure: o.dynamicPressure,
    speed: o.speed,
    massInWing: o.massInWing,
  }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'raymer',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio', 'dynamicPressure'],
      mass: (o) => {
        const cosine = Math.cos(o.sweep)
        const inWing = o.massInWing === undefined ? 1 : (o.massInWing / u.lb) ** 0.0035
        return (
          u.lb *
          0.036 *
          (o.area / u.ft2) ** 0.758 *
          inWing *
          (o.aspectRatio / cosine ** 2) ** 0.6 *
          (o.dynamicPressure / u.psf) ** 0.006 *
          o.taper ** 0.04 *
          ((100 * o.thicknessRatio) / cosine) ** -0.3 *
          (o.ultimateLoadFactor * (o.grossMass / u.lb)) ** 0.49
        )
      },
    },
    {
      name: 'torenbeek',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio'],
      mass: (o) => {
        const span = structuralSpan(o.area, o.aspectRatio, o.sweep)
        const rootChord = (2 * o.area) / (Math.sqrt(o.area * o.aspectRatio) * (1 + o.taper))
        const slenderness = span / (o.thicknessRatio * rootChord)
        return (
          4.9e-3 *
          o.grossMass *
          span ** 0.75 *
          (1 + Math.sqrt(1.905 / span)) *
          o.ultimateLoadFactor ** 0.55 *
          (slenderness / (o.grossMass / o.area)) ** 0.3
        )
      },
    },
    {
      name: 'nicolai',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio', 'speed'],
      mass: (o) =>
        u.lb *
        96.948 *
        (((o.grossMass / u.lb) * o.ultimateLoadFactor * 1e-5) ** 0.65 *
          (o.aspectRatio / Math.cos(o.sweep)) ** 0.57 *
          (o.area / u.ft2 / 100) ** 0.61 *
          ((1 + o.taper) / (2 * o.thicknessRatio)) ** 0.36 *
          Math.sqrt(1 + o.speed / u.kt / 500)) **
          0.993,
    },
    {
      name: 'cessna',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio'],
      mass: (o) =>
        u.lb *
        0.04674 *
        (o.grossMass / u.lb) ** 0.397 *
        (o.area / u.ft2) ** 0.36 *
        o.ultimateLoadFactor ** 0.397 *
        o.aspectRatio ** 1.712,
      caution:
        'The equation "cessna" grows with the aspect ratio to the power of 1.7 and was fitted to wings of 6 to 8: slender wings come out too heavy.',
    },
  ],
}

/**
 * Mass of a wing, by one of four published equations for light aircraft.
 *
 * @equation raymer: W = 0.036 S^0.758 W_fw^0.0035 (A/cos^2 L)^0.6 q^0.006 t^0.04 (100 (t/c)/cos L)^-0.3 (n W_g)^0.49 [lb, ft, psf]; torenbeek: m = 4.9e-3 m_g b_s^0.75 (1 +
 * sqrt(1.905/b_s)) n^0.55 ((b_s/t_r)/(m_g/S))^0.3, b_s = b/cos L, t_r of the root [kg, m]; nicolai: W = 96.948 ((n W_g/1e5)^0.65 (A/cos L)^0.57 (S/100)^0.61 ((1 + t)/(2 t/c))^0.36 (1 + V/500)^0.5)^0.993 [lb, ft, kt];
 * cessna: W = 0.04674 W_g^0.397 S^0.36 n^0.397 A^1.712 [lb, ft]
 * @param options - `method`, `grossMass` [kg], `ultimateLoadFactor` n, `area` S [m^2], `aspectRatio` A, `taper` t (0.4), `thicknessRatio` t/c (0.15), `sweep` L [rad] (0), `dynamicPressure`
 * [Pa] for raymer, `speed` [m/s] for nicolai, `massInWing` [kg] for raymer
 * @returns mass [kg]
 * @throws InvalidInput for a value that is not positive, a load factor outside 0.5 to 30, an aspect ratio outside 0.5 to 60 (tails 0.3 to 30), a thickness outside 0.02 to 0.5,
 * what else is outside its range, a method it does not have, an option that the method needs, and an unknown option
 * @method Regressions over light aircraft; `mass.spread("wing", ...)` shows them side by side. They differ by a factor of two on slender wings, so that no single one is "the" mass.
 * @validity Gross mass 300 to 5670 kg; outside an advisory, and cessna's, fitted to aspect ratios of 6 to 8, always with one. A lift-plus-cruise wing that carries booms is heavier by their joints and torsion.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equation 15.46 (read in an open course notebook). Torenbeek, E., Synthesis of Subsonic Airplane Design, 1976, light
 * aircraft (from memory). Nicolai and Carichner, Fundamentals of Aircraft and Airship Design, 2010, chapter 20; Roskam V, equation 5.5 (from memory). Cessna: Roskam V, equation 5.4 (read).
 * @example
 * const shuttle = { grossMass: 2000 * u.kg, ultimateLoadFactor: 5.7, area: 14 * u.m2, aspectRatio: 10, taper: 0.45, dynamicPressure: 2001 * u.Pa }
 * mass.wing(shuttle) // 183.28
 */
export function wing(options: WingMassOptions): Mass {
  return massOf(wingItem, options)
}
