/** Mission: the aircraft as it is flown, segment by segment, with its transition and the battery in time. */
export { type Aircraft, type AircraftOptions, aircraft } from './aircraft.js'
export { type Corridor, type CorridorOptions, corridor, type RotorLimit } from './corridor.js'
export type { CruiseSystem, CruiseSystemOptions } from './cruise-system.js'
export { demand } from './demand.js'
export type { EnergyStore, EnergyStoreOptions } from './energy-store.js'
export type {
  Demand,
  DemandDeficits,
  DemandRow,
  FlownDeficits,
  FlownMission,
  FlownRow,
  LastHover,
  MissionHistory,
  MissionLimit,
} from './flown.js'
export { type FlyOptions, fly } from './fly.js'
export type { DemandOptions } from './fly-all.js'
export type { LiftSystem, LiftSystemOptions, RotorControl } from './lift-system.js'
export { type Multirotor, type MultirotorOptions, multirotor } from './multirotor.js'
export { type PowerAgainstSpeed, type PowerAgainstSpeedOptions, powerAgainstSpeed } from './power-against-speed.js'
export { type ReserveRule, reserves } from './reserves.js'
export type {
  BalkedLandingSegment,
  ClimbSegment,
  DescentSegment,
  HoverSegment,
  LandingSegment,
  LevelSegment,
  Segment,
  SegmentKind,
  SpeedChoice,
  SpeedRule,
  TransitionSegment,
  VerticalClimbSegment,
} from './segment.js'
export { segments } from './segments.js'
export { type EnergyPerDistance, type LevelSpeed, type Speeds, type SpeedsOptions, speeds } from './speeds.js'
export { type Transition, type TransitionOptions, type TransitionPath, transition } from './transition.js'
export { type Trim, type TrimDeficits, type TrimOptions, trim } from './trim.js'
