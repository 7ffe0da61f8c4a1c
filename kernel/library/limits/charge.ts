/** A cell on the charger: power, rate and voltage bound the current; the circuit and the heat are those of discharge. */
import type { CellCooling, CellPath } from '../battery/advance.js'
import type { Cell } from '../battery/cell.js'
import { resistanceAt, voltageAt } from '../battery/circuit.js'

export interface Charging {
  /** At the terminals of one cell [W]. */
  readonly power: number
  /** Greatest current of one cell [A]. */
  readonly current: number
  /** State of charge at which it ends. */
  readonly to: number
}

/** Below this share of the capacity per hour a charge at constant voltage has ended (the usual twentieth). */
const endRate = 0.05 / 3600

/** Current into one cell [A]: constant power, then constant current, then constant voltage, whichever is least. */
export function chargingCurrent(cell: Cell, charging: Charging, stateOfCharge: number, temperature: number): number {
  const open = voltageAt(cell, stateOfCharge)
  const resistance = resistanceAt(cell, stateOfCharge, temperature)
  const full = voltageAt(cell, 1)
  const byPower = (2 * charging.power) / (open + Math.sqrt(open * open + 4 * resistance * charging.power))
  return Math.max(Math.min(byPower, charging.current, (full - open) / resistance), 0)
}

/** True while there is something left to charge. */
export function isCharging(cell: Cell, charging: Charging, path: CellPath): boolean {
  if (path.stateOfCharge >= charging.to - 1e-9) return false
  return chargingCurrent(cell, charging, path.stateOfCharge, path.temperature) > endRate * cell.capacity
}

/** Takes a step on the ground, charging or merely cooling, by the midpoint rule; writes into `path`. Returns the energy at the terminals [J]. */
export function stepOnGround(
  cell: Cell,
  charging: Charging | undefined,
  cooling: CellCooling,
  step: number,
  path: CellPath,
): number {
  const { stateOfCharge, temperature } = path
  const ratesAt = (charge: number, warmth: number) => {
    const current = charging === undefined ? 0 : chargingCurrent(cell, charging, charge, warmth)
    const resistance = resistanceAt(cell, charge, warmth)
    const heat = current * current * resistance
    return { current, heat, warming: (heat - cooling.conductance * (warmth - cooling.ambient)) / cooling.heatCapacity }
  }
  const first = ratesAt(stateOfCharge, temperature)
  const middle = Math.min(stateOfCharge + (0.5 * step * first.current) / cell.capacity, 1)
  const rate = ratesAt(middle, temperature + 0.5 * step * first.warming)
  const gained = (step * rate.current) / cell.capacity
  path.stateOfCharge = Math.min(stateOfCharge + gained, charging?.to ?? 1)
  path.temperature = temperature + step * rate.warming
  path.heat += step * rate.heat
  return step * rate.current * voltageAt(cell, middle) + step * rate.heat
}
