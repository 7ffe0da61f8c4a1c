/** Mission: the aircraft as it is flown, segment by segment, with its transition and the battery in time. */
export { type Aircraft, type AircraftOptions, aircraft } from './aircraft.js'
export type { CruiseSystem, CruiseSystemOptions } from './cruise-system.js'
export type { EnergyStore, EnergyStoreOptions } from './energy-store.js'
export type { LiftSystem, LiftSystemOptions, RotorControl } from './lift-system.js'
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
