/** The iteration behind `propeller.minimumInducedLoss`: displacement of the wake, drag of the sections, chord and angle. */
import { InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import { cutBlade } from '../rotor/blade.js'
import { prandtlFactor } from '../rotor/tip-loss.js'
import type { Polar } from '../section/polar.js'

export interface LossDesign {
  readonly thrust?: number
  readonly power?: number
  readonly speed: number
  readonly radius: number
  /** Root cut-out over radius. */
  readonly root: number
  readonly blades: number
  readonly tipSpeed: number
  readonly density: number
  readonly dynamicViscosity: number
  readonly speedOfSound: number
  readonly liftCoefficient: number
  readonly elements: number
  readonly polar: Polar
}

export interface LossSolution {
  readonly displacement: number
  /** T over (rho/2) V^2 pi R^2. */
  readonly thrustRatio: number
  /** P over (rho/2) V^3 pi R^2. */
  readonly powerRatio: number
  readonly station: Float64Array
  /** Over radius. */
  readonly width: Float64Array
  /** [m] */
  readonly chord: Float64Array
  /** [rad] */
  readonly angle: Float64Array
}

interface Integrals {
  i1: number
  i2: number
  j1: number
  j2: number
}

const greatestRounds = 60
const tolerance = 1e-10

export function solveLeastLoss(method: string, design: LossDesign): LossSolution {
  const { station, width } = cutBlade(design.root, design.elements)
  const dragToLift = new Float64Array(design.elements).fill(0.01)
  const chord = new Float64Array(design.elements)
  const angle = new Float64Array(design.elements)
  let displacement = 0
  let integrals: Integrals = { i1: 0, i2: 0, j1: 0, j2: 0 }
  for (let round = 0; round < greatestRounds; round += 1) {
    integrals = integrate(design, displacement, station, width, dragToLift)
    const next = displacementFor(method, design, integrals)
    shapeBlade(method, design, next, station, dragToLift, chord, angle)
    const change = Math.abs(next - displacement)
    displacement = next
    if (change <= tolerance * next) break
  }
  const { i1, i2, j1, j2 } = integrals
  return {
    displacement,
    thrustRatio: (i1 - i2 * displacement) * displacement,
    powerRatio: (j1 + j2 * displacement) * displacement,
    station,
    width,
    chord,
    angle,
  }
}

/** Inflow angle at a station and Goldstein's circulation function by Prandtl's loss. */
function circulation(design: LossDesign, displacement: number, station: number): { phi: number; g: number } {
  const advance = design.speed / design.tipSpeed
  const tipTangent = advance * (1 + 0.5 * displacement)
  const phi = Math.atan(tipTangent / station)
  const tipSine = tipTangent / Math.sqrt(1 + tipTangent * tipTangent)
  const loss = prandtlFactor((0.5 * design.blades * (1 - station)) / tipSine)
  return { phi, g: (loss * station * Math.cos(phi) * Math.sin(phi)) / advance }
}

function integrate(
  design: LossDesign,
  displacement: number,
  station: Float64Array,
  width: Float64Array,
  dragToLift: Float64Array,
): Integrals {
  const advance = design.speed / design.tipSpeed
  const sum = { i1: 0, i2: 0, j1: 0, j2: 0 }
  for (let i = 0; i < station.length; i += 1) {
    const x = station[i] as number
    const dx = width[i] as number
    const { phi, g } = circulation(design, displacement, x)
    const tangent = Math.tan(phi)
    const cosine = Math.cos(phi)
    const thrustLoss = 1 - (dragToLift[i] as number) * tangent
    const powerLoss = 1 + (dragToLift[i] as number) / tangent
    const i1 = 4 * x * g * thrustLoss
    const j1 = 4 * x * g * powerLoss
    sum.i1 += i1 * dx
    sum.i2 += ((advance * i1) / (2 * x)) * powerLoss * Math.sin(phi) * cosine * dx
    sum.j1 += j1 * dx
    sum.j2 += 0.5 * j1 * thrustLoss * cosine * cosine * dx
  }
  return sum
}

function displacementFor(method: string, design: LossDesign, { i1, i2, j1, j2 }: Integrals): number {
  const { thrust, power, density, speed, radius } = design
  const force = 0.5 * density * speed * speed * Math.PI * radius * radius
  if (power !== undefined) {
    const half = j1 / (2 * j2)
    return power / (force * speed * j2) / (half + Math.sqrt(half * half + power / (force * speed * j2)))
  }
  const half = i1 / (2 * i2)
  const wanted = (thrust as number) / (force * i2)
  const inside = half * half - wanted
  if (!(inside >= 0) || !(half > 0))
    throw new InvalidInput({
      method,
      argument: 'thrust',
      value: thrust as number,
      unit: 'N',
      accepted: `less than about ${Math.max(half * half * i2 * force, 0).toPrecision(3)} N at this speed and disk`,
      remedy: 'A larger disk or a higher tip speed gives more.',
    })
  return wanted / (half + Math.sqrt(inside))
}

/** Chord and angle at each station, and the drag of its section for the next round. */
function shapeBlade(
  method: string,
  design: LossDesign,
  displacement: number,
  station: Float64Array,
  dragToLift: Float64Array,
  chord: Float64Array,
  angle: Float64Array,
): void {
  const { speed, radius, blades, density, dynamicViscosity, speedOfSound, liftCoefficient, polar, tipSpeed } = design
  for (let i = 0; i < station.length; i += 1) {
    const { phi, g } = circulation(design, displacement, station[i] as number)
    const speedTimesChord =
      (4 * Math.PI * (speed / tipSpeed) * g * speed * radius * displacement) / (liftCoefficient * blades)
    const interference = 0.5 * displacement * Math.cos(phi) ** 2 * (1 - (dragToLift[i] as number) * Math.tan(phi))
    const path = (speed * (1 + interference)) / Math.sin(phi)
    const reynolds = (density * speedTimesChord) / dynamicViscosity
    const attack = angleForLift(method, polar, liftCoefficient, reynolds, path / speedOfSound)
    dragToLift[i] = polar.drag / liftCoefficient
    chord[i] = speedTimesChord / path
    angle[i] = attack + phi
  }
}

/** Lowest angle of attack with a lift coefficient, on the attached side; leaves the polar there. */
function angleForLift(method: string, polar: Polar, lift: number, reynolds: number, mach: number): number {
  const excess = (attack: number): number => {
    polar.evaluate(attack, reynolds, mach)
    return polar.lift - lift
  }
  let low = -0.3
  let valueLow = excess(low)
  for (let high = -0.29; high < 0.6; high += 0.01) {
    const valueHigh = excess(high)
    if (valueLow < 0 && valueHigh >= 0) {
      const root = brentRoot(excess, low, high, valueLow, valueHigh, 1e-13).x
      excess(root)
      return root
    }
    low = high
    valueLow = valueHigh
  }
  throw new InvalidInput({
    method,
    argument: 'liftCoefficient',
    value: lift,
    accepted: `one that the section reaches; it does not at a Reynolds number of ${reynolds.toPrecision(2)} and a Mach number of ${mach.toPrecision(2)}`,
  })
}
