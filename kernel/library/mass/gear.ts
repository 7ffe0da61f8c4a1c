import type { Length, Mass, Ratio } from '../quantity.js'
import { u } from '../units.js'
import { flag, lightAircraft, type MassItem, massOf, positive, within } from './method.js'

export interface GearMassOptions {
  /** `'raymer'` when left out. */
  readonly method?: 'raymer' | 'torenbeek' | 'cessna' | 'nicolai'
  /** At take-off [kg]. */
  readonly grossMass: Mass
  /** [kg]; as `grossMass` when left out: an electric aircraft lands as heavy as it took off. */
  readonly landingMass?: Mass
  /** Ultimate, on landing; 4.5 when left out. */
  readonly landingLoadFactor?: Ratio
  /** Of a main leg [m]; 0.8 when left out. */
  readonly mainLength?: Length
  /** Of the nose leg [m]; 0.8 when left out. */
  readonly noseLength?: Length
  /** True (when left out) for legs that stay down. */
  readonly fixed?: boolean
}

/** A + B W^0.75 + C W + D W^1.5 [kg], main and nose. */
const torenbeekMain = { fixed: [9.1, 0.082, 0.019, 0], retracted: [18.1, 0.131, 0.019, 2.23e-5] } as const
const torenbeekNose = { fixed: [11.3, 0, 0.0024, 0], retracted: [9.1, 0.082, 0, 2.97e-6] } as const

function torenbeek(coefficients: readonly [number, number, number, number], mass: number): number {
  const [a, b, c, d] = coefficients
  return a + b * mass ** 0.75 + c * mass + d * mass ** 1.5
}

export const gearItem: MassItem<GearMassOptions> = {
  call: 'mass.gear',
  checks: {
    grossMass: positive('kg'),
    landingMass: positive('kg'),
    landingLoadFactor: within('1', 1, 20),
    mainLength: positive('m'),
    noseLength: positive('m'),
    fixed: flag,
  },
  fill: (o) => ({
    grossMass: o.grossMass,
    landingMass: o.landingMass,
    landingLoadFactor: o.landingLoadFactor ?? 4.5,
    mainLength: o.mainLength ?? 0.8,
    noseLength: o.noseLength ?? 0.8,
    fixed: o.fixed ?? true,
  }),
  grossMass: lightAircraft,
  methods: [
    {
      name: 'raymer',
      needs: ['grossMass'],
      mass: (o) => {
        const load = (o.landingLoadFactor * (o.landingMass ?? o.grossMass)) / u.lb
        const main = 0.095 * load ** 0.768 * (o.mainLength / u.ft) ** 0.409
        const nose = 0.125 * load ** 0.566 * (o.noseLength / u.ft) ** 0.845
        return u.lb * (main + nose) - (o.fixed ? 0.014 * o.grossMass : 0)
      },
    },
    {
      name: 'torenbeek',
      needs: ['grossMass'],
      mass: (o) => {
        const kind = o.fixed ? 'fixed' : 'retracted'
        return torenbeek(torenbeekMain[kind], o.grossMass) + torenbeek(torenbeekNose[kind], o.grossMass)
      },
    },
    {
      name: 'cessna',
      needs: ['grossMass'],
      mass: (o) => {
        const weight = o.grossMass / u.lb
        const landing = (o.landingMass ?? o.grossMass) / u.lb
        const load = o.landingLoadFactor
        const main = 0.013 * weight + 0.362 * landing ** 0.417 * load ** 0.95 * (o.mainLength / u.ft) ** 0.183
        const nose = 6.2 + 0.0013 * weight + 0.007157 * landing ** 0.749 * load * (o.noseLength / u.ft) ** 0.788
        return u.lb * (main + nose + (o.fixed ? 0 : 0.014 * weight))
      },
    },
    {
      name: 'nicolai',
      needs: ['grossMass'],
      mass: (o) =>
        u.lb *
        0.054 *
        (o.mainLength / u.in) ** 0.501 *
        (((o.landingMass ?? o.grossMass) / u.lb) * o.landingLoadFactor) ** 0.684,
      caution:
        'The equation "nicolai" takes the leg in inches here; one source takes it in feet, which gives a gear lighter by a factor of 3.5.',
    },
  ],
}

/**
 * Mass of a wheeled landing gear, by one of four published equations for light aircraft.
 *
 * @equation raymer: W = 0.095 (n W_l)^0.768 L_m^0.409 + 0.125 (n W_l)^0.566 L_n^0.845 - 0.014 W_g if fixed [lb, ft]; torenbeek: m = sum of A + B m^0.75 + C m + D m^1.5 [kg]; cessna: W = 0.013
 * W_g + 0.362 W_l^0.417 n^0.95 L_m^0.183 + 6.2 + 0.0013 W_g + 0.007157 W_l^0.749 n L_n^0.788 (+ 0.014 W_g if retracted) [lb, ft]; nicolai: W = 0.054 L_m^0.501 (n W_l)^0.684 [lb, in]
 * @param options - `method`, `grossMass` [kg], `landingMass` (as gross) [kg], `landingLoadFactor` n (4.5, ultimate), `mainLength` L_m, `noseLength` L_n (0.8 m), `fixed` (true)
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regressions over runway aircraft; `mass.spread("gear", ...)` shows them side by side. Raymer's has 7 to 8 % of gross mass at 2000 kg (11 % retracted at 700 kg), the others 3 to 6 %.
 * @validity Gross mass 300 to 5670 kg; outside an advisory, and nicolai's always with one. Vertical landings need short legs and no long run, skids are lighter still (1.5 to 2 %, from memory).
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, equations 15.50 and 15.51 (from memory). Torenbeek, E., 1976, table 8-6 (from memory). Cessna: Roskam V, equation 5.38 (from
 * memory). Nicolai and Carichner, 2010 (form read, unit of length from memory).
 * @example
 * mass.gear({ grossMass: 2000 * u.kg }) // 134.42
 */
export function gear(options: GearMassOptions): Mass {
  return massOf(gearItem, options)
}
