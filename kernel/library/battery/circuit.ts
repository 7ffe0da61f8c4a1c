/**
 * The circuit of one cell, for inner loops: no checks, no allocation. Voltage, resistance and limits at a state.
 *
 * Callers have checked the cell and the state; the answers are finite for any state of charge from 0 to 1 and any temperature
 * above zero within reason.
 */
import type { Cell } from './cell.js'

/** Which of the circuit's bounds a cell meets first as its power rises. */
export type CellBound = 'voltage floor' | 'half voltage' | 'current' | 'empty'

/** Place of the interval that holds `x` among rising knots: the index of its left end. */
export function intervalOf(knots: readonly number[], x: number): number {
  let low = 0
  let high = knots.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((knots[middle] as number) <= x) low = middle
    else high = middle
  }
  return low
}

function between(knots: readonly number[], values: readonly number[], at: number, x: number): number {
  const x0 = knots[at] as number
  const y0 = values[at] as number
  return y0 + (((values[at + 1] as number) - y0) * (x - x0)) / ((knots[at + 1] as number) - x0)
}

/** V_oc [V] at a state of charge. */
export function voltageAt(cell: Cell, stateOfCharge: number): number {
  const at = intervalOf(cell.stateOfCharge, stateOfCharge)
  return between(cell.stateOfCharge, cell.openCircuitVoltage, at, stateOfCharge)
}

/** R [ohm] at a state of charge and a temperature [K]. */
export function resistanceAt(cell: Cell, stateOfCharge: number, temperature: number): number {
  const { stateOfCharge: knots, resistance: rows, temperature: temperatures } = cell
  const at = intervalOf(knots, stateOfCharge)
  const count = temperatures.length
  const first = temperatures[0] as number
  const last = temperatures[count - 1] as number
  if (count === 1 || temperature <= first || temperature >= last) {
    const low = count === 1 || temperature <= first
    const row = (low ? rows[0] : rows[count - 1]) as readonly number[]
    const from = low ? first : last
    return between(knots, row, at, stateOfCharge) * Math.exp(cell.activationTemperature * (1 / temperature - 1 / from))
  }
  const row = intervalOf(temperatures, temperature)
  const cold = between(knots, rows[row] as readonly number[], at, stateOfCharge)
  const warm = between(knots, rows[row + 1] as readonly number[], at, stateOfCharge)
  const inverse = 1 / (temperatures[row] as number)
  const share = (inverse - 1 / temperature) / (inverse - 1 / (temperatures[row + 1] as number))
  return cold * (warm / cold) ** share
}

/**
 * The smaller of the two currents at which P = (V_oc - I R) I [A]. Written so that nothing cancels at small power; beyond the
 * greatest power V_oc^2/4R it stays at the current of that power.
 */
export function currentFor(openCircuitVoltage: number, resistance: number, power: number): number {
  const discriminant = openCircuitVoltage * openCircuitVoltage - 4 * resistance * power
  return (2 * power) / (openCircuitVoltage + (discriminant > 0 ? Math.sqrt(discriminant) : 0))
}

/** Greatest current of one cell [A]: voltage floor, half of the open-circuit voltage, rated current, whichever comes first. */
export function greatestCurrent(
  openCircuitVoltage: number,
  resistance: number,
  minimumVoltage: number,
  ratedCurrent: number,
): number {
  const atFloor = (openCircuitVoltage - minimumVoltage) / resistance
  const atPeak = openCircuitVoltage / (2 * resistance)
  const least = Math.min(atFloor, atPeak)
  const current = Math.min(least, ratedCurrent)
  return Math.max(current, 0)
}

/** Which bound gave the greatest current. */
export function boundAt(voltage: number, resistance: number, minimumVoltage: number, ratedCurrent: number): CellBound {
  const atFloor = (voltage - minimumVoltage) / resistance
  if (atFloor <= 0) return 'empty'
  const atPeak = voltage / (2 * resistance)
  if (ratedCurrent < atFloor && ratedCurrent < atPeak) return 'current'
  return atFloor < atPeak ? 'voltage floor' : 'half voltage'
}

export type CurrentRating = 'continuous' | 'peak'

/** Rated current of one cell [A]; a number beyond any cell where none is stated. */
export function ratedCurrent(cell: Cell, rating: CurrentRating): number {
  const unlimited = 1e12
  const peak = cell.peakCurrent ?? unlimited
  return rating === 'peak' ? peak : (cell.continuousCurrent ?? peak)
}

/** Greatest power of one cell [W]. */
export function greatestPower(cell: Cell, stateOfCharge: number, temperature: number, rated: number): number {
  const voltage = voltageAt(cell, stateOfCharge)
  const resistance = resistanceAt(cell, stateOfCharge, temperature)
  const current = greatestCurrent(voltage, resistance, cell.minimumVoltage, rated)
  return current * (voltage - current * resistance)
}

/** Integral of V_oc over state of charge from empty [V]: exact for the linear table. */
export function voltageIntegral(cell: Cell, stateOfCharge: number): number {
  const { stateOfCharge: knots, openCircuitVoltage: voltages } = cell
  const at = intervalOf(knots, stateOfCharge)
  let sum = 0
  for (let i = 1; i <= at; i += 1)
    sum +=
      0.5 * ((knots[i] as number) - (knots[i - 1] as number)) * ((voltages[i] as number) + (voltages[i - 1] as number))
  const here = between(knots, voltages, at, stateOfCharge)
  return sum + 0.5 * (stateOfCharge - (knots[at] as number)) * (here + (voltages[at] as number))
}
