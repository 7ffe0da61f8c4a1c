/** What a mission gives: rows by segment, totals, deficits with their signs, and the path in time. */
import type {
  AbsoluteTemperature,
  Energy,
  Length,
  Mass,
  Power,
  Ratio,
  Speed,
  TemperatureDifference,
  Time,
  Voltage,
} from '../quantity.js'
import type { PackLimit } from './pack-track.js'
import type { SegmentKind } from './segment.js'

/** What is met first where a mission is not feasible. */
export type MissionLimit = PackLimit | 'lift rating' | 'cruise rating' | 'cruise thrust' | 'sector distance'

/** One segment, as it asks of the battery. */
export interface DemandRow {
  readonly name: string
  readonly kind: SegmentKind
  /** [s] */
  readonly time: Time
  /** Over ground [m]. */
  readonly distance: Length
  /** At the terminals [J]. */
  readonly energy: Energy
  /** [W] */
  readonly meanPower: Power
  /** [W] */
  readonly peakPower: Power
  /** True airspeed; the end of a transition, the rate of a vertical climb or landing [m/s]. */
  readonly speed: Speed
  /** True where the stall margin raised the speed. */
  readonly floorBinds: boolean
  /** At its end [m]. */
  readonly altitude: Length
  /** Of the aircraft [kg]. */
  readonly mass: Mass
  /** Greatest at the shafts of the lift rotors [W]. */
  readonly rotorPower: Power
  /** Greatest at the shaft of the propeller [W]. */
  readonly propellerPower: Power
}

/** One segment, with the battery at its end. */
export interface FlownRow extends DemandRow {
  readonly stateOfCharge: Ratio
  /** Of the pack, under the last power of the segment [V]. */
  readonly voltage: Voltage
  /** Of the cells [K]. */
  readonly temperature: AbsoluteTemperature
}

/** Signed: positive is lacking, negative is left. Those of a rating are absent without one. */
export interface DemandDeficits {
  /** Greatest less rating at the shafts of the lift rotors [W]. */
  readonly liftPower?: Power
  /** Greatest less rating at the shaft of the propeller [W]. */
  readonly cruisePower?: Power
  /** Thrust lacking even for a tenth of a transition's acceleration [N]; 0 where it is there. */
  readonly thrust: number
  /** By which the segments without the cruise exceed the distance of the sector [m]; 0 without one. */
  readonly distance: Length
}

export interface FlownDeficits extends DemandDeficits {
  /** Drawn from the store below the floor of charge, or asked for and not given [J]. */
  readonly energy: Energy
  /** Greatest of power asked less power limit of the pack, over the flight [W]. */
  readonly packPower: Power
  /** Of the cells, hottest less allowed [K]. */
  readonly temperature: TemperatureDifference
}

/** Path in time; lists of equal length, and where each segment begins in them. */
export interface MissionHistory {
  readonly time: readonly Time[]
  readonly distance: readonly Length[]
  readonly altitude: readonly Length[]
  readonly speed: readonly Speed[]
  /** At the terminals [W]. */
  readonly power: readonly Power[]
  /** 1 without a battery. */
  readonly stateOfCharge: readonly Ratio[]
  readonly begins: readonly { readonly name: string; readonly at: Ratio }[]
}

/** What both ways of flying give. */
interface Totals {
  readonly feasible: boolean
  readonly status: 'ok' | MissionLimit
  /** The first limit, with segment and second; empty where the mission is feasible. */
  readonly message: string
  /** In which the first limit is met; empty where there is none. */
  readonly segment: string
  /** Into that segment [s]. */
  readonly second: Time
  /** [s] */
  readonly time: Time
  /** Over ground [m]. */
  readonly distance: Length
  /** At the terminals, as asked [J]. */
  readonly energy: Energy
  /** At the terminals [W]. */
  readonly peakPower: Power
}

export interface Demand extends Totals {
  readonly rows: readonly DemandRow[]
  readonly deficits: DemandDeficits
}

/** The hover that must still be possible when all is flown. */
export interface LastHover {
  /** Power limit less hover power; negative is lacking [W]. */
  readonly powerMargin: Power
  /** To hover, at the terminals [W]. */
  readonly power: Power
  /** Of the pack [W]. */
  readonly powerLimit: Power
}

export interface FlownMission extends Totals {
  readonly rows: readonly FlownRow[]
  readonly deficits: FlownDeficits
  readonly landing: LastHover
  /** At the end. */
  readonly stateOfCharge: Ratio
  /** Of the cells at the end [K]. */
  readonly temperature: AbsoluteTemperature
  /** [K] */
  readonly greatestTemperature: AbsoluteTemperature
  /** I^2 R [J]. */
  readonly heat: Energy
  /** Drawn from the store, the integral of V_oc dQ [J]. */
  readonly stored: Energy
  /** (delivered + heat - stored)/stored: what the integration in time left open. */
  readonly openBalance: Ratio
  /** Empty with coarse steps. */
  readonly history: MissionHistory
}
