/** The pack at its worst instant: energy against power, new and old, cold and hot. */

import {
  aged,
  type Cell,
  type CellOptions,
  type CurrentRating,
  massForMission,
  type PowerDemand,
} from '../battery/index.js'
import { requireShare, requireText, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { AbsoluteTemperature, Energy, Mass, Ratio, SpecificPower } from '../quantity.js'
import { silently } from '../recorder.js'
import { requireList } from '../shapes.js'

/** A state in which the pack must still do its work. */
export interface PackCorner {
  readonly name: string
  /** Share of the new capacity; 1 when left out. */
  readonly capacityLeft?: Ratio
  /** Resistance over new; 1 when left out. */
  readonly resistanceGrowth?: Ratio
  /** Of the cells [K]; 298.15 when left out. */
  readonly temperature?: AbsoluteTemperature
}

export interface PackPowerOptions {
  /** When new. */
  readonly cell: Cell | CellOptions
  /** At the terminals, the reserve in it [J]. */
  readonly energy: Energy
  /** As for `battery.massForMission`; a temperature of their own goes before the corner's. */
  readonly demands: readonly PowerDemand[]
  /** State of charge that must be left. */
  readonly floor: Ratio
  /** Mass of the cells over mass of the pack; 0.7 when left out. */
  readonly cellShare?: Ratio
  /** At the start; 1 when left out. */
  readonly from?: Ratio
  /** Energy at the terminals over energy drawn; 0.95 when left out. */
  readonly efficiency?: Ratio
  readonly rating?: CurrentRating
  /** New and warm; at the end of life warm, cold (278.15 K) and hot (318.15 K) when left out. */
  readonly corners?: readonly PackCorner[]
}

export interface PackPowerRow {
  readonly corner: string
  /** The greater of the two [kg]. */
  readonly mass: Mass
  /** [kg] */
  readonly energyMass: Mass
  /** [kg] */
  readonly powerMass: Mass
  readonly binds: 'energy' | 'power'
  /** Name of the worst instant. */
  readonly demand: string
  /** Per mass of pack, at that instant [W/kg]. */
  readonly availableSpecificPower: SpecificPower
  /** Of the mass chosen, at that instant [W/kg]. */
  readonly neededSpecificPower: SpecificPower
}

export interface PackPower {
  /** That does in every corner [kg]. */
  readonly mass: Mass
  /** In which it is needed. */
  readonly corner: string
  readonly binds: 'energy' | 'power'
  readonly demand: string
  /** Mass of the bound behind it, over all corners, as a share of the mass: 1 where both bind. */
  readonly nextShare: Ratio
  /** In the order of the corners. */
  readonly rows: readonly PackPowerRow[]
}

const method = 'limits.packPower'
const known = new Set(['cell', 'energy', 'demands', 'floor', 'cellShare', 'from', 'efficiency', 'rating', 'corners'])
const knownCorner = new Set(['name', 'capacityLeft', 'resistanceGrowth', 'temperature'])
const endOfLife = { capacityLeft: 0.8, resistanceGrowth: 1.5 }
const usualCorners: readonly PackCorner[] = [
  { name: 'new, warm' },
  { name: 'end of life, warm', ...endOfLife },
  { name: 'end of life, cold', ...endOfLife, temperature: 278.15 },
  { name: 'end of life, hot', ...endOfLife, temperature: 318.15 },
]

/**
 * Mass of the pack that holds the energy and gives the power in every corner: new and old, warm, cold and hot.
 *
 * @equation m = max over corners of max(E/e_window, P/p_limit); P_limit = V_min (V_oc - V_min)/R, or V_oc^2/(4 R) where V_min < V_oc/2, or the rated current
 * @param options - `cell` when new, `energy` E at the terminals [J], `demands`: list of `{ name, power [W], stateOfCharge, temperature [K] }`, `floor` of charge; optional `cellShare` (0.7), `from`
 * (1), `efficiency` (0.95), `rating` (`'continuous'`), `corners`: list of `{ name, capacityLeft, resistanceGrowth, temperature [K] }`
 * @returns `mass` [kg], the `corner`, what `binds` and the `demand` there, `nextShare`, and a row per corner
 * @throws InvalidInput as `battery.aged` and `battery.massForMission`, for an empty list of corners, and an unknown option
 * @method `battery.massForMission` of the aged cell in each corner. A landing hover after the reserve, with one lift rotor lost, old and cold, is the usual worst instant: give it as a demand at the charge
 * that the reserve leaves.
 * @validity As the cell's. Hot cells give more power; they are in the list because the rated current then binds, and because heat ages them.
 * @source Circuit: textbook. End of life at 0.8 of the capacity and 1.5 times the resistance: usual convention (from memory). 5 and 45 degrees Celsius: house values.
 * @example
 * const pack = limits.packPower({
 *   cell: battery.cells.power18650, energy: 60 * u.kWh, floor: 0.1, rating: 'peak',
 *   demands: [{ name: 'landing after the reserve', power: 320 * u.kW, stateOfCharge: 0.15 }],
 * })
 * pack.corner // end of life, cold
 * pack.mass // 792.22
 */
export function packPower(options: PackPowerOptions): PackPower {
  checkOptions(method, options, known)
  const { cell, corners = usualCorners, demands, ...rest } = options
  requireList(method, 'corners', corners, '{ name, capacityLeft, resistanceGrowth, temperature }')
  requireList(method, 'demands', demands, '{ name, power, stateOfCharge, temperature }')
  const rows = corners.map((corner, index) => rowOf(cell, demands, rest, corner, `corners[${index}]`))
  const worst = rows.reduce((most, row) => (row.mass > most.mass ? row : most))
  const other = Math.max(...rows.map((row) => (worst.binds === 'energy' ? row.powerMass : row.energyMass)))
  return {
    mass: worst.mass,
    corner: worst.corner,
    binds: worst.binds,
    demand: worst.demand,
    nextShare: worst.mass === 0 ? 1 : other / worst.mass,
    rows,
  }
}

function rowOf(
  cell: Cell | CellOptions,
  demands: readonly PowerDemand[],
  rest: Omit<PackPowerOptions, 'cell' | 'corners' | 'demands'>,
  corner: PackCorner,
  at: string,
): PackPowerRow {
  checkOptions(`${method} ${at}`, corner, knownCorner)
  const { name, capacityLeft = 1, resistanceGrowth = 1, temperature = 298.15 } = corner
  requireText(method, `${at}.name`, name)
  requireShare(method, `${at}.capacityLeft`, capacityLeft)
  requireWithin(method, `${at}.resistanceGrowth`, resistanceGrowth, '1', 1, 100)
  requireWithin(method, `${at}.temperature`, temperature, 'K', 200, 500)
  const sized = silently(() =>
    massForMission({
      ...rest,
      cell: aged({ cell, capacityLeft, resistanceGrowth }),
      demands: demands.map((demand) => ({ temperature, ...demand })),
    }),
  )
  const { mass, energyMass, powerMass, binds, demand, availableSpecificPower } = sized
  const neededSpecificPower = mass === 0 ? 0 : (availableSpecificPower * powerMass) / mass
  return { corner: name, mass, energyMass, powerMass, binds, demand, availableSpecificPower, neededSpecificPower }
}
