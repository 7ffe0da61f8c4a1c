import type { Angle, Area, Length, Mass, Pressure, Ratio } from '../quantity.js'
import { u } from '../units.js'
import { lightAircraft, type MassItem, massOf, nonNegative, positive, within } from './method.js'

export interface TailMassOptions {
  /** `'raymer'` when left out. */
  readonly method?: 'raymer' | 'nicolai' | 'cessna'
  /** [kg] */
  readonly grossMass: Mass
  readonly ultimateLoadFactor: Ratio
  /** [m^2] */
  readonly area: Area
  readonly aspectRatio: Ratio
  /** Tip over root chord; 0.6 when left out. */
  readonly taper?: Ratio
  /** Thickness over chord; 0.1 when left out. */
  readonly thicknessRatio?: Ratio
  /** Of the quarter chord [rad]; 0 when left out. */
  readonly sweep?: Angle
  /** In cruise [Pa]; for `'raymer'`. */
  readonly dynamicPressure?: Pressure
}

export interface HorizontalTailMassOptions extends TailMassOptions {
  /** Between the quarter chords of wing and tail [m]; for `'nicolai'`. */
  readonly arm?: Length
}

export interface VerticalTailMassOptions extends TailMassOptions {
  /** Height of the horizontal tail on the fin over the fin's height: 0 low, 1 for a T-tail; 0 when left out. */
  readonly tailHeight?: Ratio
}

const checks = {
  grossMass: positive('kg'),
  ultimateLoadFactor: within('1', 0.5, 30),
  area: positive('m^2'),
  aspectRatio: within('1', 0.3, 30),
  taper: within('1', 0.05, 1),
  thicknessRatio: within('1', 0.02, 0.5),
  sweep: within('rad', -1.2, 1.2),
  dynamicPressure: positive('Pa'),
}

function fillTail(o: TailMassOptions) {
  return {
    grossMass: o.grossMass,
    ultimateLoadFactor: o.ultimateLoadFactor,
    area: o.area,
    aspectRatio: o.aspectRatio,
    taper: o.taper ?? 0.6,
    thicknessRatio: o.thicknessRatio ?? 0.1,
    sweep: o.sweep ?? 0,
    dynamicPressure: o.dynamicPressure,
  }
}

/** Thickness at the root [ft]. */
function rootThicknessFeet(o: { area: number; aspectRatio: number; taper: number; thicknessRatio: number }): number {
  const span = Math.sqrt(o.area * o.aspectRatio)
  return (o.thicknessRatio * 2 * o.area) / (span * (1 + o.taper)) / u.ft
}

function spanFeet(o: { area: number; aspectRatio: number }): number {
  return Math.sqrt(o.area * o.aspectRatio) / u.ft
}

export const horizontalTailItem: MassItem<HorizontalTailMassOptions> = {
  call: 'mass.horizontalTail',
  checks: { ...checks, arm: positive('m') },
  fill: (o) => ({ ...fillTail(o), arm: o.arm }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'raymer',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio', 'dynamicPressure'],
      mass: (o) => {
        const cosine = Math.cos(o.sweep)
        return (
          u.lb *
          0.016 *
          (o.ultimateLoadFactor * (o.grossMass / u.lb)) ** 0.414 *
          (o.dynamicPressure / u.psf) ** 0.168 *
          (o.area / u.ft2) ** 0.896 *
          ((100 * o.thicknessRatio) / cosine) ** -0.12 *
          (o.aspectRatio / cosine ** 2) ** 0.043 *
          o.taper ** -0.02
        )
      },
    },
    {
      name: 'nicolai',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio', 'arm'],
      mass: (o) =>
        u.lb *
        127 *
        (((o.grossMass / u.lb) * o.ultimateLoadFactor * 1e-5) ** 0.87 *
          (o.area / u.ft2 / 100) ** 1.2 *
          (o.arm / u.ft / 10) ** 0.483 *
          Math.sqrt(spanFeet(o) / rootThicknessFeet(o))) **
          0.458,
    },
    {
      name: 'cessna',
      needs: ['grossMass', 'area', 'aspectRatio'],
      mass: (o) =>
        (u.lb * 3.184 * (o.grossMass / u.lb) ** 0.887 * (o.area / u.ft2) ** 0.101 * o.aspectRatio ** 0.138) /
        (174.04 * rootThicknessFeet(o) ** 0.223),
    },
  ],
}

export const verticalTailItem: MassItem<VerticalTailMassOptions> = {
  call: 'mass.verticalTail',
  checks: { ...checks, tailHeight: nonNegative('1') },
  fill: (o) => ({ ...fillTail(o), tailHeight: o.tailHeight ?? 0 }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'raymer',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio', 'dynamicPressure'],
      mass: (o) => {
        const cosine = Math.cos(o.sweep)
        return (
          u.lb *
          0.073 *
          (1 + 0.2 * o.tailHeight) *
          (o.ultimateLoadFactor * (o.grossMass / u.lb)) ** 0.376 *
          (o.dynamicPressure / u.psf) ** 0.122 *
          (o.area / u.ft2) ** 0.873 *
          ((100 * o.thicknessRatio) / cosine) ** -0.49 *
          (o.aspectRatio / cosine ** 2) ** 0.357 *
          o.taper ** 0.039
        )
      },
    },
    {
      name: 'nicolai',
      needs: ['grossMass', 'ultimateLoadFactor', 'area', 'aspectRatio'],
      mass: (o) =>
        u.lb *
        98.5 *
        (((o.grossMass / u.lb) * o.ultimateLoadFactor * 1e-5) ** 0.87 *
          (o.area / u.ft2 / 100) ** 1.2 *
          Math.sqrt(spanFeet(o) / rootThicknessFeet(o))) **
          0.458,
    },
    {
      name: 'cessna',
      needs: ['grossMass', 'area', 'aspectRatio'],
      mass: (o) =>
        (u.lb * 1.68 * (o.grossMass / u.lb) ** 0.567 * (o.area / u.ft2) ** 1.249 * o.aspectRatio ** 0.482) /
        (639.95 * rootThicknessFeet(o) ** 0.747 * Math.cos(o.sweep) ** 0.882),
    },
  ],
}

/**
 * Mass of a horizontal tail, by one of three published equations for light aircraft.
 *
 * @equation raymer: W = 0.016 (n W_g)^0.414 q^0.168 S^0.896 (100 (t/c)/cos L)^-0.12 (A/cos^2 L)^0.043 t^-0.02; nicolai: W = 127 ((n W_g/1e5)^0.87 (S/100)^1.2 (l/10)^0.483
 * (b/t_r)^0.5)^0.458; cessna: W = 3.184 W_g^0.887 S^0.101 A^0.138/(174.04 t_r^0.223) [all lb, ft, psf]
 * @param options - `method`, `grossMass` [kg], `ultimateLoadFactor` n, `area` S [m^2], `aspectRatio` A, `taper` t (0.6), `thicknessRatio` t/c (0.1), `sweep` L [rad] (0),
 * `dynamicPressure` [Pa] for raymer, `arm` l [m] for nicolai
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regressions over light aircraft; `mass.spread("horizontalTail", ...)` shows them side by side. Root thickness t_r from area, aspect ratio, taper and thickness ratio.
 * @validity Gross mass 300 to 5670 kg; outside an advisory. A tail carried by two booms takes no account of them.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equation 15.47 (read). Nicolai and Carichner, 2010; Roskam V, equation 5.16 (from memory). Cessna: Roskam V, equation 5.12 (read).
 * @example
 * const tail = { grossMass: 2000 * u.kg, ultimateLoadFactor: 5.7, area: 2.5 * u.m2, aspectRatio: 5, dynamicPressure: 2001 * u.Pa }
 * mass.horizontalTail(tail) // 14.142
 */
export function horizontalTail(options: HorizontalTailMassOptions): Mass {
  return massOf(horizontalTailItem, options)
}

/**
 * Mass of a vertical tail, by one of three published equations for light aircraft.
 *
 * @equation raymer: W = 0.073 (1 + 0.2 H) (n W_g)^0.376 q^0.122 S^0.873 (100 (t/c)/cos L)^-0.49 (A/cos^2 L)^0.357 t^0.039; nicolai: W = 98.5 ((n W_g/1e5)^0.87 (S/100)^1.2
 * (b/t_r)^0.5)^0.458; cessna: W = 1.68 W_g^0.567 S^1.249 A^0.482/(639.95 t_r^0.747 cos^0.882 L) [all lb, ft, psf]
 * @param options - as `mass.horizontalTail` without `arm`, and `tailHeight` H, 0 for a low tail to 1 for a T-tail (0)
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method As `mass.horizontalTail`. For two fins ask for one, with half of the area, twice.
 * @validity As `mass.horizontalTail`.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equation 15.48 (read). Nicolai and Carichner, 2010; Roskam V, equation 5.17 (from memory). Cessna: Roskam V, equation 5.13 (from
 * memory).
 * @example
 * const fin = { grossMass: 2000 * u.kg, ultimateLoadFactor: 5.7, area: 1.8 * u.m2, aspectRatio: 1.6, dynamicPressure: 2001 * u.Pa }
 * mass.verticalTail(fin) // 11.755
 */
export function verticalTail(options: VerticalTailMassOptions): Mass {
  return massOf(verticalTailItem, options)
}
