/** One step in time of a cell under constant power: charge, temperature and heat by the classical Runge-Kutta rule. */
import type { Cell } from './cell.js'
import { currentFor, resistanceAt, voltageAt } from './circuit.js'

/** What a cell exchanges heat with; per cell. */
export interface CellCooling {
  /** [W/K] */
  readonly conductance: number
  /** [K] */
  readonly ambient: number
  /** [J/K] */
  readonly heatCapacity: number
}

/** State of one cell: state of charge, temperature [K], heat made so far [J]. Written in place, so that a step allocates nothing. */
export interface CellPath {
  stateOfCharge: number
  temperature: number
  heat: number
}

/** Rates of the three, written by `ratesAt`; the kernel is synchronous, so one set serves all. */
const rate: CellPath = { stateOfCharge: 0, temperature: 0, heat: 0 }

function ratesAt(cell: Cell, cooling: CellCooling, power: number, stateOfCharge: number, temperature: number): void {
  const charge = Math.max(stateOfCharge, 0)
  const voltage = voltageAt(cell, charge)
  const resistance = resistanceAt(cell, charge, temperature)
  const current = currentFor(voltage, resistance, power)
  const heat = current * current * resistance
  rate.stateOfCharge = -current / cell.capacity
  rate.temperature = (heat - cooling.conductance * (temperature - cooling.ambient)) / cooling.heatCapacity
  rate.heat = heat
}

/** Writes into `to` the state that follows `from` after `step` seconds at `power` watts per cell. */
export function advance(
  cell: Cell,
  cooling: CellCooling,
  power: number,
  step: number,
  from: Readonly<CellPath>,
  to: CellPath,
): void {
  const { stateOfCharge, temperature, heat } = from
  ratesAt(cell, cooling, power, stateOfCharge, temperature)
  let charges = rate.stateOfCharge
  let temperatures = rate.temperature
  let heats = rate.heat
  for (let stage = 1; stage < 4; stage += 1) {
    const reach = stage === 3 ? step : 0.5 * step
    ratesAt(cell, cooling, power, stateOfCharge + reach * rate.stateOfCharge, temperature + reach * rate.temperature)
    const weight = stage === 3 ? 1 : 2
    charges += weight * rate.stateOfCharge
    temperatures += weight * rate.temperature
    heats += weight * rate.heat
  }
  to.stateOfCharge = stateOfCharge + (step / 6) * charges
  to.temperature = temperature + (step / 6) * temperatures
  to.heat = heat + (step / 6) * heats
}
