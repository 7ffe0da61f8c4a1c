import { requireNonNegative, requirePositive, requireRepresentable, requireShare, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type Cell, type CellOptions, requireCell } from './cell.js'

export interface AgedOptions {
  readonly cell: Cell | CellOptions
  /** Share of the new capacity that is left, 0 to 1. */
  readonly capacityLeft: Ratio
  /** Resistance over that of the new cell, 1 or more. */
  readonly resistanceGrowth: Ratio
}

export interface FadeOptions {
  /** Full cycles flown; partial ones add up by the charge they take. */
  readonly cycles: Ratio
  /** Cycles at which the end of life is reached. */
  readonly cyclesToEndOfLife: Ratio
  /** Capacity left then; 0.8 when left out. */
  readonly capacityAtEnd?: Ratio
  /** Resistance over new then; 1.5 when left out. */
  readonly resistanceAtEnd?: Ratio
  /** Of the loss over cycles: 1 (straight, when left out) down to 0.5 (square root). */
  readonly exponent?: Ratio
}

export interface Fade {
  readonly capacityLeft: Ratio
  readonly resistanceGrowth: Ratio
  /** 1 new, 0 at the end of life, negative beyond. */
  readonly lifeLeft: Ratio
}

const knownAged = new Set(['cell', 'capacityLeft', 'resistanceGrowth'])
const knownFade = new Set(['cycles', 'cyclesToEndOfLife', 'capacityAtEnd', 'resistanceAtEnd', 'exponent'])

/**
 * A cell as it is after use: less capacity, more resistance. Sizing wants the cell at the end of its life.
 *
 * @equation Q = c Q_new; R = g R_new; V_oc over state of charge unchanged
 * @param options - `cell`, `capacityLeft` c (0 to 1), `resistanceGrowth` g (1 or more)
 * @returns a cell, for every method of `battery`
 * @throws InvalidInput for shares outside their ranges, and an unknown option
 * @method State of charge counts from full to empty of the aged cell. Rated currents stay those of the new cell.
 * @validity From 0.7 to 1 of the capacity: past 0.7 fade turns faster as a rule (from memory), and an advisory is given.
 * @source End of life at 0.8 of the capacity with resistance up by a half to double: usual convention (from memory).
 * @example
 * const old = battery.aged({ cell: battery.cells.power18650, capacityLeft: 0.8, resistanceGrowth: 1.5 })
 * old.capacity / u.Ah // 2.36
 */
export function aged(options: AgedOptions): Cell {
  const method = 'battery.aged'
  checkOptions(method, options, knownAged)
  const cell = requireCell(method, options.cell)
  const { capacityLeft, resistanceGrowth } = options
  requireShare(method, 'capacityLeft', capacityLeft)
  requireWithin(method, 'resistanceGrowth', resistanceGrowth, '1', 1, 100)
  const capacity = cell.capacity * capacityLeft
  requirePositive(method, 'the capacity left', capacity, 'C')
  if (capacityLeft < 0.7 && isListening())
    advise({
      code: 'PAST_END_OF_LIFE',
      method,
      quantity: 'capacityLeft',
      value: capacityLeft,
      range: [0.7, 1],
      message: `A cell with ${(100 * capacityLeft).toFixed(0)} % of its capacity is past its usual end of life; fade is faster there.`,
    })
  const { continuousCurrent } = cell
  const resistance = cell.resistance.map((row) => Object.freeze(row.map((value) => value * resistanceGrowth)))
  const rates = continuousCurrent === undefined ? {} : { continuousRate: continuousCurrent / capacity }
  const all = resistance.flat().reduce((sum, value) => sum + value, rates.continuousRate ?? 0)
  requireRepresentable(method, all)
  return Object.freeze({
    ...cell,
    capacity,
    resistance: Object.freeze(resistance),
    energy: cell.energy * capacityLeft,
    specificEnergy: cell.specificEnergy * capacityLeft,
    ...rates,
  })
}

/**
 * Capacity and resistance after a number of cycles.
 *
 * @equation loss = (n/n_end)^k; capacity left = 1 - (1 - c_end) loss; resistance growth = 1 + (g_end - 1) loss
 * @param options - `cycles` n, `cyclesToEndOfLife` n_end; optional `capacityAtEnd` c_end (0.8), `resistanceAtEnd` g_end (1.5), `exponent` k (1; 0.5 to 1.5)
 * @returns `capacityLeft` and `resistanceGrowth` for `battery.aged`, `lifeLeft`
 * @throws InvalidInput for negative cycles, ends outside their ranges, more cycles than leave any capacity, and an unknown option
 * @method House model: a power law between the new cell and the end of life. Calendar ageing apart.
 * @validity Up to the end of life; beyond it an advisory. Cycles to the end of life depend on depth, rate and temperature and come from a test.
 * @source House model; the end of life is the usual convention (from memory).
 * @example
 * battery.fade({ cycles: 500, cyclesToEndOfLife: 1000 }).capacityLeft // 0.9
 */
export function fade(options: FadeOptions): Fade {
  const method = 'battery.fade'
  checkOptions(method, options, knownFade)
  const { cycles, cyclesToEndOfLife, capacityAtEnd = 0.8, resistanceAtEnd = 1.5, exponent = 1 } = options
  requireNonNegative(method, 'cycles', cycles, '1')
  requirePositive(method, 'cyclesToEndOfLife', cyclesToEndOfLife, '1')
  requireShare(method, 'capacityAtEnd', capacityAtEnd)
  requireWithin(method, 'resistanceAtEnd', resistanceAtEnd, '1', 1, 100)
  requireWithin(method, 'exponent', exponent, '1', 0.5, 1.5)
  const spent = cycles / cyclesToEndOfLife
  const loss = spent ** exponent
  const capacityLeft = 1 - (1 - capacityAtEnd) * loss
  requireShare(method, `the capacity left after ${cycles} cycles`, capacityLeft)
  const resistanceGrowth = 1 + (resistanceAtEnd - 1) * loss
  requireRepresentable(method, resistanceGrowth + spent)
  if (spent > 1 && isListening())
    advise({
      code: 'PAST_END_OF_LIFE',
      method,
      quantity: 'cycles',
      value: cycles,
      range: [0, cyclesToEndOfLife],
      message: `${cycles} cycles are more than the ${cyclesToEndOfLife} to the end of life.`,
    })
  return { capacityLeft, resistanceGrowth, lifeLeft: 1 - spent }
}
