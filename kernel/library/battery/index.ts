/** Battery: energy and mass of a pack. */
export {
  type BatteryForEnergy,
  type MassForEnergyOptions,
  massForEnergy,
  type UsableEnergyOptions,
  usableEnergy,
} from './energy.js'
