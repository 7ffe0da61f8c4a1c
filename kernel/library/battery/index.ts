/** Battery: cells, packs, what they give at an instant and along a profile, how they age and what they weigh. */
export { type AgedOptions, aged, type Fade, type FadeOptions, fade } from './aged.js'
export { type Cell, type CellOptions, cell, type ResistanceTable } from './cell.js'
export { cells } from './cells.js'
export type { CellBound, CurrentRating } from './circuit.js'
export { type Discharge, type DischargeOptions, discharge, type PowerLimit, powerLimit } from './discharge.js'
export {
  type BatteryForEnergy,
  type MassForEnergyOptions,
  massForEnergy,
  type UsableEnergyOptions,
  usableEnergy,
} from './energy.js'
export { type Heating, type HeatingOptions, heating } from './heating.js'
export { type MassForMission, type MassForMissionOptions, massForMission, type PowerDemand } from './mission-mass.js'
export { type Pack, type PackByCountOptions, type PackByEnergyOptions, pack } from './pack.js'
export type { PackState } from './pack-state.js'
export { type Peukert, type PeukertOptions, peukert, peukertRangeSpeed } from './peukert.js'
export {
  type AvailablePower,
  type AvailablePowerOptions,
  availablePower,
  type Ragone,
  type RagoneOptions,
  ragone,
} from './ragone.js'
export { type ProfileSegment, type Run, type RunHistory, type RunOptions, run } from './run.js'
export { type CellAtOptions, cellAt, type Window, type WindowOptions, window } from './window.js'
