/** What varies along a blade: a number, a table of [r/R, value] or a function of r/R, read at the stations. */
import { requireWithin } from '../check.js'
import { describeValue, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'

/** A number for the whole blade, a table of `[r/R, value]` with rising r/R (linear between, held outside), or a function of r/R. */
export type AlongBlade<T extends number> = T | readonly (readonly [Ratio, T])[] | ((station: Ratio) => T)

export interface Bounds {
  readonly unit: string
  readonly low: number
  readonly high: number
}

/** Values at the stations; every one is checked against the bounds. */
export function readAlongBlade(
  method: string,
  argument: string,
  given: AlongBlade<number>,
  stations: Float64Array,
  bounds: Bounds,
): Float64Array {
  const { unit, low, high } = bounds
  if (typeof given === 'number') {
    requireWithin(method, argument, given, unit, low, high)
    return new Float64Array(stations.length).fill(given)
  }
  if (typeof given === 'function')
    return stations.map((station) => {
      const value = given(station)
      requireWithin(method, `${argument} at r/R = ${station.toPrecision(3)}`, value, unit, low, high)
      return value
    })
  const table = readTable(method, argument, given, bounds)
  return stations.map((station) => interpolate(table, station))
}

function readTable(
  method: string,
  argument: string,
  given: readonly (readonly [number, number])[],
  bounds: Bounds,
): readonly (readonly [number, number])[] {
  if (!Array.isArray(given) || given.length < 2 || given.length > 500)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(given),
      accepted: 'a number, a list of 2 to 500 pairs [r/R, value], or a function of r/R',
    })
  let before = Number.NEGATIVE_INFINITY
  given.forEach((pair: unknown, index) => {
    if (!Array.isArray(pair) || pair.length !== 2)
      throw new InvalidInput({
        method,
        argument: `${argument}[${index}]`,
        value: describeValue(pair),
        accepted: 'a pair [r/R, value]',
      })
    const [station, value] = pair as [number, number]
    requireWithin(method, `${argument}[${index}][0]`, station, '1', 0, 1)
    requireWithin(method, `${argument}[${index}][1]`, value, bounds.unit, bounds.low, bounds.high)
    if (!(station > before))
      throw new InvalidInput({
        method,
        argument: `${argument}[${index}][0]`,
        value: station,
        accepted: `above the one before it, ${before}`,
      })
    before = station
  })
  return given
}

function interpolate(table: readonly (readonly [number, number])[], station: number): number {
  let low = table[0] as readonly [number, number]
  if (station <= low[0]) return low[1]
  for (const high of table) {
    if (station < high[0]) return low[1] + ((high[1] - low[1]) * (station - low[0])) / (high[0] - low[0])
    low = high
  }
  return low[1]
}
