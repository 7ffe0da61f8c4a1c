import { requireNonNegative, requireRepresentable, requireShare, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { AbsoluteTemperature, Energy, Mass, Power, Ratio, SpecificEnergy, SpecificPower } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type Cell, type CellOptions, requireCell } from './cell.js'
import { type CurrentRating, greatestPower, ratedCurrent, voltageIntegral } from './circuit.js'
import { requireCellTemperature, requireRating } from './pack-state.js'

/** An instant at which the pack must be able to give a power. */
export interface PowerDemand {
  /** "demand 1" and so on when left out. */
  readonly name?: string
  /** [W] */
  readonly power: Power
  /** The floor when left out: the worst instant is the last one. */
  readonly stateOfCharge?: Ratio
  /** Of the cells [K]; 298.15 when left out. */
  readonly temperature?: AbsoluteTemperature
}

export interface MassForMissionOptions {
  /** Aged as at the end of its life: `battery.aged`. */
  readonly cell: Cell | CellOptions
  /** Mass of the cells over mass of the pack; 0.7 when left out. */
  readonly cellShare?: Ratio
  /** At the terminals [J]. */
  readonly energy: Energy
  readonly demands: readonly PowerDemand[]
  /** At the start; 1 when left out. */
  readonly from?: Ratio
  /** State of charge that must be left. */
  readonly floor: Ratio
  /** Energy at the terminals over energy drawn from the store; 0.95 when left out (house value; `battery.run` computes it). */
  readonly efficiency?: Ratio
  readonly rating?: CurrentRating
}

export interface MassForMission {
  /** [kg] */
  readonly mass: Mass
  /** For the energy alone [kg]. */
  readonly energyMass: Mass
  /** For the power alone [kg]. */
  readonly powerMass: Mass
  readonly binds: 'energy' | 'power'
  /** Name of the demand that asks for the most mass. */
  readonly demand: string
  /** Mass of the bound behind over mass: 1 where both bind. */
  readonly nextShare: Ratio
  /** Per mass of pack, in the window, at the terminals [J/kg]. */
  readonly usableSpecificEnergy: SpecificEnergy
  /** Per mass of pack, at the demand named [W/kg]. */
  readonly availableSpecificPower: SpecificPower
  /** Number of cells, a fraction as a rule. */
  readonly count: Ratio
}

const method = 'battery.massForMission'
const known = new Set(['cell', 'cellShare', 'energy', 'demands', 'from', 'floor', 'efficiency', 'rating'])
const knownDemand = new Set(['name', 'power', 'stateOfCharge', 'temperature'])

/**
 * Mass of the pack that holds the energy of a mission and gives the power of its worst instant: the greater of the two.
 *
 * @equation m = max(E/(e_window eta), max over demands of P/p_limit(s, T)); e_window = share Q integral of V_oc ds/m_cell; p_limit = share P_limit/m_cell
 * @param options - `cell` (aged), `energy` E at the terminals [J], `demands`: list of `{ name, power [W], stateOfCharge, temperature [K] }`, `floor` of charge that must be left; optional
 * `cellShare` (0.7), `from` (1), `efficiency` eta (0.95), `rating` (`'continuous'`)
 * @returns `mass`, `energyMass`, `powerMass` [kg], `binds`, `demand`, `nextShare`, `usableSpecificEnergy` [J/kg], `availableSpecificPower` [W/kg], `count` of cells
 * @throws InvalidInput for a negative energy or power, an empty list of demands, states of charge out of order, a demand at a charge where the cell can give nothing, and an
 * unknown option
 * @method Closed form, continuous in all arguments; `battery.run` flies what it gives. A landing hover after the reserve at the end of life and in the cold is the usual worst instant.
 * @validity As the cell's. Where the efficiency is guessed the energy mass is off by as much. A demand outside the temperatures of the cell carries an advisory.
 * @source Energy: Hepperle, M., Electric Flight - Potential and Limitations, NATO STO-MP-AVT-209, paper 9, 2012 (equation from memory). Power: series-resistance circuit, textbook.
 * @example
 * const sized = battery.massForMission({
 *   cell: battery.aged({ cell: battery.cells.power18650, capacityLeft: 0.8, resistanceGrowth: 1.5 }), energy: 60 * u.kWh, floor: 0.1,
 *   demands: [{ name: 'landing', power: 320 * u.kW, stateOfCharge: 0.15, temperature: 283.15 * u.K }],
 * })
 * sized.mass // 675.95
 */
export function massForMission(options: MassForMissionOptions): MassForMission {
  checkOptions(method, options, known)
  const cell = requireCell(method, options.cell)
  const { energy, cellShare = 0.7, from = 1, floor, efficiency = 0.95 } = options
  requireNonNegative(method, 'energy', energy, 'J')
  requireShare(method, 'cellShare', cellShare)
  requireShare(method, 'efficiency', efficiency)
  requireWithin(method, 'from', from, '1', 0, 1)
  if (typeof floor !== 'number' || !(floor >= 0 && floor < from))
    throw new InvalidInput({
      method,
      argument: 'floor',
      value: describeValue(floor),
      accepted: `0 or more and below the charge at the start, ${writeNumber(from)}`,
    })
  const perMass = cellShare / cell.mass
  const volts = voltageIntegral(cell, from) - voltageIntegral(cell, floor)
  const usableSpecificEnergy = cell.capacity * volts * perMass * efficiency
  const energyMass = energy / usableSpecificEnergy
  const rated = ratedCurrent(cell, requireRating(method, options.rating))
  const worst = worstDemand(options.demands, cell, rated, floor, perMass)
  const mass = Math.max(energyMass, worst.mass)
  const answer: MassForMission = {
    mass,
    energyMass,
    powerMass: worst.mass,
    binds: energyMass >= worst.mass ? 'energy' : 'power',
    demand: worst.name,
    nextShare: mass === 0 ? 1 : Math.min(energyMass, worst.mass) / mass,
    usableSpecificEnergy,
    availableSpecificPower: worst.specificPower,
    count: mass * perMass,
  }
  requireRepresentable(method, mass + energyMass + usableSpecificEnergy + answer.count + worst.specificPower)
  if (isListening()) adviseCold(cell, options.demands)
  return answer
}

function worstDemand(demands: readonly PowerDemand[], cell: Cell, rated: number, floor: number, perMass: number) {
  if (!Array.isArray(demands) || demands.length === 0)
    throw new InvalidInput({
      method,
      argument: 'demands',
      value: describeValue(demands),
      accepted: 'a list of at least one { name, power, stateOfCharge, temperature }',
    })
  let worst = { name: '', mass: -1, specificPower: 0 }
  for (const [index, demand] of demands.entries()) {
    const at = `demands[${index}]`
    checkOptions(`${method} ${at}`, demand, knownDemand)
    const { name = `demand ${index + 1}`, power, stateOfCharge = floor, temperature = 298.15 } = demand
    requireNonNegative(method, `${at}.power`, power, 'W')
    requireWithin(method, `${at}.stateOfCharge`, stateOfCharge, '1', 0, 1)
    requireCellTemperature(method, `${at}.temperature`, temperature)
    const specificPower = greatestPower(cell, stateOfCharge, temperature, rated) * perMass
    if (!(specificPower > 0))
      throw new InvalidInput({
        method,
        argument: `${at}.stateOfCharge`,
        value: stateOfCharge,
        accepted: 'one at which the cell stands above its voltage floor',
        remedy: 'A higher floor of charge will do.',
      })
    const mass = power / specificPower
    if (mass > worst.mass) worst = { name, mass, specificPower }
  }
  return worst
}

function adviseCold(cell: Cell, demands: readonly PowerDemand[]): void {
  const { minimumTemperature: low, maximumTemperature: high } = cell
  for (const { name = 'demand', temperature = 298.15 } of demands)
    if ((low !== undefined && temperature < low) || (high !== undefined && temperature > high))
      advise({
        code: 'CELL_TEMPERATURE',
        method,
        quantity: 'temperature',
        value: temperature,
        range: [low ?? null, high ?? null],
        message: `"${name}" is outside the temperatures in which the cell "${cell.name}" may be discharged.`,
      })
}
