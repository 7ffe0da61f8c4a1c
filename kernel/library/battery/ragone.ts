/** What a cell gives against how fast it is asked: power against charge, and energy against power. */
import { requireRepresentable, requireShare, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { AbsoluteTemperature, Ratio, SpecificEnergy, SpecificPower, Time } from '../quantity.js'
import { type Cell, type CellOptions, requireCell } from './cell.js'
import {
  boundAt,
  type CellBound,
  type CurrentRating,
  currentFor,
  greatestPower,
  ratedCurrent,
  resistanceAt,
  voltageAt,
} from './circuit.js'
import { requireCellTemperature, requireRating } from './pack-state.js'

interface CurveOptions {
  readonly cell: Cell | CellOptions
  /** Mass of the cells over mass of the pack; 1 (cells alone) when left out. */
  readonly cellShare?: Ratio
  /** [K]; 298.15 when left out. */
  readonly temperature?: AbsoluteTemperature
  readonly rating?: CurrentRating
  /** Number of points, 2 to 500; 26 when left out. */
  readonly points?: Ratio
}

export type AvailablePowerOptions = CurveOptions

export interface AvailablePower {
  readonly stateOfCharge: readonly Ratio[]
  /** Per mass of pack [W/kg]. */
  readonly specificPower: readonly SpecificPower[]
  /** What ends it at each state of charge. */
  readonly binds: readonly CellBound[]
}

export interface RagoneOptions extends CurveOptions {
  /** State of charge at the start; 1 when left out. */
  readonly from?: Ratio
  /** State of charge that must be left; 0 when left out. */
  readonly floor?: Ratio
}

export interface Ragone {
  /** Per mass of pack, rising to the greatest that the start allows [W/kg]. */
  readonly specificPower: readonly SpecificPower[]
  /** Delivered until a limit is met, per mass of pack [J/kg]. */
  readonly specificEnergy: readonly SpecificEnergy[]
  /** For how long [s]. */
  readonly duration: readonly Time[]
  /** State of charge at which it ends. */
  readonly endCharge: readonly Ratio[]
}

const knownAvailable = new Set(['cell', 'cellShare', 'temperature', 'rating', 'points'])
const knownRagone = new Set([...knownAvailable, 'from', 'floor'])

function readCurve(method: string, options: CurveOptions) {
  const cell = requireCell(method, options.cell)
  const { cellShare = 1, temperature = 298.15, points = 26 } = options
  requireShare(method, 'cellShare', cellShare)
  requireCellTemperature(method, 'temperature', temperature)
  requireWithin(method, 'points', points, '1', 2, 500)
  const rated = ratedCurrent(cell, requireRating(method, options.rating))
  return { cell, temperature, points: Math.round(points), rated, perMass: cellShare / cell.mass }
}

/**
 * Power available per mass of pack against state of charge.
 *
 * @equation p(s) = P_limit(s, T) share/m_cell, P_limit as in `battery.powerLimit`
 * @param options - `cell`; optional `cellShare` (1), `temperature` (298.15 K), `rating` (`'continuous'`), `points` (26, evenly from 0 to 1)
 * @returns lists: `stateOfCharge`, `specificPower` [W/kg], `binds`
 * @throws InvalidInput for values outside their ranges, and an unknown option
 * @method As `battery.powerLimit`, point by point.
 * @validity As the cell's.
 * @source As `battery.powerLimit`.
 * @example
 * const curve = battery.availablePower({ cell: battery.cells.power18650, cellShare: 0.7, points: 11 })
 * curve.specificPower.length // 11
 */
export function availablePower(options: AvailablePowerOptions): AvailablePower {
  const method = 'battery.availablePower'
  checkOptions(method, options, knownAvailable)
  const { cell, temperature, points, rated, perMass } = readCurve(method, options)
  const stateOfCharge = Array.from({ length: points }, (_, index) => index / (points - 1))
  const specificPower = stateOfCharge.map((charge) => greatestPower(cell, charge, temperature, rated) * perMass)
  requireRepresentable(
    method,
    specificPower.reduce((sum, value) => sum + value, 0),
  )
  const binds = stateOfCharge.map((charge) =>
    boundAt(voltageAt(cell, charge), resistanceAt(cell, charge, temperature), cell.minimumVoltage, rated),
  )
  return { stateOfCharge, specificPower, binds }
}

/**
 * Energy delivered per mass of pack against the constant power at which it is drawn (Ragone's diagram).
 *
 * @equation E = P t, t = integral of Q ds/I(s, P) from the start to where P_limit(s) = P or the floor
 * @param options - `cell`; optional `cellShare` (1), `temperature` (298.15 K), `rating` (`'continuous'`), `from` (1), `floor` (0), `points` (26, evenly up to the greatest power)
 * @returns lists: `specificPower` [W/kg], `specificEnergy` [J/kg], `duration` [s], `endCharge`
 * @throws InvalidInput for values outside their ranges, a start at which nothing can be drawn, and an unknown option
 * @method Simpson's rule over charge between the knots of the cell, at constant temperature.
 * @validity As the cell's; in a real discharge the cell warms and gives a little more.
 * @source The diagram: Ragone, D. V., SAE paper 680453, 1968 (from memory). The integral: house derivation from the circuit.
 * @example
 * const diagram = battery.ragone({ cell: battery.cells.energy21700, floor: 0.1 })
 * diagram.duration.length // 26
 */
export function ragone(options: RagoneOptions): Ragone {
  const method = 'battery.ragone'
  checkOptions(method, options, knownRagone)
  const { cell, temperature, points, rated, perMass } = readCurve(method, options)
  const { from = 1, floor = 0 } = options
  requireWithin(method, 'from', from, '1', 0, 1)
  requireWithin(method, 'floor', floor, '1', 0, from)
  const greatest = greatestPower(cell, from, temperature, rated)
  if (!(greatest > 0 && greatest < Number.MAX_VALUE))
    throw new InvalidInput({
      method,
      argument: 'from',
      value: from,
      accepted: 'a state of charge at which the cell stands above its voltage floor',
    })
  const answer = {
    specificPower: [] as number[],
    specificEnergy: [] as number[],
    duration: [] as number[],
    endCharge: [] as number[],
  }
  for (let k = 1; k <= points; k += 1) {
    const power = (greatest * k) / points
    const end = k === points ? from : chargeAtLimit(cell, power, temperature, rated, from, floor)
    const duration = timeBetween(cell, power, temperature, from, end)
    answer.specificPower.push(power * perMass)
    answer.specificEnergy.push(power * duration * perMass)
    answer.duration.push(duration)
    answer.endCharge.push(end)
  }
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
  requireRepresentable(method, sum(answer.specificPower) + sum(answer.specificEnergy) + sum(answer.duration))
  return answer
}

/** State of charge at which a falling charge first meets the power's limit, or the floor. */
function chargeAtLimit(
  cell: Cell,
  power: number,
  temperature: number,
  rated: number,
  from: number,
  floor: number,
): number {
  const margin = (charge: number) => greatestPower(cell, charge, temperature, rated) - power
  let high = from
  let valueHigh = margin(high)
  for (let k = cell.stateOfCharge.length - 1; k >= 0; k -= 1) {
    const low = Math.max(cell.stateOfCharge[k] as number, floor)
    if (low >= high) continue
    const valueLow = margin(low)
    if (valueLow < 0) return brentRoot(margin, low, high, valueLow, valueHigh, 1e-13).x
    high = low
    valueHigh = valueLow
  }
  return floor
}

/** Seconds from one state of charge down to another at constant power [W per cell]. */
function timeBetween(cell: Cell, power: number, temperature: number, from: number, to: number): number {
  const perCharge = (charge: number) =>
    cell.capacity / currentFor(voltageAt(cell, charge), resistanceAt(cell, charge, temperature), power)
  let time = 0
  let high = from
  for (let k = cell.stateOfCharge.length - 1; k >= 0 && high > to; k -= 1) {
    const low = Math.max(cell.stateOfCharge[k] as number, to)
    if (low >= high) continue
    time += simpson(perCharge, low, high)
    high = low
  }
  return time
}

function simpson(f: (x: number) => number, low: number, high: number): number {
  const parts = 4
  const step = (high - low) / parts
  let sum = f(low) + f(high)
  for (let k = 1; k < parts; k += 1) sum += (k % 2 === 1 ? 4 : 2) * f(low + k * step)
  return (sum * step) / 3
}
