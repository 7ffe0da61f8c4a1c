/** Lifting surfaces as the vortex lattice takes them: a trapezium a side, or a list of stations for a bent or curved planform. */
import { requireFinite, requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Length } from '../quantity.js'

interface Placed {
  /** Incidence of the whole surface [rad], 0 when left out. */
  readonly incidence?: Angle
  /** Leading edge of the root behind the origin [m], 0 when left out. */
  readonly x?: Length
  /** Root above the origin [m], 0 when left out. */
  readonly z?: Length
}

/** A straight-tapered surface from the plane of symmetry to its tip, and its mirror image. */
export interface LatticeTrapezium extends Placed {
  /** From the plane of symmetry to the tip, seen from above [m]. */
  readonly semiSpan: Length
  /** In the plane of symmetry [m]. */
  readonly rootChord: Length
  /** [m] */
  readonly tipChord: Length
  /** [rad], positive backwards. */
  readonly sweepLeadingEdge: Angle
  /** Incidence of the tip against the root [rad], linear between, washout negative; 0 when left out. */
  readonly twist?: Angle
  /** [rad], 0 when left out. */
  readonly dihedral?: Angle
}

export interface LatticeStation {
  /** From the plane of symmetry [m], rising from station to station, 0 at the first. */
  readonly y: Length
  /** Leading edge behind that of the root [m]. */
  readonly leadingEdge: Length
  /** [m] */
  readonly chord: Length
  /** Against the incidence of the surface [rad], 0 when left out. */
  readonly twist?: Angle
  /** Above the root [m], 0 when left out. */
  readonly z?: Length
}

/** A surface given by stations along its half span, straight between them, and its mirror image. */
export interface LatticeStations extends Placed {
  readonly stations: readonly LatticeStation[]
}

export type LatticeSurface = LatticeTrapezium | LatticeStations

/** A surface read: five numbers per station, both kinds alike. */
export interface SurfaceShape {
  readonly y: Float64Array
  readonly leadingEdge: Float64Array
  readonly chord: Float64Array
  readonly twist: Float64Array
  readonly z: Float64Array
  readonly semiSpan: number
  /** Both halves, seen from above [m^2]. */
  readonly area: number
}

const placed = ['incidence', 'x', 'z']
const knownTrapezium = new Set([
  'semiSpan',
  'rootChord',
  'tipChord',
  'sweepLeadingEdge',
  'twist',
  'dihedral',
  ...placed,
])
const knownStations = new Set(['stations', ...placed])
const knownStation = new Set(['y', 'leadingEdge', 'chord', 'twist', 'z'])
/** Beyond this a surface carries no lift and its mirror image lies on it [rad]. */
const greatestDihedral = 1.3
const greatestAngle = 0.5

export function readSurface(method: string, given: LatticeSurface, index: number): SurfaceShape {
  const at = `surfaces[${index}]`
  if (typeof given !== 'object' || given === null)
    throw new InvalidInput({ method, argument: at, value: describeValue(given), accepted: 'a record of a surface' })
  const shape = 'stations' in given ? readStations(method, at, given) : readTrapezium(method, at, given)
  const { incidence = 0, x = 0, z = 0 } = given
  requireWithin(method, `${at}.incidence`, incidence, 'rad', -greatestAngle, greatestAngle)
  requireFinite(method, `${at}.x`, x, 'm')
  requireFinite(method, `${at}.z`, z, 'm')
  for (let station = 0; station < shape.y.length; station += 1) {
    shape.leadingEdge[station] = (shape.leadingEdge[station] as number) + x
    shape.z[station] = (shape.z[station] as number) + z
    shape.twist[station] = (shape.twist[station] as number) + incidence
  }
  return shape
}

function readTrapezium(method: string, at: string, given: LatticeTrapezium): SurfaceShape {
  checkOptions(`${method} ${at}`, given, knownTrapezium)
  const { semiSpan, rootChord, tipChord, sweepLeadingEdge, twist = 0, dihedral = 0 } = given
  requirePositive(method, `${at}.semiSpan`, semiSpan, 'm')
  requirePositive(method, `${at}.rootChord`, rootChord, 'm')
  requireNonNegative(method, `${at}.tipChord`, tipChord, 'm')
  requireWithin(method, `${at}.sweepLeadingEdge`, sweepLeadingEdge, 'rad', -1.4, 1.4)
  requireWithin(method, `${at}.twist`, twist, 'rad', -greatestAngle, greatestAngle)
  requireWithin(method, `${at}.dihedral`, dihedral, 'rad', -greatestDihedral, greatestDihedral)
  return {
    y: Float64Array.of(0, semiSpan),
    leadingEdge: Float64Array.of(0, semiSpan * Math.tan(sweepLeadingEdge)),
    chord: Float64Array.of(rootChord, tipChord),
    twist: Float64Array.of(0, twist),
    z: Float64Array.of(0, semiSpan * Math.tan(dihedral)),
    semiSpan,
    area: semiSpan * (rootChord + tipChord),
  }
}

function readStations(method: string, at: string, given: LatticeStations): SurfaceShape {
  checkOptions(`${method} ${at}`, given, knownStations)
  const { stations } = given
  if (!Array.isArray(stations) || stations.length < 2 || stations.length > 500)
    throw new InvalidInput({
      method,
      argument: `${at}.stations`,
      value: describeValue(stations),
      accepted: 'a list of 2 to 500 stations from the plane of symmetry to the tip',
    })
  let area = 0
  stations.forEach((station: LatticeStation, index: number) => {
    const place = `${at}.stations[${index}]`
    requireStation(method, place, station)
    const before = stations[index - 1] as LatticeStation | undefined
    if (before === undefined ? station.y !== 0 : !(station.y > before.y))
      throw new InvalidInput({
        method,
        argument: `${place}.y`,
        value: station.y,
        unit: 'm',
        accepted: before === undefined ? '0, the plane of symmetry' : `greater than ${before.y} m, the station before`,
      })
    if (before === undefined) return
    area += (station.y - before.y) * (station.chord + before.chord)
    if (Math.abs((station.z ?? 0) - (before.z ?? 0)) > Math.tan(greatestDihedral) * (station.y - before.y))
      throw new InvalidInput({
        method,
        argument: `${place}.z`,
        value: station.z ?? 0,
        unit: 'm',
        accepted: `a rise of at most ${greatestDihedral} rad from the station before; upright surfaces carry no lift`,
      })
  })
  requirePositive(method, `${at}, its area`, area, 'm^2')
  const column = (read: (station: LatticeStation) => number) => Float64Array.from(stations, read)
  return {
    y: column((one) => one.y),
    leadingEdge: column((one) => one.leadingEdge),
    chord: column((one) => one.chord),
    twist: column((one) => one.twist ?? 0),
    z: column((one) => one.z ?? 0),
    semiSpan: (stations[stations.length - 1] as LatticeStation).y,
    area,
  }
}

function requireStation(method: string, place: string, station: LatticeStation): void {
  checkOptions(`${method} ${place}`, station, knownStation)
  requireNonNegative(method, `${place}.y`, station.y, 'm')
  requireFinite(method, `${place}.leadingEdge`, station.leadingEdge, 'm')
  requireNonNegative(method, `${place}.chord`, station.chord, 'm')
  if (station.twist !== undefined)
    requireWithin(method, `${place}.twist`, station.twist, 'rad', -greatestAngle, greatestAngle)
  if (station.z !== undefined) requireFinite(method, `${place}.z`, station.z, 'm')
}
