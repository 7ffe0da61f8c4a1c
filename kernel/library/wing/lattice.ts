/** Vortex lattice: several lifting surfaces, tapered, swept, twisted, in straight and symmetric flight. */
import { requireCount, requireFinite, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { solveLinear } from '../numerics/index.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Area, Length, Ratio } from '../quantity.js'
import { fillInfluence } from './lattice-influence.js'
import { layPanels, type Panels } from './lattice-panels.js'
import { type LatticeSurface, readSurface, type SurfaceShape } from './lattice-surface.js'
import { stripCirculation, wakeDrag } from './trefftz-plane.js'

export interface LatticeOptions {
  /** The first is the wing: it gives the references unless they are given. */
  readonly surfaces: readonly LatticeSurface[]
  /** Strips per half span of each surface. */
  readonly spanwise: Ratio
  /** Panels per strip. */
  readonly chordwise: Ratio
  /** [rad] */
  readonly angleOfAttack: Angle
  /** Gap between the last strip and the tip, in strips: 0.25 when left out. */
  readonly tipInset?: Ratio
  /** [m^2], the first surface's area seen from above when left out. */
  readonly referenceArea?: Area
  /** [m], area over span of the first surface when left out. */
  readonly referenceChord?: Length
  /** Point about which moments are taken, behind the origin [m]; 0 when left out. */
  readonly momentCentre?: Length
}

/** What one surface carries. */
export interface SurfaceLoad {
  /** Lift coefficient on the reference area. */
  readonly lift: Ratio
  /** Its part of the lift-curve slope [1/rad]. */
  readonly liftCurveSlope: Ratio
  /** Middles of its strips on the right half [m]. */
  readonly across: readonly Length[]
  /** Lift coefficient of each strip on its own chord. */
  readonly sectionLift: readonly Ratio[]
}

export interface Lattice {
  /** Of all surfaces on the reference area [1/rad]. */
  readonly liftCurveSlope: Ratio
  /** Slope of the moment coefficient about `momentCentre`, nose up positive [1/rad]. */
  readonly pitchCurveSlope: Ratio
  /** Lift coefficient at `angleOfAttack`. */
  readonly lift: Ratio
  /** Moment coefficient there. */
  readonly pitch: Ratio
  /** Induced drag coefficient there. */
  readonly inducedDrag: Ratio
  /** C_L^2 S/(pi b^2 C_Di) with the largest span b; of the lift that grows with angle where there is none. */
  readonly spanEfficiency: Ratio
  /** Lift coefficient at no angle of attack, from twist and incidence. */
  readonly liftAtZeroAngle: Ratio
  /** Point about which the moment does not change with angle, behind the origin [m]: the neutral point of the surfaces. */
  readonly aerodynamicCentre: Length
  readonly surfaces: readonly SurfaceLoad[]
}

const method = 'wing.lattice'
const known = new Set([
  'surfaces',
  'spanwise',
  'chordwise',
  'angleOfAttack',
  'tipInset',
  'referenceArea',
  'referenceChord',
  'momentCentre',
])
const mostPanels = 1000

/**
 * Lift, moment and induced drag of one or more lifting surfaces by a vortex lattice.
 *
 * @equation normal velocity of all horseshoe vortices and the stream = 0 at three quarters of each panel; C_L = 2 sum Gamma dy/(V S);
 * C_Di from the wake trace (Munk): 1/(V^2 S) sum Gamma w ds; e = C_L^2 S/(pi b^2 C_Di)
 * @param options - `surfaces` (list of { `semiSpan`, `rootChord`, `tipChord` [m], `sweepLeadingEdge` [rad], `twist`, `dihedral`,
 * `incidence` [rad], `x`, `z` [m] } or { `stations`: list of { `y`, `leadingEdge`, `chord`, `twist`, `z` }, `incidence`, `x`, `z` }),
 * each mirrored; `spanwise` strips per half span, `chordwise` panels per strip, `angleOfAttack` [rad]; optional `tipInset` (0.25 strip),
 * `referenceArea` [m^2], `referenceChord` [m], `momentCentre` [m]
 * @returns `liftCurveSlope`, `pitchCurveSlope` [1/rad], `lift`, `pitch`, `inducedDrag` (coefficients at the angle), `spanEfficiency`,
 * `liftAtZeroAngle`, `aerodynamicCentre` [m], `surfaces` (each with `lift`, `liftCurveSlope`, `across` [m], `sectionLift`)
 * @throws InvalidInput for impossible geometry, stations out of order, a dihedral beyond 1.3 rad, an angle beyond 0.5 rad, more than
 * 1000 panels per half, surfaces that lie on each other, and an unknown option
 * @method Flat wake along the stream, small angles, equal strips ending a quarter strip short of the tip: uniform lattices without the
 * inset converge slowly from above (1.4 % at 20 strips). Vortices are smoothed over half a strip where they meet another surface. An
 * inset below a quarter overstates the span efficiency by about 2 (0.25 - inset)/strips.
 * @validity Attached flow below the drag rise: no thickness, no boundary layer, no body. Beyond 0.2 rad an advisory. The slope of a
 * swept published planform is met within 0.1 %.
 * @source Bertin, J. J., Smith, M. L., Aerodynamics for Engineers, 2nd edition, 1989, chapter 7; tip inset: Hough, G. R., Journal of
 * Aircraft 10, 1973 (both from memory); drag: Munk, M. M., The Minimum Induced Drag of Aerofoils, NACA Report 121, 1921 (from memory).
 * @example
 * const swept = { semiSpan: Math.SQRT2, rootChord: 1.5, tipChord: 0.5, sweepLeadingEdge: 53.5431549 * u.deg }
 * wing.lattice({ surfaces: [swept], spanwise: 20, chordwise: 4, angleOfAttack: 4 * u.deg }).liftCurveSlope // 2.741
 */
export function lattice(options: LatticeOptions): Lattice {
  const { shapes, area, chord, centre } = readOptions(options)
  const { spanwise, chordwise, angleOfAttack, tipInset = 0.25 } = options
  const panels = layPanels(shapes, spanwise, chordwise, tipInset)
  const byAngle = new Float64Array(panels.count)
  const byTwist = new Float64Array(panels.count)
  solve(panels, byAngle, byTwist)
  const circulation = byAngle.map((value, panel) => value * angleOfAttack + (byTwist[panel] as number))
  const slope = liftOf(panels, byAngle, area)
  const pitchSlope = pitchOf(panels, byAngle, area, chord, centre)
  const lift = liftOf(panels, circulation, area)
  const inducedDrag = (2 * wakeDrag(panels, circulation)) / area
  const answer = {
    liftCurveSlope: slope,
    pitchCurveSlope: pitchSlope,
    lift,
    pitch: pitchOf(panels, circulation, area, chord, centre),
    inducedDrag,
    spanEfficiency: efficiency(panels, shapes, lift, inducedDrag, byAngle, area),
    liftAtZeroAngle: liftOf(panels, byTwist, area),
    aerodynamicCentre: centre - (chord * pitchSlope) / slope,
  }
  requireRepresentable(
    method,
    Object.values(answer).reduce((sum, one) => sum + one, 0),
  )
  adviseOutside(Math.abs(angleOfAttack), {
    code: 'ANGLE_OF_ATTACK',
    method,
    quantity: 'angleOfAttack',
    high: 0.2,
    because: 'beyond 0.2 rad flow leaves usual wings; a lattice knows no stall',
  })
  return { ...answer, surfaces: shapes.map((shape, index) => loadOf(panels, shape, index, circulation, byAngle, area)) }
}

interface Read {
  readonly shapes: readonly SurfaceShape[]
  readonly area: number
  readonly chord: number
  readonly centre: number
}

function readOptions(options: LatticeOptions): Read {
  checkOptions(method, options, known)
  const { surfaces, spanwise, chordwise, angleOfAttack, tipInset = 0.25, momentCentre = 0 } = options
  if (!Array.isArray(surfaces) || surfaces.length < 1 || surfaces.length > 10)
    throw new InvalidInput({
      method,
      argument: 'surfaces',
      value: describeValue(surfaces),
      accepted: 'a list of 1 to 10 surfaces',
    })
  requireCount(method, 'spanwise', spanwise)
  requireCount(method, 'chordwise', chordwise)
  requireWithin(method, 'number of panels per half', surfaces.length * spanwise * chordwise, '1', 1, mostPanels)
  requireWithin(method, 'angleOfAttack', angleOfAttack, 'rad', -0.5, 0.5)
  requireWithin(method, 'tipInset', tipInset, '1', 0, 0.5)
  requireFinite(method, 'momentCentre', momentCentre, 'm')
  const shapes = surfaces.map((surface, index) => readSurface(method, surface, index))
  const first = shapes[0] as SurfaceShape
  const { referenceArea = first.area, referenceChord = first.area / (2 * first.semiSpan) } = options
  requirePositive(method, 'referenceArea', referenceArea, 'm^2')
  requirePositive(method, 'referenceChord', referenceChord, 'm')
  return { shapes, area: referenceArea, chord: referenceChord, centre: momentCentre }
}

/** Circulations for a radian of angle of attack, and those of twist and incidence alone. */
function solve(panels: Panels, byAngle: Float64Array, byTwist: Float64Array): void {
  const { count } = panels
  const matrix = new Float64Array(count * count)
  fillInfluence(panels, matrix)
  const sides = new Float64Array(2 * count)
  for (let panel = 0; panel < count; panel += 1) {
    sides[panel] = -(panels.nz[panel] as number)
    sides[count + panel] = -(panels.incidence[panel] as number)
  }
  if (!solveLinear(matrix, count, sides))
    throw new InvalidInput({
      method,
      argument: 'surfaces',
      value: 'without a solution',
      accepted: 'surfaces apart from each other, of a size that numbers can hold',
    })
  byAngle.set(sides.subarray(0, count))
  byTwist.set(sides.subarray(count))
}

function liftOf(panels: Panels, circulation: Float64Array, area: number, surface = -1): number {
  let sum = 0
  for (let panel = 0; panel < panels.count; panel += 1)
    if (surface < 0 || panels.surface[panel] === surface)
      sum += (circulation[panel] as number) * ((panels.by[panel] as number) - (panels.ay[panel] as number))
  return (4 * sum) / area
}

function pitchOf(panels: Panels, circulation: Float64Array, area: number, chord: number, centre: number): number {
  let sum = 0
  for (let panel = 0; panel < panels.count; panel += 1) {
    const width = (panels.by[panel] as number) - (panels.ay[panel] as number)
    const place = 0.5 * ((panels.ax[panel] as number) + (panels.bx[panel] as number))
    sum -= (circulation[panel] as number) * width * (place - centre)
  }
  return (4 * sum) / (area * chord)
}

function efficiency(
  panels: Panels,
  shapes: readonly SurfaceShape[],
  lift: number,
  inducedDrag: number,
  byAngle: Float64Array,
  area: number,
): number {
  const semiSpan = shapes.reduce((largest, shape) => Math.max(largest, shape.semiSpan), 0)
  const perSquare = area / (4 * Math.PI * semiSpan * semiSpan)
  if (Math.abs(lift) > 1e-9 && inducedDrag > 0) return (lift * lift * perSquare) / inducedDrag
  const slope = liftOf(panels, byAngle, area)
  return (slope * slope * perSquare * area) / (2 * wakeDrag(panels, byAngle))
}

function loadOf(
  panels: Panels,
  shape: SurfaceShape,
  surface: number,
  circulation: Float64Array,
  byAngle: Float64Array,
  area: number,
): SurfaceLoad {
  const { spanwise, chordwise } = panels
  const first = surface * spanwise * chordwise
  const across: number[] = []
  const sectionLift: number[] = []
  for (let strip = 0; strip < spanwise; strip += 1) {
    const panel = first + strip * chordwise
    across.push(panels.cy[panel] as number)
    sectionLift.push((2 * stripCirculation(circulation, panel, chordwise)) / stripChord(panels, panel, shape))
  }
  return {
    lift: liftOf(panels, circulation, area, surface),
    liftCurveSlope: liftOf(panels, byAngle, area, surface),
    across,
    sectionLift,
  }
}

/** Chord in the middle of a strip, from where its bound vortex and control point lie: half a panel apart. */
function stripChord(panels: Panels, panel: number, shape: SurfaceShape): number {
  const bound = 0.5 * ((panels.ax[panel] as number) + (panels.bx[panel] as number))
  const chord = 2 * panels.chordwise * ((panels.cx[panel] as number) - bound)
  return Math.max(chord, 1e-9 * shape.semiSpan)
}
