/** The worked sizing problem as a build-up, for tests of the closure alone; notebooks state it in cells. */
import { preloaded } from '../../../kernel/library/index.js'

const { air, battery, drag, rotor, u, wing } = preloaded

export interface Variation {
  readonly range?: number
  readonly payload?: number
  readonly figureOfMerit?: number
  readonly rotorCount?: number
  readonly structureShare?: number
}

export type WorkedMasses = Readonly<
  Record<'payload' | 'battery' | 'motors' | 'structure' | 'systemsFixed' | 'systems' | 'rotors', number>
>

export function workedBuildUp(variation: Variation = {}): (grossMass: number) => WorkedMasses {
  const { range = 85_000, payload = 400, figureOfMerit = 0.72, rotorCount = 8, structureShare = 0.32 } = variation
  const density = air.standard(600, 15).density
  const wingArea = 15
  const diskArea = rotorCount * Math.PI * 1.3 ** 2
  const polar = drag.polar({
    zeroLiftDrag: (0.42 + rotorCount * 0.018) / wingArea,
    aspectRatio: 11,
    spanEfficiency: 0.8,
  })
  const [hoverTime, reserveTime, speed] = [90, 20 * u.min, 58]
  return (grossMass) => {
    const weight = grossMass * u.g0
    const hover = rotor.hover({ thrust: weight / 0.95, diskArea, density, figureOfMerit })
    const cruise = drag.powerRequired({ polar, weight, wingArea, density, speed })
    const floor = 1.3 * wing.stallSpeed({ weight, density, wingArea, maximumLift: 1.5 })
    const reserve = drag.leastPowerSpeed({ polar, weight, wingArea, density, floor })
    const flying = (cruise.power * range) / speed + reserve.power * reserveTime
    const energy =
      (hover.power / 0.9) * hoverTime + flying / (0.84 * 0.91) + 2 * u.kW * (hoverTime + range / speed + reserveTime)
    return {
      payload,
      battery: battery.massForEnergy({ energy, specificEnergy: (235 * u.Wh) / u.kg, usableShare: 0.8 }).mass,
      motors: (hover.power * (16 / 11) ** 1.5) / (5 * u.kW),
      structure: structureShare * grossMass,
      systemsFixed: 90,
      systems: 0.03 * grossMass,
      rotors: rotorCount * 6.5,
    }
  }
}
