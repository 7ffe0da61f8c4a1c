/** Battery mass and energy by the pack's specific energy; the power a pack can give is another check. */
import { requireNonNegative, requirePositive, requireRepresentable, requireShare } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Energy, Mass, Ratio, SpecificEnergy } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

interface PackOptions {
  /** Of the whole pack when new [J/kg]: cells, case, cooling, wiring. */
  readonly specificEnergy: SpecificEnergy
  /** Share of the charge that may be used, from full to the reserve floor; 0 to 1. */
  readonly usableShare: Ratio
  /** Share of the new capacity left at the end of the pack's life; 1 (a new pack) when left out. */
  readonly capacityLeft?: Ratio
}

export interface MassForEnergyOptions extends PackOptions {
  /** Energy drawn from the pack [J]. */
  readonly energy: Energy
}

export interface UsableEnergyOptions extends PackOptions {
  /** [kg] */
  readonly mass: Mass
}

export interface BatteryForEnergy {
  /** [kg] */
  readonly mass: Mass
  /** Nameplate energy of the new pack [J]. */
  readonly installedEnergy: Energy
  /** Usable energy per mass of pack [J/kg]. */
  readonly usableSpecificEnergy: SpecificEnergy
}

const knownForMass = new Set(['energy', 'specificEnergy', 'usableShare', 'capacityLeft'])
const knownForEnergy = new Set(['mass', 'specificEnergy', 'usableShare', 'capacityLeft'])

/** 300 Wh/kg: above the cells in service (180 to 280 Wh/kg, from memory), let alone their packs. */
const inService = 300 * 3600

/**
 * Mass of the pack that holds the energy of a flight.
 *
 * @equation m = E/(e s c); installed energy = e m
 * @param options - `energy` E drawn from the pack [J], `specificEnergy` e of the new pack [J/kg], `usableShare` s (0 to 1),
 * `capacityLeft` c at the end of life (0 to 1, 1 when left out)
 * @returns `mass` [kg], `installedEnergy` [J], `usableSpecificEnergy` [J/kg]
 * @throws InvalidInput for a negative energy, a specific energy that is not positive, a share outside 0 to 1, and an unknown option
 * @method Closed form: energy alone. Losses inside the pack belong in `energy`.
 * @validity Says nothing on power: a pack for short flights is sized by the power of the last hover. Above 300 Wh/kg an advisory
 * (beyond cells in service; range from memory).
 * @source Hepperle, M., Electric Flight - Potential and Limitations, NATO STO-MP-AVT-209, paper 9, 2012 (equation from memory).
 * @example
 * const pack = battery.massForEnergy({ energy: 77.3 * u.kWh, specificEnergy: (235 * u.Wh) / u.kg, usableShare: 0.8 })
 * pack.mass // 411.17
 */
export function massForEnergy(options: MassForEnergyOptions): BatteryForEnergy {
  const method = 'battery.massForEnergy'
  checkOptions(method, options, knownForMass)
  requireNonNegative(method, 'energy', options.energy, 'J')
  const usableSpecificEnergy = usablePerMass(method, options)
  const mass = options.energy / usableSpecificEnergy
  const installedEnergy = mass * options.specificEnergy
  requireRepresentable(method, mass + installedEnergy)
  return { mass, installedEnergy, usableSpecificEnergy }
}

/**
 * Energy that a pack of given mass can give in a flight.
 *
 * @equation E = e s c m
 * @param options - `mass` m [kg], `specificEnergy` e of the new pack [J/kg], `usableShare` s (0 to 1),
 * `capacityLeft` c at the end of life (0 to 1, 1 when left out)
 * @returns usable energy E [J]
 * @throws InvalidInput for a negative mass, a specific energy that is not positive, a share outside 0 to 1, and an unknown option
 * @method Closed form, the inverse of `battery.massForEnergy`.
 * @validity As `battery.massForEnergy`.
 * @source Hepperle, M., Electric Flight - Potential and Limitations, NATO STO-MP-AVT-209, paper 9, 2012 (equation from memory).
 * @example
 * battery.usableEnergy({ mass: 400 * u.kg, specificEnergy: (250 * u.Wh) / u.kg, usableShare: 0.8, capacityLeft: 0.8 }) / u.kWh // 64
 */
export function usableEnergy(options: UsableEnergyOptions): Energy {
  const method = 'battery.usableEnergy'
  checkOptions(method, options, knownForEnergy)
  requireNonNegative(method, 'mass', options.mass, 'kg')
  const energy = options.mass * usablePerMass(method, options)
  requireRepresentable(method, energy)
  return energy
}

function usablePerMass(method: string, options: PackOptions): number {
  const { specificEnergy, usableShare, capacityLeft = 1 } = options
  requirePositive(method, 'specificEnergy', specificEnergy, 'J/kg')
  requireShare(method, 'usableShare', usableShare)
  requireShare(method, 'capacityLeft', capacityLeft)
  if (specificEnergy > inService && isListening())
    advise({
      code: 'SPECIFIC_ENERGY',
      method,
      quantity: 'specificEnergy',
      value: specificEnergy,
      range: [0, inService],
      message: `A pack of ${(specificEnergy / 3600).toPrecision(3)} Wh/kg is beyond cells in service today (up to 300 Wh/kg).`,
    })
  return specificEnergy * usableShare * capacityLeft
}
