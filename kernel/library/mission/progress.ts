/** A mission under way: where the aircraft is, what it has used, and what stood in its way first. Legs of constant power come in. */
import { standard } from '../air/standard.js'
import { requireRepresentable } from '../check.js'
import { InvalidInput } from '../errors.js'
import type { DemandRow, FlownRow, MissionHistory, MissionLimit } from './flown.js'
import { buildMoment, type Moment, requireMoment, setMoment } from './moment.js'
import type { Flyer } from './multirotor.js'
import type { PackTrack } from './pack-track.js'
import type { Segment } from './segment.js'

/** How finely time is cut. */
export interface Grain {
  /** Longest step of the battery [s]. */
  readonly maxStep: number
  /** Slices of a transition, and whether they are one leg for the battery. */
  readonly slices: number
  readonly together: boolean
  /** Whether the path is kept. */
  readonly history: boolean
}

export const fine: Grain = { maxStep: 10, slices: 24, together: false, history: true }
export const coarse: Grain = { maxStep: 600, slices: 6, together: true, history: false }
const mostSteps = 20_000
/** Points of the path in one leg. */
const mostPieces = 40
/** What rounding leaves of a limit that is flown to exactly. */
const rounding = 1e-9

/** A leg about to be flown; filled in by the segment, read by `Progress.fly`. */
export interface Leg {
  /** [s] */
  duration: number
  /** At the terminals, mean and greatest [W]. */
  power: number
  peak: number
  /** At the shafts [W]. */
  rotorPower: number
  propellerPower: number
  /** Over ground [m]. */
  distance: number
  /** At its end. */
  altitude: number
  speed: number
}

export class Progress {
  readonly craft: Flyer
  readonly moment: Moment
  readonly #method: string
  readonly #offset: number
  readonly grain: Grain
  readonly #track: PackTrack | undefined
  readonly rows: (DemandRow | FlownRow)[] = []
  readonly leg: Leg = {
    duration: 0,
    power: 0,
    peak: 0,
    rotorPower: 0,
    propellerPower: 0,
    distance: 0,
    altitude: 0,
    speed: 0,
  }
  readonly #history = {
    time: [] as number[],
    distance: [] as number[],
    altitude: [] as number[],
    speed: [] as number[],
    power: [] as number[],
    stateOfCharge: [] as number[],
    begins: [] as { name: string; at: number }[],
  }
  altitude: number
  mass: number
  time = 0
  distance = 0
  energy = 0
  peakPower = 0
  rotorPeak = 0
  propellerPeak = 0
  thrustShort = 0
  floorBinds = false
  /** Of the first limit. */
  status: 'ok' | MissionLimit = 'ok'
  segment = ''
  second = 0
  #stopped = 0
  #momentAltitude = Number.NaN
  #row = { name: '', time: 0, distance: 0, energy: 0, peak: 0, rotorPeak: 0, propellerPeak: 0 }

  constructor(
    method: string,
    craft: Flyer,
    altitude: number,
    offset: number,
    grain: Grain,
    track: PackTrack | undefined,
  ) {
    this.#method = method
    this.craft = craft
    this.altitude = altitude
    this.mass = craft.mass
    this.#offset = offset
    this.grain = grain
    this.#track = track
    this.moment = buildMoment(craft, craft.mass, standard(altitude, offset).density)
    requireMoment(method, this.moment)
    this.#momentAltitude = altitude
  }

  /** Sets the moment to an altitude, with the mass as it is; nothing is done where nothing changed. */
  look(altitude: number, stopped = 0): void {
    if (altitude === this.#momentAltitude && stopped === this.#stopped && this.mass === this.moment.mass) return
    this.#momentAltitude = altitude
    this.#stopped = stopped
    setMoment(this.moment, this.mass, standard(altitude, this.#offset).density, stopped)
    requireMoment(this.#method, this.moment)
  }

  begin(segment: Segment, index: number): void {
    const { name = segment.kind, massChange = 0 } = segment
    this.mass += massChange
    if (!(this.mass > 0))
      throw new InvalidInput({
        method: this.#method,
        argument: `segments[${index}].massChange`,
        value: massChange,
        unit: 'kg',
        accepted: 'less than what the aircraft weighs then',
      })
    this.#row.name = name
    this.#row.time = this.time
    this.#row.distance = this.distance
    this.#row.energy = this.energy
    this.#row.peak = 0
    this.#row.rotorPeak = 0
    this.#row.propellerPeak = 0
    this.floorBinds = false
    this.leg.speed = 0
    if (this.grain.history) this.#history.begins.push({ name, at: this.#history.time.length })
  }

  /** Flies the leg that was filled in. */
  fly(): void {
    const { leg } = this
    requireRepresentable(this.#method, leg.power + leg.peak + leg.duration + leg.distance + leg.speed + leg.altitude)
    this.#hold('lift rating', leg.rotorPower, this.craft.lift.powerLimit)
    this.#hold('cruise rating', leg.propellerPower, this.craft.cruise.powerLimit)
    this.#row.peak = Math.max(this.#row.peak, leg.peak)
    this.#row.rotorPeak = Math.max(this.#row.rotorPeak, leg.rotorPower)
    this.#row.propellerPeak = Math.max(this.#row.propellerPeak, leg.propellerPower)
    const { duration } = leg
    if (duration > 0) {
      const steps = this.#stepsOf(duration)
      if (this.grain.history) this.#flyInPieces(steps)
      else this.#flyPiece(duration, steps, leg.distance)
    }
    this.altitude = leg.altitude
  }

  #stepsOf(duration: number): number {
    const longest = Math.min(this.grain.maxStep, this.#track?.longestStep ?? Number.MAX_VALUE)
    const steps = Math.max(1, Math.ceil(duration / longest))
    if (steps <= mostSteps) return steps
    throw new InvalidInput({
      method: this.#method,
      argument: `the time of "${this.#row.name}"`,
      value: duration,
      unit: 's',
      accepted: `at most ${mostSteps} steps of ${longest.toPrecision(3)} s`,
      remedy: 'A smaller battery.conductance, coarse steps or a shorter segment will do.',
    })
  }

  #flyInPieces(steps: number): void {
    const { leg } = this
    const pieces = Math.min(steps, mostPieces)
    const from = this.altitude
    this.#remember(from)
    for (let piece = 1; piece <= pieces; piece += 1) {
      this.#flyPiece(leg.duration / pieces, Math.ceil(steps / pieces), leg.distance / pieces)
      this.#remember(from + ((leg.altitude - from) * piece) / pieces)
    }
  }

  #flyPiece(duration: number, steps: number, distance: number): void {
    const { leg } = this
    const track = this.#track
    if (track !== undefined) {
      const met = track.limit
      track.fly(leg.power, leg.peak, duration, steps)
      if (met === undefined && track.limit !== undefined) this.meet(track.limit, track.limitAfter)
    }
    this.time += duration
    this.distance += distance
    this.energy += leg.power * duration
    this.peakPower = Math.max(this.peakPower, leg.peak)
  }

  #hold(limit: MissionLimit, power: number, rating: number | undefined): void {
    if (limit === 'lift rating') this.rotorPeak = Math.max(this.rotorPeak, power)
    else this.propellerPeak = Math.max(this.propellerPeak, power)
    if (rating !== undefined && power > rating * (1 + rounding)) this.meet(limit, 0)
  }

  /** Keeps the first limit, met so many seconds from now. */
  meet(limit: MissionLimit, after: number): void {
    if (this.status !== 'ok') return
    this.status = limit
    this.segment = this.#row.name
    this.second = this.time + after - this.#row.time
  }

  #remember(altitude: number): void {
    const history = this.#history
    history.time.push(this.time)
    history.distance.push(this.distance)
    history.altitude.push(altitude)
    history.speed.push(this.leg.speed)
    history.power.push(this.leg.power)
    history.stateOfCharge.push(this.#track?.stateOfCharge ?? 1)
  }

  end(segment: Segment): void {
    const { leg, floorBinds, mass } = this
    const row = this.#row
    const time = this.time - row.time
    const distance = this.distance - row.distance
    const energy = this.energy - row.energy
    const track = this.#track
    // Two literals rather than one spread into the other: a sizing fills thousands of rows.
    if (track === undefined)
      this.rows.push({
        name: row.name,
        kind: segment.kind,
        time,
        distance,
        energy,
        meanPower: time > 0 ? energy / time : 0,
        peakPower: row.peak,
        speed: leg.speed,
        floorBinds,
        altitude: leg.altitude,
        mass,
        rotorPower: row.rotorPeak,
        propellerPower: row.propellerPeak,
      })
    else
      this.rows.push({
        name: row.name,
        kind: segment.kind,
        time,
        distance,
        energy,
        meanPower: time > 0 ? energy / time : 0,
        peakPower: row.peak,
        speed: leg.speed,
        floorBinds,
        altitude: leg.altitude,
        mass,
        rotorPower: row.rotorPeak,
        propellerPower: row.propellerPeak,
        stateOfCharge: track.stateOfCharge,
        voltage: track.voltageUnder(leg.power),
        temperature: track.temperature,
      })
  }

  get history(): MissionHistory {
    return this.#history
  }
}

/** Greatest less rating, without what rounding leaves. */
export function deficitOf(power: number, rating: number): number {
  const deficit = power - rating
  return Math.abs(deficit) <= rounding * rating ? 0 : deficit
}
