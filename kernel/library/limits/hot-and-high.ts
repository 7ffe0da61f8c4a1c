/** Altitude against temperature: which limit is nearest at each place, and the altitude at which it is met. */

import { densityAltitude } from '../air/altitude.js'
import { type Air, standard } from '../air/standard.js'
import { requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Density, Length, Ratio, TemperatureDifference } from '../quantity.js'
import { silently } from '../recorder.js'
import { requireFunction, requireNumbers, requireRising } from '../shapes.js'
import type { Margins } from './margins.js'

/** The air at one place of the grid. */
export interface AirThere extends Air {
  /** [m] */
  readonly altitude: Length
  /** From standard [K]. */
  readonly temperatureOffset: TemperatureDifference
}

export interface HotAndHighOptions {
  /** Pressure altitudes, rising [m]. */
  readonly altitudes: readonly Length[]
  /** From standard, rising [K]. */
  readonly temperatureOffsets: readonly TemperatureDifference[]
  /** What is left of each limit there, as `limits.margins` gives it. */
  readonly margins: (there: AirThere) => Margins
}

export interface HotAndHighRow {
  /** [m] */
  readonly altitude: Length
  /** [K] */
  readonly temperatureOffset: TemperatureDifference
  /** [m] */
  readonly densityAltitude: Length
  /** [kg/m^3] */
  readonly density: Density
  /** The one with least left. */
  readonly limit: string
  /** Of that limit; negative is lacking. */
  readonly margin: Ratio
}

export interface Ceiling {
  /** [K] */
  readonly temperatureOffset: TemperatureDifference
  /** Up to which every limit is met [m]. */
  readonly altitude: Length
  /** Met there first; `'none in the grid'` where all are met up to the highest altitude, and the one lacking where none is met at the lowest. */
  readonly limit: string
}

export interface HotAndHigh {
  readonly altitudes: readonly Length[]
  readonly temperatureOffsets: readonly TemperatureDifference[]
  /** Row by row of altitude, in each of which the temperatures rise. */
  readonly rows: readonly HotAndHighRow[]
  /** One for each temperature offset. */
  readonly ceilings: readonly Ceiling[]
}

const method = 'limits.hotAndHigh'
const known = new Set(['altitudes', 'temperatureOffsets', 'margins'])

/**
 * Hot and high: over a grid of altitude and temperature the limit that is nearest, what is left of it, and the ceiling of each day.
 *
 * @equation limit = the one with least margin(altitude, offset); ceiling: margin(altitude) = 0
 * @param options - `altitudes` [m] and `temperatureOffsets` from standard [K] (rising lists), `margins`: function of the air there (`altitude`, `temperatureOffset`, `density`, `temperature` ...) to a record of margins by
 * limit, for instance `(there) => limits.margins({ ...aircraft, density: there.density })`
 * @returns `rows` with `altitude`, `temperatureOffset`, `densityAltitude`, `density`, `limit`, `margin`; `ceilings` with the altitude up to which all is met on each day and the limit met there; the two lists
 * @throws InvalidInput for lists that do not rise, more than 2000 places, altitudes outside -5 to 20 km, margins that are not numbers, and an unknown option
 * @method The standard atmosphere at each place; ceilings by Brent's root between neighbouring altitudes. Field and cruise altitudes are asked apart: one grid for hover, one for cruise.
 * @validity As the margins'. A ceiling is the lowest at which a limit is met on the grid's altitudes.
 * @source Air: ISO 2533. The grid: common practice.
 * @example
 * const aircraft = {
 *   grossMass: 1637 * u.kg, lift: { diskArea: 42.5, figureOfMerit: 0.72, download: 0.05, shaftPower: 345 * u.kW },
 * }
 * const grid = limits.hotAndHigh({
 *   altitudes: [0, 1000, 2000, 3000], temperatureOffsets: [0, 20], margins: (there) => limits.margins({ ...aircraft, density: there.density }),
 * })
 * grid.ceilings[1].altitude // 2191.7
 */
export function hotAndHigh(options: HotAndHighOptions): HotAndHigh {
  checkOptions(method, options, known)
  const { altitudes, temperatureOffsets, margins } = options
  requireRising(method, 'altitudes', altitudes, 2)
  requireRising(method, 'temperatureOffsets', temperatureOffsets, 1)
  requireWithin(method, 'the number of places', altitudes.length * temperatureOffsets.length, '1', 2, 2000)
  requireFunction(method, 'margins', margins, 'a function of the air there to a record of margins by limit')
  const ask = (altitude: number, offset: number) => silently(() => rowOf(margins, altitude, offset))
  return {
    altitudes,
    temperatureOffsets,
    rows: altitudes.flatMap((altitude) => temperatureOffsets.map((offset) => ask(altitude, offset))),
    ceilings: temperatureOffsets.map((offset) => ceilingOf(altitudes, offset, ask)),
  }
}

function rowOf(margins: HotAndHighOptions['margins'], altitude: number, temperatureOffset: number): HotAndHighRow {
  const there = { ...standard(altitude, temperatureOffset), altitude, temperatureOffset }
  const answer = margins(there)
  requireNumbers(method, 'the answer of margins', answer, 'a record of margins by limit')
  const [limit, margin] = Object.entries(answer).reduce((least, one) => (one[1] < least[1] ? one : least))
  const { density } = there
  return { altitude, temperatureOffset, densityAltitude: densityAltitude(density), density, limit, margin }
}

function ceilingOf(
  altitudes: readonly number[],
  temperatureOffset: number,
  ask: (altitude: number, offset: number) => HotAndHighRow,
): Ceiling {
  let below = ask(altitudes[0] as number, temperatureOffset)
  if (below.margin < 0) return { temperatureOffset, altitude: below.altitude, limit: below.limit }
  for (const altitude of altitudes.slice(1)) {
    const here = ask(altitude, temperatureOffset)
    if (here.margin < 0) {
      const left = (at: number) => ask(at, temperatureOffset).margin
      const root = brentRoot(left, below.altitude, altitude, below.margin, here.margin, 1e-10)
      const above = Math.min(root.x + 1e-6 * (altitude - below.altitude), altitude)
      return { temperatureOffset, altitude: root.x, limit: ask(above, temperatureOffset).limit }
    }
    below = here
  }
  return { temperatureOffset, altitude: below.altitude, limit: 'none in the grid' }
}
