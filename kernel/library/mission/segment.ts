/** What a mission is made of: segments as plain records. */
import type { Acceleration, Length, Mass, Ratio, Speed, Time } from '../quantity.js'

export type SegmentKind =
  | 'hover'
  | 'vertical climb'
  | 'transition'
  | 'climb'
  | 'cruise'
  | 'loiter'
  | 'descent'
  | 'return transition'
  | 'landing'
  | 'balked landing'
  | 'divert'
  | 'reserve'

/** True airspeed [m/s], or the rule by which it is found; with a wing never below the floor of stall margin times stall speed. */
export type SpeedChoice = Speed | SpeedRule
export type SpeedRule = 'best range' | 'best endurance' | 'power limit'

/** What every segment may say. */
interface Named {
  /** Its kind when left out. */
  readonly name?: string
  /** Taken up (positive) or set down (negative) as the segment begins [kg]. */
  readonly massChange?: Mass
}

/** What every segment on the wing (of a multirotor: on tilted rotors) may say. */
interface Flown extends Named {
  readonly speed?: SpeedChoice
  /** Along the flight path, from behind positive [m/s]; the mission's when left out. */
  readonly tailwind?: Speed
}

export interface HoverSegment extends Named {
  readonly kind: 'hover'
  /** [s] */
  readonly time: Time
}

export interface VerticalClimbSegment extends Named {
  readonly kind: 'vertical climb'
  /** [m] */
  readonly height: Length
  /** [m/s] */
  readonly rate: Speed
}

export interface TransitionSegment extends Named {
  readonly kind: 'transition' | 'return transition'
  /** The greatest along the path [m/s^2]; 1.5 outward and 1 on return when left out. */
  readonly acceleration?: Acceleration
  /** Wing-borne end [m/s]: the floor when left out. */
  readonly speed?: Speed
  readonly tailwind?: Speed
  /** Lift rotors that do not turn: 1 for one that will not start, 2 where its opposite is stopped for trim; 0 when left out. */
  readonly stoppedRotors?: Ratio
}

export interface ClimbSegment extends Flown {
  readonly kind: 'climb'
  /** Altitude at its end [m]. */
  readonly to: Length
  /** [m/s]; what the rating of the cruise system (of a multirotor: of the rotors) gives when left out. */
  readonly rate?: Speed
}

export interface DescentSegment extends Flown {
  readonly kind: 'descent'
  /** Altitude at its end [m]. */
  readonly to: Length
  /** Downward, positive [m/s]; 2.5 when left out. */
  readonly rate?: Speed
}

/** Level flight for a time or over a ground distance; `'best range'` in cruise and divert, `'best endurance'` in loiter and reserve when left out. */
export interface LevelSegment extends Flown {
  readonly kind: 'cruise' | 'loiter' | 'divert' | 'reserve'
  /** [s] */
  readonly time?: Time
  /** Over ground [m]. */
  readonly distance?: Length
  /** Where this segment alone is flown, without a climb to it [m]; where the aircraft is when left out. */
  readonly altitude?: Length
}

export interface LandingSegment extends Named {
  readonly kind: 'landing'
  /** Hover before touch-down [s]; 0 when left out. */
  readonly time?: Time
  /** Descended vertically [m]; 0 when left out. */
  readonly height?: Length
  /** Downward, positive [m/s]; 2 when left out. */
  readonly rate?: Speed
  readonly stoppedRotors?: Ratio
}

/** A landing given up in hover: a hover of `time`, then a vertical climb. What follows (transition, divert) is written as its own segments. */
export interface BalkedLandingSegment extends Named {
  readonly kind: 'balked landing'
  /** [s]; 10 when left out. */
  readonly time?: Time
  /** Climbed vertically [m]; 30 when left out. */
  readonly height?: Length
  /** [m/s]; 2.5 when left out. */
  readonly rate?: Speed
}

export type Segment =
  | HoverSegment
  | VerticalClimbSegment
  | TransitionSegment
  | ClimbSegment
  | DescentSegment
  | LevelSegment
  | LandingSegment
  | BalkedLandingSegment
