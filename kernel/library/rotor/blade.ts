/** Geometry of a blade at the stations where it is cut into elements. */
import { requirePositive, requireWithin } from '../check.js'
import { describeValue, InvalidInput } from '../errors.js'
import type { Angle, Length, Ratio } from '../quantity.js'
import { type AlongBlade, readAlongBlade } from './along-blade.js'

export interface BladeOptions {
  /** [m] */
  readonly radius: Length
  /** Where the blade begins, from the axis [m]; 0 when left out. */
  readonly rootCutout?: Length
  /** Number [m], table of [r/R, m] or function of r/R. */
  readonly chord: AlongBlade<Length>
  /**
   * Added to the pitch: a table of [r/R, rad] or a function of r/R; a number [rad] is linear twist from the axis to the tip, nothing at 75 %
   * radius. 0 when left out.
   */
  readonly twist?: AlongBlade<Angle>
  readonly blades: Ratio
  /** Number of elements, 24 when left out. */
  readonly elements?: Ratio
}

export const knownBlade: readonly string[] = ['radius', 'rootCutout', 'chord', 'twist', 'blades', 'elements']

export interface Blade {
  /** [m] */
  readonly radius: number
  readonly blades: number
  /** Root cut-out over radius. */
  readonly root: number
  /** r/R, from root to tip. */
  readonly station: Float64Array
  /** Span of the element over radius. */
  readonly width: Float64Array
  /** Over radius. */
  readonly chord: Float64Array
  /** [rad] */
  readonly twist: Float64Array
  /** [rad] */
  readonly twistAtThreeQuarters: number
  /** Blade area over disk area by the mean chord, N c/(pi R). */
  readonly solidity: number
}

/** Where the pitch of a blade is quoted. */
const reference = 0.75

export function readBlade(method: string, options: BladeOptions): Blade {
  const { radius, rootCutout = 0, chord, twist = 0, blades, elements = 24 } = options
  requirePositive(method, 'radius', radius, 'm')
  requireWithin(method, 'rootCutout', rootCutout, 'm', 0, 0.9 * radius)
  requireWhole(method, 'blades', blades, 1, 100)
  requireWhole(method, 'elements', elements, 4, 400)
  const root = rootCutout / radius
  const { station, width } = cutBlade(root, elements)
  const chords = readAlongBlade(method, 'chord', chord, station, { unit: 'm', low: 1e-4 * radius, high: radius })
  for (let i = 0; i < elements; i += 1) chords[i] = (chords[i] as number) / radius
  let area = 0
  for (let i = 0; i < elements; i += 1) area += (chords[i] as number) * (width[i] as number)
  return {
    radius,
    blades,
    root,
    station,
    width,
    chord: chords,
    twist: readTwist(method, twist, station),
    twistAtThreeQuarters: readTwist(method, twist, Float64Array.of(reference))[0] as number,
    solidity: (blades * area) / (Math.PI * (1 - root)),
  }
}

/**
 * Stations by equal steps of an angle, close together at root and tip: the loading falls there like a square root, which such steps
 * integrate as well as a smooth function.
 */
export function cutBlade(root: number, elements: number): { station: Float64Array; width: Float64Array } {
  const station = new Float64Array(elements)
  const width = new Float64Array(elements)
  const half = 0.5 * (1 - root)
  // The midpoint rule in the angle, scaled so that the widths add up to the span exactly.
  const scale = 2 * half * Math.sin(Math.PI / (2 * elements))
  for (let i = 0; i < elements; i += 1) {
    const angle = (Math.PI * (i + 0.5)) / elements
    station[i] = root + half * (1 - Math.cos(angle))
    width[i] = scale * Math.sin(angle)
  }
  return { station, width }
}

function readTwist(method: string, twist: AlongBlade<Angle>, station: Float64Array): Float64Array {
  const bounds = { unit: 'rad', low: -Math.PI, high: Math.PI }
  const values = readAlongBlade(method, 'twist', twist, station, bounds)
  if (typeof twist === 'number')
    for (let i = 0; i < values.length; i += 1) values[i] = twist * ((station[i] as number) - reference)
  return values
}

function requireWhole(method: string, argument: string, value: number, low: number, high: number): void {
  if (Number.isInteger(value) && value >= low && value <= high) return
  throw new InvalidInput({
    method,
    argument,
    value: describeValue(value),
    accepted: `a whole number from ${low} to ${high}`,
  })
}
