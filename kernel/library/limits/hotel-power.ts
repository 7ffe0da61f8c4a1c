import { requireNonNegative, requireRepresentable, requireText, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Power, Ratio } from '../quantity.js'
import { requireList } from '../shapes.js'

export interface HotelItem {
  readonly name: string
  /** While it runs, at its own terminals [W]. */
  readonly power: Power
  /** Share of the time in which it runs; 1 when left out. */
  readonly duty?: Ratio
}

export interface HeatSource {
  readonly name: string
  /** To be carried off [W]. */
  readonly heat: Power
}

export interface HotelPowerOptions {
  readonly items: readonly HotelItem[]
  /** Motors, controllers and cells, in the phase asked about. */
  readonly heat?: readonly HeatSource[]
  /** Power of fans and pumps over heat carried; 0.03 when left out (house value). */
  readonly coolingShare?: Ratio
  /** From the pack to the terminals of the items; 0.92 when left out (house value). */
  readonly converterEfficiency?: Ratio
}

export interface HotelRow {
  readonly item: string
  /** From the pack, mean over time [W]. */
  readonly power: Power
  readonly share: Ratio
}

export interface HotelPower {
  /** From the pack, mean over time [W]. */
  readonly power: Power
  /** From the pack, with everything running [W]. */
  readonly peakPower: Power
  /** Of it for cooling [W]. */
  readonly coolingPower: Power
  /** Carried off [W]. */
  readonly heat: Power
  /** The greatest first. */
  readonly rows: readonly HotelRow[]
}

const method = 'limits.hotelPower'
const known = new Set(['items', 'heat', 'coolingShare', 'converterEfficiency'])
const knownItem = new Set(['name', 'power', 'duty'])
const knownHeat = new Set(['name', 'heat'])

/**
 * Power that is drawn besides flying: avionics, lights, cabin, and the fans and pumps that carry heat off.
 *
 * @equation P = sum of (d_i P_i)/eta + c sum of heat/eta
 * @param options - `items`: list of `{ name, power P_i [W], duty d_i (1) }`; optional `heat`: list of `{ name, heat [W] }`, `coolingShare` c (0.03), `converterEfficiency` eta (0.92)
 * @returns `power` (mean), `peakPower` (all running), `coolingPower` and `heat` [W], `rows` with their share, the greatest first
 * @throws InvalidInput for no items, negative powers, duties and shares outside 0 to 1, and an unknown option
 * @method Sum. It is drawn all the time, so that a long reserve asks for more of it than a short flight: give it to the mission.
 * @validity Heating or cooling of a cabin can outweigh everything else in the list; state it. Ram air costs drag instead: `drag.cooling`.
 * @source House model: fans and pumps at 3 % of the heat they carry, low-voltage converters at 0.92 (common practice, no source).
 * @example
 * const hotel = limits.hotelPower({
 *   items: [{ name: 'avionics', power: 800 * u.W }, { name: 'cabin', power: 1.5 * u.kW, duty: 0.5 }], heat: [{ name: 'cells', heat: 4 * u.kW }],
 * })
 * hotel.power // 1815
 */
export function hotelPower(options: HotelPowerOptions): HotelPower {
  checkOptions(method, options, known)
  const { items, heat = [], coolingShare = 0.03, converterEfficiency = 0.92 } = options
  requireList(method, 'items', items, '{ name, power }')
  if (heat.length !== 0) requireList(method, 'heat', heat, '{ name, heat }')
  requireWithin(method, 'coolingShare', coolingShare, '1', 0, 1)
  requireWithin(method, 'converterEfficiency', converterEfficiency, '1', 0.01, 1)
  const drawn = items.map((item, index) => readItem(item, `items[${index}]`, converterEfficiency))
  const carried = heat.reduce((sum, source, index) => sum + readHeat(source, `heat[${index}]`), 0)
  const coolingPower = (coolingShare * carried) / converterEfficiency
  const all = coolingPower > 0 ? [...drawn, { item: 'cooling', power: coolingPower, peak: coolingPower }] : drawn
  const power = all.reduce((sum, one) => sum + one.power, 0)
  const peakPower = all.reduce((sum, one) => sum + one.peak, 0)
  requireRepresentable(method, power + peakPower + carried)
  const rows = all
    .map(({ item, power: mean }) => ({ item, power: mean, share: power > 0 ? mean / power : 0 }))
    .sort((a, b) => b.power - a.power)
  return { power, peakPower, coolingPower, heat: carried, rows }
}

function readItem(item: HotelItem, at: string, efficiency: number) {
  checkOptions(`${method} ${at}`, item, knownItem)
  const { name, power, duty = 1 } = item
  requireText(method, `${at}.name`, name)
  requireNonNegative(method, `${at}.power`, power, 'W')
  requireWithin(method, `${at}.duty`, duty, '1', 0, 1)
  return { item: name, power: (duty * power) / efficiency, peak: power / efficiency }
}

function readHeat(source: HeatSource, at: string): number {
  checkOptions(`${method} ${at}`, source, knownHeat)
  requireText(method, `${at}.name`, source.name)
  requireNonNegative(method, `${at}.heat`, source.heat, 'W')
  return source.heat
}
