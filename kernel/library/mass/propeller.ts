import type { Length, Mass, Power, Ratio } from '../quantity.js'
import { u } from '../units.js'
import { type MassItem, massOf, positive, within } from './method.js'

export interface PropellerMassOptions {
  readonly method?: 'powerDiameter'
  /** [m] */
  readonly diameter: Length
  /** Greatest shaft power of one propeller [W]. */
  readonly power: Power
  readonly blades: Ratio
  /** 1.3 wood, 1 plastic or metal, 0.6 composite (when left out). */
  readonly materialFactor?: Ratio
  /** 15 below 50 hp and 31.92 above, when left out. */
  readonly sizeFactor?: Ratio
}

export const propellerItem: MassItem<PropellerMassOptions> = {
  call: 'mass.propeller',
  checks: {
    diameter: positive('m'),
    power: positive('W'),
    blades: within('1', 1, 12),
    materialFactor: within('1', 0.2, 3),
    sizeFactor: within('1', 5, 60),
  },
  fill: (o) => ({
    diameter: o.diameter,
    power: o.power,
    blades: o.blades,
    materialFactor: o.materialFactor ?? 0.6,
    sizeFactor: o.sizeFactor,
  }),
  methods: [
    {
      name: 'powerDiameter',
      needs: ['diameter', 'power', 'blades'],
      mass: (o) => {
        const sizeFactor = o.sizeFactor ?? (o.power < 50 * u.hp ? 15 : 31.92)
        return 6.514e-3 * o.materialFactor * sizeFactor * o.blades ** 0.391 * ((o.diameter * o.power) / 1000) ** 0.782
      },
    },
  ],
}

/**
 * Mass of a cruise propeller.
 *
 * @equation m = 6.514e-3 K_m K_s B^0.391 (D P/1000)^0.782 [kg, m, W]
 * @param options - `diameter` D [m], `power` P of one propeller [W], `blades` B, `materialFactor` K_m (0.6 composite), `sizeFactor` K_s (15 below 50 hp, 31.92 above)
 * @returns mass of one propeller [kg]
 * @throws InvalidInput as `mass.wing`
 * @method Regression; the two size factors meet with a jump at 50 hp (37 kW), where the smaller is meant for model and light aircraft. State `sizeFactor` near there.
 * @validity Up to 1500 hp. Variable pitch weighs some 50 % more (from memory).
 * @source Form and smaller factor: public code (read; constant worked out again from pounds, feet and horsepower). Larger factor from memory.
 * @example
 * mass.propeller({ diameter: 1.5 * u.m, power: 60 * u.kW, blades: 3 }) // 6.47
 */
export function propeller(options: PropellerMassOptions): Mass {
  return massOf(propellerItem, options)
}
