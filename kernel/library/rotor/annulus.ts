/**
 * One annulus of a blade: the induced velocity at which the air takes up exactly the thrust that the elements give.
 *
 * Speeds are over the tip speed. The unknown is the axial induced velocity: from it follow the swirl, the angle of attack and the
 * thrust, and from the thrust the induced velocity that the disk theory asks for. The theory's curve is continuous through climb, vortex
 * ring and windmill, for either sign of thrust, and the thrust stays finite; so there is always a root, and it is bracketed before it is
 * sought. Nothing here diverges, whatever the pitch.
 */
import { brentRoot } from '../numerics/index.js'
import type { Polar } from '../section/polar.js'
import { inducedVelocity } from './axial-inflow.js'
import { prandtlFactor } from './tip-loss.js'

export interface AnnulusConditions {
  readonly polar: Polar
  readonly blades: number
  /** Root cut-out over radius. */
  readonly root: number
  /** Axial speed over tip speed. */
  readonly climb: number
  /** Tip speed over speed of sound. */
  readonly machScale: number
  /** Reynolds number of a chord of one radius at tip speed. */
  readonly reynoldsScale: number
  readonly losses: boolean
  readonly swirl: boolean
}

const tolerance = 1e-10
const greatestDoublings = 60

export class Annulus {
  /** Speed of the element through the air. */
  speed = 0
  /** Angle between that and the disk [rad]. */
  inflowAngle = 0
  /** Force coefficient along the axis. */
  normal = 0
  /** Force coefficient against the rotation. */
  tangential = 0
  drag = 0
  stalled = false
  readonly #conditions: AnnulusConditions
  #station = 0
  #chord = 0
  #pitch = 0
  #localSolidity = 0

  constructor(conditions: AnnulusConditions) {
    this.#conditions = conditions
  }

  /** Solves the annulus at a station r/R with a chord (over radius) and a pitch [rad]; the answer is in the fields. */
  solve(station: number, chord: number, pitch: number): void {
    this.#station = station
    this.#chord = chord
    this.#pitch = pitch
    this.#localSolidity = (this.#conditions.blades * chord) / (2 * Math.PI * station)
    let low = 0
    let valueLow = this.#residual(0)
    if (valueLow === 0) return
    // Thrust falls as the inflow grows, so what the disk asks for at no inflow is too much: the other end, unless stall delays it.
    let high = valueLow
    let valueHigh = this.#residual(high)
    for (let i = 0; i < greatestDoublings && valueHigh * valueLow > 0; i += 1) {
      low = high
      valueLow = valueHigh
      high *= 2
      valueHigh = this.#residual(high)
    }
    this.#residual(brentRoot(this.#residual, low, high, valueLow, valueHigh, tolerance).x)
  }

  /** Induced velocity asked for less the one assumed. */
  readonly #residual = (inflow: number): number => {
    const { climb, polar, machScale, reynoldsScale, losses, swirl } = this.#conditions
    const station = this.#station
    const axial = climb + inflow
    const around = swirl ? withoutSwirl(station, inflow * axial) : station
    const square = axial * axial + around * around
    const speed = Math.sqrt(square)
    const sine = axial / speed
    const cosine = around / speed
    const inflowAngle = Math.atan2(axial, around)
    polar.evaluate(this.#pitch - inflowAngle, speed * this.#chord * reynoldsScale, speed * machScale)
    const { lift, drag } = polar
    const normal = lift * cosine - drag * sine
    this.speed = speed
    this.inflowAngle = inflowAngle
    this.normal = normal
    this.tangential = lift * sine + drag * cosine
    this.drag = drag
    this.stalled = polar.stalled
    const loss = losses ? this.#loss(Math.abs(sine)) : 1
    return inducedVelocity(climb, (square * this.#localSolidity * normal) / (4 * loss)) - inflow
  }

  /** Prandtl's loss at the tip, and at the root where the blade does not begin at the axis. */
  #loss(sine: number): number {
    const { blades, root } = this.#conditions
    const station = this.#station
    const half = 0.5 * blades
    const tip = prandtlFactor((half * (1 - station)) / (station * sine))
    return root === 0 ? tip : tip * prandtlFactor((half * (station - root)) / (root * sine))
  }
}

/**
 * Speed of the element in the disk, the swirl taken off: lift turns the air square to the element's path, so the swirl u makes
 * u (x - u) = v (V + v). Where the root would turn the air more than it can, half the speed is left.
 */
function withoutSwirl(station: number, axialProduct: number): number {
  const inside = station * station - 4 * axialProduct
  return 0.5 * (station + (inside > 0 ? Math.sqrt(inside) : 0))
}
