/** A pack on its way through a profile: the integration in time, and the search for the instant at which a limit is met. */
import { writeNumber, writeQuantity } from '../number-text.js'
import { brentRoot } from '../numerics/index.js'
import { advance, type CellCooling, type CellPath } from './advance.js'
import type { Cell } from './cell.js'
import { boundAt, currentFor, greatestPower, resistanceAt, voltageAt, voltageIntegral } from './circuit.js'
import { hottest } from './pack-state.js'
import type { ProfileSegment, Run } from './run.js'

/** What a run was asked, checked and completed. */
export interface Setting {
  readonly cell: Cell
  readonly series: number
  readonly parallel: number
  readonly profile: readonly ProfileSegment[]
  readonly stateOfCharge: number
  readonly temperature: number
  readonly floor: number
  readonly rated: number
  readonly cooling: CellCooling
  readonly maxStep: number
}

/** The pack on its way: one cell's state, and what is worth remembering of the path. */
export class Flight {
  readonly #setting: Setting
  readonly #count: number
  #here: CellPath
  #next: CellPath = { stateOfCharge: 0, temperature: 0, heat: 0 }
  #time = 0
  #delivered = 0
  #segment = ''
  #second = 0
  #leastMargin = Number.MAX_VALUE
  #leastVoltage = Number.MAX_VALUE
  #greatestCurrent = 0
  #greatestTemperature: number
  #message = ''
  status: Run['status'] = 'ok'
  readonly #history = {
    time: [] as number[],
    stateOfCharge: [] as number[],
    temperature: [] as number[],
    current: [] as number[],
    voltage: [] as number[],
    power: [] as number[],
  }

  constructor(setting: Setting) {
    this.#setting = setting
    this.#count = setting.series * setting.parallel
    this.#here = { stateOfCharge: setting.stateOfCharge, temperature: setting.temperature, heat: 0 }
    this.#greatestTemperature = setting.temperature
  }

  fly(segment: ProfileSegment, name: string): void {
    const { duration } = segment
    const power = segment.power / this.#count
    const steps = Math.ceil(duration / this.#setting.maxStep)
    const step = duration / steps
    this.#segment = name
    this.#second = 0
    this.#remember(power)
    if (this.#room(power, this.#here) < 0) {
      this.#stop(power)
      return
    }
    for (let k = 1; k <= steps; k += 1) {
      const done = this.#step(power, step)
      this.#time += done
      this.#second = k === steps && done === step ? duration : this.#second + done
      this.#delivered += power * done
      this.#remember(power)
      if (done < step) {
        this.#stop(power)
        return
      }
    }
  }

  /** Takes a step, or as much of one as the limits allow; returns the seconds taken. */
  #step(power: number, step: number): number {
    const { cell, cooling } = this.#setting
    const here = this.#here
    const next = this.#next
    advance(cell, cooling, power, step, here, next)
    let done = step
    const beyond = this.#room(power, next)
    if (beyond < 0) {
      const room = (seconds: number) => {
        advance(cell, cooling, power, seconds, here, next)
        return this.#room(power, next)
      }
      done = brentRoot(room, 0, step, this.#room(power, here), beyond, 1e-10).x
      // A limit met exactly at the end of a step still counts as met.
      done = Math.min(done, step * (1 - 1e-12))
      advance(cell, cooling, power, done, here, next)
    }
    this.#here = next
    this.#next = here
    return done
  }

  /** Least of the relative distances to the limits: negative beyond one. */
  #room(power: number, state: CellPath): number {
    const { cell, floor, rated } = this.#setting
    const charge = state.stateOfCharge - floor
    const heat = (this.#hottest - state.temperature) / this.#hottest
    const limit = greatestPower(cell, Math.max(state.stateOfCharge, 0), state.temperature, rated)
    const margin = power === 0 ? 1 : (limit - power) / (limit + power)
    return Math.min(charge, heat, margin)
  }

  get #hottest(): number {
    return Math.min(this.#setting.cell.maximumTemperature ?? hottest, hottest)
  }

  #remember(power: number): void {
    const { cell, series, parallel, rated } = this.#setting
    const { temperature } = this.#here
    const stateOfCharge = Math.max(this.#here.stateOfCharge, 0)
    const open = voltageAt(cell, stateOfCharge)
    const resistance = resistanceAt(cell, stateOfCharge, temperature)
    const current = currentFor(open, resistance, power)
    const voltage = open - current * resistance
    const margin = greatestPower(cell, stateOfCharge, temperature, rated) - power
    this.#leastMargin = Math.min(this.#leastMargin, margin)
    this.#leastVoltage = Math.min(this.#leastVoltage, voltage)
    this.#greatestCurrent = Math.max(this.#greatestCurrent, current)
    this.#greatestTemperature = Math.max(this.#greatestTemperature, temperature)
    const history = this.#history
    history.time.push(this.#time)
    history.stateOfCharge.push(stateOfCharge)
    history.temperature.push(temperature)
    history.current.push(current * parallel)
    history.voltage.push(voltage * series)
    history.power.push(power * this.#count)
  }

  /** Names the limit that is nearest: the one the pack stands at or beyond. */
  #stop(power: number): void {
    const { cell, floor, rated } = this.#setting
    const { temperature } = this.#here
    const charge = Math.max(this.#here.stateOfCharge, 0)
    const limit = greatestPower(cell, charge, temperature, rated)
    const short = (limit - power) / (limit + power) <= 1e-9
    const bound = boundAt(voltageAt(cell, charge), resistanceAt(cell, charge, temperature), cell.minimumVoltage, rated)
    if (power > 0 && short) this.status = bound
    else if (charge - floor <= 1e-9) this.status = 'charge floor'
    else this.status = 'temperature'
    const where = `in "${this.#segment}" at second ${writeNumber(Number(this.#second.toFixed(1)))}`
    const state = `charge ${charge.toFixed(3)}, ${temperature.toFixed(1)} K`
    this.#message = `${this.status} reached ${where} (${state}); ${writeQuantity(power * this.#count, 'kW')} asked, ${writeQuantity(limit * this.#count, 'kW')} to be had.`
  }

  report(): Run {
    const { cell, series, parallel, stateOfCharge } = this.#setting
    const count = this.#count
    const end = Math.max(this.#here.stateOfCharge, 0)
    const stored = cell.capacity * (voltageIntegral(cell, stateOfCharge) - voltageIntegral(cell, end))
    const { heat } = this.#here
    return {
      ok: this.status === 'ok',
      status: this.status,
      message: this.#message,
      segment: this.#segment,
      second: this.#second,
      time: this.#time,
      stateOfCharge: end,
      temperature: this.#here.temperature,
      delivered: this.#delivered * count,
      heat: heat * count,
      stored: stored * count,
      openBalance: stored > 0 ? (this.#delivered + heat - stored) / stored : 0,
      leastMargin: this.#leastMargin * count,
      leastVoltage: this.#leastVoltage * series,
      greatestCurrent: this.#greatestCurrent * parallel,
      greatestTemperature: this.#greatestTemperature,
      history: this.#history,
    }
  }
}
