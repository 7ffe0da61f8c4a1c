/**
 * The battery along a mission. Like `battery.run` it integrates charge, temperature and heat in time; unlike it, it goes on past a
 * limit, because a sizing must see by how much: the pack then gives what it can, and what it cannot is counted.
 */
import { advance, type CellCooling, type CellPath } from '../battery/advance.js'
import {
  boundAt,
  type CellBound,
  currentFor,
  greatestPower,
  ratedCurrent,
  resistanceAt,
  voltageAt,
  voltageIntegral,
} from '../battery/circuit.js'
import { hottest } from '../battery/pack-state.js'
import { brentRoot } from '../numerics/index.js'
import type { EnergyStore } from './energy-store.js'

export type PackLimit = CellBound | 'charge floor' | 'temperature'

export class PackTrack {
  readonly #store: EnergyStore
  readonly #count: number
  readonly #rated: number
  readonly #hottest: number
  readonly #cooling: CellCooling
  readonly #startCharge: number
  #here: CellPath
  #next: CellPath = { stateOfCharge: 0, temperature: 0, heat: 0 }
  #unmet = 0
  #leastMargin = Number.MAX_VALUE
  /** Greatest power of a cell here. */
  #limit: number
  #greatestTemperature: number
  /** Set once, by the step in which a limit is first met. */
  limit: PackLimit | undefined
  /** Into that step's leg [s]. */
  limitAfter = 0

  constructor(store: EnergyStore, stateOfCharge: number, temperature: number, ambient: number) {
    const { cell, series, parallel, conductance } = store
    this.#store = store
    this.#count = series * parallel
    this.#rated = ratedCurrent(cell, store.rating)
    this.#hottest = Math.min(cell.maximumTemperature ?? hottest, hottest)
    this.#cooling = {
      conductance: conductance / this.#count,
      ambient,
      heatCapacity: cell.mass * cell.specificHeat,
    }
    this.#startCharge = stateOfCharge
    this.#greatestTemperature = temperature
    this.#here = { stateOfCharge, temperature, heat: 0 }
    this.#limit = this.#limitAt(this.#here)
  }

  /** Longest step that the cooling lets the integration take [s]. */
  get longestStep(): number {
    const { conductance, heatCapacity } = this.#cooling
    return conductance > 0 ? heatCapacity / conductance : Number.MAX_VALUE
  }

  /** Flies a leg of constant mean power; the greatest power of the leg is what the limits are held against. */
  fly(power: number, peak: number, duration: number, steps: number): void {
    const step = duration / steps
    const asked = power / this.#count
    const greatest = peak / this.#count
    let margin = this.#keep(this.#limit - greatest)
    if (this.limit === undefined && this.#room(greatest, margin, this.#here) < 0) this.#meet(greatest, this.#here, 0)
    for (let k = 0; k < steps; k += 1) {
      // What the pack can give at the step's start is what it gives at most throughout.
      const given = Math.min(asked, Math.max(0, margin + greatest))
      this.#unmet += (asked - given) * step
      advance(this.#store.cell, this.#cooling, given, step, this.#here, this.#next)
      this.#limit = this.#limitAt(this.#next)
      margin = this.#keep(this.#limit - greatest)
      if (this.limit === undefined && this.#room(greatest, margin, this.#next) < 0) this.#find(greatest, given, step, k)
      const before = this.#here
      this.#here = this.#next
      this.#next = before
      this.#greatestTemperature = Math.max(this.#greatestTemperature, this.#here.temperature)
    }
  }

  /** Greatest power of a cell [W]. */
  #limitAt(state: CellPath): number {
    const charge = Math.min(1, Math.max(state.stateOfCharge, 0))
    return greatestPower(this.#store.cell, charge, state.temperature, this.#rated)
  }

  /** Remembers the least margin of the flight. */
  #keep(margin: number): number {
    if (margin < this.#leastMargin) this.#leastMargin = margin
    return margin
  }

  /** Least of the relative distances to the limits, negative beyond one. */
  #room(power: number, margin: number, state: CellPath): number {
    const charge = state.stateOfCharge - this.#store.floor
    const heat = (this.#hottest - state.temperature) / this.#hottest
    return Math.min(charge, heat, power > 0 ? margin / power : 1)
  }

  /** The second within the step just taken at which the first limit was met. */
  #find(peak: number, given: number, step: number, index: number): void {
    const { cell } = this.#store
    const state = { stateOfCharge: 0, temperature: 0, heat: 0 }
    const room = (seconds: number) => {
      advance(cell, this.#cooling, given, seconds, this.#here, state)
      return this.#room(peak, this.#limitAt(state) - peak, state)
    }
    const atStart = room(0)
    const atEnd = room(step)
    const seconds = atStart > 0 && atEnd < 0 ? brentRoot(room, 0, step, atStart, atEnd, 1e-10).x : 0
    room(seconds)
    this.#meet(peak, state, index * step + seconds)
  }

  #meet(peak: number, state: CellPath, after: number): void {
    const { cell, floor } = this.#store
    const charge = Math.min(1, Math.max(state.stateOfCharge, 0))
    const { temperature } = state
    const power = this.#limitAt(state)
    this.limitAfter = after
    if (power < peak * (1 + 1e-9)) {
      const resistance = resistanceAt(cell, charge, temperature)
      this.limit = boundAt(voltageAt(cell, charge), resistance, cell.minimumVoltage, this.#rated)
    } else this.limit = charge - floor <= 1e-9 ? 'charge floor' : 'temperature'
  }

  get stateOfCharge(): number {
    return Math.max(0, this.#here.stateOfCharge)
  }

  get temperature(): number {
    return this.#here.temperature
  }

  /** Of the pack, under a power [V]. */
  voltageUnder(power: number): number {
    const { cell, series } = this.#store
    const open = voltageAt(cell, this.stateOfCharge)
    const resistance = resistanceAt(cell, this.stateOfCharge, this.temperature)
    const current = currentFor(open, resistance, Math.min(power / this.#count, this.#limit))
    return series * (open - current * resistance)
  }

  /** Of the pack, at this instant [W]. */
  get powerLimit(): number {
    return this.#count * this.#limit
  }

  /** I^2 R so far [J]. */
  get heat(): number {
    return this.#here.heat * this.#count
  }

  /** Integral of V_oc dQ so far [J]; below empty the voltage of an empty cell counts on, so that a lack is seen. */
  get stored(): number {
    return this.#energyBelow(this.#startCharge) - this.#energyBelow(this.#here.stateOfCharge)
  }

  /** Asked for and not given [J]. */
  get unmet(): number {
    return this.#unmet * this.#count
  }

  /** Drawn or asked for below the floor, less what is left above it [J]. */
  get energyDeficit(): number {
    return this.#energyBelow(this.#store.floor) - this.#energyBelow(this.#here.stateOfCharge) + this.unmet
  }

  /** Least of power limit less power over the flight [W]. */
  get leastMargin(): number {
    return this.#leastMargin * this.#count
  }

  get greatestTemperature(): number {
    return this.#greatestTemperature
  }

  get hottestAllowed(): number {
    return this.#hottest
  }

  #energyBelow(charge: number): number {
    const { cell } = this.#store
    const empty = cell.openCircuitVoltage[0] as number
    // Flights begin full as a rule, and that integral is the cell's nominal voltage.
    const volts = charge === 1 ? cell.nominalVoltage : charge > 0 ? voltageIntegral(cell, charge) : charge * empty
    return volts * cell.capacity * this.#count
  }
}
